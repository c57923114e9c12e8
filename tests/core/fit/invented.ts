import { type UnknownId, unknownsOf } from '$src/core/fit/unknowns';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { machineMotion } from '$src/core/tilt/machine/machineMotion';
import { PLAIN_TREATMENT, type Treated, treatReadings } from '$src/core/tilt/measured/treatReadings';
import { fromDegrees } from '$src/core/units';

/** Invented readings of the bench machine, for tests of the fit. */

export const START = fromDegrees(30);
export const END = fromDegrees(-90);

/** The bench machine with its valve open by so many turns. */
export function opened(open: number): Machine {
  const { valve } = BENCH_MACHINE;
  if (valve.by === 'Kv') throw new Error('The bench machine is set by turns.');
  return { ...BENCH_MACHINE, valve: { ...valve, open } };
}

export const changed = (machine: Machine, values: Partial<Record<UnknownId, number>>): Machine =>
  unknownsOf(machine).reduce((now, { id, write }) => (id in values ? write(now, values[id]!) : now), machine);

/** Numbers spread as a bell, from a fixed seed. */
function bell(seed: number): () => number {
  let state = (seed * 2654435761) % 4294967296;
  const even = () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
  for (let i = 0; i < 10; i++) even();
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

/** What a phone on the frame would have written: rest, the tilt, rest, 50 readings a second, each off by so much [°]. */
export function readingsOf(machine: Machine, noise: number, seed = 11): Treated {
  const { motion } = machineMotion({ start: START, end: END, machine });
  const next = bell(seed);
  const count = Math.round((motion.duration + 1.5) * 50);
  const readings = Array.from({ length: count }, (_, i) => {
    const time = i / 50;
    return { time, angle: motion.inclinationAt(time - 0.7) + fromDegrees(noise) * next() };
  });
  return treatReadings(readings, PLAIN_TREATMENT);
}
