import type { SetMetal } from '$src/core/heat/heatPlan';
import { setMetalOf } from '$src/core/heat/thermalMetals';
import type { PourPlan } from '$src/core/pour/plan';
import { fromCelsius, METRIC, type PageUnits } from '$src/core/units';
import { shownTemperature, withUnit } from './measureText';

/** A temperature of a pour outside the usual range of its metal. */
export interface Unusual {
  readonly what: 'metal' | 'die';
  /** "usual 300 to 400 °C" */
  readonly usual: string;
  /** The same as a sentence, with what is the matter with it. */
  readonly line: string;
}

const MATTER = {
  metal: {
    over: 'overheated metal takes up gas, shrinks more and wears the die',
    under: 'little is left to lose before it freezes',
  },
  die: {
    over: 'the casting sets late and may stick',
    under: 'what is thin may freeze before it is full',
  },
} as const;

/** A die no hotter than this need not be dry, common practice, no source [K]. */
const DRY = fromCelsius(120);
const DAMP = ', and damp, which explodes under metal, may stand on it';

/**
 * Metal as the tilt begins and die past the mouth against the metal's usual ranges (`SetMetal`). Empty where both lie
 * within, where heat is not computed or where the metal is none of ours. The basin is left out: it is often kept hotter.
 */
export function unusualHeat({ heat, section }: PourPlan, units: PageUnits = METRIC): Unusual[] {
  const metal = heat && setMetalOf(heat);
  if (!heat || !metal) return [];
  const dies = section.regions.flatMap(({ end }, k) =>
    end > section.mouth ? [heat.regions[k]!.dieTemperature] : [],
  );
  const held = [
    outside('metal', [heat.startTemperature], metal.pouringRange, units),
    outside('die', dies, metal.dieRange, units),
  ];
  return held.flatMap((one) =>
    one
      ? [
          {
            ...one,
            line: `${one.line}: ${one.usual} for ${heat.own ? 'this metal' : metal.base}; ${one.matter}.`,
          },
        ]
      : [],
  );
}

/** The temperature furthest outside; null where none is by as much as is shown. */
function outside(
  what: Unusual['what'],
  temperatures: readonly number[],
  { low, high }: SetMetal['dieRange'],
  units: PageUnits,
) {
  const [coldest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  const side =
    hottest - high > Math.max(SHOWN, low - coldest) ? 'over' : low - coldest > SHOWN ? 'under' : null;
  if (side === null) return null;
  const shown = (kelvins: number) => shownTemperature(kelvins, units);
  const usual = `usual ${shown(low).number} to ${withUnit(shown(high))}`;
  const found = withUnit(shown(side === 'over' ? hottest : coldest));
  const damp = what === 'die' && side === 'under' && coldest < DRY ? DAMP : '';
  return {
    what,
    usual,
    line: `The ${what} at ${found} is ${side} its range`,
    matter: MATTER[what][side] + damp,
  };
}

/** Temperatures are told in whole degrees [K]. */
const SHOWN = 1;
