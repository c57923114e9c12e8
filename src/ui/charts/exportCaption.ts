import type { CellId, PourCell } from '$src/cells/kinds';
import { listText } from '$src/report/wording';
import { bench } from '../bench.svelte';

/** What a picture says of itself once it has left its book. */
export interface Caption {
  readonly title: string;
  /** Of which section, metal and tilt; empty where its cell has none. */
  readonly of: string;
}

/** Book and cell that a chart stands in, and what its pours are made of. */
export function captionOf(chart: Element): Caption {
  const cell = bench.cell(chart.closest('[data-cell]')?.id ?? '');
  const { title } = bench.book;
  if (!cell) return { title, of: '' };
  const pours = cell.kind === 'pour' ? [cell] : pourCells(poursOf(cell));
  return { title: `${title}: ${cell.name}`, of: madeOf(pours) };
}

function poursOf(cell: NonNullable<ReturnType<typeof bench.cell>>): readonly (CellId | null)[] {
  if (cell.kind === 'study' || cell.kind === 'shop card') return [cell.pour];
  return cell.kind === 'compare' || cell.kind === 'guess' ? cell.pours : [];
}

const pourCells = (ids: readonly (CellId | null)[]): PourCell[] =>
  ids.flatMap((id) => {
    const pour = id === null ? null : bench.cell(id);
    return pour?.kind === 'pour' ? [pour] : [];
  });

/** "section: hinge arm; metal: A356; tilt: steady and staged". */
const madeOf = (pours: readonly PourCell[]): string =>
  (['section', 'metal', 'tilt'] as const)
    .flatMap((part) => {
      const names = pours
        .map((pour) => bench.cell(pour[part] ?? '')?.name)
        .filter((name) => name !== undefined);
      return names.length === 0 ? [] : [`${part}: ${listText([...new Set(names)])}`];
    })
    .join('; ');
