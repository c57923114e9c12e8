import { fromCelsius } from '$src/core/units';
import { ASSUMED_CONTACT_ANGLE } from './assumedContactAngle';
import type { Metal } from './metal';

const BRASS: Metal = {
  base: 'brass',
  name: 'Gravity-die brass (CuZn39Pb1Al)',
  density: {
    value: 7600,
    source: 'Between 7500 and 7700 kg/m³ at 950 to 1020 °C, from memory',
    confidence: 'low',
  },
  viscosity: { value: 3.7e-3, source: 'Between 3 and 4.5 mPa s, from memory', confidence: 'low' },
  surfaceTension: {
    value: 0.9,
    source: 'Between 0.75 and 1.1 N/m, from memory; zinc vapour makes data poor',
    confidence: 'low',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(1010),
    source: '1005 to 1015 °C in permanent-mould brass trials (tap maker’s test report, read)',
    confidence: 'medium',
  },
  criticalSpeedOverride: null,
};

const ZA12: Metal = {
  base: 'ZA-12',
  name: 'ZA-12 (Zn-11Al-1Cu)',
  density: {
    value: 5600,
    source: 'Between 5500 and 5700 kg/m³ at 480 to 520 °C, from memory; solid 6030 kg/m³',
    confidence: 'medium',
  },
  viscosity: { value: 2.7e-3, source: 'Between 2 and 3.5 mPa s, from memory', confidence: 'low' },
  surfaceTension: {
    value: 0.775,
    source: 'Zinc 0.77 to 0.78 N/m, from memory; aluminium in it may lower it to 0.72',
    confidence: 'medium',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(500),
    source: 'Usual range 470 to 530 °C, from memory',
    confidence: 'low',
  },
  criticalSpeedOverride: null,
};

const AZ91_SOURCE = 'AZ91D by the draining crucible, Int. J. Thermophys. 33 (2012) 484, abstract read';

const AZ91: Metal = {
  base: 'AZ91',
  name: 'AZ91 (Mg-9Al-1Zn)',
  density: {
    value: 1640,
    source: `${AZ91_SOURCE}: 1656 − 0.158 (T − liquidus) kg/m³, here 100 K above it`,
    confidence: 'high',
  },
  viscosity: {
    value: 1.25e-3,
    source: 'Between 1.0 and 1.5 mPa s at 680 to 720 °C, from memory',
    confidence: 'low',
  },
  surfaceTension: {
    value: 0.609,
    source: `${AZ91_SOURCE}: 0.63 − 0.000213 (T − liquidus) N/m under argon, here 100 K above it; cover gas lowers it`,
    confidence: 'high',
  },
  contactAngle: ASSUMED_CONTACT_ANGLE,
  pouringTemperature: {
    value: fromCelsius(700),
    source: 'Usual range 680 to 760 °C, from memory',
    confidence: 'low',
  },
  criticalSpeedOverride: null,
};

/** Casting metals beyond the shop's three. Properties of the liquid near pouring temperature; all may be edited. */
export const FURTHER_METALS: readonly Metal[] = [BRASS, ZA12, AZ91];
