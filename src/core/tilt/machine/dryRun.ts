import type { MachineTilt } from '../tilt';
import { type MachineRun, machineMotion } from './machineMotion';

const known = new WeakMap<MachineTilt, MachineRun>();

/** The machine let go without metal, worked out once for each tilt. */
export function dryRun(tilt: MachineTilt): MachineRun {
  const before = known.get(tilt);
  if (before) return before;
  const run = machineMotion(tilt);
  known.set(tilt, run);
  return run;
}
