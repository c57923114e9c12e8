import type { FrontSketch } from '$src/core/pour/record';
import type { PageUnits } from '$src/core/units';
import { frontSpeedCurve, type SpeedBy } from '$src/report/series';
import { curveIn, speedsIn } from '$src/report/seriesIn';
import type { ChartSeries } from '../charts/chart';

/** The sketch of a front as a curve of a speed chart, named as what it is. */
export function sketchSeries(sketch: FrontSketch, by: SpeedBy, units: PageUnits): ChartSeries {
  const curve = speedsIn(frontSpeedCurve(sketch, by), units);
  const shown = by === 'place' ? curveIn(curve, 'x', units) : curve;
  return { key: 'sketch', name: 'sketch', look: 'sketch', ...shown };
}
