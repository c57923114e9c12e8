import { cardSource } from '$src/cells/cardSource';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import type { PourRecord } from '$src/core/pour/record';
import frame from '$src/report/card/card.css?raw';
import drawings from '$src/report/card/cardDrawings.css?raw';
import { cardHtml } from '$src/report/card/cardHtml';
import narrow from '$src/report/card/cardNarrow.css?raw';
import tables from '$src/report/card/cardTables.css?raw';
import { escaped } from '$src/report/drawing/paper';
import type { SoundFinding } from '$src/report/study/soundFinding';
import type { ChosenCard } from './chooseCard';

const BODY =
  'body { margin: 14mm auto; width: 182mm; max-width: 100%; background: #fff; } @media print { body { margin: 0; } }';

const LOOKS = [BODY, frame, drawings, tables, narrow].join('\n');

/** A card as a page of its own: no script, nothing fetched. */
export function cardPage(
  book: Book,
  { pour, card }: ChosenCard,
  record: PourRecord,
  sound: SoundFinding,
): string {
  const isStopped = record.outcome.kind === 'stopped';
  const warning = isStopped ? 'Its computation stopped before the end.' : null;
  const source = cardSource(book, evaluateBook(book), pour, card, { record, warning, sound });
  if (!source) throw new Error(`${pour.name} has no section or metal, expected a pour in order.`);
  const title = escaped(`${book.casting || book.title}: shop card`);
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title>
<style>${LOOKS}</style></head>
<body>
${cardHtml(source, 'card')}
</body>
</html>
`;
}
