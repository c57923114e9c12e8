import type { ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius } from '$src/core/units';

export const ZA12: ThermalMetal = {
  base: 'ZA-12',
  liquidus: fromCelsius(430),
  solidus: fromCelsius(380),
  latentHeat: 120e3,
  liquidHeat: 525,
  solidHeat: 450,
  solidDensity: 6030,
  solidConductivity: 116,
  coherency: 0.25,
  freezingShrinkage: 0.045,
  contraction: 0.013,
  emissivity: 0.11,
  pouringRange: { low: fromCelsius(470), high: fromCelsius(530) },
  dieRange: { low: fromCelsius(150), high: fromCelsius(300) },
};

export const AZ91: ThermalMetal = {
  base: 'AZ91',
  liquidus: fromCelsius(598),
  solidus: fromCelsius(470),
  latentHeat: 355e3,
  liquidHeat: 1390,
  solidHeat: 990,
  solidDensity: 1805,
  solidConductivity: 72,
  coherency: 0.25,
  freezingShrinkage: 0.04,
  contraction: 0.013,
  emissivity: 0.2,
  pouringRange: { low: fromCelsius(680), high: fromCelsius(760) },
  dieRange: { low: fromCelsius(250), high: fromCelsius(350) },
};
