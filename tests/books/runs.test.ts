import { describe, expect, it } from 'vitest';
import type { Book, Cell } from '$src/cells/kinds';
import { fillLevelFromVolume, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { heldAtEnd } from '$src/core/level/heldAtEnd';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { cavityVolume } from '$src/core/section/cavity';
import { endOf } from '$src/core/tilt/endOf';
import { motionOf } from '$src/core/tilt/motionOf';
import { fromDegrees, fromMillimetres, toCubicCentimetres, toDegrees, toMillimetres } from '$src/core/units';
import { feederShortage } from '$src/report/feederShortage';
import { momentAt } from '$src/report/moment';
import { numberedFolds } from '$src/report/numberedFolds';
import { variationsOf } from '$src/report/sensitivity';
import { pointResult } from '$src/report/study/pointFigures';
import { resultWords } from '$src/report/study/regionWords';
import { verdict } from '$src/report/verdict';
import { computed } from './computed';
import { feedingAt } from './feedingAt';
import { coarsePlanOf, planOf } from './planOf';
import { basinLengths } from './sources/basinLengths';
import { betterTilt } from './sources/betterTilt';
import { castingsLog } from './sources/castingsLog';
import { fillHeight } from './sources/fillHeight';
import { levelOrUphill } from './sources/levelOrUphill';
import { settingDamper } from './sources/settingDamper';
import { SHELF } from './sources/shelf';
import { FEEDER_SHORT } from './sources/shop';
import { twoTilts } from './sources/twoTilts';

/** The notes of the books make claims; these tests hold the books to them, on the coarse mesh. */

const recordOf = (book: Book, pour: string): PourRecord => computed(coarsePlanOf(book, pour));

const isPour = (cell: Cell) => cell.kind === 'pour';
const everyPour = SHELF.flatMap(({ book }) =>
  book.cells.filter(isPour).map(({ id }) => ({ book, title: book.title, id })),
);

describe.each(everyPour)('$title: $id', ({ book, id }) => {
  it('runs to its end with sound figures', () => {
    const { outcome, figures, health } = recordOf(book, id);
    // Metal that goes stiff on the way may still creep when the time is up.
    const ends = [
      'filled and quiet',
      'quiet, not filled',
      ...(figures.lap?.kind === 'misrun' ? ['out of time'] : []),
    ];
    expect(ends).toContain(outcome.kind);
    for (const value of Object.values(figures))
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    expect(health.volumeDrift).toBeLessThan(1e-12);
    expect(figures.peakFrontSpeed).toBeGreaterThan(0.05);
    // A front that goes stiff on the way never arrives.
    if (figures.lap?.kind !== 'misrun') expect(figures.arrivalTime).not.toBeNull();
  });

  it('tells each fold with the body as it lay then', () => {
    const record = recordOf(book, id);
    for (const { kind, time, inclination } of record.folds) {
      const away = Math.abs(inclination - momentAt(record, time).inclination);
      expect([kind, toDegrees(away) < 0.5]).toEqual([kind, true]);
    }
  });

  it('holds all its metal to the end, more than the arm takes', () => {
    const { section, volume, tilt } = coarsePlanOf(book, id);
    expect(heldAtEnd(section, volume, tilt.start, endOf(tilt)).spilled).toBe(0);
    expect(volume).toBeGreaterThan(1.05 * cavityVolume(section));
    const { lap, spilled } = recordOf(book, id).figures;
    // Metal that goes stiff on the way keeps the rest out, and some of that runs over.
    if (lap?.kind === 'misrun' || spilled < 1e-6 * volume) return;
    // A slow tilt leaves a film in the basin that goes stiff and drops over the rim in the end: a crumb, and only cold.
    expect(spilled).toBeLessThan(1e-4 * volume);
    expect(computed({ ...coarsePlanOf(book, id), heat: null }).figures.spilled).toBeLessThan(1e-6 * volume);
  });
});

/** Level at the start, from the lip [mm]. */
function fromLip(plan: PourPlan): number {
  const level = fillLevelFromVolume(plan.section, plan.tilt.start, plan.volume);
  if (level === null) throw new Error('No fill level.');
  return toMillimetres(level);
}

/** Volume that stands so far above the lip at the start [m³]. */
function volumeAt({ section, tilt }: PourPlan, aboveLip: number): number {
  const volume = volumeFromFillLevel(section, tilt.start, aboveLip);
  if (volume === null) throw new Error('No volume for this fill level.');
  return volume;
}

function firstFlow({ figures }: PourRecord): number {
  if (figures.firstFlow.kind !== 'angle') throw new Error(`First flow is ${figures.firstFlow.kind}.`);
  return figures.firstFlow.inclination;
}

const peak = ({ figures }: PourRecord): number => figures.peakFrontSpeed!;
const critical = ({ plan }: PourRecord): number => plan.liquid.criticalSpeed;

describe('level start against uphill start', () => {
  const flush = recordOf(levelOrUphill, 'uphill-flush');
  const sills = [recordOf(levelOrUphill, 'level-sill'), recordOf(levelOrUphill, 'uphill-sill')];

  it('holds the whole charge behind the mouth of the flush basin, 0 to 10 mm under the brink', () => {
    const level = fromLip(coarsePlanOf(levelOrUphill, 'uphill-flush'));
    expect(level).toBeLessThanOrEqual(0);
    expect(level).toBeGreaterThanOrEqual(-10);
  });

  it('fills the sill to 1 mm under its lip', () => {
    expect(fromLip(coarsePlanOf(levelOrUphill, 'level-sill'))).toBeCloseTo(-1, 6);
  });

  it('pours the same weight and the same arm three times', () => {
    const plans = ['level-sill', 'uphill-flush', 'uphill-sill'].map((id) => coarsePlanOf(levelOrUphill, id));
    for (const { volume, section } of plans) {
      expect(volume / plans[0]!.volume).toBeCloseTo(1, 3);
      expect(cavityVolume(section)).toBeCloseTo(cavityVolume(plans[0]!.section), 12);
    }
  });

  it('lets metal in uphill from the flush basin, downhill over the sill from either start', () => {
    expect(firstFlow(flush)).toBeGreaterThan(0);
    for (const sill of sills) expect(firstFlow(sill)).toBeLessThan(0);
  });

  it('keeps the flush front under critical and not the others, by a wide margin', () => {
    expect(peak(flush)).toBeLessThan(0.9 * critical(flush));
    expect(flush.figures.shareAboveCritical).toBe(0);
    for (const sill of sills) expect(peak(sill)).toBeGreaterThan(1.3 * critical(sill));
  });

  it('bears out what folds of a level start advise: a fuller basin and a slower turn, each lowers the peak', () => {
    const plan = coarsePlanOf(levelOrUphill, 'level-sill');
    const { tilt } = plan;
    if (tilt.kind !== 'steady') throw new Error('The level start is steady.');
    const slower: PourPlan = { ...plan, tilt: { ...tilt, rate: tilt.rate / 3 } };
    const fuller: PourPlan = { ...plan, volume: volumeAt(plan, fromMillimetres(8)) };
    const both: PourPlan = { ...slower, volume: fuller.volume };
    const [slow, full, mended] = [slower, fuller, both].map((each) => peak(computed(each)));
    for (const one of [slow!, full!]) expect(one).toBeLessThan(0.9 * peak(sills[0]!));
    expect(mended).toBeLessThan(0.9 * Math.min(slow!, full!));
  });

  it('turns about as long from level as from uphill', () => {
    const [level, uphill] = ['level-sill', 'uphill-flush'].map(
      (id) => motionOf(coarsePlanOf(levelOrUphill, id).tilt).duration,
    );
    expect(Math.abs(uphill! - level!)).toBeLessThan(0.3);
  });

  it.each([100, 200, 400])(
    'pours from the flush basin what is sound, feeder and all, on %i cells',
    (cells) => {
      const { kind, shortage } = verdict(computed(planOf(levelOrUphill, 'uphill-flush', cells)));
      expect([kind, shortage]).toEqual(['sound', null]);
    },
  );

  it('stays sound with everything that is tried around it', { timeout: 120_000 }, () => {
    const called = variationsOf(planOf(levelOrUphill, 'uphill-flush')).map(({ id, at }) => [
      id,
      'plan' in at ? resultWords(pointResult(computed(at.plan))) : at.refused.reason,
    ]);
    expect(called.length).toBeGreaterThan(12);
    expect(called.filter(([, words]) => words !== 'sound')).toEqual([]);
  });

  it('has the feeder of its note, and with 0.9 kg one that lacks some 3 cm³, near a limit', () => {
    const plan = coarsePlanOf(levelOrUphill, 'uphill-flush');
    const { timeRatio, supply, demand } = feedingAt(plan, 1.2);
    expect(timeRatio).toBeCloseTo(1.7, 1);
    expect([supply, demand].map((volume) => Math.round(toCubicCentimetres(volume)))).toEqual([41, 34]);
    const short = feedingAt(plan, 0.9);
    expect(Math.round(toCubicCentimetres(short.demand - short.supply))).toBe(3);
    const poured = verdict(computed({ ...plan, volume: 0.9 / plan.liquid.density }));
    expect([poured.kind, poured.shortage]).toEqual(['near the limit', 'the feeder is short of metal']);
  });

  it('slowed to 2° a second from level, goes stiff before the arm is full', () => {
    const plan = coarsePlanOf(levelOrUphill, 'level-sill');
    const { tilt } = plan;
    if (tilt.kind !== 'steady') throw new Error('The level start is steady.');
    const slowed = (rate: number) => computed({ ...plan, tilt: { ...tilt, rate: fromDegrees(rate) } });
    expect(peak(slowed(5))).toBeLessThan(peak(sills[0]!));
    expect(peak(slowed(5))).toBeGreaterThan(critical(sills[0]!));
    expect(slowed(2).figures.lap?.kind).toBe('misrun');
  });

  it('tells no fold of the machine that starts level to start uphill', () => {
    const [level, uphill] = sills.map((sill) => numberedFolds(sill).map(({ cure }) => cure));
    expect(level!.join(' ')).toMatch(/starts level at most/);
    expect(level!.join(' ')).not.toMatch(/uphill|higher start/);
    expect(uphill!.join(' ')).toMatch(/uphill/);
  });

  it.each([
    [
      'without any stand',
      (plan: PourPlan) => ({ ...plan, computation: { ...plan.computation, capillaryGate: false } }),
    ],
    [
      'with metal that does not wet',
      (plan: PourPlan) => ({ ...plan, liquid: { ...plan.liquid, contactAngle: Math.PI } }),
    ],
  ])('starts uphill from the flush basin and downhill over the sill %s, too', (_, assume) => {
    const flows = ['uphill-flush', 'level-sill', 'uphill-sill'].map((id) =>
      firstFlow(computed(assume(coarsePlanOf(levelOrUphill, id)))),
    );
    expect(flows.map(Math.sign)).toEqual([1, -1, -1]);
  });
});

describe('fill height and front speed', () => {
  const fills = [1, 6, 12, 18].map((below) => recordOf(fillHeight, `pour-${below}`));

  it('lets the metal in later the lower the fill', () => {
    for (let i = 1; i < fills.length; i++)
      expect(firstFlow(fills[i]!)).toBeLessThan(firstFlow(fills[i - 1]!));
  });

  it('crosses the critical speed between the second and the last', () => {
    expect(peak(fills[0]!)).toBeLessThan(critical(fills[0]!));
    expect(peak(fills[1]!)).toBeLessThan(critical(fills[1]!));
    expect(peak(fills[3]!)).toBeGreaterThan(critical(fills[3]!));
    expect(peak(fills[3]!)).toBeGreaterThan(peak(fills[2]!));
  });

  it('keeps that order without any capillary stand, where even the last stays about critical', () => {
    const bare = [1, 6, 12, 18].map((below) => {
      const plan = coarsePlanOf(fillHeight, `pour-${below}`);
      return computed({ ...plan, computation: { ...plan.computation, capillaryGate: false } });
    });
    for (let i = 1; i < bare.length; i++) expect(firstFlow(bare[i]!)).toBeLessThan(firstFlow(bare[i - 1]!));
    expect(peak(bare[3]!)).toBeGreaterThan(peak(bare[0]!));
    expect(peak(bare[3]!)).toBeLessThan(1.15 * critical(bare[3]!));
  });

  it('fills the arm each time', () => {
    for (const fill of fills) expect(fill.outcome.kind).toBe('filled and quiet');
  });
});

describe('the feeder of the books about the front', () => {
  const shortage = (book: Book, pour: string) => feederShortage(recordOf(book, pour))?.inShort ?? null;

  const filledOf = (book: Book) => {
    const filled = book.cells
      .filter(isPour)
      .filter(({ id }) => recordOf(book, id).figures.filledTime !== null);
    expect(filled.length).toBeGreaterThan(0);
    return filled;
  };

  it('is short wherever the arm fills, in the books that say so', () => {
    for (const book of [basinLengths, castingsLog]) {
      const texts = book.cells.map((cell) => (cell.kind === 'note' ? cell.text : ''));
      expect(texts.join(' ')).toContain(FEEDER_SHORT);
      for (const { id } of filledOf(book)) expect(shortage(book, id), id).toContain('short of metal');
    }
  });

  it('is enough wherever the arm fills, behind the wide basin of the damper and of the better tilt', () => {
    for (const book of [settingDamper, betterTilt])
      for (const { id } of filledOf(book)) expect(shortage(book, id), id).toBeNull();
  });

  it('is enough with the fullest of four ladles only', () => {
    expect([1, 6, 12, 18].map((below) => shortage(fillHeight, `pour-${below}`) === null)).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('two tilt profiles', () => {
  const [quick, slow] = [recordOf(twoTilts, 'pour-quick'), recordOf(twoTilts, 'pour-staged')];

  it('folds with the quick one and not with the staged one', () => {
    expect(peak(quick)).toBeGreaterThan(1.2 * critical(quick));
    expect(peak(slow)).toBeLessThan(0.7 * critical(slow));
  });

  it('starts from the brink', () => {
    const level = fromLip(coarsePlanOf(twoTilts, 'pour-staged'));
    expect(level).toBeLessThanOrEqual(0);
    expect(level).toBeGreaterThanOrEqual(-10);
  });

  it('shuts gas in with the quick one, and spills none of what that keeps out', () => {
    const { outcome, figures, folds } = recordOf(twoTilts, 'pour-quick');
    expect(outcome.kind).toBe('quiet, not filled');
    expect(figures.spilled).toBeLessThan(1e-9);
    expect(folds.map(({ kind }) => kind)).toContain('gas sealed in');
  });

  it.each([100, 200, 400])('calls the staged one sound, feeder and all, on %i cells', (cells) => {
    const { kind, shortage } = verdict(computed(planOf(twoTilts, 'pour-staged', cells)));
    expect([kind, shortage]).toEqual(['sound', null]);
  });

  it('fills the arm with the staged one', () => {
    expect(slow.outcome.kind).toBe('filled and quiet');
  });
});
