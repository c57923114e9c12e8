import type { ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius } from '$src/core/units';

export const A356: ThermalMetal = {
  base: 'A356',
  liquidus: fromCelsius(613),
  solidus: fromCelsius(555),
  latentHeat: 425e3,
  liquidHeat: 1175,
  solidHeat: 963,
  solidDensity: 2680,
  solidConductivity: 150,
  coherency: 0.25,
  freezingShrinkage: 0.053,
  contraction: 0.013,
  emissivity: 0.2,
  pouringRange: { low: fromCelsius(680), high: fromCelsius(760) },
  dieRange: { low: fromCelsius(300), high: fromCelsius(400) },
};

export const ALSI12: ThermalMetal = {
  base: 'AlSi12',
  liquidus: fromCelsius(577),
  solidus: fromCelsius(573),
  latentHeat: 520e3,
  liquidHeat: 1170,
  solidHeat: 960,
  solidDensity: 2650,
  solidConductivity: 150,
  coherency: 0.9,
  freezingShrinkage: 0.044,
  contraction: 0.013,
  emissivity: 0.2,
  pouringRange: { low: fromCelsius(660), high: fromCelsius(730) },
  dieRange: { low: fromCelsius(300), high: fromCelsius(400) },
};
