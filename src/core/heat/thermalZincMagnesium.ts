import type { ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius } from '$src/core/units';

const LONG_RANGE =
  'Chosen within 0.2 to 0.35, where long-freezing-range fronts stop (from memory); no source of its own';

export const ZA12: ThermalMetal = {
  base: 'ZA-12',
  liquidus: {
    value: fromCelsius(430),
    source: 'Materials database (read); 432 °C from memory',
    confidence: 'medium',
  },
  solidus: {
    value: fromCelsius(380),
    source: 'Materials database (read); 377 °C from memory',
    confidence: 'medium',
  },
  latentHeat: { value: 120e3, source: 'Materials database (read)', confidence: 'low' },
  liquidHeat: { value: 525, source: 'Between 500 and 550 J/kgK, from memory', confidence: 'low' },
  solidHeat: { value: 450, source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { value: 6030, source: 'ZA-12 data sheet (read); 6000 elsewhere', confidence: 'high' },
  solidConductivity: { value: 116, source: 'About 116 W/mK, from memory', confidence: 'low' },
  coherency: { value: 0.25, source: LONG_RANGE, confidence: 'assumed' },
  freezingShrinkage: { value: 0.045, source: 'Between 4 and 5 %, from memory', confidence: 'low' },
  contraction: { value: 0.013, source: 'Materials database (read)', confidence: 'high' },
  emissivity: {
    value: 0.11,
    source: 'Oxidised zinc at 400 °C, from memory; 0.1 in a table for 8 to 14 µm (read)',
    confidence: 'low',
  },
  pouringRange: { low: fromCelsius(470), high: fromCelsius(530), source: 'From memory', confidence: 'low' },
  dieRange: {
    low: fromCelsius(150),
    high: fromCelsius(300),
    source: 'Metal dies, from memory; graphite moulds are used too',
    confidence: 'low',
  },
};

export const AZ91: ThermalMetal = {
  base: 'AZ91',
  liquidus: {
    value: fromCelsius(598),
    source:
      'Measured, table of magnesium alloys (Adv. Mater. Sci. Eng. 2013, 170527, read); 596 to 600 °C elsewhere',
    confidence: 'high',
  },
  solidus: {
    value: fromCelsius(470),
    source: 'AZ91C (read), 468 °C elsewhere; the last eutectic in real castings freezes near 430 °C',
    confidence: 'medium',
  },
  latentHeat: {
    value: 355e3,
    source: '350 to 360 kJ/kg (AZ91C, read); 373 from memory',
    confidence: 'medium',
  },
  liquidHeat: { value: 1390, source: 'Between 1350 and 1430 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { value: 990, source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { value: 1805, source: 'Between 1800 and 1810 kg/m³, from memory', confidence: 'medium' },
  solidConductivity: { value: 72, source: 'About 72 W/mK cold, from memory', confidence: 'low' },
  coherency: { value: 0.25, source: LONG_RANGE, confidence: 'assumed' },
  freezingShrinkage: {
    value: 0.04,
    source: 'From memory; pure magnesium 3.1 % (Mills, read) or 4.1 to 4.2 %: sources disagree',
    confidence: 'low',
  },
  contraction: { value: 0.013, source: 'AZ91C (read)', confidence: 'high' },
  emissivity: {
    value: 0.2,
    source: 'From memory, with a thin skin; bright magnesium 0.03 to 0.15 (table read)',
    confidence: 'low',
  },
  pouringRange: { low: fromCelsius(680), high: fromCelsius(760), source: 'From memory', confidence: 'low' },
  dieRange: { low: fromCelsius(250), high: fromCelsius(350), source: 'From memory', confidence: 'low' },
};
