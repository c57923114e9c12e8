import { type LevelPath, levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import {
  fromDegrees,
  fromMillimetres,
  fromSquareMillimetres,
  toDegrees,
  toMillimetres,
} from '$src/core/units';
import type { Family, Outcome, Plot } from './check';
import { atMost, type Finding } from './finding';
import {
  computePour,
  FLUSH_SECTION,
  pourPlan,
  REFERENCE_LIQUID,
  REFERENCE_POURS,
  type ReferencePour,
} from './referencePours';

const P3 = REFERENCE_POURS.find((pour) => pour.name === 'P3')!;
/** The comparison runs down to here: well before the level fill reaches the die end [°]. */
const LAST = 12;
const FRONT_DEPTH = fromMillimetres(1);

function pathOf(pour: ReferencePour, gate: boolean, end: number): LevelPath {
  return levelPath(
    pour.section,
    fromSquareMillimetres(pour.area),
    fromDegrees(pour.start),
    fromDegrees(end),
    gate ? standOf(REFERENCE_LIQUID) : null,
  );
}

/** Inclination at which the level fill reaches the die end [°]. */
export function levelArrival(pour: ReferencePour, gate: boolean): number {
  const path = pathOf(pour, gate, -90);
  const dieLength = pour.section.floor.at(-1)!.x - pour.section.mouth;
  return toDegrees(path.inclination[path.front.findIndex((front) => front >= dieLength - 1e-6)]!);
}

/** Front of the level fill from the mouth [m] as the dynamic front is read: where the metal is 1 mm deep. */
function levelFront(path: LevelPath, k: number, gate: boolean): number {
  if (gate) return path.front[k]!;
  const inclination = path.inclination[k]!;
  const pool = path.pools[k]!.reduce((last, next) => (next.to > last.to ? next : last));
  return (pool.level - FRONT_DEPTH * Math.cos(inclination)) / Math.sin(inclination) - FLUSH_SECTION.mouth;
}

interface Gap {
  readonly mean: number;
  readonly most: number;
  readonly inclination: number[];
  readonly dynamic: number[];
  readonly level: number[];
}

/** Distance between the front of a pour turned at `rate` °/s and the level fill's, from 1 s after the start. */
function gapAt(rate: number, gate: boolean, meshCells: number): Gap {
  const path = pathOf(P3, gate, LAST);
  const { series } = computePour(pourPlan({ ...P3, rate }, meshCells, gate, LAST));
  const gap = { inclination: [] as number[], dynamic: [] as number[], level: [] as number[] };
  path.inclination.forEach((inclination, k) => {
    const time = (P3.start - toDegrees(inclination)) / rate;
    if (time < 1) return;
    gap.inclination.push(toDegrees(inclination));
    gap.dynamic.push(at(series.time, series.front, time));
    gap.level.push(levelFront(path, k, gate));
  });
  const off = gap.level.map((level, k) => Math.abs(gap.dynamic[k]! - level));
  return { ...gap, mean: off.reduce((sum, value) => sum + value, 0) / off.length, most: Math.max(...off) };
}

function at(time: Float64Array, value: Float64Array, wanted: number): number {
  let k = 0;
  while (k < time.length - 2 && time[k + 1]! < wanted) k++;
  return value[k]! + ((wanted - time[k]!) / (time[k + 1]! - time[k]!)) * (value[k + 1]! - value[k]!);
}

function limitFor(gate: boolean): Outcome {
  const gaps = [4, 2, 1].map((rate) => gapAt(rate, gate, 400));
  const slowest = gaps[2]!;
  const bars = gate
    ? [
        atMost('mean distance, 1°/s', slowest.mean, 3e-3, 'm'),
        atMost('greatest distance, 1°/s', slowest.most, 3e-3, 'm'),
      ]
    : [
        atMost('mean distance, 1°/s', slowest.mean, 0.5e-3, 'm'),
        atMost('greatest distance, 1°/s', slowest.most, 1.5e-3, 'm'),
      ];
  // The front may hang on the mesh no more than its cells are long.
  const coarser = gate
    ? [100, 200].map((cells) =>
        atMost(`greatest distance, 1°/s, ${cells} mesh cells`, gapAt(1, true, cells).most, 3e-3, 'm'),
      )
    : [];
  const falls: Finding[] = [0, 1].map((k) =>
    atMost(
      `mean distance at ${[2, 1][k]}°/s over that at ${[4, 2][k]}°/s`,
      gaps[k + 1]!.mean / gaps[k]!.mean,
      1,
    ),
  );
  return { findings: [...bars, ...coarser, ...falls], plots: [plotOf(slowest, gate)] };
}

function plotOf(gap: Gap, gate: boolean): Plot {
  return {
    name: gate ? 'slow-tilt-gate' : 'slow-tilt',
    title: `Front of a pour at 1°/s and of the level fill, gate ${gate ? 'on' : 'off'}`,
    xLabel: 'inclination, °',
    yLabel: 'front from the mouth, mm',
    curves: [
      { name: 'level fill', x: gap.inclination, y: gap.level.map(toMillimetres), look: 'line' },
      {
        name: 'pour',
        x: gap.inclination.filter((_, k) => k % 3 === 0),
        y: gap.dynamic.filter((_, k) => k % 3 === 0).map(toMillimetres),
        look: 'marks',
      },
    ],
  };
}

const SOURCE = 'the level fill of this project, a separate computation without time, mesh or flow';

export const slowTilt: Family = {
  name: 'Slow tilt',
  about: 'A pour turned slowly must follow the level fill, and the closer the slower.',
  checks: [
    {
      id: 'slow',
      title: 'Slow tilt, gate off',
      source: SOURCE,
      setting:
        'flush basin, +30° to +12° at 4, 2 and 1°/s, 400 mesh cells, from 1 s on; the level fill read where it is 1 mm deep',
      run: () => limitFor(false),
    },
    {
      id: 'slow gate',
      title: 'Slow tilt, gate on',
      source: SOURCE,
      setting: 'the same against the level fill with capillary stand',
      run: () => limitFor(true),
    },
  ],
};
