/** What one folder of src/ (or one file directly in src/core) may know of. */
export interface Rule {
  /** Folders, or single files, it may import. Its own folder is always allowed. */
  readonly allowed: readonly string[];
  /** As `allowed`, for `import type` alone: shapes of data, no code. */
  readonly types?: readonly string[];
  /** Outside libraries it may import. `node:` stands for all of Node. */
  readonly libraries?: readonly string[];
  /** Why not more; ends the sentence "… may not import …: ". */
  readonly reason: string;
}

const BASICS = ['core/units', 'core/issue', 'core/gravity', 'core/elementary'];
/** The answers that need no run: outline, level fill, metal, tilt. */
const LIVE = [...BASICS, 'core/section', 'core/level', 'core/metal', 'core/tilt'];
/** What goes into a run and what comes out, without the run itself. */
const PLAN_AND_RECORD = ['core/pour/plan', 'core/pour/record'];

/** Heat that needs no run: what metals, coats and dies are, and what happens once everything stands still. */
const HEAT_AT_REST = [
  'core/heat/afterFill',
  'core/heat/cautions',
  'core/heat/checkHeat',
  'core/heat/checkPouring',
  'core/heat/coat',
  'core/heat/coats',
  'core/heat/dieCycle',
  'core/heat/dieWarming',
  'core/heat/ejection',
  'core/heat/heatPlan',
  'core/heat/ladling',
  'core/heat/restingParts',
  'core/heat/shrinkage',
  'core/heat/checkThermal',
  'core/heat/freeSurface',
  'core/heat/thermalMetals',
  'core/heat/thermalSources',
  'core/heat/waitInBasin',
  'core/pour/heatPlanOf',
  'core/pour/ladledMetal',
];

/** Dependencies point one way, from the die's outline to the page. Read from top to bottom. */
export const RULES: Readonly<Record<string, Rule>> = {
  'core/units': { allowed: [], reason: 'conversions stand alone, so that everything may use them' },
  'core/issue': {
    allowed: [],
    reason: 'the shape of a complaint stands alone, so that everything may use it',
  },
  'core/gravity': { allowed: [], reason: 'one constant, so that everything may use it' },
  'core/elementary': {
    allowed: [],
    reason: 'functions of numbers stand alone, so that everything may use them',
  },
  'core/section': { allowed: BASICS, reason: 'the outline is there before any metal, mesh or tilt' },
  'core/level': {
    allowed: [...BASICS, 'core/section'],
    types: ['core/metal', 'core/pour/plan'],
    reason: 'the level fill follows from outline and volume alone, so that it can check the solver',
  },
  'core/metal': { allowed: BASICS, reason: 'a metal is the same in every die' },
  'core/tilt': { allowed: BASICS, reason: 'the machine turns the same whatever it carries' },
  'core/fit': {
    allowed: [...BASICS, 'core/tilt'],
    libraries: ['ml-levenberg-marquardt'],
    reason: 'a fit turns the machine many times; it knows nothing of pours',
  },
  'core/mesh': { allowed: [...BASICS, 'core/section'], reason: 'the mesh is made from the outline alone' },
  'core/flow': {
    allowed: [...BASICS, 'core/mesh', 'core/tilt', 'core/metal'],
    types: ['core/section', 'core/pour/plan'],
    reason: 'the step computes; what is watched, kept or shown of it is decided outside',
  },
  'core/heat': {
    allowed: [...BASICS, 'core/section', 'core/metal', 'core/mesh'],
    types: ['core/pour/plan', 'core/flow'],
    reason: 'heat is lost the same whoever watches',
  },
  'core/watch': {
    allowed: [...LIVE, 'core/mesh', 'core/flow', 'core/heat'],
    types: PLAN_AND_RECORD,
    reason: 'watchers look at the flow; they neither start a run nor draw it',
  },
  'core/pour': {
    allowed: [...LIVE, 'core/mesh', 'core/flow', 'core/heat', 'core/watch'],
    libraries: ['@noble/hashes', 'ndarray'],
    reason: 'a run goes from plan to record; it must work without a page, a file or a thread',
  },
  verify: {
    allowed: ['core'],
    reason: 'a check of the physics runs the solver as everybody does, without page or file',
  },
  bench: {
    allowed: ['core', 'report/study', 'book/readBook', 'cli/chooseStudy', 'cli/computeEach'],
    libraries: ['node:'],
    reason: 'a benchmark times what the command line runs, without page',
  },
  report: {
    allowed: [...LIVE, ...PLAN_AND_RECORD, ...HEAT_AT_REST, 'core/mesh'],
    libraries: ['d3', 'ndarray'],
    reason: 'a report reads records; it must not know which cell shows it, nor run anything',
  },
  cells: {
    allowed: [...LIVE, ...PLAN_AND_RECORD, ...HEAT_AT_REST, 'core/pour/planHash', 'report'],
    reason: 'cells are data and pure answers; "needs a run" is said, not done',
  },
  book: {
    allowed: [...LIVE, ...PLAN_AND_RECORD, 'core/pour/planHash', 'report', 'cells'],
    libraries: ['valibot'],
    reason: 'the saved book is the same in the page, in a file and on the command line',
  },
  fromDrawing: {
    allowed: [...BASICS, 'core/section'],
    libraries: ['@rgrove/parse-xml', 'svgpath'],
    reason: 'a drawing gives an outline; what is poured in it, and how it is shown, are decided elsewhere',
  },
  worker: {
    allowed: ['core/pour'],
    libraries: ['comlink'],
    reason: 'the worker is a thin shell around one run; it knows neither cells nor books',
  },
  cli: {
    allowed: ['core', 'report', 'cells', 'book'],
    libraries: ['node:', 'comlink', 'ndarray'],
    reason: 'the command line does without browser, page and web worker',
  },
  ui: {
    allowed: [
      ...LIVE,
      ...PLAN_AND_RECORD,
      ...HEAT_AT_REST,
      'core/pour/planHash',
      'report',
      'cells',
      'book',
      'fromDrawing',
      'core/fit',
      'worker/client',
    ],
    libraries: ['svelte', 'd3', 'marked', 'smartypants', 'idb', '$app'],
    reason: 'the page reaches the solver through worker/client only, so that it never computes a pour itself',
  },
  'service-worker': {
    allowed: [],
    libraries: ['$service-worker'],
    reason: 'it puts by and hands out the files of the page, whatever is in them',
  },
  routes: {
    allowed: ['ui'],
    libraries: ['svelte', '@sveltejs/kit', '$app'],
    reason: 'a route only places what ui has made',
  },
};

/** Libraries that must not be reached from the page, over any number of files. */
export const NOT_IN_THE_PAGE: Readonly<Record<string, string>> = {
  ndarray: 'it builds code from strings, which the strict content policy forbids',
};
