import { writeFile } from 'node:fs/promises';
import { bookIssues } from '$src/book/bookIssues';
import type { Book } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import { pourJson } from '$src/report/pourFile';
import { cardPage } from './cardPage';
import { chooseCard } from './chooseCard';
import { choosePours } from './choosePours';
import { chooseStudy } from './chooseStudy';
import { type Command, commandOf } from './command';
import { type ComputedPour, computePours } from './computePours';
import { figureTable } from './figureTable';
import { HELP } from './help';
import { issueText } from './issueText';
import { openBook } from './openBook';
import { type LookedAt, soundOfStudies } from './soundOfStudies';
import { mergeFolder, writeShard, writeStudy } from './studyFolder';
import { studyPoints, WHOLE } from './studyPoints';

/** How the program ends. */
const EXIT = { done: 0, wrongInput: 1, pourStopped: 2 } as const;
type Exit = (typeof EXIT)[keyof typeof EXIT];

async function obey(command: Command): Promise<Exit> {
  switch (command.do) {
    case 'help':
      process.stdout.write(HELP);
      return EXIT.done;
    case 'refuse':
      process.stderr.write(`${command.reason}\n\n${HELP}`);
      return EXIT.wrongInput;
    case 'check':
      return checkBook(command);
    case 'run':
      return runBook(command);
    case 'study':
      return studyBook(command);
    case 'merge':
      return mergeStudy(command);
    case 'card':
      return writeCard(command);
  }
}

async function checkBook({ path, json }: Extract<Command, { do: 'check' }>): Promise<Exit> {
  const read = await openBook(path);
  if ('issues' in read) return refuse(read.issues, json);
  const issues = bookIssues(read.book);
  if (issues.length > 0) return refuse(issues, json);
  process.stdout.write(json ? jsonText({ issues }) : soundText(read.book));
  return EXIT.done;
}

async function runBook({ path, cell, json }: Extract<Command, { do: 'run' }>): Promise<Exit> {
  const read = await openBook(path);
  if ('issues' in read) return refuse(read.issues, json);
  const chosen = choosePours(read.book, cell);
  if ('issues' in chosen) return refuse(chosen.issues, json);
  const pours = await computePours(chosen.plans);
  process.stdout.write(
    json ? jsonText(bookJson(read.book, pours)) : `${read.book.title}\n\n${figureTable(pours)}`,
  );
  return pours.some(({ record }) => record.outcome.kind === 'stopped') ? EXIT.pourStopped : EXIT.done;
}

async function studyBook({ path, cell, folder, shard }: Extract<Command, { do: 'study' }>): Promise<Exit> {
  const read = await openBook(path);
  if ('issues' in read) return refuse(read.issues, false);
  const chosen = chooseStudy(read.book, cell);
  if ('issues' in chosen) return refuse(chosen.issues, false);
  const results = await studyPoints(chosen, shard ?? WHOLE);
  const written = shard
    ? [await writeShard(folder, chosen.head, shard, results)]
    : await writeStudy(folder, chosen.head, results);
  return say(`“${chosen.head.cell}”, ${results.size} points.`, written);
}

async function mergeStudy({ folder }: Extract<Command, { do: 'merge' }>): Promise<Exit> {
  const merged = await mergeFolder(folder);
  if ('issues' in merged) return refuse(merged.issues, false);
  const written = await writeStudy(folder, merged.head, merged.results);
  return say(`“${merged.head.cell}”, ${merged.results.size} points.`, written);
}

async function writeCard({ path, cell, file }: Extract<Command, { do: 'card' }>): Promise<Exit> {
  const read = await openBook(path);
  if ('issues' in read) return refuse(read.issues, false);
  const chosen = chooseCard(read.book, cell);
  if ('issues' in chosen) return refuse(chosen.issues, false);
  const [computed] = await computePours([{ name: chosen.pour.name, plan: chosen.plan }]);
  const { studies, sound } = await soundOfStudies(read.book, chosen);
  await writeFile(file, cardPage(read.book, chosen, computed!.record, sound));
  say([`Shop card of “${chosen.pour.name}”.`, ...studies.map(lookedAt)].join('\n'), [file]);
  return computed!.record.outcome.kind === 'stopped' ? EXIT.pourStopped : EXIT.done;
}

const lookedAt = ({ name, pours }: LookedAt): string =>
  `How far it may stray: “${name}”, ${pours} ${pours === 1 ? 'pour' : 'pours'}.`;

function say(what: string, written: readonly string[]): Exit {
  process.stdout.write(`${[what, ...written].join('\n')}\n`);
  return EXIT.done;
}

function refuse(issues: readonly Issue[], json: boolean): Exit {
  if (json) process.stdout.write(jsonText({ issues }));
  for (const issue of issues) process.stderr.write(`${issueText(issue)}\n`);
  return EXIT.wrongInput;
}

function soundText(book: Book): string {
  return `“${book.title}” is in order: ${book.cells.length} cells.\n`;
}

function bookJson(book: Book, pours: readonly ComputedPour[]) {
  return {
    book: book.title,
    casting: book.casting,
    pours: pours.map(({ name, record }) => pourJson(name, record)),
  };
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}

/** Whoever reads the output may have had enough of it, as `head` has. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(EXIT.done);
});

try {
  process.exitCode = await obey(commandOf(process.argv.slice(2)));
} catch (error) {
  process.stderr.write(`A pour could not be computed: ${error instanceof Error ? error.message : error}\n`);
  process.exitCode = EXIT.pourStopped;
}
