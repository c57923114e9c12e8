import type { Fold, FoldKind, PourRecord } from '$src/core/pour/record';
import { atMost, type Finding, missed, short } from './finding';
import type { MeshPair } from './meshPair';

/** Folds of one kind on two meshes lie this near to each other [m, s]; bars of the project. */
const PLACE = 10e-3;
const TIME = 20e-3;
/** What those are held to that do not, so that they get no worse. */
const MOST_PLACE = 0.06;
const MOST_TIME = 0.2;
/** The same where a pour goes stiff on the way. */
const MOST_STIFF_TIME = 0.7;

export const GOES_STIFF =
  'the pour goes stiff on the way; how it creeps before it stops is no converged figure';
const AROUND_GAS =
  'gas is shut in to the end, and what the metal does around it hangs on which place closes first';
const SLOW_RISE =
  'a tongue begins where the Froude number comes to 1, which it does slowly: by a tenth in some 25 mm of the path';
const STANDING_JUMP = 'a standing jump near its threshold of 0.25 m/s: when it first passes that differs';
const LAST_SLIVER =
  'gas is shut in when the last sliver under the roof of the mouth fills, sooner on a coarse mesh: 0.488 s on 200 cells, 0.518 on 206, 0.532 on 400, 0.542 on 800';
const HALF_IN =
  'its time is when half of the skin is in, and while the wave runs back and forth that half comes late or early by one wave';

/** How far the folds of a kind, of which there are as many on both meshes, lie apart in place and time, in their order. */
export function foldsApart(name: string, kind: FoldKind, pair: MeshPair): Finding[] {
  const [rough, sharp] = [pair.coarse, pair.fine].map(({ folds }) =>
    folds.filter((fold) => fold.kind === kind),
  );
  const most = (read: (fold: Fold) => number): number =>
    Math.max(...rough!.map((fold, k) => withoutRoundOff(Math.abs(read(fold) - read(sharp![k]!)))));
  return [
    placeFinding(
      name,
      kind,
      pair,
      most(({ place }) => place),
    ),
    timeFinding(
      name,
      kind,
      pair,
      most(({ time }) => time),
    ),
  ];
}

/** Of a difference of two figures that stand on a raster. */
const withoutRoundOff = (value: number): number => Math.round(value * 1e9) / 1e9;

function placeFinding(name: string, kind: FoldKind, pair: MeshPair, apart: number): Finding {
  const what = `${name}, apart in place`;
  if (apart <= PLACE) return atMost(what, apart, PLACE, 'm');
  return missed(what, apart, PLACE, MOST_PLACE, 'm', causeOf(kind, pair));
}

function timeFinding(name: string, kind: FoldKind, pair: MeshPair, apart: number): Finding {
  const what = `${name}, apart in time`;
  if (apart <= TIME) return atMost(what, apart, TIME, 's');
  const late = arrivalsApart(pair);
  if (late !== null && Math.abs(apart - late) <= TIME / 2)
    return missed(what, apart, TIME, MOST_TIME, 's', lateAltogether(late, pair));
  const isStiff = pair.fine.figures.lap?.kind === 'misrun';
  return missed(what, apart, TIME, isStiff ? MOST_STIFF_TIME : MOST_TIME, 's', causeOf(kind, pair));
}

/** [s]; null where the front does not arrive on both. */
function arrivalsApart({ coarse, fine }: MeshPair): number | null {
  const [rough, sharp] = [coarse.figures.arrivalTime, fine.figures.arrivalTime];
  return rough === null || sharp === null ? null : Math.abs(rough - sharp);
}

const lateAltogether = (late: number, { fine }: MeshPair): string =>
  `all of the pour is as much apart: its front arrives ${short(late)} s apart, ${short((100 * late) / fine.figures.arrivalTime!)} % of its time, where 3 % is the bar`;

function causeOf(kind: FoldKind, { coarse, fine }: MeshPair): string {
  if (fine.figures.lap?.kind === 'misrun') return GOES_STIFF;
  if (coarse.figures.gasHeld || fine.figures.gasHeld) return AROUND_GAS;
  if (kind === 'tongue') return SLOW_RISE;
  if (kind === 'return wave') return firstTold(coarse, fine);
  if (kind === 'breaking bore') return STANDING_JUMP;
  if (kind === 'skin contraction') return HALF_IN;
  if (kind === 'gas sealed in') return LAST_SLIVER;
  return 'not traced';
}

/** A return wave is told from its first sighting of those that last. */
function firstTold(...records: readonly PourRecord[]): string {
  const places = records.map(({ folds }) => folds.find(({ kind }) => kind === 'return wave')!.place);
  const [rough, sharp] = places.map((place) => `${short(1e3 * place)} mm`);
  return `the wave comes and goes about its limits at first: it is told from ${rough} past the mouth on 200 cells and from ${sharp} on 400`;
}
