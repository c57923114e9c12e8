import type { ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius } from '$src/core/units';

export const ALUMINIUM_BRONZE: ThermalMetal = {
  base: 'aluminium bronze',
  liquidus: fromCelsius(1045),
  solidus: fromCelsius(1042),
  latentHeat: 230e3,
  liquidHeat: 600,
  solidHeat: 430,
  solidDensity: 7640,
  solidConductivity: 50,
  coherency: 0.9,
  freezingShrinkage: 0.0425,
  contraction: 0.0205,
  emissivity: 0.4,
  pouringRange: { low: fromCelsius(1100), high: fromCelsius(1180) },
  dieRange: { low: fromCelsius(150), high: fromCelsius(350) },
};

export const BRASS: ThermalMetal = {
  base: 'brass',
  liquidus: fromCelsius(899),
  solidus: fromCelsius(871),
  latentHeat: 165e3,
  liquidHeat: 495,
  solidHeat: 380,
  solidDensity: 8440,
  solidConductivity: 84,
  coherency: 0.9,
  freezingShrinkage: 0.0525,
  contraction: 0.0156,
  emissivity: 0.5,
  pouringRange: { low: fromCelsius(950), high: fromCelsius(1050) },
  dieRange: { low: fromCelsius(95), high: fromCelsius(100) },
};
