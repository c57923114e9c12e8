import type { Issue } from '$src/core/issue';
import type { Metal } from '$src/core/metal/metal';
import { toCelsius } from '$src/core/units';
import { thermalOfMetal } from './thermalMetals';

/** So far above the usual range a temperature is a slip of typing: metals burn, boil or gas by then [K]. Our choice. */
const TOO_HOT = 300;

/** Between which a metal can be poured [K], the lower one left out; null when nothing is known of its freezing. */
export function pouringLimits(metal: Metal): readonly [liquidus: number, most: number] | null {
  const thermal = thermalOfMetal(metal);
  return thermal ? [thermal.liquidus, thermal.pouringRange.high + TOO_HOT] : null;
}

/** What is wrong with the pouring temperature of a metal whose freezing is known; the path is relative to the metal. */
export function checkPouring(metal: Metal): Issue[] {
  const { value } = metal.pouringTemperature;
  const limits = pouringLimits(metal);
  if (!limits) return [];
  const [liquidus, most] = limits;
  // A hair of room, so that a value typed exactly at the limit survives the change of units.
  if (value > liquidus && value <= most * (1 + 1e-9)) return [];
  const { low, high } = thermalOfMetal(metal)!.pouringRange;
  const message =
    value > liquidus
      ? `At ${celsius(value)} this metal is far hotter than it is ever poured.`
      : `At ${celsius(value)} this metal is no liquid: its liquidus is ${celsius(liquidus)}.`;
  const range = `more than ${celsius(liquidus)}, at most ${celsius(most)}`;
  return [
    {
      path: 'pouringTemperature.value',
      message,
      remedy: `Give ${range}; ${celsius(low).replace(' °C', '')} to ${celsius(high)} is usual.`,
    },
  ];
}

const celsius = (kelvins: number): string =>
  `${Number(toCelsius(kelvins).toFixed(1))} °C`.replace('-', '\u2212');
