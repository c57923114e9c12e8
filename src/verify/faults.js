/**
 * Plants one fault at a time in a copy of the sources and runs the tests that should see it: `npm run test:faults`.
 * Writes docs/faults.json, which `npm run verify` puts on the verification page. Exit code 1 when one goes unseen.
 * Words after it pick the faults that have one of them in their name; the others keep what was found before.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FAULTS } from './faultList.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

const SETTINGS = `import { fileURLToPath } from 'node:url';
export default {
  resolve: { alias: { $src: fileURLToPath(new URL('./src', import.meta.url)) } },
  test: { include: ['tests/**/*.test.ts'], testTimeout: 120000, bail: 1 },
};
`;

function makeCopy() {
  const copy = mkdtempSync(join(tmpdir(), 'quietpour-faults-'));
  for (const part of ['src', 'tests', 'docs', 'static', 'package.json', 'tsconfig.json', '.svelte-kit'])
    if (existsSync(join(root, part))) cpSync(join(root, part), join(copy, part), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  writeFileSync(join(copy, 'vitest.config.js'), SETTINGS);
  return copy;
}

/**
 * Runs test files in the copy; gives the name of the first test that failed, or null.
 * @param {string} copy
 * @param {string[]} tests
 * @returns {string | null}
 */
function firstRed(copy, tests) {
  const result = join(copy, 'result.json');
  rmSync(result, { force: true });
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const { status } = spawnSync(
    process.execPath,
    [vitest, 'run', '--reporter=json', `--outputFile=${result}`, ...tests],
    { cwd: copy, encoding: 'utf8' },
  );
  if (status === 0) return null;
  if (!existsSync(result)) return 'the tests could not run at all';
  /** @type {{ testResults: { name: string, assertionResults: { status: string, fullName: string }[] }[] }} */
  const { testResults } = JSON.parse(readFileSync(result, 'utf8'));
  for (const { name, assertionResults } of testResults) {
    const red = assertionResults.find((test) => test.status === 'failed');
    if (red) return `${name.slice(copy.length + 1)}: ${red.fullName.replace(/ \(.*$/, '')}`;
  }
  return 'a test file that could not be read';
}

/**
 * @param {string} copy
 * @param {import('./faultList.js').Fault} fault
 */
function plant(copy, fault) {
  const path = join(copy, 'src', fault.file);
  const text = readFileSync(path, 'utf8');
  const pieces = text.split(fault.find);
  if (pieces.length !== 2)
    throw new Error(
      `${fault.name}: "${fault.find}" stands ${pieces.length - 1} times in src/${fault.file}, expected once. Bring src/verify/faultList.js up to date.`,
    );
  writeFileSync(path, pieces.join(fault.put));
  try {
    return firstRed(copy, fault.tests);
  } finally {
    writeFileSync(path, text);
  }
}

/** @typedef {{ name: string, file: string, seenBy: string | null }} FaultResult */

const resultFile = join(root, 'docs/faults.json');
const words = process.argv.slice(2);
const picked = FAULTS.filter(({ name }) => words.length === 0 || words.some((word) => name.includes(word)));

/** @returns {Map<string, FaultResult>} */
function resultsBefore() {
  /** @type {FaultResult[]} */
  const before =
    words.length > 0 && existsSync(resultFile) ? JSON.parse(readFileSync(resultFile, 'utf8')) : [];
  return new Map(before.map((result) => [result.name, result]));
}

const copy = makeCopy();
try {
  const sound = firstRed(copy, [...new Set(picked.flatMap((fault) => fault.tests))]);
  if (sound !== null) throw new Error(`The tests are red without any fault: ${sound}`);
  const results = resultsBefore();
  for (const fault of picked) {
    const seenBy = plant(copy, fault);
    console.log(
      `${seenBy === null ? 'NOT SEEN' : 'seen    '}  ${fault.name}${seenBy === null ? '' : `  (${seenBy})`}`,
    );
    results.set(fault.name, { name: fault.name, file: `src/${fault.file}`, seenBy });
  }
  const told = FAULTS.flatMap((fault) => results.get(fault.name) ?? []);
  writeFileSync(resultFile, `${JSON.stringify(told, null, 2)}\n`);
  const unseen = told.filter((result) => result.seenBy === null).length;
  console.log(`${told.length - unseen} of ${told.length} faults seen.`);
  if (unseen > 0) process.exitCode = 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}
