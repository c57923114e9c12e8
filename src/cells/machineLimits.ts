import type { MachineLimits } from '$src/core/tilt/tilt';
import type { Book, CellId, TiltCell } from './kinds';

const FIELDS = ['highestStart', 'lowestEnd', 'quickest', 'slowest'] as const;

const areSame = (one: MachineLimits, other: MachineLimits): boolean =>
  FIELDS.every((field) => one[field] === other[field]);

/** Tilts of the book whose machine can do other than this one's: a shop mostly has one machine. Locked ones are left out. */
export function tiltsOfOtherMachines(tilts: readonly TiltCell[], limits: MachineLimits): TiltCell[] {
  return tilts.filter(({ tilt, locked }) => !locked && !areSame(tilt.limits, limits));
}

/** The book with that machine's limits in these tilts. What then lies outside them is told at the tilt. */
export function withLimits(book: Book, ids: readonly CellId[], limits: MachineLimits): Book {
  const cells = book.cells.map((cell) =>
    cell.kind === 'tilt' && ids.includes(cell.id) ? { ...cell, tilt: { ...cell.tilt, limits } } : cell,
  );
  return { ...book, cells };
}
