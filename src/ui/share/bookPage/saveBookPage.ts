import { writeBook } from '$src/book/writeBook';
import type { Book, GuessCell, StudyCell } from '$src/cells/kinds';
import { bookPage } from '$src/report/bookPage/bookPage';
import { REPLAY_SCRIPT } from '$src/report/bookPage/replayScript';
import type { KeptStudy } from '$src/report/bookPage/studyPart';
import frame from '$src/report/card/card.css?raw';
import drawings from '$src/report/card/cardDrawings.css?raw';
import narrow from '$src/report/card/cardNarrow.css?raw';
import tables from '$src/report/card/cardTables.css?raw';
import { bench } from '../../bench.svelte';
import { downloadText, fileNameOf } from '../../files';
import { savedFile } from '../../savedFile.svelte';
import { onOwnMesh } from '../../study/onOwnMesh';
import { poursOnAxis } from '../../study/poursOnAxis';
import { isCurrent, studyRun } from '../../study/shownStudies.svelte';
import { cellPart } from './cellPart';
import { guessesSaved } from './guessesSaved';
import type { PageSource } from './pageSource';
import { guessRecords } from './resultPart';

const CARD_STYLE = [frame, drawings, tables, narrow].join('\n');

/** Hands the open book to the user as one page that replays its pours as they stand. */
export async function saveBookPage(): Promise<void> {
  const { book } = bench;
  await lookAtStudies(book);
  const source: PageSource = {
    book,
    evaluations: bench.evaluations,
    run: (id) => bench.run(id),
    study: keptStudy,
  };
  const bookFileName = fileNameOf(book.title);
  const page = bookPage({
    title: book.title,
    casting: book.casting,
    parts: book.cells.map((cell, index) => cellPart(source, cell, index)),
    bookText: writeBook(book),
    bookFileName,
    scriptHash: await hashOf(REPLAY_SCRIPT),
    partStyle: book.cells.some(({ kind }) => kind === 'shop card') ? CARD_STYLE : '',
  });
  const name = bookFileName.replace('.pourbook.json', '.html');
  downloadText(page, name, 'text/html');
  const isComputed = (guess: GuessCell) =>
    guess.ask === 'own answers' || guessRecords(source, guess).length === guess.pours.length;
  savedFile.say(name, guessesSaved(book, isComputed));
}

/** A study that nobody has come to yet has not said what is kept of it. */
async function lookAtStudies({ cells }: Book): Promise<void> {
  const unseen = cells.filter((cell) => cell.kind === 'study').filter(({ id }) => !studyRun(id));
  if (unseen.length === 0) return;
  const { keepStudy } = await import('../../study/studies.svelte');
  await Promise.all(unseen.map(keepStudy));
}

function keptStudy(cell: StudyCell): KeptStudy | null {
  const run = studyRun(cell.id);
  if (!run) return null;
  const { study, plan, axes, results, margins, tried, setRegion, setResult, spreads } = run;
  const isOld = !isCurrent(run, cell);
  return {
    study,
    plan,
    axes,
    results,
    margins,
    tried,
    setRegion,
    setResult,
    spreads,
    pours: axes.length === 1 ? poursOnAxis(cell, run, isOld) : [],
    onOwnMesh: isOld ? '' : onOwnMesh(cell, run),
    isDone: run.state === 'fresh',
    isOld,
  };
}

async function hashOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return btoa(String.fromCharCode(...new Uint8Array(digest)));
}
