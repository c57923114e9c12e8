import type { Cell, CellKind, SectionCell } from '$src/cells/kinds';
import { METRIC } from '$src/core/units';
import { plainTable } from '$src/report/bookPage/table';
import { paragraph } from '$src/report/bookPage/words';
import { escaped } from '$src/report/drawing/paper';
import { inUnits } from '$src/report/inUnits';
import { sectionInputs } from '$src/report/sectionInputs';
import { startReadings } from '../../section/levelReadings';
import { drawnWith } from '../../section/sectionDrawnWith';
import { levelWords, OTHERS, pictureWords } from '../../section/sectionWords';
import type { PageSource } from './pageSource';
import { sectionDrawing } from './sectionDrawing';

/** The section of a cell that is in order, drawn as the page draws it, what it is drawn with, and its measures. `id` is free in the page. */
export function sectionPart(source: PageSource, cell: SectionCell, id: string): string {
  const { section } = cell;
  const units = source.book.units ?? METRIC;
  const drawn = drawnWith(aroundOf(source), cell, section);
  const { level, shape } = startReadings(section, drawn);
  const words = pictureWords(cell.name, section, drawn, units);
  const told = levelWords(drawn, level, units);
  return [
    `<figure>${sectionDrawing(section, { words, metal: shape, units }, id)}</figure>`,
    drawn.from
      ? `<p>Drawn with ${escaped(drawn.from.name)}${drawn.charge ? '' : OTHERS}: ${escaped(told)}.</p>`
      : paragraph(drawn.assumed ?? '', units),
    plainTable({
      caption: 'Measures',
      columns: ['measure', 'value'],
      rows: sectionInputs(section, units).map(({ name, text }) => [name, inUnits(text, units)]),
    }),
  ].join('\n');
}

const aroundOf = ({ book, evaluations }: PageSource) => {
  const ofKind = <K extends CellKind>(kind: K) =>
    book.cells.filter((cell): cell is Extract<Cell, { kind: K }> => cell.kind === kind);
  return {
    charges: () => ofKind('charge'),
    pours: () => ofKind('pour'),
    metals: () => ofKind('metal'),
    cell: (id: string | null) => book.cells.find((cell) => cell.id === id) ?? null,
    evaluation: (id: string) => evaluations.get(id)!,
  };
};
