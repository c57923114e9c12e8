import type { PourPlan } from '$src/core/pour/plan';
import type { Field, Figures, Fold, PourRecord } from '$src/core/pour/record';
import { fromDegrees } from '$src/core/units';

/**
 * An invented pour for tests of what reads records: shapes and numbers are of the right kind, nothing of it was
 * computed. It never leaves tests/.
 */
const CELLS = 70;
const FRAMES = 61;
const BACK = 0.155;
const DIE = 0.2;
const HEIGHT = 0.03;

export const inventedPlan: PourPlan = {
  section: {
    floor: [
      { x: 0, y: 0 },
      { x: BACK + DIE, y: 0 },
    ],
    roof: [
      { x: 0, y: 0.095 },
      { x: 0.103, y: 0.095 },
      { x: 0.103, y: HEIGHT },
      { x: BACK + DIE, y: HEIGHT },
    ],
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [
      { name: 'basin', end: BACK, width: 0.06 },
      { name: 'arm', end: BACK + DIE, width: 0.03 },
    ],
    mouth: BACK,
    cavities: 2,
    pivot: { x: BACK, y: 0.015 },
    vents: [{ place: 0.35, area: 2e-5, blocked: 0 }],
  },
  liquid: {
    density: 2400,
    viscosity: 0.0011,
    surfaceTension: 0.9,
    contactAngle: fromDegrees(150),
    criticalSpeed: 0.5,
  },
  volume: 0.0069 * 0.06,
  tilt: {
    kind: 'staged',
    start: fromDegrees(30),
    stages: [
      { to: fromDegrees(-6), rate: fromDegrees(8) },
      { to: fromDegrees(-90), rate: fromDegrees(18) },
    ],
    smoothing: 0.15,
    limits: {
      highestStart: fromDegrees(60),
      lowestEnd: fromDegrees(-90),
      slowest: fromDegrees(1),
      quickest: fromDegrees(120),
    },
  },
  computation: { meshCells: CELLS, capillaryGate: true, settlingTime: 4 },
};

const DURATION = 9;
const START = fromDegrees(30);
const END = fromDegrees(-90);
const inclinationAt = (time: number): number => START + ((END - START) * Math.min(time, DURATION)) / DURATION;

/** The front runs from first flow at 0.5 s to the end at 3.5 s. */
const frontAt = (time: number): number => Math.min(DIE, Math.max(-0.02, ((time - 0.5) / 3) * DIE));

const table = (length: number, value: (index: number) => number): Float64Array =>
  Float64Array.from({ length }, (_, index) => value(index));

function field(value: (time: number, x: number) => number, duration: number): Field {
  const data = new Float32Array(FRAMES * CELLS);
  for (let i = 0; i < FRAMES; i++)
    for (let j = 0; j < CELLS; j++)
      data[i * CELLS + j] = value((i / (FRAMES - 1)) * duration, ((j + 0.5) / CELLS) * (BACK + DIE));
  return { data, shape: [FRAMES, CELLS], stride: [CELLS, 1] };
}

const depthAt = (time: number, x: number): number => {
  const behind = frontAt(time) + BACK - x;
  return behind <= 0 ? 0 : Math.min(HEIGHT, 0.008 + behind * 0.05 + time * 0.003);
};

export const inventedFigures: Figures = {
  firstFlow: { kind: 'angle', inclination: inclinationAt(0.5), time: 0.5 },
  peakFrontSpeed: 0.15,
  peakFrontSpeedPlace: 0.18,
  peakFrontSpeedTime: 3.3,
  peakFrontSpeedInclination: inclinationAt(3.3),
  shareAboveCritical: 0,
  arrivalTime: 3.5,
  firstFlowTime: 0.5,
  filled50Time: 4.2,
  filled90Time: 5.6,
  filledTime: 7,
  fillTime: 6.5,
  finalShare: 1,
  spilled: 0,
  skinFolded: 0.058,
  foldScore: 0,
  gasHeld: false,
  narrowestGasWay: null,
  lap: null,
  arrivingTemperature: null,
};

export const inventedFold: Fold = {
  kind: 'skin contraction',
  size: 'slight',
  isClear: true,
  time: 3.1,
  place: 0.12,
  inclination: inclinationAt(3.1),
  severity: { value: 0.058, quantity: 'skin folded in', unit: 'm' },
  details: { depth_m: 0.012 },
  cause: '58 mm of skin drawn together in the neck.',
  cure: 'Widen the neck or slow the stage in which the front passes it.',
};

/** A record with the given figures and folds laid over a sound uphill pour. */
export function inventedRecord(change: Partial<PourRecord> & { speedScale?: number } = {}): PourRecord {
  const { speedScale = 1, ...fields } = change;
  const samples = 901;
  const time = table(samples, (i) => i * 0.01);
  const windows = 37;
  const place = table(windows, (i) => 0.01 + i * 0.005);
  const frameTime = table(FRAMES, (i) => (i / (FRAMES - 1)) * DURATION);
  const x = table(CELLS + 1, (j) => (j / CELLS) * (BACK + DIE));
  const roof = (left: number): number => (left < 0.103 ? 0.095 : HEIGHT);
  return {
    solver: 'invented',
    planHash: 'invented',
    plan: inventedPlan,
    outcome: { kind: 'filled and quiet' },
    outline: {
      x,
      floorLeft: new Float64Array(CELLS),
      floorRight: new Float64Array(CELLS),
      roofLeft: table(CELLS, (j) => roof(x[j]!)),
      roofRight: table(CELLS, (j) => roof(x[j]!)),
      open: Uint8Array.from({ length: CELLS }, (_, j) => (x[j]! < 0.103 ? 1 : 0)),
    },
    frames: {
      time: frameTime,
      inclination: frameTime.map(inclinationAt),
      level: field((t, at) => (depthAt(t, at) > 0 ? levelAt(t, at) : Number.NaN), DURATION),
      depth: field(depthAt, DURATION),
      speed: field((t, at) => (depthAt(t, at) > 0 ? 0.1 : 0), DURATION),
    },
    series: {
      time,
      inclination: time.map(inclinationAt),
      front: time.map(frontAt),
      filledShare: time.map((t) => Math.min(1, Math.max(0, (t - 0.5) / 6.5))),
      spilled: new Float64Array(samples),
      skinFolded: time.map((t) => (t < 3 ? 0 : 0.058)),
    },
    frontSpeeds: {
      place,
      speed: place.map((at) => speedScale * (0.02 + at * 0.7)),
      time: place.map((at) => 0.5 + ((at + 0.01) / DIE) * 3),
      inclination: place.map((at) => inclinationAt(0.5 + ((at + 0.01) / DIE) * 3)),
      depth: place.map(() => 0.012),
      fullness: place.map(() => 0.4),
      froude: place.map((at) => (speedScale * (0.02 + at * 0.7)) / Math.sqrt(9.81 * 0.012)),
      window: 0.02,
    },
    figures: inventedFigures,
    folds: [inventedFold],
    band: {
      gateOff: {
        firstFlow: { kind: 'angle', inclination: inclinationAt(0.4), time: 0.4 },
        peakFrontSpeed: 0.17,
        arrivalTime: 3.4,
      },
      nonWetting: {
        firstFlow: { kind: 'angle', inclination: inclinationAt(0.52), time: 0.52 },
        peakFrontSpeed: 0.15,
        arrivalTime: 3.5,
      },
      meshCells: 100,
    },
    health: {
      steps: 9000,
      newtonIterations: 20000,
      searchedSolves: 10,
      volumeDrift: 1e-14,
      greatestSpeed: 0.6,
    },
    ...fields,
  };
}

const levelAt = (time: number, x: number): number => {
  const inclination = inclinationAt(time);
  return x * Math.sin(inclination) + depthAt(time, x) * Math.cos(inclination);
};
