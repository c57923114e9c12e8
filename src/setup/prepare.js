import { buildIfStale, targets } from './build.js';
import { packageScript, runQuietly } from './command.js';

/**
 * One thing to be done before the tests. `needed` = the tests cannot run without it.
 * @typedef {{ name: string, needed: boolean, work: () => Promise<{ code: number, output: string }> }} Step
 */

/** @type {Step} */
const page = { name: 'build of the page', needed: true, work: () => buildIfStale(targets.site) };
/** @type {Step} */
const commandLine = {
  name: 'build of the command line',
  needed: true,
  work: () => buildIfStale(targets.commandLine),
};
/** @type {Step} */
const browser = { name: 'browser for the tests', needed: true, work: findBrowser };
/** @type {Step} */
const types = {
  name: 'types and markup',
  needed: false,
  work: () =>
    runQuietly(packageScript('svelte-check/bin/svelte-check', ['--fail-on-warnings', '--output', 'human'])),
};
/** @type {Step} */
const lint = {
  name: 'lint and format',
  needed: false,
  work: () => runQuietly(packageScript('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.'])),
};

/** Outside src/setup because only the tests need a browser; loaded late because it needs the installed packages. */
async function findBrowser() {
  const { provideBrowser } = await import('../../tests/setup/browser.js');
  try {
    await provideBrowser();
    return { code: 0, output: '' };
  } catch (error) {
    return { code: 1, output: /** @type {Error} */ (error).message };
  }
}

/** @param {string[]} vitestArguments */
const unitTestsOnly = (vitestArguments) => {
  const projects = vitestArguments.filter((_, i) => vitestArguments[i - 1] === '--project');
  return projects.length > 0 && projects.every((project) => project === 'unit');
};

/** @param {Step} step */
async function carryOut(step) {
  const started = performance.now();
  const { code, output } = await step.work();
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${code === 0 ? 'done  ' : 'FAILED'} ${step.name} (${seconds} s)`);
  if (code !== 0) console.log(output.trimEnd());
  return { step, ok: code === 0 };
}

/** @param {Step[]} steps one after the other */
async function inTurn(steps) {
  const results = [];
  for (const step of steps) results.push(await carryOut(step));
  return results;
}

/**
 * Builds the page and the command line, finds a browser, checks types, markup, lint and format; two at a time.
 * When only unit tests are asked for, what only the site tests need is left out.
 * @param {string[]} vitestArguments
 */
export async function prepare(vitestArguments) {
  // The type check and both builds read the files this writes.
  await runQuietly(packageScript('@sveltejs/kit/svelte-kit.js', ['sync']));
  const first = unitTestsOnly(vitestArguments) ? [commandLine] : [page, commandLine, browser];
  const results = (await Promise.all([inTurn(first), inTurn([lint, types])])).flat();
  const failed = results.filter((result) => !result.ok);
  return {
    passed: results.length - failed.length,
    failed: failed.length,
    canTest: failed.every((result) => !result.step.needed),
  };
}
