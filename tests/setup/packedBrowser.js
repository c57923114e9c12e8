import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { pathToFileURL } from 'node:url';
import { createBrotliDecompress } from 'node:zlib';

/** A headless Chromium with its libraries and fonts, packed in an npm package. x64 Linux only. */
const PACKAGE = '@sparticuz/chromium';
const VERSION = '153.0.0';

/** In the user's cache, not in node_modules: `npm ci` empties the latter. */
const cacheFolder = () => join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'quietpour');
const finalFolder = () => join(cacheFolder(), `chromium-${VERSION}`);

/** @param {string} folder */
const note = (folder) => ({
  executablePath: join(folder, 'chromium'),
  env: { LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'), FONTCONFIG_PATH: join(folder, 'fonts') },
});

/**
 * Fetches and unpacks the packed Chromium once, and says how to start it; null where it does not exist.
 * It becomes visible only when whole: unpacked beside its final place, then renamed.
 * @returns {Promise<{ executablePath: string, env: Record<string, string> } | null>}
 */
export async function packedBrowser() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  if (existsSync(finalFolder())) return note(finalFolder());
  mkdirSync(cacheFolder(), { recursive: true });
  const stage = mkdtempSync(join(cacheFolder(), 'stage-'));
  try {
    fetchPackage(stage);
    await unpack(stage);
    putInPlace(join(stage, 'out'));
    return note(finalFolder());
  } finally {
    rmSync(stage, { recursive: true, force: true });
  }
}

/** @param {string} stage */
function fetchPackage(stage) {
  console.error(`Fetching a browser for the tests: ${PACKAGE} ${VERSION} (67 MB, once) …`);
  const npm = process.env['npm_execpath'];
  const args = [
    'install',
    '--no-audit',
    '--no-fund',
    '--no-save',
    '--loglevel=error',
    '--prefix',
    stage,
    `${PACKAGE}@${VERSION}`,
  ];
  const { status } = npm?.endsWith('npm-cli.js')
    ? spawnSync(process.execPath, [npm, ...args], { cwd: stage, stdio: ['ignore', 2, 2] })
    : spawnSync('npm', args, { cwd: stage, stdio: ['ignore', 2, 2] });
  if (status !== 0) throw new Error(`npm could not fetch ${PACKAGE}`);
}

/** @param {string} stage */
async function unpack(stage) {
  const bin = join(stage, 'node_modules', '@sparticuz', 'chromium', 'bin');
  const out = join(stage, 'out');
  mkdirSync(out);
  const here = createRequire(join(stage, 'any.js'));
  const { extract } = (await import(pathToFileURL(here.resolve('tar-fs')).href)).default;
  const open = (/** @type {string} */ file) =>
    createReadStream(join(bin, file)).pipe(createBrotliDecompress());
  await Promise.all([
    pipeline(open('chromium.br'), createWriteStream(join(out, 'chromium'))),
    pipeline(open('al2023.tar.br'), extract(join(out, 'al2023'))),
    pipeline(open('fonts.tar.br'), extract(join(out, 'fonts'))),
    pipeline(open('swiftshader.tar.br'), extract(out)),
  ]);
  chmodSync(join(out, 'chromium'), 0o755);
  writeFileSync(join(out, 'fonts', 'fonts.conf'), fontsConfiguration());
}

/** The package's own list names a folder that is not here; without a font, text has no height and counts as hidden. */
const fontsConfiguration = () => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(finalFolder(), 'fonts', 'fonts')}</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${join(finalFolder(), 'fontcache')}</cachedir>
</fontconfig>
`;

/** @param {string} out */
function putInPlace(out) {
  try {
    renameSync(out, finalFolder());
  } catch (error) {
    // Another run of the tests may have put it there meanwhile; theirs is as whole as ours.
    if (!existsSync(finalFolder())) throw error;
  }
}
