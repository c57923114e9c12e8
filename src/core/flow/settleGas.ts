import { FIGURES, Z1, Z2, Z3, Z4 } from '$src/core/mesh/levels';
import type { Flow } from './flow';
import type { Gas } from './gas';
import { backPressureOf, gasVolume, keptGas } from './pocketGas';

/** Levels of cells under shut gas answer to its pressure: what their metal stands at is surface plus head of the gas. */
export function raiseByGas(flow: Flow, gas: Gas): void {
  shiftByGas(flow, gas, 1);
}

/** Heads of the gas as they are once the levels are solved. */
export function keepHeads({ head, pockets }: Gas): void {
  for (let k = 0; k < pockets.count; k++)
    head.fill(pockets.head[k]! + pockets.rise[k]!, pockets.first[k]!, pockets.last[k]! + 1);
}

/** Heads of the gas as they were before the levels were solved. */
export function resetHeads({ head, pockets }: Gas): void {
  pockets.rise.fill(0);
  for (let k = 0; k < pockets.count; k++)
    head.fill(pockets.head[k]!, pockets.first[k]!, pockets.last[k]! + 1);
}

/**
 * What the step did to shut gas: what left or entered by vents. The cells' figures stand without its head from here on, so
 * that a cell that has just filled keeps the pressure it filled under.
 */
export function settleGas(flow: Flow, gas: Gas): void {
  const { pockets, amount } = gas;
  for (let k = 0; k < pockets.count; k++) {
    const pressure = backPressureOf(gas, k);
    const left = pockets.amount[k]! > 0 ? keptGas(gas, k, pressure) / pockets.amount[k]! : 1;
    for (let i = pockets.first[k]!; i <= pockets.last[k]!; i++) amount[i] = amount[i]! * left;
    gas.displaced += pockets.volume[k]! - gasVolume(gas, k);
    if (pressure > gas.backPressure) gas.backPressure = pressure;
  }
  shiftByGas(flow, gas, -1);
}

function shiftByGas({ levels, activeFrom, activeTo }: Flow, { pockets }: Gas, sign: 1 | -1): void {
  for (let k = 0; k < pockets.count; k++) {
    const rise = sign * pockets.head[k]!;
    const last = Math.min(activeTo, pockets.last[k]!);
    for (let i = Math.max(activeFrom, pockets.first[k]!); i <= last; i++) {
      const at = i * FIGURES;
      levels[at + Z1] = levels[at + Z1]! + rise;
      levels[at + Z2] = levels[at + Z2]! + rise;
      levels[at + Z3] = levels[at + Z3]! + rise;
      levels[at + Z4] = levels[at + Z4]! + rise;
    }
  }
}
