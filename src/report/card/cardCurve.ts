import { scaleLinear } from 'd3';
import type { PourRecord } from '$src/core/pour/record';
import { turnsOf } from '$src/core/tilt/turns';
import { toDegrees } from '$src/core/units';
import { degreesMark, secondMark } from '../chartWords';
import { escaped, pathOf, short } from '../drawing/paper';
import { momentAt } from '../moment';
import { inclinationCurve, thin } from '../series';

const SIZE = { width: 318, height: 94 };
const PLOT = { left: 40, right: 306, top: 8, bottom: 72 };
/** Marks of stage changes that can still be told apart. */
const MOST_MARKS = 7;

/** Times at which a stage ends and another begins [s]. */
function changes({ plan: { tilt } }: PourRecord): number[] {
  if (tilt.kind !== 'staged') return [];
  const turns = turnsOf(tilt).slice(0, -1);
  if (turns.length > MOST_MARKS) return [];
  let time = 0;
  return turns.map((turn) => {
    time += turn.time;
    return time;
  });
}

/** Inclination against time as the pour ran. */
export function cardCurve(record: PourRecord): string {
  const curve = thin(inclinationCurve(record), 120);
  const [from, to] = [Math.max(...curve.y), Math.min(...curve.y)];
  const x = scaleLinear([0, curve.x.at(-1) ?? 1], [PLOT.left, PLOT.right]);
  const y = scaleLinear([from, to], [PLOT.top, PLOT.bottom]);
  const line = curve.x.map((time, index) => ({ x: x(time), y: y(curve.y[index]!) }));
  const marks = changes(record).map((time) => {
    const { inclination } = momentAt(record, time);
    return `<circle class="change" cx="${short(x(time))}" cy="${short(y(toDegrees(inclination)))}" r="3.4"/>`;
  });
  return [
    `<svg class="curve" viewBox="0 0 ${SIZE.width} ${SIZE.height}" role="img" aria-label="Angle of the die axis against time">`,
    ...y
      .ticks(3)
      .map(
        (tick) =>
          `<path class="grid" d="M${PLOT.left} ${short(y(tick))}H${PLOT.right}"/><text class="end" x="${PLOT.left - 6}" y="${short(y(tick) + 4)}">${escaped(degreesMark(tick))}</text>`,
      ),
    ...x
      .ticks(6)
      .filter((tick) => x(tick) < PLOT.right - 4)
      .map(
        (tick) =>
          `<text class="middle" x="${short(x(tick))}" y="${SIZE.height - 8}">${secondMark(tick)}</text>`,
      ),
    `<text class="end" x="${SIZE.width}" y="${SIZE.height - 8}">s</text>`,
    `<path class="line" d="${pathOf(line)}"/>`,
    ...marks,
    '</svg>',
  ].join('');
}
