import { fromCelsius } from '$src/core/units';
import { ASSUMED_CONTACT_ANGLE } from './assumedContactAngle';
import { FURTHER_METALS } from './furtherMetals';
import type { Metal } from './metal';

const A356: Metal = {
  base: 'A356',
  name: 'A356 (Al-7Si-0.3Mg)',
  density: {
    value: 2400,
    source: 'Between 2370 and 2420 kg/m³ at 700 to 720 °C, from memory',
    confidence: 'medium',
  },
  viscosity: {
    value: 1.2e-3,
    source: 'Between 1.0 and 1.3 mPa s at 700 to 720 °C, from memory',
    confidence: 'medium',
  },
  surfaceTension: {
    value: 0.865,
    source:
      'Oxidised pure aluminium: Garcia-Cordovilla, Louis & Pamies, J. Mater. Sci. 21 (1986) 2787, abstract read. Clean: 1.10 N/m',
    confidence: 'medium',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(715),
    source: 'Typical 700 to 730 °C, from memory',
    confidence: 'medium',
  },
  criticalSpeedOverride: null,
};

const AlSi12: Metal = {
  base: 'AlSi12',
  name: 'AlSi12 (eutectic)',
  density: {
    value: 2420,
    source: 'Between 2400 and 2440 kg/m³ at 680 to 700 °C, from memory',
    confidence: 'medium',
  },
  viscosity: {
    value: 1.1e-3,
    source: 'Between 0.9 and 1.2 mPa s at 680 to 700 °C, from memory',
    confidence: 'medium',
  },
  surfaceTension: {
    value: 0.83,
    source: 'Between 0.80 and 0.86 N/m, oxidised, from memory',
    confidence: 'medium',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(695),
    source: 'Usual range 660 to 730 °C, from memory',
    confidence: 'medium',
  },
  criticalSpeedOverride: null,
};

const ALUMINIUM_BRONZE: Metal = {
  base: 'aluminium bronze',
  name: 'Aluminium bronze (CuAl10Fe)',
  density: {
    value: 6700,
    source:
      'Between 6400 and 7000 kg/m³ at 1120 to 1180 °C, from memory; solid 7640 kg/m³ (C95200, copper industry data)',
    confidence: 'low',
  },
  viscosity: {
    value: 6e-3,
    source: 'Between 5 and 7 mPa s, from memory',
    confidence: 'low',
  },
  surfaceTension: {
    value: 1.2,
    source:
      'Between 1.1 and 1.35 N/m, from memory; pure copper 1.33 at 1450 K: Aziz, Schmon & Pottlacher, High Temp. High Press. 43 (2014) 193, abstract read',
    confidence: 'low',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(1140),
    source: 'Usual range 1100 to 1180 °C, from memory',
    confidence: 'low',
  },
  criticalSpeedOverride: null,
};

/** The metals a book can start from. Properties of the liquid near pouring temperature; all may be edited. */
export const METALS: readonly Metal[] = [A356, AlSi12, ALUMINIUM_BRONZE, ...FURTHER_METALS];

/** The metal with that key, e.g. `metalNamed('A356')`; undefined when there is none. */
export function metalNamed(base: string): Metal | undefined {
  return METALS.find((metal) => metal.base === base);
}
