import type { PourRecord } from '$src/core/pour/record';
import { type PageUnits, SPEED } from '$src/core/units';
import { criticalBand, secondMark, speedDomain, speedMark, speedSentence, speedTitle } from '../chartWords';
import { inUnits } from '../inUnits';
import { momentAt } from '../moment';
import { frontSpeedCurve } from '../series';
import { speedsIn } from '../seriesIn';
import { lineChart } from './lineChart';

/** Where the marker stands in the field: from its left and from its top [%]. */
export type Mark = readonly [left: number, top: number];

/** The front speed of a pour over its time, with a marker for the page's script to move. */
export interface SpeedChart {
  readonly markup: string;
  /** At a time of the pour [s]; null while no front runs in the die. */
  readonly markAt: (time: number) => Mark | null;
}

/** null where no front ran. */
export function speedChart(record: PourRecord, units: PageUnits): SpeedChart | null {
  const curve = speedsIn(frontSpeedCurve(record, 'time'), units);
  const [first, last] = [curve.x[0], curve.x.at(-1)];
  if (first === undefined || last === undefined || last <= first) return null;
  const speeds = speedDomain([record], units);
  const { value, label } = criticalBand(record.plan.liquid.criticalSpeed, units);
  const markup = lineChart({
    title: speedTitle(units),
    sentence: inUnits(speedSentence(record), units),
    lines: [{ name: 'front speed', look: PLAIN, ...curve }],
    x: { label: 'time while the front runs in the die, s', domain: [first, last], mark: secondMark },
    y: { label: speedTitle(units), domain: speeds, mark: speedMark(units) },
    limits: [{ value, label }],
    hasMarker: true,
  });
  const markAt = (time: number): Mark | null => {
    const { frontSpeed } = momentAt(record, time);
    if (frontSpeed === null) return null;
    const up = SPEED[units.length].toShown(frontSpeed) / speeds[1];
    return [tenth(((time - first) / (last - first)) * 100), tenth((1 - up) * 100)];
  };
  return { markup, markAt };
}

/** The look that is drawn through. */
const PLAIN = 1;

const tenth = (value: number): number => Number(value.toFixed(1));
