import type { ThermalSources } from '$src/core/metal/thermal';
import { A356_SOURCES, ALSI12_SOURCES } from './sourcesAluminium';
import { ALUMINIUM_BRONZE_SOURCES, BRASS_SOURCES } from './sourcesCopper';
import { AZ91_SOURCES, ZA12_SOURCES } from './sourcesZincMagnesium';

const SOURCES: Readonly<Record<string, ThermalSources>> = {
  A356: A356_SOURCES,
  AlSi12: ALSI12_SOURCES,
  'aluminium bronze': ALUMINIUM_BRONZE_SOURCES,
  brass: BRASS_SOURCES,
  'ZA-12': ZA12_SOURCES,
  AZ91: AZ91_SOURCES,
};

/** Where the thermal properties of the metal with that `Metal.base` come from; undefined when there are none. */
export const thermalSources = (base: string): ThermalSources | undefined => SOURCES[base];
