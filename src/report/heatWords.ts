import type { HeatPlan, RegionHeat, SetMetal } from '$src/core/heat/heatPlan';
import { DEFAULT_DIE_TEMPERATURE, DEFAULT_TRANSFER } from '$src/core/pour/heatPlanOf';
import type { PourPlan } from '$src/core/pour/plan';
import type { Region } from '$src/core/section/section';
import { HEAT_TRANSFER, METRIC, type PageUnits, TEMPERATURE, toKilojoules } from '$src/core/units';
import { shownTransfer } from './coatChoice';
import type { InputWords } from './inputWord';
import { inUnits } from './inUnits';
import { fixed, percentText, significant } from './wording';

/** Everything that decides the heat of a pour, in words: the metal's freezing, its temperature, coats and die. */
export function heatWords(plan: PourPlan, units: PageUnits = METRIC): InputWords[] {
  const { heat = null } = plan;
  const computed: InputWords = {
    name: 'heat',
    text: heat ? 'computed' : 'not computed',
    decides: heat !== null,
    group: 'heat',
  };
  return [
    computed,
    ...(heat ? metalHeat(heat, units) : []),
    ...(heat?.own ? ownWords(heat.own, units) : []),
    ...regionWords(plan, units),
    ...(heat ? [surfaceWords(heat)] : []),
  ];
}

function metalHeat(heat: HeatPlan, units: PageUnits): InputWords[] {
  const { freezing, startTemperature, lapTemperature } = heat;
  const { unit, toShown } = TEMPERATURE[units.temperature];
  const warm = (kelvin: number): string => fixed(toShown(kelvin), 0);
  const input = (
    name: string,
    decides: unknown,
    text: string,
    group: InputWords['group'] = 'metal',
  ): InputWords => ({ name, text, decides, group });
  return [
    // What the wait in the basin took has been taken off it.
    input('metal as the tilt begins', startTemperature, `${warm(startTemperature)} ${unit}`, 'heat'),
    input(
      'freezing range',
      [freezing.solidus, freezing.liquidus],
      `${warm(freezing.solidus)}–${warm(freezing.liquidus)} ${unit}`,
    ),
    input(
      'latent heat',
      freezing.latentHeat,
      inUnits(`${fixed(toKilojoules(freezing.latentHeat), 0)} kJ/kg`, units),
    ),
    input(
      'specific heat, liquid and solid',
      [freezing.liquidHeat, freezing.solidHeat],
      inUnits(`${fixed(freezing.liquidHeat, 0)} and ${fixed(freezing.solidHeat, 0)} J/kgK`, units),
    ),
    input(
      'heat conductivity of the liquid',
      freezing.conductivity,
      inUnits(`${fixed(freezing.conductivity, 0)} W/mK`, units),
    ),
    input('density for heat', freezing.density, inUnits(`${fixed(freezing.density, 0)} kg/m³`, units)),
    input('a front stops at', freezing.coherency, `${percentText(freezing.coherency)} solid`),
    input('lap temperature', lapTemperature, `${warm(lapTemperature)} ${unit}`, 'heat'),
  ];
}

/** What its user typed of the metal once it is set, and of what is usual for it. */
function ownWords(own: SetMetal, units: PageUnits): InputWords[] {
  const { unit, toShown } = TEMPERATURE[units.temperature];
  const range = ({ low, high }: SetMetal['dieRange']): string =>
    `${fixed(toShown(low), 0)}–${fixed(toShown(high), 0)} ${unit}`;
  const input = (name: string, decides: unknown, text: string): InputWords => ({
    name,
    text,
    decides,
    group: 'metal',
  });
  const { base, freezingShrinkage, solidConductivity, pouringRange, dieRange } = own;
  return [
    input('freezing data of your own, from', base, base),
    input('shrinkage on freezing', freezingShrinkage, percentText(freezingShrinkage)),
    input(
      'heat conductivity of the solid',
      solidConductivity,
      inUnits(`${fixed(solidConductivity, 0)} W/mK`, units),
    ),
    input('usual for pouring', pouringRange, range(pouringRange)),
    input('usual for the die', dieRange, range(dieRange)),
  ];
}

/** A region's coat and die; one that says nothing has the usual ones, as in `heatPlanOf`. */
const heatOf = ({ transfer, dieTemperature }: Region, heat: RegionHeat | undefined): RegionHeat =>
  heat ?? {
    transfer: transfer ?? DEFAULT_TRANSFER,
    dieTemperature: dieTemperature ?? DEFAULT_DIE_TEMPERATURE,
    later: null,
  };

function regionWords({ section, heat }: PourPlan, units: PageUnits): InputWords[] {
  const regions = section.regions.map((region, index) => ({
    ...region,
    heat: heatOf(region, heat?.regions[index]),
  }));
  const { unit, toShown } = TEMPERATURE[units.temperature];
  const shown = HEAT_TRANSFER[units.length];
  const through = (transfer: number): string => fixed(shown.toShown(shownTransfer(transfer, units)), 0);
  const coat = ({ transfer, later }: RegionHeat): string =>
    later
      ? `${through(transfer)}, after ${significant(later.after)} s ${through(later.transfer)}`
      : through(transfer);
  return [
    {
      name: 'coats, heat let through',
      text: `${regions.map(({ name, heat: one }) => `${name} ${coat(one)}`).join(', ')} ${shown.unit}`,
      decides: regions.map(({ transfer = DEFAULT_TRANSFER, heat: one }) => [
        transfer,
        one.transfer,
        one.later,
      ]),
      group: 'heat',
    },
    {
      name: 'die temperatures',
      text: `${regions.map(({ name, heat: one }) => `${name} ${fixed(toShown(one.dieTemperature), 0)}`).join(', ')} ${unit}`,
      decides: regions.map(({ dieTemperature, heat: one }) => [
        dieTemperature ?? one.dieTemperature,
        one.dieTemperature,
      ]),
      group: 'heat',
    },
  ];
}

const surfaceWords = ({ dieSurface }: HeatPlan): InputWords => ({
  name: "die's surface",
  text:
    dieSurface === null ? 'keeps its temperature' : `warms, ${fixed(toKilojoules(dieSurface), 1)} kJ/(m² K)`,
  decides: dieSurface,
  group: 'heat',
});
