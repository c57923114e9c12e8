import { NOT_IN_THE_PAGE, RULES, type Rule } from './rules';
import { type Import, importsOf, ownTarget, type Source, withoutExtension } from './sources';

/** The layer a path below src/ belongs to: `core/flow` for files of that folder, `core/units` for a file in core. */
export function layerOf(path: string): string {
  const [top = '', second = ''] = withoutExtension(path).split('/');
  return top === 'core' ? `core/${second}` : top;
}

const isBelow = (target: string, place: string): boolean =>
  target === place || target.startsWith(`${place}/`);
const isOneOf = (target: string, places: readonly string[]): boolean =>
  places.some((place) => isBelow(target, place));

function mayImport(rule: Rule, layer: string, target: string, isTypeOnly: boolean): boolean {
  if (layerOf(target) === layer) return true;
  return isOneOf(target, rule.allowed) || (isTypeOnly && isOneOf(target, rule.types ?? []));
}

const mayUse = (rule: Rule, library: string): boolean =>
  (rule.libraries ?? []).some(
    (name) => isBelow(library, name) || (name.endsWith(':') && library.startsWith(name)),
  );

function importProblem(source: Source, { specifier, isTypeOnly }: Import): string | null {
  const layer = layerOf(source.path);
  const rule = RULES[layer];
  if (!rule)
    return `src/${source.path} lies in no layer: add "${layer}" with its reason to tests/layers/rules.ts.`;
  const target = ownTarget(source, specifier);
  const isAllowed = target === null ? mayUse(rule, specifier) : mayImport(rule, layer, target, isTypeOnly);
  return isAllowed ? null : `src/${source.path} may not import ${target ?? specifier}: ${rule.reason}.`;
}

/** One sentence for each import that points the wrong way. */
export function wrongDirections(sources: readonly Source[]): string[] {
  return sources.flatMap((source) =>
    importsOf(source)
      .filter(({ specifier }) => !specifier.endsWith('.css'))
      .map((one) => importProblem(source, one))
      .filter((problem) => problem !== null),
  );
}

type Graph = ReadonlyMap<string, readonly string[]>;

/** Which source needs which to run: types are gone by then. Libraries appear by their name. */
function graphOf(sources: readonly Source[]): Graph {
  const entries = sources.map((source) => {
    const imports = importsOf(source).filter((one) => !one.isTypeOnly);
    const targets = imports.map(({ specifier }) => ownTarget(source, specifier) ?? specifier);
    return [withoutExtension(source.path), targets] as const;
  });
  return new Map(entries);
}

/** One sentence for each circle of imports: no file of a circle can be read, tested or moved by itself. */
export function circles(sources: readonly Source[]): string[] {
  const graph = graphOf(sources);
  const finished = new Set<string>();
  const found: string[] = [];
  const visit = (at: string, trail: readonly string[]): void => {
    const before = trail.indexOf(at);
    if (before >= 0) found.push(`${[...trail.slice(before), at].join(' imports ')}: break the circle.`);
    if (before >= 0 || finished.has(at)) return;
    for (const next of graph.get(at) ?? []) visit(next, [...trail, at]);
    finished.add(at);
  };
  for (const start of graph.keys()) visit(start, []);
  return found;
}

/** One sentence for each library that the page would load although it must not. */
export function forbiddenInPage(sources: readonly Source[]): string[] {
  const graph = graphOf(sources);
  const reached = new Map<string, string>();
  const visit = (at: string, from: string): void => {
    if (reached.has(at)) return;
    reached.set(at, from);
    // A worker file is named, not loaded: what it imports runs under its own policy.
    if (!at.endsWith('.worker')) for (const next of graph.get(at) ?? []) visit(next, at);
  };
  for (const start of graph.keys())
    if (start.startsWith('routes/') || start.startsWith('ui/')) visit(start, start);
  return Object.entries(NOT_IN_THE_PAGE)
    .filter(([library]) => reached.has(library))
    .map(([library, reason]) => `src/${reached.get(library)} brings ${library} into the page: ${reason}.`);
}
