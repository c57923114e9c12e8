import type { ThermalSources } from '$src/core/metal/thermal';

const SKIN_FORMING =
  'Chosen near 1: skin-forming metals choke behind the tip (from memory); no source of its own';

export const ALUMINIUM_BRONZE_SOURCES: ThermalSources = {
  liquidus: { source: 'C95200, copper industry data (read); 1040 to 1053 °C elsewhere', confidence: 'high' },
  solidus: { source: 'C95200, copper industry data (read); 1030 to 1040 °C elsewhere', confidence: 'high' },
  latentHeat: { source: 'Estimate of a materials database (read)', confidence: 'low' },
  liquidHeat: { source: 'Between 550 and 650 J/kgK, from memory', confidence: 'low' },
  solidHeat: { source: '430 to 440 J/kgK, materials database (read)', confidence: 'low' },
  solidDensity: { source: 'C95200, copper industry data (read)', confidence: 'high' },
  solidConductivity: { source: 'About 50 W/mK cold, from memory', confidence: 'low' },
  coherency: { source: SKIN_FORMING, confidence: 'assumed' },
  freezingShrinkage: { source: 'Between 4 and 4.5 %, from memory', confidence: 'low' },
  contraction: { source: 'Quarter inch a foot, from memory', confidence: 'medium' },
  emissivity: {
    source: 'Between molten copper, 0.13 to 0.15, and aluminium bronze at 20 °C, 0.6 (total, tables read)',
    confidence: 'low',
  },
  pouringRange: { source: 'From memory', confidence: 'low' },
  dieRange: { source: 'From memory; often dipped in graphite between shots', confidence: 'low' },
};

export const BRASS_SOURCES: ThermalSources = {
  liquidus: {
    source: 'C85800 (alloys.copper.org, read); 900 to 910 °C for its relatives',
    confidence: 'medium',
  },
  solidus: {
    source: 'C85800 (alloys.copper.org, read); 880 to 900 °C for its relatives',
    confidence: 'medium',
  },
  latentHeat: { source: '160 to 170 kJ/kg, estimates (one read)', confidence: 'low' },
  liquidHeat: { source: 'Between 490 and 500 J/kgK, from memory', confidence: 'medium' },
  solidHeat: { source: 'Materials database (read)', confidence: 'medium' },
  solidDensity: { source: 'C85800 (alloys.copper.org, read)', confidence: 'high' },
  solidConductivity: { source: 'About 84 W/mK cold, from memory', confidence: 'low' },
  coherency: { source: SKIN_FORMING, confidence: 'assumed' },
  freezingShrinkage: { source: 'Between 4.5 and 6 %, from memory', confidence: 'low' },
  contraction: { source: 'C85800, 3/16 inch a foot (alloys.copper.org, read)', confidence: 'high' },
  emissivity: {
    source: 'Oxidised brass 0.46 to 0.61 at 40 to 260 °C (total, tables read); solid, not molten',
    confidence: 'low',
  },
  pouringRange: {
    source: '1005 to 1015 °C in permanent-mould trials (read); range from memory',
    confidence: 'medium',
  },
  dieRange: {
    source: 'At the pour in those trials (read); cool dies, dipped in graphite',
    confidence: 'medium',
  },
};
