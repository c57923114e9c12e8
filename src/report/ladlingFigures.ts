import type { Ladling } from '$src/core/heat/ladling';
import { allowedDrop, landingSpeed } from '$src/core/heat/waitInBasin';
import type { LadledMetal } from '$src/core/pour/ladledMetal';
import type { PageUnits } from '$src/core/units';
import { shownLength, shownMass, shownSpeed, shownTemperature, withUnit } from './measureText';
import { fixed } from './wording';

export interface LadlingFigure {
  readonly key: string;
  readonly label: string;
  /** SI. */
  readonly value: number;
  readonly number: string;
  readonly unit: string;
  readonly note: string;
}

/**
 * Ladling in figures for people.
 * @param mass ladled, skull and dross with it [kg]
 */
export function ladlingFigures(
  ladling: Ladling,
  { wait, criticalSpeed }: LadledMetal,
  mass: number,
  units: PageUnits,
): LadlingFigure[] {
  const landing = landingSpeed(ladling.dropHeight);
  const left = mass * (ladling.skullShare + ladling.drossShare);
  const figures: LadlingFigure[] = [
    {
      key: 'landing_speed',
      label: 'lands in the basin at',
      value: landing,
      ...shownSpeed(landing, units),
      note: `critical is ${withUnit(shownSpeed(criticalSpeed, units))}, a drop of ${withUnit(shownLength(allowedDrop(criticalSpeed), units))}`,
    },
    {
      key: 'left_behind',
      label: 'stays behind',
      value: left,
      ...shownMass(left, units),
      note: `as skull and dross; ${withUnit(shownMass(mass - left, units))} can run into the die`,
    },
  ];
  if (!wait) return figures;
  const { temperature, estimated, waited } = wait;
  const isMeasured = ladling.measuredTemperature !== null;
  return [
    ...figures,
    {
      key: 'temperature_at_tilt',
      label: 'metal when the tilt begins',
      value: temperature,
      ...shownTemperature(temperature, units),
      note: isMeasured
        ? `measured; the estimate would be ${withUnit(shownTemperature(estimated, units))}`
        : `after a mean wait of ${fixed(waited, 1)} s; the pour starts with it`,
    },
  ];
}
