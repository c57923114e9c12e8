import type { Cell, CellId } from '$src/cells/kinds';
import { needsOf } from '$src/cells/needs';

/** What the links are looked up in. */
export interface LinkSource {
  /** Which cells take which, in book order. */
  readonly takers: ReadonlyMap<CellId, readonly CellId[]>;
  cell(id: CellId): Cell | null;
}

/** The links of a title strip: what the cell takes, or else what it feeds. */
export function linksOf(
  source: LinkSource,
  cell: Cell,
): { readonly word: 'takes' | 'feeds'; readonly cells: readonly Cell[] } {
  const named = (ids: readonly CellId[]) => ids.flatMap((id) => source.cell(id) ?? []);
  const taken = named(needsOf(cell));
  return taken.length > 0
    ? { word: 'takes', cells: taken }
    : { word: 'feeds', cells: named(source.takers.get(cell.id) ?? []) };
}
