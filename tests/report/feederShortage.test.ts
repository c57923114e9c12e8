import { describe, expect, test } from 'vitest';
import { type Feeding, judgeFeeding } from '$src/core/heat/afterFill';
import { restingParts } from '$src/core/heat/restingParts';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { metalNamed } from '$src/core/metal/metals';
import { DEFAULT_TRANSFER, heatPlanOf } from '$src/core/pour/heatPlanOf';
import { cavityVolume } from '$src/core/section/cavity';
import { FIRST_SIZE } from '$src/core/section/firstSize';
import type { Section } from '$src/core/section/section';
import { flushBasin } from '$src/core/section/shapes';
import { fromCubicCentimetres, fromDegrees, fromMillimetres } from '$src/core/units';
import { COAT_CHOICES } from '$src/report/coatChoice';
import { feederShortage, feedingOf, lackWords } from '$src/report/feederShortage';
import { coarsePlanOf } from '../books/planOf';
import { readWindow } from '../books/sources/class/readWindow';
import { inventedPlan, inventedRecord } from './inventedRecord';

const feeding = (timeRatio: number, supply: number, demand: number): Feeding => ({
  timeRatio,
  supply: fromCubicCentimetres(supply),
  demand: fromCubicCentimetres(demand),
  ownDemand: fromCubicCentimetres(15),
  enough: { time: timeRatio >= 1.2, metal: supply >= demand },
});

test('what the feeder lacks comes before what it has enough of', () => {
  expect(lackWords(feeding(1.24, 38, 40.6))).toBe(
    "It lacks 3 cm³ of metal: it can give 38 cm³, die and feeder draw 41 cm³ as they cool and freeze, 15 cm³ of it the feeder itself; it lasts long enough, 1.2 × the die's time, 1.2 wanted",
  );
  expect(lackWords(feeding(1, 45, 40))).toMatch(
    /^It freezes too soon: it lasts 1\.0 × the die's time, 1\.2 wanted; it has metal enough: it can give 45 cm³/,
  );
  expect(lackWords(feeding(1, 38, 40))).toMatch(
    /^It lacks 2 cm³ of metal: .*; and it freezes too soon: it lasts 1\.0 × the die's time, 1\.2 wanted$/,
  );
});

test('what is lacking is seen in its figures', () => {
  expect(lackWords(feeding(1.17, 45, 40))).toContain("1.17 × the die's time, 1.20 wanted");
  expect(lackWords(feeding(1.3, 39.8, 40.2))).toMatch(/^It lacks 0\.4 cm³ of metal: it can give 39\.8 cm³/);
  expect(lackWords(feeding(1.3, 39.99, 40.01))).toMatch(/^It lacks under 0\.1 cm³ of metal/);
});

describe('how long a feeder lasts', () => {
  /** As high as the die it feeds, so that only its coat can make it last longer. */
  const low = flushBasin({ ...FIRST_SIZE, roofHeight: FIRST_SIZE.dieHeight });
  const volume = 2 * cavityVolume(low);
  const withCoat = (section: Section, transfer: number) => {
    const plain = heatPlanOf(metalNamed('A356')!, section)!;
    const [basin, ...die] = plain.regions;
    return { ...plain, regions: [{ ...basin!, transfer }, ...die] };
  };
  const ratio = (section: Section, transfer: number): number =>
    feedingOf(section, withCoat(section, transfer), volume, 0.053)!.timeRatio;

  /** Resistances in series: the gap's is the same over any coat, so what a coat adds counts for less once it is open. */
  test('is judged with the gap open where that makes less of its coat', () => {
    const heat = withCoat(low, 1000);
    const [touching, gapped] = [false, true].map((opensGap) => {
      const { die, feeder } = restingParts(low, heat, volume, opensGap);
      return judgeFeeding(heat.freezing, die, feeder!, 0.053, 0.14).timeRatio;
    });
    expect(gapped!).toBeLessThan(0.85 * touching!);
    expect(ratio(low, 1000)).toBe(gapped);
  });

  test('is raised by what is advised: a higher roof, and a coat that insulates more', () => {
    const here = ratio(low, DEFAULT_TRANSFER);
    const high = flushBasin({ ...FIRST_SIZE, roofHeight: 2 * FIRST_SIZE.dieHeight });
    expect(ratio(high, DEFAULT_TRANSFER)).toBeGreaterThan(1.1 * here);
    expect(ratio(low, 600)).toBeGreaterThan(1.1 * here);
  });
});

describe('how much more to ladle', () => {
  const full = (section: Section, volume: number, start = inventedPlan.tilt.start, spilled = 0) => {
    const heat = heatPlanOf(metalNamed('A356')!, section);
    const tilt = { ...inventedPlan.tilt, start };
    const record = inventedRecord({ plan: { ...inventedPlan, section, heat, volume, tilt }, folds: [] });
    return feederShortage({ ...record, figures: { ...record.figures, spilled } });
  };
  const section = flushBasin(FIRST_SIZE);
  const short = 1.3 * cavityVolume(section);
  const moreIn = (line: string): number =>
    fromCubicCentimetres(Number(/Ladle (\d+) cm³ more/.exec(line)![1]));

  test('is what makes the feeder enough, and a little less does not', () => {
    const { name, line } = full(section, short)!.reason;
    expect(name).toBe('feeder short of metal');
    const more = moreIn(line);
    expect(full(section, short + more)).toBeNull();
    const less = full(section, short + more - fromCubicCentimetres(1.1))!;
    expect(less.inShort).toBe('the feeder is short of metal');
    // Several times what is lacking: that is why the lack alone says too little.
    const lacking = fromCubicCentimetres(Number(/lacks ([\d.]+) cm³/.exec(line)![1]));
    expect(more).toBeGreaterThan(3 * lacking);
  });

  test('is told where nothing stands over the mouth yet, and what has spilled is made up for', () => {
    const bare = full(section, cavityVolume(section))!.reason;
    expect(bare.name).toBe('no feeder');
    expect(full(section, cavityVolume(section) + moreIn(bare.line))).toBeNull();
    const spilled = fromCubicCentimetres(10);
    const more = moreIn(full(section, short)!.reason.line);
    expect(moreIn(full(section, short + spilled, undefined, spilled)!.reason.line)).toBeCloseTo(more, 5);
  });

  test('is no help where the basin cannot hold it, where it would spill, or where no charge is enough', () => {
    const level = full(section, short, fromDegrees(15))!.reason.line;
    const held = basinCapacity(section, fromDegrees(15));
    expect(level).toContain(`at +15.0° the basin holds ${(held * 1e6).toFixed(0)} cm³ of those`);
    expect(level).not.toContain('Ladle');
    const wide = flushBasin({
      ...FIRST_SIZE,
      basinDepth: fromMillimetres(22),
      basinLength: fromMillimetres(300),
    });
    expect(full(wide, short)!.reason.line).toMatch(
      /spills over a rim on the way to −90°: roof more of the basin/,
    );
    const low = flushBasin({ ...FIRST_SIZE, roofReach: fromMillimetres(20) });
    expect(full(low, short)!.reason.line).toContain('No charge gives it enough');
  });
});

describe('a feeder that freezes too soon', () => {
  const plan = coarsePlanOf(readWindow, 'middle');
  const shortageOf = (section: Section) => {
    const heat = heatPlanOf(metalNamed('A356')!, section);
    return feederShortage(inventedRecord({ plan: { ...plan, section, heat }, folds: [] }));
  };
  const { section } = plan;

  test('is told what keeps it liquid longer, and both do', () => {
    const base = shortageOf(section)!;
    expect(base.inShort).toContain('freezes too soon');
    expect(base.reason.line).toContain('A feeder coat there or a higher roof over the mouth');
    const coat = COAT_CHOICES.find(({ name }) => name === 'Feeder coat')!;
    const [basin, ...others] = section.regions;
    const coated = shortageOf({ ...section, regions: [{ ...basin!, transfer: coat.transfer }, ...others] });
    expect(coated?.inShort ?? '').not.toContain('freezes too soon');
    const raised = section.roof.map(({ x, y }) => ({ x, y: x < section.mouth ? Math.max(y, 0.035) : y }));
    const at = raised.findIndex(({ x }) => x > section.mouth);
    const step = [
      { x: section.mouth, y: 0.035 },
      { x: section.mouth, y: 0.012 },
    ];
    const higher = shortageOf({ ...section, roof: raised.toSpliced(at, 0, ...step) });
    expect(higher?.inShort ?? '').not.toMatch(/freezes too soon|no metal/);
  });
});
