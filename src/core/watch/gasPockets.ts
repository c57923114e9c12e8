import { HOT_GAS_DENSITY, VENT_COEFFICIENT } from '$src/core/flow/gas';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Fold } from '$src/core/pour/record';
import { isClear, STRICTER } from './clear';
import { trackEpisodes } from './episode';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import { joined, stretchesWhere } from './stretches';
import type { Watcher } from './watcher';

/** Full enough to shut the section, and the smallest pocket that counts [m²]. */
const SHUT = 0.995;
const LEAST_POCKET = 30e-6;
/** Metal shorter than this between two pockets at rest parts them into no two places to vent [m]. Ours. */
const PART_LENGTH = 20e-3;
/**
 * Pressures are the median of 30 looks (60 ms), and a pocket is one when it is there in 24 of them. Shorter, it does
 * not move the metal: 1 kPa on 0.2 m of it changes its speed by 0.12 m/s in that time. Ours.
 */
const LOOKS = 30;
const SEEN = 24;
const ONE_POCKET = 0.2;
/** Back pressure that a vent is sized for in the advice [Pa]: about 4 mm of aluminium. */
const STATED_PRESSURE = 100;
/**
 * Gas that presses less than a vent is sized for has vent enough: a fold only where it presses more, or has no open vent
 * [Pa]. Ours. From 20 to 60 Pa pockets of some 60 ms come and go from mesh to mesh before a full-height front.
 */
const LEAST_PRESSURE = STATED_PRESSURE;
/** Pressures from which a sealed pocket is marked, heavy [Pa]: about 10 and 40 mm of aluminium. Ours. */
const MARKED = 250;
const HEAVY = 1000;

/**
 * Gas that metal has shut in: while the cavity fills (needs vents), and what is left under the roof at the end. Its
 * pressure is the median of 30 looks: a mesh cell that fills beside a small pocket makes single looks jump.
 */
export function watchGas(mesh: Mesh, density: number, gravity: number): Watcher {
  const pockets = (seen: number) =>
    trackEpisodes({ looks: LOOKS, seen, within: Number.POSITIVE_INFINITY, gap: ONE_POCKET });
  const sealed = pockets(SEEN);
  const strict = pockets(LOOKS);
  /** What metal had displaced of shut gas at the last looks [m³]. */
  const displaced = new Float64Array(LOOKS);
  let quickest = 0;
  let heldAtEnd = false;
  const pressures = new Float64Array(LOOKS);
  let looks = 0;
  let last: Sample | null = null;

  function look(sample: Sample): void {
    const { flow } = sample;
    last = sample;
    const gas = flow.gas;
    if (!gas) return;
    const shut = gas.pocketFrom >= 0;
    const slot = looks++ % LOOKS;
    pressures[slot] = gas.backPressure;
    const strength = shut ? pressures.toSorted()[LOOKS / 2]! : 0;
    const counts = shut && (gas.heldVolume > 0 || strength >= LEAST_PRESSURE);
    const countsStrictly = counts && (gas.heldVolume > 0 || strength >= STRICTER * LEAST_PRESSURE);
    const place = shut ? mesh.facePlace[gas.pocketTo + 1]! : 0;
    const seen = counts ? [{ time: sample.time, place, inclination: sample.inclination, strength }] : [];
    sealed.note(sample.time, seen);
    strict.note(sample.time, countsStrictly ? seen : []);
    const longBefore = displaced[slot]!;
    displaced[slot] = gas.displaced;
    if (shut && looks > LOOKS && sample.elapsed > 0)
      quickest = Math.max(quickest, (gas.displaced - longBefore) / (LOOKS * sample.elapsed));
    heldAtEnd = gas.heldVolume > 0;
  }

  function folds(): Fold[] {
    const found = sealed.episodes().map((episode): Fold => {
      const { first, strongest } = episode;
      const area = quickest / (VENT_COEFFICIENT * Math.sqrt((2 * STATED_PRESSURE) / HOT_GAS_DENSITY));
      return {
        kind: 'gas sealed in',
        size: heldAtEnd ? 'heavy' : foldSize(strongest.strength, MARKED, HEAVY),
        isClear: isClear(episode, strict.episodes()),
        time: first.time,
        place: first.place,
        inclination: first.inclination,
        severity: { value: strongest.strength, quantity: 'back pressure', unit: 'Pa' },
        details: {
          back_pressure_head_m: strongest.strength / (density * gravity),
          gas_displaced_m3_per_s: quickest,
          vent_area_for_100_Pa_m2: area,
        },
        cause: 'Metal shuts the mouth while the cavity still holds gas, which can leave only through vents.',
        cure: "Turn more slowly until the front is home, vent the die where metal comes last (a vent that metal covers before lets nothing out), keep vents clear of coat, or give the basin's roofed part more height.",
      };
    });
    return [...found, ...(last ? pocketsUnderRoof(last).map((pocket) => left(pocket, last!)) : [])];
  }

  return { name: 'gas', look, folds };
}

function left(
  pocket: { area: number; from: number; to: number },
  at: { time: number; inclination: number },
): Fold {
  return {
    kind: 'gas left under the roof',
    size: foldSize(pocket.area, 100e-6, 300e-6),
    isClear: pocket.area > STRICTER * LEAST_POCKET,
    time: at.time,
    place: (pocket.from + pocket.to) / 2,
    inclination: at.inclination,
    severity: { value: pocket.area, quantity: 'pocket area', unit: 'm²' },
    details: { from_m: pocket.from, to_m: pocket.to },
    cause: 'At rest a pocket under the roof lies between full stretches of the die and holds gas.',
    cure: 'Vent the place or slope the roof so that the pocket runs out to the feeder.',
  };
}

/** Stretches of the die, not full, between two full ones [m², m from the mouth]. */
function pocketsUnderRoof(sample: Sample): { area: number; from: number; to: number }[] {
  const { mesh } = sample;
  const begins = (k: number) => mesh.facePlace[mesh.mouthFace + k]!;
  const pockets = freeRuns(sample).map(([first, last]) => ({
    first,
    last,
    area: gasArea(sample, first, last),
  }));
  const one = joined(
    pockets.filter(({ area }) => area > LEAST_POCKET).map(({ first, last }) => [first, last]),
    (end, next) => begins(next) - begins(end + 1) < PART_LENGTH,
  );
  return one.map(([first, last]) => ({
    area: gasArea(sample, first, last),
    from: begins(first),
    to: begins(last + 1),
  }));
}

/** Mesh cells from the mouth on that are not full, where full ones lie on both sides. */
function freeRuns({ flow, mesh }: Sample): [first: number, last: number][] {
  const cells = mesh.cells - mesh.mouthFace;
  const runs = stretchesWhere(cells, (k) => {
    const i = k + mesh.mouthFace;
    return flow.volume[i]! < SHUT * mesh.volume[i]!;
  });
  return runs.filter(([first, last]) => first > 0 && last < cells - 1);
}

function gasArea({ flow, mesh }: Sample, first: number, last: number): number {
  let area = 0;
  for (let i = mesh.mouthFace + first; i <= mesh.mouthFace + last; i++)
    area += (mesh.volume[i]! - flow.volume[i]!) / mesh.width[i]!;
  return area;
}
