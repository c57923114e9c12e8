import { ATMOSPHERE, type Gas, HOT_GAS_DENSITY, VENT_COEFFICIENT } from './gas';

/** Back pressure below which a vent's flow goes with the pressure and not with its root [Pa]: keeps its slope finite. */
const GENTLE = 1;
/** Share of the atmosphere below which a pocket grows in a straight line: no die sucks so hard, only an iteration on its way may. */
const THINNEST = 0.1 * ATMOSPHERE;
/** Least share of its gas that a vent leaves a pocket in one step: none at all would have no pressure. */
const LEAST_KEPT = 1e-3;

/** Pressure in a pocket above the atmosphere at the end of the step [Pa]. */
export const backPressureOf = ({ pockets, weight }: Gas, k: number): number =>
  weight * (pockets.head[k]! + pockets.rise[k]!);

/**
 * Pressure times volume that a pocket keeps when it ends the step at that back pressure [Pa m³]: gas leaves through its
 * vents as through an orifice, and comes in through them where the pocket is thinner than the air.
 */
export function keptGas(gas: Gas, k: number, pressure: number): number {
  const amount = gas.pockets.amount[k]!;
  const leaving = (ventFlow(gas, k) * pressure) / Math.sqrt(Math.abs(pressure) + GENTLE);
  return Math.max(LEAST_KEPT * amount, amount - ATMOSPHERE * gas.step * leaving);
}

/** Flow through a pocket's vents at 1 Pa [m³/s]. */
const ventFlow = ({ pockets }: Gas, k: number): number =>
  VENT_COEFFICIENT * pockets.vent[k]! * Math.sqrt(2 / HOT_GAS_DENSITY);

/** Volume of a pocket's gas at the end of the step [m³]; the higher the pressure, the less. */
export function gasVolume(gas: Gas, k: number): number {
  const pressure = backPressureOf(gas, k);
  const whole = Math.max(THINNEST, ATMOSPHERE + pressure);
  const kept = keptGas(gas, k, pressure);
  return (kept / whole) * (1 + (whole - ATMOSPHERE - pressure) / whole);
}

/** How fast that volume shrinks as the head of its pressure rises [m²]; always positive where there is gas. */
export function gasGives(gas: Gas, k: number): number {
  const pressure = backPressureOf(gas, k);
  const whole = Math.max(THINNEST, ATMOSPHERE + pressure);
  const kept = keptGas(gas, k, pressure);
  const strong = Math.abs(pressure) + GENTLE;
  const slope = (ventFlow(gas, k) * (strong - Math.abs(pressure) / 2)) / (strong * Math.sqrt(strong));
  const vented = kept > LEAST_KEPT * gas.pockets.amount[k]! ? ATMOSPHERE * gas.step * slope : 0;
  return (gas.weight * (vented + kept / whole)) / whole;
}
