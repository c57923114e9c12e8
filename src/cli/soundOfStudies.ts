import { availableParallelism } from 'node:os';
import type { Book, CellId } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { beyondMachine, marginsOf } from '$src/report/study/margins';
import type { SettingValues } from '$src/report/study/planAt';
import { pointAt } from '$src/report/study/pointAt';
import { pointResult } from '$src/report/study/pointFigures';
import { type Region, regionOf } from '$src/report/study/region';
import { spreadsOf } from '$src/report/study/repeatSpread';
import { type FoundByStudy, type SoundFinding, soundFinding } from '$src/report/study/soundFinding';
import { type ChosenStudy, readyStudy } from './chooseStudy';
import { openSeat, type Seat } from './seat';

/** A study of which the lines through the setting were poured, and how many pours that took. */
export interface LookedAt {
  readonly name: string;
  readonly pours: number;
}

export interface SoundOfStudies {
  readonly studies: readonly LookedAt[];
  readonly sound: SoundFinding;
}

/**
 * How far the settings of a pour may stray, by the studies of the book that vary them: as on the page, by
 * pours on the lines through the setting. The rest of such a study is not poured.
 */
export async function soundOfStudies(book: Book, pour: CellId): Promise<SoundOfStudies> {
  const cells = book.cells.flatMap((cell) => (cell.kind === 'study' && cell.pour === pour ? [cell] : []));
  const studies = cells.flatMap((cell) => readyStudy(book, cell) ?? []).filter(isSet);
  const found: FoundByStudy[] = [];
  const looked: LookedAt[] = [];
  const pool = studies.length > 0 ? openPool() : null;
  try {
    for (const study of studies) {
      const before = pool!.poured();
      found.push(await foundBy(study, pool!.regionOf));
      looked.push({ name: study.head.cell, pours: pool!.poured() - before });
    }
  } finally {
    await pool?.close();
  }
  return { studies: looked, sound: soundFinding(cells.length, found) };
}

/** The pour has a value of all that the study varies. */
const isSet = ({ head: { axes } }: ChosenStudy): boolean => axes.every(({ setPoint }) => setPoint !== null);

async function foundBy(
  { head: { axes }, plan, study }: ChosenStudy,
  regionOfPlan: (plan: PourPlan) => Promise<Region>,
): Promise<FoundByStudy> {
  const at = axes.map(({ setPoint }) => setPoint!);
  const regionAt = async (values: SettingValues): Promise<Region> => {
    const next = pointAt(plan, values);
    return 'refused' in next ? regionOf(next) : regionOfPlan(next.plan);
  };
  const setRegion = await regionAt(
    Object.fromEntries(axes.map(({ setting }, index) => [setting, at[index]!])),
  );
  const isBeyondMachine = beyondMachine(plan);
  const margins = setRegion === 'sound' ? await marginsOf({ axes, at, regionAt, isBeyondMachine }) : null;
  return { axes, margins, setRegion, spreads: spreadsOf(study, plan) };
}

/** Computes regions on all cores, each pour once. */
function openPool() {
  const known = new Map<string, Promise<Region>>();
  const free: Seat[] = Array.from({ length: availableParallelism() }, openSeat);
  const all = [...free];
  const waiting: ((seat: Seat) => void)[] = [];
  const take = (): Promise<Seat> => {
    const seat = free.pop();
    return seat ? Promise.resolve(seat) : new Promise((resolve) => waiting.push(resolve));
  };
  const giveBack = (seat: Seat): void => {
    const next = waiting.shift();
    if (next) next(seat);
    else free.push(seat);
  };
  const compute = async (plan: PourPlan): Promise<Region> => {
    const seat = await take();
    const result = seat.run(plan).then(pointResult, (error: unknown) => ({ failed: String(error) }));
    try {
      return regionOf(await Promise.race([result, seat.death]));
    } finally {
      giveBack(seat);
    }
  };
  return {
    poured: (): number => known.size,
    regionOf: (plan: PourPlan): Promise<Region> => {
      const hash = planHash(plan);
      const region = known.get(hash) ?? compute(plan);
      known.set(hash, region);
      return region;
    },
    close: (): Promise<unknown> => Promise.all(all.map((seat) => seat.close())),
  };
}
