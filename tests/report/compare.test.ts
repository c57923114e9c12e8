import { describe, expect, it } from 'vitest';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import type { PourPlan } from '$src/core/pour/plan';
import { cavityVolume } from '$src/core/section/cavity';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees, METRIC } from '$src/core/units';
import { startLevelOf } from '$src/report/card/fillMark';
import { type Compared, compare } from '$src/report/compare';
import { inputWords } from '$src/report/inputWords';
import { plainText } from '$src/report/sentence';
import { fromLipWords } from '$src/report/startLevelWords';
import { inventedFigures, inventedPlan, inventedRecord } from './inventedRecord';

const slow = { name: 'Uphill start', record: inventedRecord() };
const quickFigures = { ...inventedFigures, peakFrontSpeed: 0.81, fillTime: 5, skinFolded: 0.854 };

const steadyTilt: PourPlan['tilt'] = {
  kind: 'steady',
  start: 0,
  end: fromDegrees(-90),
  rate: fromDegrees(15),
  smoothing: 0.15,
  limits: inventedPlan.tilt.limits,
};
const quick = {
  name: 'Level start',
  record: inventedRecord({
    plan: { ...inventedPlan, tilt: steadyTilt },
    figures: quickFigures,
    band: null,
    folds: Array.from({ length: 5 }, () => inventedRecord().folds[0]!),
  }),
};

describe('compare', () => {
  it('tells an end to a tenth of a degree', () => {
    const end = (degrees: number) => ({
      name: `${degrees}`,
      record: inventedRecord({
        plan: { ...inventedPlan, tilt: { ...steadyTilt, end: fromDegrees(degrees) } },
      }),
    });
    const { differs } = compare([end(-90), end(-89.9), end(-90), end(-90.1)]);
    expect(differs).toEqual([{ name: 'end angle', texts: ['−90°', '−89.9°', '−90°', '−90.1°'] }]);
  });

  it('puts what differs in words, and nothing that does not', () => {
    const { differs, same, reasons } = compare([quick, slow]);
    expect(differs).toEqual([
      { name: 'start angle', texts: ['0°, level', '+30°, uphill'] },
      { name: 'tilt', texts: ['steady 15 °/s, 6.15 s', '8 °/s to −6°, then 18 °/s, 9.32 s in all'] },
    ]);
    expect(same).toBe(
      "Same in all: section, end angle, smoothing of the tilt, machine's limits, charge, metal, heat and computation.",
    );
    expect(reasons[0]!.name).toBe('two things differ');
  });

  it('tells a charge by its mass and by where it stands in the basin', () => {
    const less = {
      ...quick,
      name: 'Less',
      record: { ...quick.record, plan: { ...quick.record.plan, volume: 0.8 * quick.record.plan.volume } },
    };
    const { differs } = compare([quick, less]);
    expect(differs.map(({ name }) => name)).toEqual(['charge']);
    for (const text of differs[0]!.texts)
      expect(text).toMatch(/^0\.\d+ kg \([\d.]+ mm (below|above) the lip\)$/);
  });

  it('tells the level as its skin holds it, as the card does', () => {
    const [text] = [inputWords(inventedPlan).find(({ name }) => name === 'charge')!.text];
    const held = startLevelOf(inventedPlan).held!;
    expect(text).toContain(`(${fromLipWords(held, METRIC)})`);
    expect(fromLipWords(held, METRIC)).not.toBe(fromLipWords(startLevelOf(inventedPlan).dead!, METRIC));
  });

  it('names the pours, their fronts and their folds', () => {
    expect(plainText(compare([quick, slow]).sentence)).toBe(
      'Level start folds film; Uphill start is sound. Uphill start runs at up to 0.15 m/s, under critical; Level start at 0.81 m/s, over critical. One fold against five.',
    );
  });

  const at = (name: string, peakFrontSpeed: number | null, folds: number) => ({
    name,
    record: inventedRecord({
      figures: { ...inventedFigures, peakFrontSpeed },
      band: null,
      folds: Array.from({ length: folds }, () => inventedRecord().folds[0]!),
    }),
  });

  it('tells every one of three and four pours, with its front and its folds', () => {
    expect(plainText(compare([at('B', 0.3, 3), at('C', 0.81, 5), at('A', 0.15, 0)]).sentence)).toBe(
      'B is sound; C folds film; A is sound. A runs at up to 0.15 m/s, under critical, with no folds; B at 0.30 m/s, under critical, with three; C at 0.81 m/s, over critical, with five.',
    );
    const four = plainText(
      compare([at('B', 0.3, 3), at('C', 0.81, 5), at('A', 0.15, 1), at('D', 0.9, 2)]).sentence,
    );
    expect(four).toMatch(/ A runs .* with one fold; B .* with three; C .* with five; D .* with two\.$/);
  });

  it('tells of more than four the two at the ends and what lies between', () => {
    const pours = [0.15, 0.2, 0.3, 0.4, 0.81].map((speed, folds) => at(`P${folds}`, speed, folds));
    expect(plainText(compare(pours).sentence)).toMatch(
      /^P0 runs .* with no folds; P4 at 0\.81 m\/s, over critical, with four\. The other three lie between them, with one to three folds\.$/,
    );
  });

  it('counts no folds in words wherever they stand', () => {
    expect(plainText(compare([at('A', 0.15, 2), at('B', 0.81, 0)]).sentence)).toMatch(
      /Two folds against none\.$/,
    );
  });

  it('leads with the verdicts where they differ, and not where they are alike', () => {
    const sentence = (...pours: readonly ReturnType<typeof at>[]) => plainText(compare(pours).sentence);
    expect(sentence(at('A', 0.15, 0), at('B', 0.81, 0))).toMatch(/^A is sound; B folds film\. A runs/);
    expect(sentence(at('A', 0.15, 0), at('B', 0.3, 0))).toMatch(/^A runs/);
  });

  it('calls no pour sound whose feeder is short, as its own verdict does', () => {
    const { section } = inventedPlan;
    const heat = heatPlanOf(metalNamed('A356')!, section)!;
    const plan = { ...inventedPlan, heat, volume: 1.1 * cavityVolume(section) };
    const short = { name: 'Short', record: inventedRecord({ plan, folds: [] }) };
    const { sentence, verdicts } = compare([short, at('A', 0.3, 0)]);
    expect(verdicts[0]).toMatch(/^Fills quietly; the feeder is short of metal/);
    expect(plainText(sentence)).toMatch(
      /^Short fills quietly, but the feeder is short of metal[^;]*; A is sound\. /,
    );
  });

  it('gives peaks that would read the same in the units of the page a digit more', () => {
    const pours = [at('A', 0.272, 0), at('B', 0.295, 0)];
    const inches = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    // 10.7 and 11.6 in/s.
    expect(plainText(compare(pours, inches).sentence)).toMatch(
      /^A runs at up to 0\.272 m\/s, .* B at 0\.295 m\/s/,
    );
    expect(plainText(compare(pours).sentence)).toMatch(
      /^A runs at up to 0\.27 m\/s, .* B at 0\.(29|30) m\/s/,
    );
  });

  it('tells peaks that read the same by how far they lie apart', () => {
    expect(plainText(compare([at('A', 0.281, 0), at('B', 0.282, 0)]).sentence)).toBe(
      'Front speeds are too close to call. They peak at up to 0.282 m/s, less than 1 % apart.',
    );
  });

  it('holds pours of different metals to the limit of each', () => {
    const withLimit = (pour: Compared, criticalSpeed: number): Compared => {
      const { plan } = pour.record;
      return {
        ...pour,
        record: { ...pour.record, plan: { ...plan, liquid: { ...plan.liquid, criticalSpeed } } },
      };
    };
    const light = withLimit(at('Light', 0.32, 1), 0.5);
    const heavy = withLimit(at('Heavy', 0.31, 4), 0.4);
    expect(plainText(compare([light, heavy]).sentence)).toMatch(
      /Light runs at up to 0\.32 m\/s, 64 % of its limit; Heavy at 0\.31 m\/s, 7[78] % of its limit\./,
    );
    const same = withLimit(at('Other', 0.256, 1), 0.4);
    expect(plainText(compare([light, same]).sentence)).toMatch(
      /Front speeds are too close to call\. They peak at up to 64 % of their limits, less than 1 % apart\./,
    );
  });

  it('leaves no pour out in which no metal runs', () => {
    expect(plainText(compare([at('A', 0.15, 1), at('B', 0.3, 2), at('Still', null, 0)]).sentence)).toMatch(
      /In Still no metal runs in the die\.$/,
    );
  });

  it('lets its speeds be turned into other units, and no name', () => {
    const { sentence } = compare([quick, { ...slow, name: 'Wall of 5 mm' }]);
    const marked = (name: boolean) =>
      sentence.filter((words) => words.bold && (words.isName ?? false) === name);
    expect(marked(true).map(({ text }) => text)).toEqual([
      'Level start',
      'Wall of 5 mm',
      'Wall of 5 mm',
      'Level start',
    ]);
    expect(marked(false).map(({ text }) => text)).toEqual(['0.15 m/s', '0.81 m/s']);
  });

  it('credits what differs where each pour differs from the first by one thing', () => {
    const changed = (name: string, change: Partial<PourPlan>) => ({
      name,
      record: inventedRecord({ plan: { ...inventedPlan, ...change } }),
    });
    const base = changed('As now', { tilt: steadyTilt });
    const slower = changed('Slower', { tilt: { ...steadyTilt, rate: fromDegrees(10.3) } });
    const fuller = changed('Fuller', { tilt: steadyTilt, volume: 1.1 * inventedPlan.volume });
    const [reason] = compare([base, slower, fuller]).reasons;
    expect(reason).toEqual({
      name: 'one thing at a time',
      line: 'Against “As now” each differs by one thing at most: “Slower” by the tilt and “Fuller” by the charge.',
    });
    expect(compare([base, slower, fuller]).differs[0]!.texts).toEqual([
      'steady 15 °/s, 6.15 s',
      'steady 10.3 °/s, 8.89 s',
      'steady 15 °/s, 6.15 s',
    ]);
    const both = changed('Both', {
      tilt: { ...steadyTilt, rate: fromDegrees(10.3) },
      volume: 1.1 * inventedPlan.volume,
    });
    expect(compare([base, both]).reasons[0]!.name).toBe('two things differ');
  });

  it('sets figures beside each other by what they are, also where one pour has heat and the other none', () => {
    const lap = { kind: 'none', margin: 1.5 } as const;
    const warm = { name: 'Warm', record: inventedRecord({ figures: { ...inventedFigures, lap } }) };
    const cold = { name: 'No heat', record: inventedRecord({ figures: { ...inventedFigures, lap: null } }) };
    for (const pours of [
      [warm, cold],
      [cold, warm],
    ])
      for (const { key, figures } of compare(pours).figures)
        expect(figures.map((figure) => figure.key)).toEqual([key, key]);
  });

  it('claims no difference inside the mesh spread', () => {
    const near = {
      ...slow,
      name: 'Again',
      record: inventedRecord({ figures: { ...inventedFigures, peakFrontSpeed: 0.16 } }),
    };
    const { sentence, figures } = compare([slow, near]);
    expect(plainText(sentence)).toMatch(
      /^Front speeds are too close to call\. They peak at up to 0\.1\d m\/s, \d+ % apart\./,
    );
    const peak = figures.find(({ key }) => key === 'peak_front_speed_m_per_s')!;
    expect(peak.differences).toEqual(['', 'too close to call']);
  });

  it('says differences from the first pour in words', () => {
    const by = new Map(compare([quick, slow]).figures.map((figure) => [figure.key, figure.differences[1]]));
    expect(by.get('peak_front_speed_m_per_s')).toBe('19 % as fast');
    expect(by.get('fill_time_s')).toBe('1.50 s longer');
    expect(by.get('skin_folded_mm')).toBe('7 % as much');
    const back = new Map(compare([slow, quick]).figures.map((figure) => [figure.key, figure.differences[1]]));
    expect(back.get('skin_folded_mm')).toBe('15 times as much');
    expect(by.get('folds_slight')).toBe('4 fewer');
    expect(by.get('first_flow_deg')).toBe('the same');
  });

  describe('pours in dies of two lengths', () => {
    const LONGER = 0.02;
    const { section } = inventedPlan;
    const end = section.floor.at(-1)!.x;
    const step = { name: 'boss', end: end - 0.04, width: 0.02 };
    const [basin, arm] = section.regions;
    const vent = { place: end - 0.01, area: 1e-5, blocked: 0 };
    const short = { ...section, regions: [basin!, step, arm!], vents: [vent] };
    const longer = <P extends { readonly x: number }>(line: readonly P[]): P[] =>
      line.map((point) => (point.x === end ? { ...point, x: end + LONGER } : point));
    const long = {
      ...short,
      floor: longer(section.floor),
      roof: longer(section.roof),
      regions: [basin!, { ...step, end: step.end + LONGER }, { ...arm!, end: end + LONGER }],
      vents: [{ ...vent, place: vent.place + LONGER }],
    };
    const against = (other: typeof short) =>
      compare(
        [short, other].map((one, index) => ({
          name: `${index}`,
          record: inventedRecord({ plan: { ...inventedPlan, section: one } }),
        })),
      );
    const named = (other: typeof short): string[] => against(other).differs.map(({ name }) => name);

    it('differ by the length alone where widths and vents keep their distance to the die end', () => {
      expect(named(long)).toEqual(['die, length × height']);
      expect(against(long).reasons[0]!.name).toBe('one thing differs');
      expect(against(long).same).toContain('vents from the die end');
    });

    it('differ by widths or vents besides where these are others', () => {
      const wide = { ...long, regions: [basin!, long.regions[1]!, { ...long.regions[2]!, width: 0.05 }] };
      expect(named(wide)).toEqual(['die, length × height', 'widths']);
      const moved = { ...long, vents: [{ ...vent, place: vent.place + LONGER / 2 }] };
      expect(named(moved)).toEqual(['die, length × height', 'vents']);
      const stepped = { ...short, regions: [basin!, { ...step, end: step.end - 0.01 }, arm!] };
      expect(named(stepped)).toEqual(['widths']);
      // Where the step stands in a die that is no longer, as far from the mouth, nothing of its own differs either.
      expect(named({ ...long, regions: [basin!, step, long.regions[2]!] })).toEqual(['die, length × height']);
    });
  });

  it('says that an outline differs where its words are alike', () => {
    const floor = [
      { x: 0, y: 0 },
      { x: 0.2, y: 0 },
      { x: 0.25, y: 0.001 },
      { x: 0.355, y: 0 },
    ];
    const other = inventedRecord({ plan: { ...inventedPlan, section: { ...inventedPlan.section, floor } } });
    const { differs } = compare([slow, { name: 'Hump', record: other }]);
    expect(differs.map(({ name }) => name)).toEqual(['die, length × height']);
    expect(new Set(differs[0]!.texts).size).toBe(2);
  });

  it('says who does not fill', () => {
    const short = {
      name: 'Cold',
      record: inventedRecord({ figures: { ...inventedFigures, filledTime: null, peakFrontSpeed: 0.3 } }),
    };
    const said = plainText(compare([slow, short]).sentence);
    expect(said).toMatch(/^Uphill start is sound; Cold does not fill\. /);
    // Once is enough.
    expect(said.match(/fill/g)).toHaveLength(1);
    expect(plainText(compare([short, { ...short, name: 'Colder' }]).sentence)).toMatch(/ Neither fills\.$/);
    // Of more than can be named with their verdicts, those that do not fill are named by themselves.
    const many = [slow, slow, slow, short, { ...short, name: 'Colder' }];
    expect(plainText(compare(many).sentence)).toMatch(/Cold and Colder do not fill\.$/);
  });
});

describe("the machine's limits", () => {
  const wide = { ...inventedPlan.tilt.limits, quickest: fromDegrees(90) };
  const led: Tilt = {
    kind: 'front-led',
    start: 0.5,
    end: -1.5,
    share: 0.6,
    homeWithin: null,
    limits: inventedPlan.tilt.limits,
  };
  const reasonOf = (...plans: readonly Partial<PourPlan>[]) =>
    compare(
      plans.map((change, k) => ({
        name: `pour ${k}`,
        record: inventedRecord({ plan: { ...inventedPlan, ...change } }),
      })),
    ).reasons[0]!;
  const { volume } = inventedPlan;

  it('decide nothing where the tilt is given, and are told beside what does', () => {
    const alone = reasonOf({ tilt: steadyTilt }, { tilt: { ...steadyTilt, limits: wide } });
    expect(alone.name).toBe('nothing differs that decides a pour');
    const beside = reasonOf(
      { tilt: steadyTilt },
      { tilt: { ...steadyTilt, limits: wide }, volume: 1.1 * volume },
    );
    expect(beside).toEqual({
      name: 'one thing differs',
      line: "Only the charge: what changes, changes by it. Beside it, and deciding no figure: machine's limits.",
    });
  });

  it('decide a front-led tilt, which is worked out within them', () => {
    const { name, line } = reasonOf({ tilt: led }, { tilt: { ...led, limits: wide } });
    expect(name).toBe('one thing differs');
    expect(line).toContain("machine's limits");
  });
});

describe('pours whose tilts are of different kinds', () => {
  const { limits } = inventedPlan.tilt;
  const knots = [
    { time: 0, inclination: 0.5 },
    { time: 8, inclination: -1.5 },
  ];
  const drawn: Tilt = { kind: 'drawn', start: 0.5, limits, knots, origin: 'drawn here' };
  const led: Tilt = {
    kind: 'front-led',
    start: 0.5,
    end: -1.5,
    share: 0.6,
    homeWithin: null,
    limits,
  };
  const pourWith = (name: string, tilt: Tilt) => ({
    name,
    record: inventedRecord({ plan: { ...inventedPlan, tilt } }),
  });

  it.each([
    [[inventedPlan.tilt, drawn]],
    [[led, inventedPlan.tilt]],
    [[drawn, led, inventedPlan.tilt]],
  ] as const)('are compared input by input, in any order: %#', (tilts) => {
    const { differs, same } = compare(tilts.map((tilt, k) => pourWith(`pour ${k}`, tilt)));
    expect(differs.length).toBeGreaterThan(0);
    for (const { texts } of differs) expect(texts).toHaveLength(tilts.length);
    expect(differs.map(({ name }) => name)).not.toContain('charge');
    for (const group of ['section', 'charge', 'metal', 'computation']) expect(same).toContain(group);
    expect(differs.some(({ texts }) => texts.includes('–'))).toBe(true);
  });

  const measured = (smoothedOver: number, end: number): Tilt => ({
    kind: 'measured',
    start: fromDegrees(30),
    limits,
    knots: [{ time: 5.8, inclination: fromDegrees(end) }],
    origin: 'dry-run.csv',
    readings: { smoothedOver, scatter: 0.01, before: 3, after: 3 },
  });
  const staged = (end: number): Tilt => ({
    kind: 'staged',
    start: fromDegrees(30),
    limits,
    smoothing: 0.2,
    stages: [{ to: fromDegrees(end), rate: fromDegrees(20) }],
  });

  it('differ by one thing, the tilt, with its parts told', () => {
    const { differs, reasons } = compare([
      pourWith('Measured', measured(2.5, -89.83)),
      pourWith('In stages', staged(-89.8)),
    ]);
    expect(reasons[0]!.name).toBe('one thing differs');
    expect(reasons[0]!.line).toMatch(
      /^Only the tilt: .* Its parts, how it turns and smoothing, are one choice: none can be credited alone\. Beside it, and deciding no figure: origin of the tilt\.$/,
    );
    const by = new Map(differs.map(({ name, texts }) => [name, texts]));
    expect(by.get('smoothing of the tilt')).toEqual(['readings, over 2.5 s', '0.20 s']);
    // Both read −89.8°.
    expect(by.has('end angle')).toBe(false);
  });

  it('differ by two things where they also start elsewhere, or hold another charge', () => {
    const steeper = { ...staged(-90), start: fromDegrees(20) };
    const two = compare([pourWith('A', measured(0.2, -90)), pourWith('B', steeper)]).reasons[0]!;
    expect(two).toEqual({
      name: 'two things differ',
      line: expect.stringMatching(/^start angle and tilt: no one of them can be credited alone\./),
    });
    const fuller = pourWith('B', staged(-80));
    const plan = { ...fuller.record.plan, volume: 1.1 * inventedPlan.volume };
    const { reasons } = compare([
      pourWith('A', measured(0.2, -90)),
      { ...fuller, record: { ...fuller.record, plan } },
    ]);
    expect(reasons[0]!.line).toMatch(/^tilt and charge: /);
  });

  it('are named by the one part in which each differs from the first', () => {
    const pace = { ...staged(-90), stages: [{ to: fromDegrees(-90), rate: fromDegrees(12) }] } as Tilt;
    const [reason] = compare([
      pourWith('First', staged(-90)),
      pourWith('Short', { ...staged(-90), smoothing: 0.1 } as Tilt),
      pourWith('Slow', pace),
    ]).reasons;
    expect(reason!.line).toContain('“Short” by the smoothing of the tilt and “Slow” by the tilt.');
  });

  it('are not called the same inputs where an end differs by less than is told', () => {
    const led = (end: number): Tilt => ({
      kind: 'front-led',
      start: 0.5,
      end: fromDegrees(end),
      share: 0.6,
      homeWithin: null,
      limits,
    });
    const pours = [pourWith('A', led(-90)), pourWith('B', led(-90.03))];
    const { differs, reasons, same } = compare(pours);
    expect(differs).toEqual([]);
    expect(same).toContain('tilt');
    expect(reasons[0]!.name).toBe('nothing differs by a tenth of a degree');
    expect(reasons[0]!.line).toContain('end angle');
    const fuller = inventedRecord({ plan: { ...pours[1]!.record.plan, volume: 1.1 * inventedPlan.volume } });
    expect(compare([pours[0]!, { name: 'B', record: fuller }]).reasons[0]).toEqual({
      name: 'one thing differs',
      line: 'Only the charge: what changes, changes by it. Beside it, by less than a tenth of a degree: end angle.',
    });
  });
});
