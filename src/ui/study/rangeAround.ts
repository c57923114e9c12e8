import { scaleLinear } from 'd3';
import type { PourPlan } from '$src/core/pour/plan';
import type { Setting } from '$src/report/study/setting';
import type { StudyAxis } from '$src/report/study/study';

type Range = Pick<StudyAxis, 'from' | 'to'>;

/** How far temperatures are looked at, either way [K]; a share of a temperature means nothing. Ours, no source. */
const REACH: Readonly<Record<string, number>> = { 'heat.die': 100, 'heat.metal': 60, 'tilt.oil': 15 };

/** A new setting starts with a range around what the pour is set to, out to round figures of the unit shown. */
export function rangeAround(
  setting: Setting,
  plan: PourPlan | null,
  shown: { readonly toShown: (si: number) => number; readonly fromShown: (shown: number) => number },
): Range {
  const now = plan ? setting.read(plan) : null;
  if (setting.id === 'tilt.start') return { from: -Math.PI / 18, to: Math.PI / 4 };
  const middle = now ?? (setting.least + setting.most) / 2;
  const share = Math.abs(middle) > 1e-3 ? Math.abs(middle) / 2 : (setting.most - setting.least) / 50;
  const reach = REACH[setting.id] ?? share;
  const [low, high] = scaleLinear()
    .domain([shown.toShown(middle - reach), shown.toShown(middle + reach)])
    .nice(10)
    .domain();
  return {
    from: Math.max(setting.least, shown.fromShown(low!)),
    to: Math.min(setting.most, shown.fromShown(high!)),
  };
}
