import type { ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius } from '$src/core/units';

const SKIN_FORMING =
  'Chosen near 1: skin-forming metals choke behind the tip (from memory); no source of its own';

export const ALUMINIUM_BRONZE: ThermalMetal = {
  base: 'aluminium bronze',
  liquidus: {
    value: fromCelsius(1045),
    source: 'C95200, copper industry data (read); 1040 to 1053 °C elsewhere',
    confidence: 'high',
  },
  solidus: {
    value: fromCelsius(1042),
    source: 'C95200, copper industry data (read); 1030 to 1040 °C elsewhere',
    confidence: 'high',
  },
  latentHeat: { value: 230e3, source: 'Estimate of a materials database (read)', confidence: 'low' },
  liquidHeat: { value: 600, source: 'Between 550 and 650 J/kgK, from memory', confidence: 'low' },
  solidHeat: { value: 430, source: '430 to 440 J/kgK, materials database (read)', confidence: 'low' },
  solidDensity: { value: 7640, source: 'C95200, copper industry data (read)', confidence: 'high' },
  solidConductivity: { value: 50, source: 'About 50 W/mK cold, from memory', confidence: 'low' },
  coherency: { value: 0.9, source: SKIN_FORMING, confidence: 'assumed' },
  freezingShrinkage: { value: 0.0425, source: 'Between 4 and 4.5 %, from memory', confidence: 'low' },
  contraction: { value: 0.0205, source: 'Quarter inch a foot, from memory', confidence: 'medium' },
  emissivity: {
    value: 0.4,
    source: 'Between molten copper, 0.13 to 0.15, and aluminium bronze at 20 °C, 0.6 (total, tables read)',
    confidence: 'low',
  },
  pouringRange: {
    low: fromCelsius(1100),
    high: fromCelsius(1180),
    source: 'From memory',
    confidence: 'low',
  },
  dieRange: {
    low: fromCelsius(150),
    high: fromCelsius(350),
    source: 'From memory; often dipped in graphite between shots',
    confidence: 'low',
  },
};

export const BRASS: ThermalMetal = {
  base: 'brass',
  liquidus: {
    value: fromCelsius(899),
    source: 'C85800 (alloys.copper.org, read); 900 to 910 °C for its relatives',
    confidence: 'medium',
  },
  solidus: {
    value: fromCelsius(871),
    source: 'C85800 (alloys.copper.org, read); 880 to 900 °C for its relatives',
    confidence: 'medium',
  },
  latentHeat: { value: 165e3, source: '160 to 170 kJ/kg, estimates (one read)', confidence: 'low' },
  liquidHeat: { value: 495, source: 'Between 490 and 500 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { value: 380, source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { value: 8440, source: 'C85800 (alloys.copper.org, read)', confidence: 'high' },
  solidConductivity: { value: 84, source: 'About 84 W/mK cold, from memory', confidence: 'low' },
  coherency: { value: 0.9, source: SKIN_FORMING, confidence: 'assumed' },
  freezingShrinkage: { value: 0.0525, source: 'Between 4.5 and 6 %, from memory', confidence: 'low' },
  contraction: {
    value: 0.0156,
    source: 'C85800, 3/16 inch a foot (alloys.copper.org, read)',
    confidence: 'high',
  },
  emissivity: {
    value: 0.5,
    source: 'Oxidised brass 0.46 to 0.61 at 40 to 260 °C (total, tables read); solid, not molten',
    confidence: 'low',
  },
  pouringRange: {
    low: fromCelsius(950),
    high: fromCelsius(1050),
    source: '1005 to 1015 °C in permanent-mould trials (read); range from memory',
    confidence: 'medium',
  },
  dieRange: {
    low: fromCelsius(95),
    high: fromCelsius(100),
    source: 'At the pour in those trials (read); cool dies, dipped in graphite',
    confidence: 'medium',
  },
};
