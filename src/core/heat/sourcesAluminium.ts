import type { ThermalSources } from '$src/core/metal/thermal';

const LONG_RANGE =
  'Chosen within 0.2 to 0.35, where long-freezing-range fronts stop (from memory); no source of its own';
const EUTECTIC =
  'Chosen, no source: 0.9 for a smooth skin from the wall, the longest run. A eutectic that grows mushy, as a modified ' +
  'one may, can stop as early as a long-range alloy, 0.2 to 0.35: type less to see the shortest';
const OXIDE_SKIN = {
  source:
    'Oxidised aluminium 0.11 to 0.31 at 95 to 600 °C, tables of total emissivity (read); solid, not molten',
  confidence: 'medium',
} as const;
const SHRINKAGE_SOURCE = 'Magnusson & Arnberg, Metall. Mater. Trans. A 32 (2001) 2605, abstract read';

export const A356_SOURCES: ThermalSources = {
  liquidus: { source: '356.0 data sheet (substech.com, read); 610 to 615 °C elsewhere', confidence: 'high' },
  solidus: {
    source: 'Between 550 °C (LM25, two tables read) and 557 °C (356.0 data sheet, substech.com, read)',
    confidence: 'high',
  },
  latentHeat: {
    source:
      '389 kJ/kg (substech.com, read), 425 to 432 (Mills and calorimetry, from memory) and 500 (rule of mixtures) are all in use',
    confidence: 'medium',
  },
  liquidHeat: { source: 'Between 1160 and 1190 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { source: '356.0 data sheet (substech.com, read); 900 elsewhere', confidence: 'medium' },
  solidDensity: { source: '356.0 data sheet (substech.com, read)', confidence: 'high' },
  solidConductivity: { source: 'About 150 W/mK, from memory', confidence: 'medium' },
  coherency: { source: LONG_RANGE, confidence: 'assumed' },
  freezingShrinkage: {
    source: `${SHRINKAGE_SOURCE}: 6.6 % for aluminium and 4.4 % for Al-11.6Si, linear between`,
    confidence: 'high',
  },
  contraction: {
    source: 'LM25 alloy table (cnc.me.uk, read); less in a die that holds the casting',
    confidence: 'high',
  },
  emissivity: OXIDE_SKIN,
  pouringRange: { source: 'Typical 700 to 730 °C, from memory', confidence: 'medium' },
  dieRange: { source: 'From memory; feeder zones hotter, preheat to 250 °C or more', confidence: 'medium' },
};

export const ALSI12_SOURCES: ThermalSources = {
  liquidus: {
    source: '575 to 582 °C in three tables read; the eutectic of Al-Si is 577 °C',
    confidence: 'high',
  },
  solidus: { source: 'Between 565 and 577 °C in three tables read', confidence: 'medium' },
  latentHeat: { source: 'Between 500 and 560 kJ/kg; rule of mixtures 564', confidence: 'medium' },
  liquidHeat: { source: 'Between 1160 and 1180 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { source: 'Taken as that of A356', confidence: 'assumed' },
  solidDensity: { source: 'From memory', confidence: 'medium' },
  solidConductivity: { source: 'Taken as that of A356', confidence: 'assumed' },
  coherency: { source: EUTECTIC, confidence: 'assumed' },
  freezingShrinkage: { source: `${SHRINKAGE_SOURCE}; older figure 3.5 to 3.8 %`, confidence: 'high' },
  contraction: { source: 'LM6 alloy table (cnc.me.uk, read)', confidence: 'high' },
  emissivity: OXIDE_SKIN,
  pouringRange: { source: 'From memory', confidence: 'medium' },
  dieRange: { source: 'From memory', confidence: 'medium' },
};
