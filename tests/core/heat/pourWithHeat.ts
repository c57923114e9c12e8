import { advance, largestOrdinaryCell, stepLength } from '$src/core/flow/advance';
import { DIE_CONDITIONS } from '$src/core/flow/conditions';
import { Flow } from '$src/core/flow/flow';
import { type Forces, frontResistance } from '$src/core/flow/forces';
import { DRAG, TIME_WEIGHT } from '$src/core/flow/settings';
import { GRAVITY } from '$src/core/gravity';
import { carryHeat } from '$src/core/heat/carryHeat';
import { freezingOf } from '$src/core/heat/freezing';
import { type Heat, heatInMetal, makeHeat } from '$src/core/heat/heat';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { thermalOf } from '$src/core/heat/thermalMetals';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { buildMesh, type Mesh } from '$src/core/mesh/mesh';
import { mirrorMesh } from '$src/core/mesh/mirror';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { pourIn } from '$src/core/pour/pourIn';
import type { Section } from '$src/core/section/section';
import { fromCelsius, fromDegrees } from '$src/core/units';

export const A356 = metalNamed('A356')!;
export const FREEZING = freezingOf(thermalOf('A356')!, A356.density.value);

/** Roofed basin that is poured level transfer: the design page's good case, 60 mm wide, one or more cavities. */
export function flushSection(width = 0.06, cavities = 1): Section {
  return {
    floor: [
      { x: 0, y: 0 },
      { x: 0.355, y: 0 },
    ],
    roof: [
      { x: 0, y: 0.095 },
      { x: 0.103, y: 0.095 },
      { x: 0.103, y: 0.03 },
      { x: 0.355, y: 0.03 },
    ],
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [
      { name: 'basin', end: 0.155, width },
      { name: 'casting', end: 0.355, width },
    ],
    mouth: 0.155,
    cavities,
    pivot: { x: 0.155, y: 0 },
    vents: [],
  };
}

/** Basin open above whose metal partly runs out over its rim at −90°: no roof over it at all. */
export function spillingSection(): Section {
  return {
    ...flushSection(),
    roof: [
      { x: 0, y: 0.12 },
      { x: 0.155, y: 0.12 },
      { x: 0.155, y: 0.03 },
      { x: 0.355, y: 0.03 },
    ],
  };
}

/** A closed channel of one height: nothing but floor, roof, sides and two end walls. */
export function channel(length: number, height: number, width: number): Section {
  return {
    floor: [
      { x: 0, y: 0 },
      { x: length, y: 0 },
    ],
    roof: [
      { x: 0, y: height },
      { x: length, y: height },
    ],
    openings: [],
    regions: [{ name: 'channel', end: length, width }],
    mouth: 0,
    cavities: 1,
    pivot: { x: 0, y: 0 },
    vents: [],
  };
}

export const HEAT: HeatPlan = {
  freezing: FREEZING,
  startTemperature: fromCelsius(700),
  regions: [
    { transfer: 1000, dieTemperature: fromCelsius(300), later: null },
    { transfer: 1850, dieTemperature: fromCelsius(350), later: null },
  ],
  dieSurface: null,
  lapTemperature: FREEZING.liquidus,
};

export interface HeatedPour {
  readonly flow: Flow;
  readonly mesh: Mesh;
  readonly heat: Heat;
  /** Heat in the metal before the tilt [J], and the greatest departure of the sum of all accounts from it, relative. */
  readonly start: number;
  readonly balance: number;
  readonly steps: number;
}

export interface PourSettings {
  readonly section: Section;
  readonly volume: number;
  readonly meshCells: number;
  readonly startAngle: number;
  readonly endAngle: number;
  /** [rad/s], towards the end angle. */
  readonly rate: number;
  readonly duration: number;
  readonly heat: HeatPlan;
  readonly look?: (pour: { flow: Flow; mesh: Mesh; heat: Heat; time: number; turn: Forces }) => void;
}

/** A pour at a steady rate with its heat: a small loop over the flow's own step. */
export function pourWithHeat(settings: PourSettings): HeatedPour {
  const { section, startAngle, endAngle, rate } = settings;
  const liquid = liquidOf(A356);
  const upright = buildMesh(section, settings.meshCells);
  const turned = mirrorMesh(upright);
  let mesh = upright;
  const flow = new Flow(mesh);
  const forces: Forces = {
    gravity: GRAVITY,
    sin: Math.sin(startAngle),
    cos: Math.cos(startAngle),
    rate: 0,
    acceleration: 0,
    viscosity: liquid.viscosity / liquid.density,
    drag: DRAG,
    ...frontResistance(liquid.surfaceTension, liquid.contactAngle, liquid.density),
    capillaryGate: true,
    timeWeight: TIME_WEIGHT,
    conditions: DIE_CONDITIONS,
  };
  const pools = levelPath(section, settings.volume, startAngle, startAngle, standOf(liquid));
  pourIn(flow, mesh, pools.pools[0]!, forces.sin, forces.cos);
  const ends = section.regions.map((region) => region.end);
  const heat = makeHeat(settings.heat, flow, mesh, ends, section.cavities);
  const largest = largestOrdinaryCell(mesh);
  const start = heatInMetal(heat, flow);
  let time = 0;
  let balance = 0;
  while (time < settings.duration) {
    const dt = stepLength(flow, mesh);
    time += dt;
    const inclination = Math.max(endAngle, startAngle - rate * time);
    forces.sin = Math.sin(inclination);
    const cos = Math.cos(inclination);
    if (cos < -1e-12 !== mesh.upsideDown) mesh = turned;
    forces.cos = Math.abs(cos);
    forces.rate = inclination > endAngle ? -rate : 0;
    if (!advance(flow, mesh, forces, dt, largest)) throw new Error(`level solve failed at ${time} s`);
    carryHeat(heat, flow, mesh, forces, dt, time);
    const sum = heatInMetal(heat, flow) + heat.lost + heat.spilled - heat.brought;
    balance = Math.max(balance, Math.abs(sum / start - 1));
    settings.look?.({ flow, mesh, heat, time, turn: forces });
  }
  return { flow, mesh: upright, heat, start, balance, steps: flow.steps };
}

/** The good case: start +30°, 15°/s to −90°, 1.15 times the cavity's section. */
export const GOOD_POUR: PourSettings = {
  section: flushSection(),
  volume: 1.15 * 0.2 * 0.03 * 0.06,
  meshCells: 100,
  startAngle: fromDegrees(30),
  endAngle: fromDegrees(-90),
  rate: fromDegrees(15),
  duration: 9,
  heat: HEAT,
};
