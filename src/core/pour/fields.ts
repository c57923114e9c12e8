import ndarray from 'ndarray';
import type { Field } from './record';

/** Rows enough for two seconds of frames; then as many again, and so on. */
const FIRST_ROWS = 100;

/** A place-time field that grows row by row in one piece of memory: an array for every row costs more than what is in it. */
export interface GrowingField {
  readonly cells: number;
  data: Float32Array;
  rows: number;
}

export function makeField(cells: number): GrowingField {
  return { cells, data: new Float32Array(FIRST_ROWS * cells), rows: 0 };
}

/** Makes room for one more row, of zeros; returns where in `data` it begins. */
export function addRow(field: GrowingField): number {
  const start = field.rows * field.cells;
  if (start === field.data.length) {
    const larger = new Float32Array(2 * start);
    larger.set(field.data);
    field.data = larger;
  }
  field.rows++;
  return start;
}

/** The field as it is kept; filled through an ndarray view so shape and stride agree. */
export function fieldOf({ data, rows, cells }: GrowingField): Field {
  const view = ndarray(data.slice(0, rows * cells), [rows, cells]);
  return { data: view.data, shape: [rows, cells], stride: [view.stride[0]!, view.stride[1]!] };
}
