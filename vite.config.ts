import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { nativeCore } from './tests/setup/nativeCore.js';

const src = fileURLToPath(new URL('./src', import.meta.url));

/**
 * Constants of a module stay `const`. Made `var`, as is usual for bundles, every one of them is looked up and unwrapped
 * at each turn of the solver's loops; as `const` it is a number in the code.
 */
const output = { topLevelVar: false };

/** The command line: the same code as the page's worker, bundled for Node. */
const commandLine = defineConfig({
  resolve: { alias: { $src: src } },
  publicDir: false,
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: true,
    outDir: 'dist',
    target: 'node20',
    minify: false,
    rolldownOptions: {
      input: {
        bench: `${src}/bench/bench.ts`,
        quietpour: `${src}/cli/main.ts`,
        'pour.worker': `${src}/cli/pour.worker.ts`,
      },
      output: {
        ...output,
        entryFileNames: '[name].js',
        chunkFileNames: 'chunk-[hash].js',
        banner: (chunk) => (chunk.name === 'quietpour' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
});

/**
 * Few files rather than many small ones, each of which takes a request of its own and packs worse: all that the page needs
 * to begin with, what is typed into, and what a pour is shown by. Forty small files held the first view up by a third of a second.
 */
const fewFiles = {
  codeSplitting: {
    groups: [
      // The guide is read without a script: neither its parts nor the list of routes that leads to them is waited for.
      {
        name: 'start',
        test: /^(?!.*\/(src\/(ui|routes)\/guide|client-optimized\/nodes)\/)/,
        tags: ['$initial' as const],
        priority: 2,
      },
      { name: 'inputs', test: /src\/ui\/(section\/Section|cells\/(Metal|Charge)View)/, priority: 1 },
      { name: 'pours', test: /src\/ui\/cells\/(Tilt|Pour)View/ },
    ],
  },
};

const page = defineConfig({
  plugins: [sveltekit()],
  // Pictures of the guide.
  server: { fs: { allow: ['docs'] } },
  worker: { format: 'es', rolldownOptions: { output } },
  build: { rolldownOptions: { checks: { pluginTimings: false } } },
  environments: { client: { build: { rolldownOptions: { output: fewFiles } } } },
  optimizeDeps: { include: ['comlink', 'ndarray', 'd3'] },
  test: {
    reporters: ['default', './tests/setup/closing-line.js'],
    projects: [
      {
        extends: true,
        plugins: [nativeCore()],
        test: {
          name: 'unit',
          // On two cores the runner would take one.
          maxWorkers: availableParallelism(),
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**'],
          // Ends a hang, times nothing.
          testTimeout: 300_000,
          // The tests keep no state between files, and loading the modules anew for each costs a third of the time.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'site',
          environment: 'node',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/setup/site.ts'],
          testTimeout: 180_000,
          hookTimeout: 60_000,
          // A second is too short for a page on a busy machine.
          expect: { poll: { timeout: 10_000 } },
          // One browser at a time: two on two cores gain half a minute, and frames and workers then wait for each other.
          fileParallelism: false,
          // One process for all files, and with it one browser.
          isolate: false,
        },
      },
    ],
  },
});

export default defineConfig(({ mode }) => (mode === 'cli' ? commandLine : page));
