import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import type { Section } from '$src/core/section/section';
import { fromDegrees, fromMillimetres, fromSquareMillimetres } from '$src/core/units';

const line = (...points: readonly (readonly [number, number])[]) =>
  points.map(([x, y]) => ({ x: fromMillimetres(x), y: fromMillimetres(y) }));

function dieSection(floor: Section['floor'], roof: Section['roof'], mouth: number): Section {
  return {
    floor,
    roof,
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [{ name: 'all', end: floor.at(-1)!.x, width: 1 }],
    mouth: fromMillimetres(mouth),
    cavities: 1,
    pivot: { x: 0.135, y: 0 },
    vents: [],
  };
}

/** A pit 25 mm below the die floor, with a vertical step at the mouth. */
export const PIT_SECTION = dieSection(
  line([0, -25], [120, -25], [120, 0], [320, 0]),
  line([0, 60], [120, 60], [120, 30], [320, 30]),
  120,
);
/** A short deep basin, its floor flush with the die. */
export const FLUSH_SECTION = dieSection(
  line([0, 0], [270, 0]),
  line([0, 120], [70, 120], [70, 30], [270, 30]),
  70,
);

export const REFERENCE_LIQUID = {
  density: 2400,
  viscosity: 1.3e-3,
  surfaceTension: 0.9,
  contactAngle: fromDegrees(150),
  criticalSpeed: 0.5,
};

export interface ReferencePour {
  readonly name: string;
  readonly section: Section;
  /** Metal in the section [mm²]. */
  readonly area: number;
  readonly start: number;
  /** [°/s] */
  readonly rate: number;
  /** Arrival at the die end of an earlier code of the same scheme, 400 cells [s]: gate off, gate on. */
  readonly arrival: readonly [number, number];
}

export const REFERENCE_POURS: readonly ReferencePour[] = [
  { name: 'P2', section: PIT_SECTION, area: 2880, start: 0, rate: 15, arrival: [0.759, 1.249] },
  { name: 'P3', section: FLUSH_SECTION, area: 6900, start: 30, rate: 15, arrival: [1.309, 1.658] },
  { name: 'P4', section: FLUSH_SECTION, area: 6900, start: 30, rate: 60, arrival: [0.419, 0.479] },
  { name: 'P5', section: PIT_SECTION, area: 2880, start: 0, rate: 5, arrival: [1.33, 2.959] },
];

export function pourPlan(
  pour: Pick<ReferencePour, 'section' | 'area' | 'start' | 'rate'>,
  meshCells: number,
  capillaryGate: boolean,
  end = -90,
): PourPlan {
  return {
    section: pour.section,
    liquid: REFERENCE_LIQUID,
    volume: fromSquareMillimetres(pour.area),
    tilt: {
      kind: 'steady',
      start: fromDegrees(pour.start),
      end: fromDegrees(end),
      rate: fromDegrees(pour.rate),
      smoothing: 0,
      limits: {
        highestStart: fromDegrees(75),
        lowestEnd: fromDegrees(-100),
        slowest: fromDegrees(0.5),
        quickest: fromDegrees(120),
      },
    },
    computation: { meshCells, capillaryGate, settlingTime: 1, gas: 'free' },
  };
}

/** Runs a pour to its end, or until `enough` of it has been computed. */
export function computePour(plan: PourPlan, enough: (time: number) => boolean = () => false): PourRecord {
  const steps = runPour(plan);
  let next = steps.next();
  while (!next.done) next = steps.next(enough(next.value.time) ? { stop: true } : undefined);
  return next.value;
}
