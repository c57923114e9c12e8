import type { ThermalSources } from '$src/core/metal/thermal';

const LONG_RANGE =
  'Chosen within 0.2 to 0.35, where long-freezing-range fronts stop (from memory); no source of its own';

export const ZA12_SOURCES: ThermalSources = {
  liquidus: { source: 'Materials database (read); 432 °C from memory', confidence: 'medium' },
  solidus: { source: 'Materials database (read); 377 °C from memory', confidence: 'medium' },
  latentHeat: { source: 'Materials database (read)', confidence: 'low' },
  liquidHeat: { source: 'Between 500 and 550 J/kgK, from memory', confidence: 'low' },
  solidHeat: { source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { source: 'ZA-12 data sheet (read); 6000 elsewhere', confidence: 'high' },
  solidConductivity: { source: 'About 116 W/mK, from memory', confidence: 'low' },
  coherency: { source: LONG_RANGE, confidence: 'assumed' },
  freezingShrinkage: { source: 'Between 4 and 5 %, from memory', confidence: 'low' },
  contraction: { source: 'Materials database (read)', confidence: 'high' },
  emissivity: {
    source: 'Oxidised zinc at 400 °C, from memory; 0.1 in a table for 8 to 14 µm (read)',
    confidence: 'low',
  },
  pouringRange: { source: 'From memory', confidence: 'low' },
  dieRange: { source: 'Metal dies, from memory; graphite moulds are used too', confidence: 'low' },
};

export const AZ91_SOURCES: ThermalSources = {
  liquidus: {
    source:
      'Measured, table of magnesium alloys (Adv. Mater. Sci. Eng. 2013, 170527, read); 596 to 600 °C elsewhere',
    confidence: 'high',
  },
  solidus: {
    source: 'AZ91C (read), 468 °C elsewhere; the last eutectic in real castings freezes near 430 °C',
    confidence: 'medium',
  },
  latentHeat: { source: '350 to 360 kJ/kg (AZ91C, read); 373 from memory', confidence: 'medium' },
  liquidHeat: { source: 'Between 1350 and 1430 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { source: 'Between 1800 and 1810 kg/m³, from memory', confidence: 'medium' },
  solidConductivity: { source: 'About 72 W/mK cold, from memory', confidence: 'low' },
  coherency: { source: LONG_RANGE, confidence: 'assumed' },
  freezingShrinkage: {
    source: 'From memory; pure magnesium 3.1 % (Mills, read) or 4.1 to 4.2 %: sources disagree',
    confidence: 'low',
  },
  contraction: { source: 'AZ91C (read)', confidence: 'high' },
  emissivity: {
    source: 'From memory, with a thin skin; bright magnesium 0.03 to 0.15 (table read)',
    confidence: 'low',
  },
  pouringRange: { source: 'From memory', confidence: 'low' },
  dieRange: { source: 'From memory', confidence: 'low' },
};
