import { buildIfStale, targets } from './build.js';
import { packageScript, runQuietly } from './command.js';

/**
 * One thing to be done before or beside the tests.
 * @typedef {{ name: string, work: () => Promise<{ code: number, output: string }> }} Step
 */

/** @type {Step} */
export const page = { name: 'build of the page', work: () => buildIfStale(targets.site) };
/** @type {Step} */
export const commandLine = {
  name: 'build of the command line',
  work: () => buildIfStale(targets.commandLine),
};
/** @type {Step} */
export const browser = { name: 'browser for the tests', work: findBrowser };
/** @type {Step} */
export const types = {
  name: 'types and markup',
  work: () =>
    runQuietly(packageScript('svelte-check/bin/svelte-check', ['--fail-on-warnings', '--output', 'human'])),
};
/** @type {Step} */
export const lint = {
  name: 'lint and format',
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

/** Writes the files that the type check and both builds read. */
export const sync = () => runQuietly(packageScript('@sveltejs/kit/svelte-kit.js', ['sync']));

/**
 * Does a step and tells how it went; gives whether it went well.
 * @param {Step} step
 */
async function carryOut(step) {
  const started = performance.now();
  const { code, output } = await step.work();
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${code === 0 ? 'done  ' : 'FAILED'} ${step.name} (${seconds} s)`);
  if (code !== 0) console.log(output.trimEnd());
  return code === 0;
}

/**
 * Does steps one after the other; each counts as one test.
 * @param {Step[]} steps
 * @returns {Promise<import('./tally.js').Tally>}
 */
export async function carryOutAll(steps) {
  let passed = 0;
  for (const step of steps) if (await carryOut(step)) passed += 1;
  return { passed, failed: steps.length - passed };
}
