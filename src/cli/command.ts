import { parseArgs } from 'node:util';
import type { Shard } from './studyPoints';

/** What the user asked for. */
export type Command =
  | { readonly do: 'help' }
  | { readonly do: 'run'; readonly path: string; readonly cell: string | null; readonly json: boolean }
  | { readonly do: 'check'; readonly path: string; readonly json: boolean }
  | {
      readonly do: 'study';
      readonly path: string;
      readonly cell: string | null;
      readonly folder: string;
      readonly shard: Shard | null;
    }
  | { readonly do: 'merge'; readonly folder: string }
  | { readonly do: 'card'; readonly path: string; readonly cell: string | null; readonly file: string }
  | { readonly do: 'refuse'; readonly reason: string };

const OPTIONS = {
  cell: { type: 'string' },
  out: { type: 'string' },
  shard: { type: 'string' },
  json: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

type Refused = Extract<Command, { do: 'refuse' }>;
type Name = Exclude<Command['do'], 'help' | 'refuse'>;
type Values = Extract<ReturnType<typeof parsed>, { values: unknown }>['values'];

/** What each command takes beside its one path. */
const TAKES: Readonly<Record<Name, { readonly path: string; readonly options: readonly string[] }>> = {
  run: { path: 'the path of a book', options: ['cell', 'json'] },
  check: { path: 'the path of a book', options: ['json'] },
  study: { path: 'the path of a book', options: ['cell', 'out', 'shard'] },
  merge: { path: 'the folder of a study', options: [] },
  card: { path: 'the path of a book', options: ['cell', 'out'] },
};

const refuse = (reason: string): Refused => ({ do: 'refuse', reason });

/** Reads the words behind the program's name. Never throws: what cannot be read is refused with the reason. */
export function commandOf(words: readonly string[]): Command {
  const read = parsed(words);
  if ('reason' in read) return refuse(read.reason);
  const { values, positionals } = read;
  const [name, path, ...more] = positionals;
  if (values.help || name === 'help') return { do: 'help' };
  if (name === undefined) return refuse('No command was given.');
  if (!isName(name)) return refuse(`There is no command “${name}”.`);
  if (path === undefined) return refuse(`“${name}” needs ${TAKES[name].path}.`);
  if (more.length > 0) return refuse(`“${more[0]}” is one word too many; give one path.`);
  const stray = Object.entries(values).find(
    ([option, value]) => value !== undefined && value !== false && !TAKES[name].options.includes(option),
  );
  if (stray) return refuse(`“${name}” knows no --${stray[0]}; leave it out.`);
  return build(name, path, values);
}

const isName = (name: string): name is Name => name in TAKES;

function build(name: Name, path: string, values: Values): Command {
  const cell = values.cell ?? null;
  switch (name) {
    case 'run':
      return { do: 'run', path, cell, json: values.json };
    case 'check':
      return { do: 'check', path, json: values.json };
    case 'study':
      return studyCommand(path, cell, values);
    case 'merge':
      return { do: 'merge', folder: path };
    case 'card':
      return values.out === undefined
        ? refuse('“card” needs --out and the file it goes to, e.g. --out card.html.')
        : { do: 'card', path, cell, file: values.out };
  }
}

function studyCommand(path: string, cell: string | null, { out, shard }: Values): Command {
  if (out === undefined) return refuse('“study” needs --out and the folder its files go to.');
  if (shard === undefined) return { do: 'study', path, cell, folder: out, shard: null };
  const part = shardOf(shard);
  return part
    ? { do: 'study', path, cell, folder: out, shard: part }
    : refuse(`“${shard}” is no part; give --shard 2/8 for the second of eight.`);
}

function shardOf(text: string): Shard | null {
  const [, number, of] = (/^(\d{1,4})\/(\d{1,4})$/.exec(text) ?? []).map(Number);
  if (number === undefined || of === undefined) return null;
  return number >= 1 && number <= of ? { number, of } : null;
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    return { reason: error instanceof Error ? error.message : String(error) };
  }
}
