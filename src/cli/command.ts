import { parseArgs } from 'node:util';

/** What the user asked for. */
export type Command =
  | { readonly do: 'help' }
  | { readonly do: 'run'; readonly path: string; readonly cell: string | null; readonly json: boolean }
  | { readonly do: 'check'; readonly path: string; readonly json: boolean }
  | { readonly do: 'refuse'; readonly reason: string };

const OPTIONS = {
  cell: { type: 'string' },
  json: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

/** Reads the words behind the program's name. Never throws: what cannot be read is refused with the reason. */
export function commandOf(words: readonly string[]): Command {
  const read = parsed(words);
  if ('reason' in read) return { do: 'refuse', reason: read.reason };
  const { values, positionals } = read;
  const [name, path, ...more] = positionals;
  if (values.help || name === 'help') return { do: 'help' };
  if (name !== 'run' && name !== 'check') {
    return {
      do: 'refuse',
      reason: name === undefined ? 'No command was given.' : `There is no command “${name}”.`,
    };
  }
  if (path === undefined) return { do: 'refuse', reason: `“${name}” needs the path of a book.` };
  if (more.length > 0) return { do: 'refuse', reason: `“${more[0]}” is one word too many; give one book.` };
  if (name === 'run') return { do: 'run', path, cell: values.cell ?? null, json: values.json };
  if (values.cell !== undefined)
    return { do: 'refuse', reason: '“check” looks at the whole book; leave --cell out.' };
  return { do: 'check', path, json: values.json };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    return { reason: error instanceof Error ? error.message : String(error) };
  }
}
