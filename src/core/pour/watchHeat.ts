import type { Flow } from '$src/core/flow/flow';
import { fillAgainstFreezing } from '$src/core/heat/fillAgainstFreezing';
import type { Heat } from '$src/core/heat/heat';
import type { Lap } from '$src/core/heat/laps';
import { frontTemperature, watchLaps } from '$src/core/heat/lapWatch';
import { cellOf, isMetal, plugMean } from '$src/core/heat/plug';
import { watchTimeLeft } from '$src/core/heat/timeLeft';
import type { Mesh } from '$src/core/mesh/mesh';
import { toCelsius } from '$src/core/units';
import { STRICTER } from '$src/core/watch/clear';
import type { Sample } from '$src/core/watch/sample';
import type { Watcher } from '$src/core/watch/watcher';
import type { PourPlan } from './plan';
import type { Fold, LapFigure } from './record';

/** The watcher of cold fronts: laps, misruns, and how near the die came to either. */
export interface HeatWatch extends Watcher {
  /** Temperature of the front when it reached the die end [K]; null = it never did, or heat was not computed. */
  arrivingTemperature(): number | null;
  lap(filled: boolean): LapFigure | null;
  /** How long the front in the die has stood where it is, its metal too stiff to run [s]. */
  stiffFor(): number;
  /** Every place of the die has been full, so that what each had left before freezing is known; true without heat. */
  isFilledThrough(): boolean;
}

const ARRIVED = 1e-4;
/** A stiff front that creeps further than this has not come to rest [m]. */
const CREEP = 1e-3;

export function watchHeat(plan: PourPlan, flow: Flow, heat: Heat | null, mesh: Mesh): HeatWatch {
  const laps = heat && plan.heat ? watchLaps(flow, heat, mesh, plan.heat.lapTemperature) : null;
  const carried = heat ? watchTimeLeft(flow, heat, mesh) : null;
  let arriving: number | null = null;
  let arrived = false;
  let stiffSince: { readonly time: number; readonly front: number } | null = null;
  let last = { time: 0, front: 0 };
  /** How the body lay when the first lap was seen [rad]. */
  let lapInclination: number | null = null;

  function look(sample: Sample): void {
    if (!heat || !laps || sample.time === 0) return;
    laps.look(sample.time, sample.front);
    if (laps.laps().length > 0) lapInclination ??= sample.inclination;
    last = { time: sample.time, front: sample.front };
    arrived ||= sample.front >= sample.dieLength - ARRIVED;
    noteStiff(sample);
    carried?.look(arrived ? null : sample.front);
    if (arriving === null && arrived) arriving = frontTemperature(heat, flow, mesh, sample.front);
  }

  /** A front that has reached the die end has nowhere to stand: the rest of the die fills behind it. */
  function noteStiff({ time, front }: Sample): void {
    const isStiff = front > 0 && !arrived && isStiffAt(cellOf(mesh, front));
    if (!isStiff) stiffSince = null;
    else if (stiffSince === null || Math.abs(front - stiffSince.front) > CREEP) stiffSince = { time, front };
  }

  /** Whether the plug that ends in a mesh cell is too stiff to run. */
  function isStiffAt(cell: number): boolean {
    return plugMean(heat!.solid, heat!, flow, mesh, cell, -1) >= heat!.freezing.coherency;
  }

  /**
   * Time that the metal nearest to going stiff had left [s]: by the heat that was carried, or by hand for the place that
   * filled slowest, whichever is less. Only the reckoning by hand tells by how much a place was too late.
   */
  function margin(): number {
    if (!heat || !carried || !plan.heat) return Number.POSITIVE_INFINITY;
    const regions = fillAgainstFreezing(heat, mesh, plan.heat.regions.length, plan.heat.startTemperature);
    const inDie = regions.filter((region) => plan.section.regions[region.region]!.end > plan.section.mouth);
    const left = inDie.map((region) =>
      region.taken === null ? -region.allowed : region.allowed - region.taken,
    );
    return Math.min(carried.least(), ...left);
  }

  function lap(filled: boolean): LapFigure | null {
    if (!heat || !laps) return null;
    const left = margin();
    if (!filled && stiffFront()) return { kind: 'misrun', margin: Math.min(left, 0) };
    return { kind: laps.laps().length > 0 || left < 0 ? 'laps' : 'none', margin: left };
  }

  /** Whether metal in the die has gone too stiff to run. */
  function stiffFront(): boolean {
    if (!heat) return false;
    for (let i = mesh.mouthFace; i < mesh.cells; i++) if (isMetal(heat, flow, i) && isStiffAt(i)) return true;
    return false;
  }

  function folds(): Fold[] {
    const first = laps?.laps()[0];
    if (!first || lapInclination === null) return [];
    return [
      {
        kind: 'lap',
        size: 'heavy',
        isClear: isColdThrough(laps!.laps()),
        time: first.time,
        place: first.place,
        inclination: lapInclination,
        severity: { value: first.temperature, quantity: 'temperature of the colder metal', unit: 'K' },
        details: { temperature_C: toCelsius(first.temperature), laps: laps!.laps().length },
        cause:
          first.kind === 'fronts met cold'
            ? 'Two fronts meet below the temperature at which their skins still join.'
            : 'The front stands still below the temperature at which its skin still joins what follows.',
        cure: "Fill the section faster, warm the die or use a rougher, more insulating coat. Hotter metal helps less; keep it within the metal's range, for it takes up more gas and shrinks more.",
      },
    ];
  }

  /** Whether a lap had cooled a fifth further than from the pouring temperature to where skins no longer join. */
  function isColdThrough(all: readonly Lap[]): boolean {
    const { startTemperature, lapTemperature } = plan.heat!;
    const limit = startTemperature - STRICTER * (startTemperature - lapTemperature);
    return all.some(({ temperature }) => temperature <= limit);
  }

  /** The last half per cent of a die may fill long after the rest, and then it is what had least left. */
  function isFilledThrough(): boolean {
    if (!heat) return true;
    for (let i = mesh.mouthFace; i < mesh.cells; i++)
      if (!mesh.open[i] && !(heat.fullTime[i]! >= 0)) return false;
    return true;
  }

  const stiffFor = () => (stiffSince === null ? 0 : last.time - stiffSince.time);
  return { name: 'heat', look, folds, arrivingTemperature: () => arriving, lap, stiffFor, isFilledThrough };
}
