import { LENGTH, METRIC, type PageUnits, SPEED, VOLUME } from '$src/core/units';
import type { Curve } from './series';

/** A curve with lengths [mm] on one of its axes, in the page's unit of length. */
export function curveIn<C extends Curve>(curve: C, axis: 'x' | 'y', { length }: PageUnits): C {
  if (length === METRIC.length) return curve;
  const { toShown } = LENGTH[length];
  return { ...curve, [axis]: curve[axis].map((value) => toShown(LENGTH.mm.fromShown(value))) };
}

/** A curve with speeds [m/s] up its axis, in the page's unit of speed. */
export function speedsIn<C extends Curve>(curve: C, { length }: PageUnits): C {
  return length === METRIC.length ? curve : { ...curve, y: curve.y.map(SPEED[length].toShown) };
}

/** Columns of a file with their units in their names, lengths and speeds in the page's units: `front_mm` becomes `front_in`. */
export function columnsIn(
  columns: Readonly<Record<string, readonly number[]>>,
  { length }: PageUnits,
): Readonly<Record<string, readonly number[]>> {
  const measures = [LENGTH, VOLUME, SPEED] as const;
  return Object.fromEntries(
    Object.entries(columns).map(([name, values]) => {
      const measure = measures.find(({ mm }) => name.endsWith(`_${mm.key}`));
      if (!measure || length === 'mm') return [name, values];
      const { mm, in: inch } = measure;
      return [
        name.slice(0, -mm.key.length) + inch.key,
        values.map((value) => inch.toShown(mm.fromShown(value))),
      ];
    }),
  );
}
