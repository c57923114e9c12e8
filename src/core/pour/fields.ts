import ndarray from 'ndarray';
import type { Field } from './record';

/** Joins frames into one place-time field, row by row; filled through an ndarray view so shape and stride agree. */
export function fieldOf(rows: readonly Float32Array[], cells: number): Field {
  const view = ndarray(new Float32Array(rows.length * cells), [rows.length, cells]);
  rows.forEach((row, i) => {
    view.data.set(row, view.index(i, 0));
  });
  return { data: view.data, shape: [rows.length, cells], stride: [view.stride[0]!, view.stride[1]!] };
}
