import {
  exponential,
  exponentialLessOne,
  logarithm,
  logarithmOfOnePlus,
} from '$src/core/elementary/exponential';
import { enthalpyOf } from './enthalpy';
import type { Freezing } from './freezing';

/** A die as one lump: mass [kg], specific heat [J/(kg K)], outside area [m²], transfer to the shop [W/(m² K)], shop [K]. */
export interface DieLump {
  readonly mass: number;
  readonly heat: number;
  readonly area: number;
  readonly transfer: number;
  readonly shopTemperature: number;
}

/** What one shot leaves in the die. Metal [kg] from a temperature to the one it is ejected at [K]; cycle [s]. */
export interface Shot {
  readonly metal: number;
  readonly pouringTemperature: number;
  readonly ejectionTemperature: number;
  readonly cycleTime: number;
}

/** Heat of one shot [J]. */
export function shotHeat(freezing: Freezing, shot: Omit<Shot, 'cycleTime'>): number {
  return (
    shot.metal *
    (enthalpyOf(freezing, shot.pouringTemperature) - enthalpyOf(freezing, shot.ejectionTemperature))
  );
}

/**
 * Die temperature at the start of each of `cycles` cycles [K], from a first one. The shot's heat is taken up at once, then the
 * die cools as a lump until the next: T' = T_shop + (T + Q/(m c) − T_shop) exp(−t/τ). An estimate: in a real
 * die the surface is hotter than the body, coat and cooling differ by place, and the heat comes over the dwell.
 */
export function dieTemperatures(
  die: DieLump,
  freezing: Freezing,
  shot: Shot,
  start: number,
  cycles: number,
): number[] {
  const rise = shotHeat(freezing, shot) / (die.mass * die.heat);
  const kept = keptShare(die, shot);
  const temperatures = [start];
  for (let n = 1; n < cycles; n++)
    temperatures.push(die.shopTemperature + (temperatures[n - 1]! + rise - die.shopTemperature) * kept);
  return temperatures;
}

/** Where the cycles settle [K], at the start of a cycle: T_shop + Q/(m c) E/(1 − E), E = exp(−t/τ). */
export function settledDieTemperature(die: DieLump, freezing: Freezing, shot: Shot): number {
  const rise = shotHeat(freezing, shot) / (die.mass * die.heat);
  const loss = -exponentialLessOne(-shot.cycleTime / timeConstant(die));
  return die.shopTemperature + (rise * (1 - loss)) / loss;
}

/** Cycles until the die is within a share of where it settles, counted from its start; E^n = share. */
export function cyclesToSettle(die: DieLump, shot: Shot, share: number): number {
  return Math.ceil((-logarithm(share) * timeConstant(die)) / shot.cycleTime);
}

function keptShare(die: DieLump, shot: Shot): number {
  return exponential(-shot.cycleTime / timeConstant(die));
}

function timeConstant(die: DieLump): number {
  return (die.mass * die.heat) / (die.transfer * die.area);
}

/**
 * Cycle time at which the die settles at a wanted temperature at the start of each cycle [s]: the inverse of
 * `settledDieTemperature`. Null for a die no warmer than the shop, or a shot that gives no heat.
 */
export function cycleTimeFor(
  die: DieLump,
  freezing: Freezing,
  shot: Omit<Shot, 'cycleTime'>,
  temperature: number,
): number | null {
  const rise = shotHeat(freezing, shot) / (die.mass * die.heat);
  const over = temperature - die.shopTemperature;
  if (!(over > 0 && rise > 0)) return null;
  return timeConstant(die) * logarithmOfOnePlus(rise / over);
}
