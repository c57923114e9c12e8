import { describe, expect, test } from 'vitest';
import { circles, forbiddenInPage, wrongDirections } from './layers/directions';
import { barrels, engineMath, sentencesTwice, strayConversions, worldInCore } from './layers/habits';
import { RULES } from './layers/rules';
import { projectSources, type Source } from './layers/sources';

const sources = projectSources();

describe('the folders show the flow of data', () => {
  test('there are sources to look at', () => expect(sources.length).toBeGreaterThan(10));
  test('imports point one way', () => expect(wrongDirections(sources)).toEqual([]));
  test('imports go in no circle', () => expect(circles(sources)).toEqual([]));
  test('nothing the page must not run reaches it', () => expect(forbiddenInPage(sources)).toEqual([]));
  test('no file only passes on exports', () => expect(barrels(sources)).toEqual([]));
  test('core knows no clock, chance, browser or Node', () => expect(worldInCore(sources)).toEqual([]));
  test('a pour is the same on every engine', () => expect(engineMath(sources)).toEqual([]));
  test('units are converted in one place', () => expect(strayConversions(sources)).toEqual([]));
  test('no sentence stands in two files', () => expect(sentencesTwice(sources)).toEqual([]));
  test('every rule says why', () => {
    for (const [layer, { reason }] of Object.entries(RULES)) expect(reason, layer).toMatch(/\w+ \w+/);
  });
});

/** A source as it might be written by mistake. */
const planted = (path: string, text: string): Source => ({ path, text });

describe('a violation is caught and explained', () => {
  test.each([
    [
      'a step that draws',
      planted('core/flow/advance.ts', "import { verdict } from '$src/report/verdict';"),
      'src/core/flow/advance.ts may not import report/verdict: the step computes; what is watched, kept or shown of it is decided outside.',
    ],
    [
      'a relative way out',
      planted('core/mesh/mesh.ts', "import type { Flow } from '../flow/flow';"),
      'src/core/mesh/mesh.ts may not import core/flow/flow: the mesh is made from the outline alone.',
    ],
    [
      'code where only a shape is allowed',
      planted('core/watch/front.ts', "import { DEFAULT_COMPUTATION } from '$src/core/pour/plan';"),
      'src/core/watch/front.ts may not import core/pour/plan: watchers look at the flow; they neither start a run nor draw it.',
    ],
    [
      'a component that runs the solver',
      planted(
        'ui/PourView.svelte',
        '<script lang="ts">\nimport { simulate } from \'$src/core/pour/simulate\';\n</script>',
      ),
      'src/ui/PourView.svelte may not import core/pour/simulate: the page reaches the solver through worker/client only, so that it never computes a pour itself.',
    ],
    [
      'a component that opens a worker of its own',
      planted(
        'ui/store.svelte.ts',
        "const w = new Worker(new URL('../worker/pour.worker.ts', import.meta.url));",
      ),
      'src/ui/store.svelte.ts may not import worker/pour.worker: the page reaches the solver through worker/client only, so that it never computes a pour itself.',
    ],
    [
      'a late import',
      planted('cells/evaluate.ts', "const run = await import('$src/core/pour/simulate');"),
      'src/cells/evaluate.ts may not import core/pour/simulate: cells are data and pure answers; "needs a run" is said, not done.',
    ],
    [
      'a library in the wrong place',
      planted('core/flow/advance.ts', "import ndarray from 'ndarray';"),
      'src/core/flow/advance.ts may not import ndarray: the step computes; what is watched, kept or shown of it is decided outside.',
    ],
    [
      'Node in core',
      planted('core/pour/plan.ts', "import {\n  readFileSync,\n} from 'node:fs';"),
      'src/core/pour/plan.ts may not import node:fs: a run goes from plan to record; it must work without a page, a file or a thread.',
    ],
    [
      'a folder nobody thought about',
      planted('helpers/round.ts', "import { toDegrees } from '$src/core/units';"),
      'src/helpers/round.ts lies in no layer: add "helpers" with its reason to tests/layers/rules.ts.',
    ],
  ])('%s', (_, source, sentence) => expect(wrongDirections([source])).toEqual([sentence]));

  test('what is allowed is let through', () => {
    const good = [
      planted('core/watch/front.ts', "import type { Fold } from '$src/core/pour/record';"),
      planted('ui/bench.svelte.ts', "const { createPourClient } = await import('$src/worker/client');"),
      planted('cli/main.ts', "import { readFileSync } from 'node:fs';"),
    ];
    expect(wrongDirections(good)).toEqual([]);
  });

  test('a circle', () => {
    const pair = [
      planted('cells/a.ts', "import { b } from './b';"),
      planted('cells/b.ts', "import { a } from './a';"),
    ];
    expect(circles(pair)).toEqual(['cells/a imports cells/b imports cells/a: break the circle.']);
  });

  test('a forbidden library over a detour', () => {
    const detour = [
      planted('routes/+page.svelte', "import Page from '$src/ui/Page.svelte';"),
      planted('ui/Page.svelte', "import { field } from '$src/report/field';"),
      planted('report/field.ts', "import ndarray from 'ndarray';"),
    ];
    expect(forbiddenInPage(detour)).toEqual([
      'src/report/field brings ndarray into the page: it builds code from strings, which the strict content policy forbids.',
    ]);
  });

  test.each([
    ['cells/index.ts', "import './kinds';"],
    ['cells/all.ts', "export * from './kinds';"],
    ['cells/some.ts', "export type { Cell } from './kinds';"],
  ])('a file that passes on exports: %s', (path, text) =>
    expect(barrels([planted(path, text)])).toHaveLength(1),
  );

  test.each([
    'const at = Date.now();',
    'const at = new Date();',
    'const r = Math.random();',
    'const t = performance.now();',
    'document.title = "";',
    'setTimeout(go, 0);',
  ])('the world in core: %s', (text) =>
    expect(worldInCore([planted('core/pour/x.ts', text)])).toHaveLength(1),
  );

  test.each(['Math.sin(a)', 'Math.pow(a, 2)', 'a ** 3', 'a ** 2.5', 'Math.log10(a)', '2 ** k'])(
    'an engine’s own function: %s',
    (text) => expect(engineMath([planted('core/flow/x.ts', text)])).toHaveLength(1),
  );

  test.each(['Math.sqrt(a)', 'a ** 2', 'Math.hypot(a, b)', 'Math.sign(a)'])('exact everywhere: %s', (text) =>
    expect(engineMath([planted('core/flow/x.ts', text)])).toEqual([]),
  );

  test('words in comments and strings are no world', () => {
    const text = "// Date.now() would differ\nconst say = 'Math.random() is not used'; // performance.now()";
    expect(worldInCore([planted('core/pour/x.ts', text)])).toEqual([]);
  });

  test('a sentence in two files', () => {
    const said = "const remedy = 'Give at least two of them, one at each end.';";
    const twice = [planted('core/section/a.ts', said), planted('ui/b.ts', said)];
    expect(sentencesTwice(twice)).toHaveLength(1);
    expect(sentencesTwice(twice.slice(0, 1))).toEqual([]);
  });

  test.each([
    'angle * 180 / Math.PI',
    '(angle * Math.PI) / 180',
    'x / 1000',
    '1000 * x',
    'x * 1e3',
    'x * 0.001',
    't - 273.15',
    'd * 25.4',
  ])('a conversion by hand: %s', (text) =>
    expect(strayConversions([planted('ui/x.ts', `const y = ${text};`)])).toHaveLength(1),
  );
});
