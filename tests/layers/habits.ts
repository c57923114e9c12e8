import { codeOf, type Source } from './sources';

const RE_EXPORT = /(?:^|\n)\s*export\s+(?:type\s+)?(?:\*|\{[^}]*\})(?:\s+as\s+\w+)?\s+from\b/;

/** One sentence for each file that only passes on what other files export: import the file you mean. */
export function barrels(sources: readonly Source[]): string[] {
  return sources
    .filter(({ path, text }) => /(^|\/)index\.ts$/.test(path) || RE_EXPORT.test(text))
    .map(({ path }) => `src/${path} passes on what other files export: import the file you mean.`);
}

/** The world outside a computation: clock, chance, browser, Node. */
const OUTSIDE = [
  /\bMath\.random\b/,
  /\bnew\s+Date\b/,
  /(?<![.\w$])(?:Date|performance|window|document|navigator|globalThis|console|process|localStorage|crypto)\s*[.[]/,
  /(?<![.\w$])(?:setTimeout|setInterval|fetch|requestAnimationFrame|queueMicrotask|postMessage)\s*\(/,
];

/** One sentence for each place where core knows of more than its inputs. */
export function worldInCore(sources: readonly Source[]): string[] {
  return sources
    .filter(({ path }) => path.startsWith('core/'))
    .flatMap(({ path, text }) => {
      const code = codeOf(text);
      return OUTSIDE.map((pattern) => pattern.exec(code)?.[0])
        .filter((found) => found !== undefined)
        .map(
          (found) => `src/${path} uses ${found.trim()}: the same plan must give the same record everywhere.`,
        );
    });
}

/** What enters a pour, and the few engine functions that do not reach its record, or only as a told figure. */
const IN_A_POUR = /^core\/(elementary|section|level|metal|tilt|mesh|flow|heat|watch|pour)\//;
const TOLD_ONLY: Readonly<Record<string, string>> = {
  'core/flow/conditions.ts': 'Math.cbrt', // friction laws of checks, not of a die
  'core/heat/volumes.ts': 'Math.acos', // shape of a cast part, for its modulus
  'core/level/deepBasin.ts': 'Math.tanh', // how far a deep basin strains the model
  'core/tilt/measured/parabola.ts': '**', // smoothing of readings, before there is a tilt
  'core/watch/lips.ts': 'Math.asin', // bend of a lip, told beside its fold
};
const ENGINE =
  /\bMath\.(?:a?(?:sin|cos|tan)h?|atan2|exp|expm1|log|log1p|log10|log2|pow|cbrt)\b|\*\*(?!\s*2\b(?!\.))/g;

/** One sentence for each function in a pour whose last digit the language leaves to the engine. */
export function engineMath(sources: readonly Source[]): string[] {
  return sources
    .filter(({ path }) => IN_A_POUR.test(path))
    .flatMap(({ path, text }) =>
      [...codeOf(text).matchAll(ENGINE)]
        .filter(([found]) => TOLD_ONLY[path] !== found)
        .map(
          ([found]) => `src/${path} uses ${found}: engines differ in its last digit, see core/elementary.`,
        ),
    );
}

/** The marks of a conversion done by hand. */
const CONVERSION =
  /180\s*\/\s*Math\.PI|Math\.PI\s*\)?\s*\/\s*180|[*/]\s*(?:1000|1_000|1e3|1e-3|0\.001)(?![\d.])|(?<![\d.])(?:1000|1e3|1e-3|0\.001)\s*\*|\b(?:273\.15|25\.4|0\.0254|0\.45359\d*)\b/;

/**
 * One sentence for each conversion outside core/units.ts, where each has a name and is written once.
 * Formulas of published checks are left as they were published.
 */
export function strayConversions(sources: readonly Source[]): string[] {
  return sources
    .filter(({ path }) => path !== 'core/units.ts' && !path.startsWith('verify/'))
    .flatMap(({ path, text }) => {
      const found = CONVERSION.exec(codeOf(text));
      return found
        ? [`src/${path} converts units by hand (${found[0]}): use or add a named one in core/units.ts.`]
        : [];
    });
}

/** A sentence for a user, in quotes: a capital, some words, a full stop. */
const SENTENCE = /(['"`])\s?([A-Z$](?:(?!\1|\\|\n).){28,}\.)\1/g;

/** One sentence for each sentence that stands in two files, where only one of them would be put right. */
export function sentencesTwice(sources: readonly Source[]): string[] {
  const first = new Map<string, string>();
  return sources
    .filter(({ path }) => !path.startsWith('verify/'))
    .flatMap(({ path, text }) =>
      [...text.matchAll(SENTENCE)].flatMap(([, , sentence]) => {
        const before = first.get(sentence!) ?? path;
        first.set(sentence!, before);
        return before === path ? [] : [`src/${path} and src/${before} both say “${sentence}”: say it once.`];
      }),
    );
}
