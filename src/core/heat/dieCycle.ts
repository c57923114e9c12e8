import type { Issue } from '$src/core/issue';
import { fromCelsius } from '$src/core/units';
import type { DieLump } from './dieWarming';

/** A die that is poured again and again. SI; temperatures [K]. */
export interface DieCycle {
  /** From one pour to the next [s]. */
  readonly cycleTime: number;
  /** Die and basin together [kg], and their outside that loses heat [m²]. */
  readonly dieMass: number;
  readonly outside: number;
  /** What the outside loses [W/(m² K)], spray and blown air with it. */
  readonly transfer: number;
  readonly shopTemperature: number;
  /** The casting as it leaves the die. */
  readonly ejectionTemperature: number;
}

/** Die steel and cast iron near 350 °C, about 500 J/(kg K): handbook value, from memory. */
export const DIE_STEEL_HEAT = 500;

/** A place to start, assumed: a small die with a basin, still air and radiation at about 350 °C. */
export const USUAL_DIE_CYCLE: DieCycle = {
  cycleTime: 240,
  dieMass: 35,
  outside: 0.25,
  transfer: 30,
  shopTemperature: fromCelsius(20),
  ejectionTemperature: fromCelsius(480),
};

export const dieLumpOf = ({ dieMass, outside, transfer, shopTemperature }: DieCycle): DieLump => ({
  mass: dieMass,
  heat: DIE_STEEL_HEAT,
  area: outside,
  transfer,
  shopTemperature,
});

const RANGES: readonly [keyof DieCycle, number, number, string][] = [
  ['cycleTime', 5, 86_400, 'Give 5 s to a day.'],
  ['dieMass', 0.1, 1e5, 'Give 0.1 kg or more.'],
  ['outside', 1e-3, 1e3, 'Give 1000 mm² or more.'],
  ['transfer', 0.1, 1e4, 'Give 0.1 to 10,000 W/m²K; 20 to 40 is usual in still air.'],
  ['shopTemperature', fromCelsius(-50), fromCelsius(100), 'Give −50 °C to 100 °C.'],
  ['ejectionTemperature', fromCelsius(20), fromCelsius(1500), 'Give 20 °C to 1500 °C.'],
];

/** What is wrong with it; paths are its fields. Empty when nothing is. */
export function checkDieCycle(cycle: DieCycle): Issue[] {
  return RANGES.flatMap(([path, least, most, remedy]) =>
    cycle[path] >= least && cycle[path] <= most
      ? []
      : [{ path, message: 'This number is out of range.', remedy }],
  );
}
