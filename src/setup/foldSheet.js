/** `node src/setup/foldSheet.js`: writes docs/figures/folds.svg, the schematics of all kinds of fold, from src/report/foldScheme. */
import { writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';
import { inProject } from './paths.js';

const { module } = await runnerImport(inProject('src/report/foldScheme/foldSheet.ts'), {
  root: inProject('.'),
  configFile: false,
  logLevel: 'error',
  resolve: { alias: { $src: inProject('src') } },
});
writeFileSync(inProject('docs/figures/folds.svg'), /** @type {any} */ (module).foldSheet());
console.log('docs/figures/folds.svg');
