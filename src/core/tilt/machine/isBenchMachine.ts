import { BENCH_MACHINE, type Machine } from './machine';

/** What stays as it was typed from start to finish when only the valve is turned or the oil changed. */
const MEASURED = ['parts', 'weights', 'cylinder', 'line', 'bearing', 'cushion'] as const;

/** Whether nobody has put in figures of a machine of their own: what it comes to is then that of an invented one. */
export const isBenchMachine = (machine: Machine): boolean =>
  MEASURED.every((part) => JSON.stringify(machine[part]) === JSON.stringify(BENCH_MACHINE[part]));
