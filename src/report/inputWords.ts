import { standOf } from '$src/core/level/stand';
import { startLevel } from '$src/core/level/startLevel';
import type { Liquid } from '$src/core/metal/liquid';
import type { PourPlan } from '$src/core/pour/plan';
import { MASS, METRIC, type PageUnits, toDegrees, toMillipascalSeconds } from '$src/core/units';
import { heatWords } from './heatWords';
import type { InputWords } from './inputWord';
import { inUnits } from './inUnits';
import { shownSpeed, withUnit } from './measureText';
import { sectionInputs } from './sectionInputs';
import { fromLipWords } from './startLevelWords';
import { tiltWords } from './tiltWords';
import { fixed, significant } from './wording';

/** What decides of a metal how it flows. */
export function metalInputs(liquid: Liquid, units: PageUnits): InputWords[] {
  const input = (name: string, value: number, text: string): InputWords => ({
    name,
    text,
    decides: value,
    group: 'metal',
  });
  return [
    input('density', liquid.density, inUnits(`${fixed(liquid.density, 0)} kg/m³`, units)),
    input(
      'viscosity',
      liquid.viscosity,
      inUnits(`${significant(toMillipascalSeconds(liquid.viscosity))} mPa s`, units),
    ),
    input(
      'surface tension',
      liquid.surfaceTension,
      inUnits(`${significant(liquid.surfaceTension)} N/m`, units),
    ),
    input('contact angle', liquid.contactAngle, `${fixed(toDegrees(liquid.contactAngle), 0)}°`),
    input('critical speed', liquid.criticalSpeed, withUnit(shownSpeed(liquid.criticalSpeed, units))),
  ];
}

function computationWords({ computation }: PourPlan): InputWords[] {
  const group = 'computation';
  const { meshCells, capillaryGate, settlingTime } = computation;
  const { gas = 'vents', conditions = null, endsWhenDecided = false } = computation;
  return [
    { name: 'mesh cells', text: String(meshCells), decides: meshCells, group },
    { name: 'capillary stand', text: capillaryGate ? 'on' : 'off', decides: capillaryGate, group },
    { name: 'given up after', text: `${significant(settlingTime)} s at rest`, decides: settlingTime, group },
    {
      name: 'gas',
      text: gas === 'vents' ? 'leaves by basin and vents' : 'leaves anywhere',
      decides: gas,
      group,
    },
    {
      name: 'ends and friction',
      text: conditions === null ? 'a closed die' : `${conditions.friction.kind} friction`,
      decides: conditions,
      group,
    },
    {
      name: 'ends when decided',
      text: endsWhenDecided ? 'yes' : 'no',
      decides: endsWhenDecided,
      group,
    },
  ];
}

/** Mass of the charge, to the last digit that decides: "0.582 kg". */
export function massText({ volume, liquid }: PourPlan, units: PageUnits = METRIC): string {
  const { unit, toShown } = MASS[units.mass];
  return `${toShown(volume * liquid.density).toPrecision(3)} ${unit}`;
}

/** Where the charge lies before the tilt, as its skin holds it and as charge cell and card tell it: " (8 mm below the lip)". */
function levelText({ section, volume, tilt, liquid }: PourPlan, units: PageUnits): string {
  const { held } = startLevel(section, volume, tilt.start, standOf(liquid));
  return held === null ? '' : ` (${fromLipWords(held, units)})`;
}

/** Nobody ladles to a part in a thousand: charges closer than that are one charge. */
const ladled = ({ volume, liquid }: PourPlan): number => Number((volume * liquid.density).toPrecision(3));

/** Every input of a pour in words, section first, computation last. Each kind of tilt has names of its own. */
export function inputWords(plan: PourPlan, units: PageUnits = METRIC): InputWords[] {
  const charge: InputWords = {
    name: 'charge',
    text: `${massText(plan, units)}${levelText(plan, units)}`,
    decides: ladled(plan),
    group: 'charge',
  };
  return [
    ...sectionInputs(plan.section, units),
    ...tiltWords(plan.tilt, units),
    charge,
    ...metalInputs(plan.liquid, units),
    ...heatWords(plan, units),
    ...computationWords(plan),
  ];
}
