import { HOT_GAS_DENSITY, VENT_COEFFICIENT } from '$src/core/flow/gas';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Fold } from '$src/core/pour/record';
import { trackEpisodes } from './episode';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import { stretchesWhere } from './stretches';
import type { Watcher } from './watcher';

/** Full enough to shut the section, and the smallest pocket that counts [m²]. */
const SHUT = 0.995;
const LEAST_POCKET = 30e-6;
const LOOKS = 10;
const SEEN = 8;
const ONE_POCKET = 0.2;
/** Back pressure that a vent is sized for in the advice [Pa]: about 4 mm of aluminium. */
const STATED_PRESSURE = 100;
/** Gas that presses less leaves as fast as the metal comes: under half a millimetre of aluminium [Pa]. Ours. */
const LEAST_PRESSURE = 10;
/** Pressures from which a sealed pocket is marked, heavy [Pa]: about 10 and 40 mm of aluminium. Ours. */
const MARKED = 250;
const HEAVY = 1000;

/**
 * Gas that metal has shut in: while the cavity fills (needs vents), and what is left under the roof at the end. Its
 * pressure is the median of 10 looks (20 ms): a mesh cell that fills beside a small pocket makes one look jump.
 */
export function watchGas(mesh: Mesh, density: number, gravity: number): Watcher {
  const sealed = trackEpisodes(LOOKS, SEEN, ONE_POCKET);
  let volumeBefore = 0;
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
    pressures[looks++ % LOOKS] = gas.backPressure;
    const strength = shut ? pressures.toSorted()[LOOKS / 2]! : 0;
    const counts = shut && (gas.heldVolume > 0 || strength >= LEAST_PRESSURE);
    const place = shut ? mesh.facePlace[gas.pocketTo + 1]! : 0;
    sealed.note(
      sample.time,
      counts ? { time: sample.time, place, inclination: sample.inclination, strength } : null,
    );
    if (shut && volumeBefore > 0 && sample.elapsed > 0)
      quickest = Math.max(quickest, (volumeBefore - gas.sealedVolume) / sample.elapsed);
    volumeBefore = gas.sealedVolume;
    heldAtEnd = gas.heldVolume > 0;
  }

  function folds(): Fold[] {
    const found = sealed.episodes().map(({ first, strongest }): Fold => {
      const area = quickest / (VENT_COEFFICIENT * Math.sqrt((2 * STATED_PRESSURE) / HOT_GAS_DENSITY));
      return {
        kind: 'gas sealed in',
        size: heldAtEnd ? 'heavy' : foldSize(strongest.strength, MARKED, HEAVY),
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
        cure: "Vent the die end with the area given, keep vents clear of coat, or give the basin's roofed part more height.",
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
function pocketsUnderRoof({ flow, mesh }: Sample): { area: number; from: number; to: number }[] {
  const cells = mesh.cells - mesh.mouthFace;
  const runs = stretchesWhere(cells, (k) => {
    const i = k + mesh.mouthFace;
    return flow.volume[i]! < SHUT * mesh.volume[i]!;
  });
  const inner = runs.filter(([first, last]) => first > 0 && last < cells - 1);
  return inner
    .map(([first, last]) => {
      let area = 0;
      for (let i = mesh.mouthFace + first; i <= mesh.mouthFace + last; i++)
        area += (mesh.volume[i]! - flow.volume[i]!) / mesh.width[i]!;
      return {
        area,
        from: mesh.facePlace[mesh.mouthFace + first]!,
        to: mesh.facePlace[mesh.mouthFace + last + 1]!,
      };
    })
    .filter((pocket) => pocket.area > LEAST_POCKET);
}
