import { GRAVITY } from '$src/core/gravity';
import { coolFor } from './cooling';
import { enthalpyOf, solidFractionOf, temperatureOf } from './enthalpy';
import type { Freezing } from './freezing';
import type { Contact } from './freezingTime';

/** From the ladle to the start of the tilt. Times [s], lengths [m]. */
export interface Wait {
  /** Height the metal falls from the ladle's lip into the basin. */
  readonly dropHeight: number;
  readonly ladleTime: number;
  readonly skimTime: number;
  readonly settleTime: number;
  /** When the tilt begins, counted from the first metal in the basin; null = after ladling, skimming and settling. */
  readonly tiltStart: number | null;
  /** Shares of the charge that stay behind as skull in the basin and as dross, 0 to 1 together. */
  readonly skullShare: number;
  readonly drossShare: number;
  /** Temperature measured in the pool when the tilt begins [K]; null = estimate it. */
  readonly measuredTemperature: number | null;
}

/** The metal standing in the basin: volume [m³], area on the basin and free surface [m²]. */
export interface BasinPool {
  readonly volume: number;
  readonly contactArea: number;
  readonly surfaceArea: number;
  readonly contact: Contact;
  /** Transfer of the free surface to the shop [W/(m² K)], see `surfaceTransfer`, and the shop's temperature [K]. */
  readonly surfaceTransfer: number;
  readonly shopTemperature: number;
}

export interface WaitResult {
  /** Speed at which the metal lands [m/s], and the drop at which it would land at critical speed [m]. */
  readonly landingSpeed: number;
  readonly allowedDrop: number;
  /** Mean time a portion of the charge waits [s]. */
  readonly waited: number;
  /** Temperature of the pool when the tilt begins [K]: the user's own, else the estimate. */
  readonly temperature: number;
  readonly estimated: number;
  readonly solidFraction: number;
}

/**
 * What the wait does to the metal. The pool cools as a lump, to basin and shop at once, for half the ladling time (its
 * portions came evenly) and all of skimming and settling. An estimate: the ladle's own loss, the stream and a
 * basin warmed by the metal are left out; type the measured temperature when there is one.
 */
export function waitInBasin(
  freezing: Freezing,
  pool: BasinPool,
  wait: Wait,
  pouringTemperature: number,
  criticalSpeed: number,
): WaitResult {
  const end = wait.tiltStart ?? wait.ladleTime + wait.skimTime + wait.settleTime;
  const waited = Math.max(0, end - Math.min(end, wait.ladleTime) / 2);
  const sink = sinkOf(pool);
  const rate = sink.conductance / (freezing.density * pool.volume);
  const enthalpy = coolFor(
    freezing,
    enthalpyOf(freezing, pouringTemperature),
    rate,
    sink.temperature,
    waited,
  );
  const estimated = temperatureOf(freezing, enthalpy);
  const temperature = wait.measuredTemperature ?? estimated;
  return {
    landingSpeed: landingSpeed(wait.dropHeight),
    allowedDrop: allowedDrop(criticalSpeed),
    waited,
    temperature,
    estimated,
    solidFraction: solidFractionOf(
      freezing,
      wait.measuredTemperature === null ? enthalpy : enthalpyOf(freezing, temperature),
    ),
  };
}

/** Speed after a free fall [m/s]. */
export const landingSpeed = (height: number): number => Math.sqrt(2 * GRAVITY * height);
/** Free fall that ends at a speed [m]: 12 to 13 mm for aluminium at its critical speed. */
export const allowedDrop = (speed: number): number => speed ** 2 / (2 * GRAVITY);

/** Basin and shop as one sink: conductance [W/K] and the temperature it pulls to [K]. */
function sinkOf(pool: BasinPool): { conductance: number; temperature: number } {
  const basin = pool.contact.transfer * pool.contactArea;
  const shop = pool.surfaceTransfer * pool.surfaceArea;
  const conductance = basin + shop;
  if (conductance === 0) return { conductance, temperature: pool.shopTemperature };
  return {
    conductance,
    temperature: (basin * pool.contact.dieTemperature + shop * pool.shopTemperature) / conductance,
  };
}
