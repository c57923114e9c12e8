import { expect, test } from 'vitest';
import type { PourRecord } from '$src/core/pour/record';
import { fromCelsius, fromDegrees, METRIC, type PageUnits } from '$src/core/units';
import { castingsPart } from '$src/report/bookPage/castingsPart';
import { comparePart } from '$src/report/bookPage/comparePart';
import { type Guessed, guessPart } from '$src/report/bookPage/guessPart';
import { NOTHING_POURED, studyPart } from '$src/report/bookPage/studyPart';
import { EMPTY_ROW, NO_FAULTS } from '$src/report/castings/casting';
import { predictedPour } from '$src/report/castings/predictedPour';
import { mapAnswer, regionCounts } from '$src/report/study/mapAnswer';
import type { PointResult } from '$src/report/study/region';
import type { NamedAxis } from '$src/report/study/studyFile';
import { inventedFigures, inventedPlan, inventedRecord } from '../inventedRecord';

const INCHES: PageUnits = { length: 'in', mass: 'lb', temperature: 'degF' };
const SLOW = inventedRecord();
const QUICK = inventedRecord({
  speedScale: 4,
  band: null,
  figures: { ...inventedFigures, peakFrontSpeed: 0.8, shareAboveCritical: 0.4 },
});
const HOSTILE = '<img src=x onerror="alert(1)">';

const textOf = (markup: string): string => markup.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
const heads = (markup: string, caption: string): string[] =>
  [
    ...(markup.split(`<caption>${caption}`)[1]?.split('</thead>')[0] ?? '').matchAll(
      /<th(?: [^>]*)?>(.*?)<\/th>/g,
    ),
  ].map(([, text]) => text!);

test('a comparison tells its sentence, what differs, every figure with its difference, and one curve a pour', () => {
  const part = comparePart(
    [
      { name: 'Slow', record: SLOW },
      { name: 'Quick', record: QUICK },
    ],
    METRIC,
  );
  expect(textOf(part)).toContain('Slow runs at up to 0.15 m/s');
  expect(heads(part, 'Figures')).toEqual(['figure', 'Slow', 'Quick', 'difference']);
  expect(part).toMatch(
    /front speed, peak<\/th><td class="r" data-column="Slow">0\.15 m\/s<\/td><td class="r" data-column="Quick">0\.80 m\/s<\/td><td class="r" data-column="difference">5\.3 times as fast<\/td>/,
  );
  const field = part.split('class="field ended"')[1]!.split('</div>')[0]!;
  expect([...field.matchAll(/class="line look-\d" d="M[^"]+L/g)]).toHaveLength(2);
  expect(part.length).toBeLessThan(20_000);
});

test('curves of a comparison stay inside their field and fall with the speed that they show', () => {
  const part = comparePart(
    [
      { name: 'Slow', record: SLOW },
      { name: 'Quick', record: QUICK },
    ],
    METRIC,
  );
  const [slow, quick] = [...part.matchAll(/class="line look-\d" d="(M\d[^"]+L[^"]+)"/g)].map(([, d]) =>
    d!.split(/[ML]/).flatMap((spot) => (spot === '' ? [] : [spot.split(' ').map(Number)])),
  );
  for (const [x, y] of [...slow!, ...quick!]) {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x).toBeLessThanOrEqual(1000);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(500);
  }
  expect(Math.min(...quick!.map(([, y]) => y!))).toBeLessThan(Math.min(...slow!.map(([, y]) => y!)));
});

test('a comparison speaks in the units of the book', () => {
  const pours = [
    { name: 'Slow', record: SLOW },
    { name: 'Quick', record: QUICK },
  ];
  const text = textOf(comparePart(pours, INCHES));
  expect(text).toContain('in/s');
  expect(text).not.toMatch(/\d (mm|m\/s|cm³|kg)\b/);
});

test('a name keeps its measures, whatever the units of the book', () => {
  const pours = [
    { name: 'Wall of 5 mm', record: SLOW },
    { name: 'Quick', record: QUICK },
  ];
  expect(textOf(comparePart(pours, INCHES))).toContain('Wall of 5 mm runs at up to 6 in/s');
});

const castings = [
  {
    ...EMPTY_ROW,
    pour: 'slow',
    good: 40,
    bad: { ...NO_FAULTS, fold: 1 },
    startAngle: fromDegrees(30),
    remark: HOSTILE,
  },
  {
    ...EMPTY_ROW,
    pour: 'quick',
    good: 20,
    bad: { ...NO_FAULTS, fold: 20 },
    startAngle: fromDegrees(12),
    metalTemperature: fromCelsius(700),
  },
];
const named = (id: string, name: string) => ({ id, name, plan: inventedPlan });
const log = {
  castings,
  counted: 'fold' as const,
  against: 'front speed' as const,
  pours: [named('slow', 'Slow & quiet'), named('quick', 'Quick')],
  predicted: [
    predictedPour({ id: 'slow', name: 'Slow & quiet' }, SLOW),
    predictedPour({ id: 'quick', name: 'Quick' }, QUICK),
  ],
};

test('a castings log has its answer, its rows as written down, and where they were run otherwise', () => {
  const part = castingsPart(log, METRIC);
  expect(textOf(part)).toContain('Scrap goes with the prediction.');
  expect(heads(part, 'Castings poured').slice(0, 6)).toEqual([
    'date',
    'pour',
    'remark',
    'start angle, °',
    'metal, °C',
    'good',
  ]);
  expect(part).toContain('Slow &amp; quiet');
  expect(part).not.toContain('<img');
  expect(part).toContain('&lt;img');
  expect(part.match(/Run otherwise than its pour/g)).toHaveLength(1);
  expect(textOf(part)).toContain('start +12.0° in place of +30.0°');
  expect(textOf(castingsPart(log, INCHES))).toContain('1292');
  expect(textOf(castingsPart({ ...log, castings: [] }, METRIC))).toContain(
    'No castings are written down yet.',
  );
});

test('a castings log without a computed pour is told and not compared', () => {
  const text = textOf(castingsPart({ ...log, predicted: [] }, METRIC));
  expect(text).toContain('Nothing to set side by side yet.');
  expect(text).toContain('81 castings in the log are not counted');
});

const guess: Guessed = {
  question: `Under or over? ${HOSTILE}`,
  ask: 'speed call',
  own: null,
  pours: [{ id: 'quick', name: 'Quick' }],
  drawn: [],
  picked: 'under',
  given: true,
  plan: QUICK.plan,
  records: [QUICK],
};

const SUMMARY = '<summary>Show what the pour did</summary>';
/** What is read before anything is pressed, and after. */
const beforePress = (part: string): string => textOf(part.split(SUMMARY)[0]!);
const behindPress = (part: string): string => textOf(part.split(SUMMARY)[1] ?? '');

test('a guess asks, and tells behind a press what was computed: beside the guess where it was given, else alone', () => {
  const given = guessPart(guess, METRIC);
  expect(behindPress(given)).toContain(
    'You chose “stays under critical speed”; computed is “runs over critical speed”.',
  );
  expect(behindPress(given)).toContain('0.80 m/s');
  const open = guessPart({ ...guess, given: false }, METRIC);
  expect(behindPress(open)).toContain('Computed: “runs over critical speed”.');
  expect(behindPress(open)).not.toContain('chose');
  for (const part of [given, open]) {
    expect(beforePress(part)).toContain('Under or over?');
    expect(beforePress(part)).toContain('stays under critical speed');
    expect(beforePress(part)).toContain('Answer it first, then look.');
    expect(beforePress(part)).not.toMatch(/computed|0\.80|chose|guessed/i);
    expect(part).not.toContain('<img');
  }
  const uncomputed = guessPart({ ...guess, records: [] }, METRIC);
  expect(uncomputed).not.toContain('<details');
  expect(textOf(uncomputed)).toContain('had not been computed when the page was saved');
});

test("the teacher's own question shows the teacher's answer behind a press, in the words it was written in", () => {
  const own = { answers: ['It cools by 10 mm', HOSTILE], right: 0, reason: 'The skin holds 10 mm.' };
  const asked: Guessed = { ...guess, ask: 'own answers', own, picked: 'answer 2', records: [], plan: null };
  const given = guessPart(asked, INCHES);
  const [before, behind] = given.split("<summary>Show the teacher's answer</summary>").map(textOf);
  expect(before).toContain('It cools by 10 mm');
  expect(before).not.toMatch(/skin holds|teacher says|Not as/);
  expect(behind).toContain('Not as the teacher says.');
  expect(behind).toContain("the teacher's answer is “It cools by 10 mm”");
  expect(behind).toContain("The teacher's answer, not computed. The skin holds 10 mm.");
  expect(given).not.toContain('<img');
  const open = textOf(guessPart({ ...asked, given: false, pours: [] }, INCHES));
  expect(open).toContain('The teacher says: “It cools by 10 mm”.');
  expect(behindPress(guessPart(guess, METRIC))).toContain("The model's answer.");
});

test('a drawn guess lies beside the computed curve where it was given; else the computed curve stands alone', () => {
  const drawn: Guessed = { ...guess, ask: 'front speed', drawn: [0.1, 0.2, 0.3, 0.4, 0.5, 0.4, 0.3] };
  const curves = (part: string): number => [...part.matchAll(/class="line look-\d" d="M\d/g)].length;
  const given = guessPart(drawn, METRIC);
  expect(textOf(given)).toContain('You drew a peak of 0.50 m/s; the computed one is 0.80 m/s');
  const open = guessPart({ ...drawn, given: false }, METRIC);
  expect(textOf(open)).not.toContain('You drew');
  expect(behindPress(open)).toMatch(/The computed front speed is highest at .* from the mouth: 0\.80 m\/s\./);
  // Two curves, each once more in the key.
  expect(curves(given)).toBe(4);
  expect(curves(open)).toBe(1);
  for (const part of [given, open]) expect(curves(part.split(SUMMARY)[0]!)).toBe(0);
  expect(textOf(guessPart(drawn, INCHES))).toContain('in/s');
});

const axes: readonly NamedAxis[] = [
  { setting: 'tilt.time', from: 2, to: 10, points: 4, name: 'tilt time', quantity: 'time', setPoint: 9 },
  {
    setting: 'tilt.start',
    from: fromDegrees(0),
    to: fromDegrees(40),
    points: 3,
    name: 'start <angle>',
    quantity: 'angle',
    setPoint: fromDegrees(30),
  },
];

const point = (verdict: 'sound' | 'folds film'): PointResult => ({
  figures: {
    firstFlow: 0.2,
    shareAtStart: 0,
    peakFrontSpeed: verdict === 'sound' ? 0.3 : 0.9,
    criticalSpeed: 0.5,
    shareAboveCritical: 0,
    arrivalTime: 2,
    filledTime: 3,
    fillTime: 2.5,
    finalShare: 1,
    skinFolded: 0,
    foldScore: 0,
    folds: 0,
    cause: null,
    lap: null,
    outcome: 'filled and quiet',
    verdict,
    shortage: null,
    cut: null,
    isFeederJudged: true,
  } as unknown as Extract<PointResult, { figures: unknown }>['figures'],
});

const study = (results: ReadonlyMap<number, PointResult>, of = axes) => ({
  study: { axes: of, figure: 'peakFrontSpeed' as const, meshCells: 50, repeatability: [] },
  plan: inventedPlan,
  axes: of,
  results,
  margins: null,
  tried: null,
  setRegion: 'sound' as const,
  setResult: null,
  spreads: [0, 0],
  pours: [],
  onOwnMesh: '',
  isDone: true,
  isOld: false,
});
/** The left half of every row folds film. */
const whole = new Map(
  Array.from({ length: 12 }, (_, at) => [at, point(at % 4 < 2 ? 'folds film' : 'sound')]),
);

test('a map is told in a sentence and drawn row by row, its hatches named apart from those of other maps', () => {
  const part = studyPart(study(whole), 'p3', METRIC);
  expect(textOf(part)).toContain('The setting is sound.');
  expect(textOf(part)).toContain('12 of 12 points computed on 50 mesh cells.');
  // One rectangle for each row, half the picture wide.
  const hatched = [
    ...part.split('map-across')[0]!.matchAll(/<rect x="0" y="[\d.]+" width="300" [^>]*#p3-folds/g),
  ];
  expect(hatched).toHaveLength(3);
  expect(part).toContain('class="set"');
  expect(part).toContain('start &lt;angle&gt;');
  expect(part).not.toContain('<angle>');
  const counted = regionCounts(mapAnswer(axes, whole)!).map(([, count]) => count);
  expect(counted).toEqual([6, 6]);
  expect(part).toContain('folds film: 6 points');
});

test('each region of a map has a hatch of its own, and the key tells it', () => {
  const fails = (verdict: string): PointResult => {
    const { figures } = point('sound') as Extract<PointResult, { figures: unknown }>;
    return { figures: { ...figures, verdict } as typeof figures };
  };
  const verdicts = ['near the limit', 'gas held', 'not filled', 'spills', 'folds film', 'sound'];
  const results = new Map(Array.from({ length: 12 }, (_, at) => [at, fails(verdicts[at % 6]!)] as const));
  const key = studyPart(study(results), 'p3', METRIC).split('class="key"')[1]!;
  const told = [...key.matchAll(/<li><svg[^>]*>(.*?)<\/svg>(.*?)<\/li>/g)].map(([, sample, words]) => ({
    hatch: /#p3-(\w+)/.exec(sample!)?.[1] ?? 'blank',
    words,
  }));
  const inMap = told.slice(0, 6);
  expect(inMap.map(({ words }) => words)).toEqual([
    'sound',
    'near a limit',
    'folds film',
    'is held up by gas',
    'does not fill',
    'spills metal',
  ]);
  expect(new Set(inMap.map(({ hatch }) => hatch)).size).toBe(6);
});

test('a study that is old, unfinished or not begun says so', () => {
  expect(studyPart({ ...study(whole), isOld: true }, 'p3', METRIC)).toContain('Out of date');
  const few = new Map([...whole].slice(0, 5));
  const text = textOf(studyPart({ ...study(few), isDone: false, setRegion: null }, 'p3', METRIC));
  expect(text).toContain('Not finished');
  expect(text).toContain('5 of the first 12 pours are computed');
  expect(studyPart(study(new Map()), 'p3', METRIC)).toBe(`<p>${NOTHING_POURED}</p>`);
});

test('a curve has its figures as a table, in the units of the book', () => {
  const one = axes.slice(0, 1);
  const four = new Map([...whole].slice(0, 4));
  const part = studyPart(study(four, one), 'p3', METRIC);
  expect(part).toMatch(
    /<th scope="row">2\.0<\/th><td data-column="front speed, peak, m\/s">0\.90<\/td><td data-column="the pour">folds film<\/td><td data-column="feeder">enough<\/td>/,
  );
  expect(part).toContain('critical 0.50 m/s');
  expect(part).not.toContain('So far:');
  expect(studyPart({ ...study(four, one), isDone: false }, 'p3', METRIC)).toContain('So far: from 0.30');
  expect(studyPart(study(four, one), 'p3', INCHES)).toMatch(/<th scope="row">2\.0<\/th><td [^>]*>35<\/td>/);
});

test('a curve has a verdict with its sound range, a mark at each point and the pours of the book', () => {
  const one = axes.slice(0, 1);
  const four = new Map([...whole].slice(0, 4));
  const pour = { name: 'Arm <1>', x: 9, y: 0.31, isVaried: true, meshCells: 400 };
  const part = studyPart(
    { ...study(four, one), pours: [pour], onOwnMesh: ' On its own mesh it laps.' },
    'p3',
    METRIC,
  );
  expect(textOf(part)).toContain(
    'The setting is sound. Tilt time 7.3 s to 10 s is sound. On its own mesh it laps.',
  );
  const field = part.split('class="field"')[1]!.split('class="axis-name"')[0]!;
  expect([...field.matchAll(/class="mark/g)]).toHaveLength(5);
  expect(field).toContain('<b>Arm &lt;1&gt;</b>');
  expect(textOf(part)).toContain(
    '“Arm <1>”, the pour that is varied, on 400 mesh cells'.replace(/[<>]/g, (sign) =>
      sign === '<' ? '&lt;' : '&gt;',
    ),
  );
  for (const words of ['sound', 'folds film']) expect(part).toContain(`</svg>${words}</li>`);
});

test('a map rings the pours whose feeder is short, and tells them in its key and in words', () => {
  const short = (result: PointResult): PointResult =>
    'figures' in result && result.figures.verdict === 'sound'
      ? { figures: { ...result.figures, shortage: 'the feeder is short of metal' } }
      : result;
  const results = new Map([...whole].map(([at, result]) => [at, at < 4 ? short(result) : result]));
  const part = studyPart(study(results), 'p3', METRIC);
  const rings = part.split('map-across')[0]!.match(/class="feeder" d="([^"]*)"/)![1]!;
  expect([...rings.matchAll(/M/g)]).toHaveLength(2);
  const key = part.split('class="key"')[1]!;
  expect(key).toContain('the feeder cannot feed the casting');
  expect(key).toContain('sound, as far as the die fills');
  expect(part).toContain('The feeder is short at 2 of the 6 computed pours that are sound or near a limit.');
  expect(studyPart(study(whole), 'p3', METRIC)).not.toContain('class="feeder"');
});

test('the parts bring neither script nor anything fetched', () => {
  const records: PourRecord[] = [SLOW, QUICK];
  const parts = [
    comparePart(
      records.map((record, at) => ({ name: `${HOSTILE} ${at}`, record })),
      METRIC,
    ),
    castingsPart(log, METRIC),
    guessPart(guess, METRIC),
    studyPart(study(whole), 'p3', METRIC),
  ];
  for (const part of parts) {
    expect(part).not.toMatch(/<script|<img|<link|<iframe|\son\w+="|javascript:|https?:/);
  }
});
