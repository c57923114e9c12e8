import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROGRAM = fileURLToPath(new URL('../../../dist/quietpour.js', import.meta.url));

export interface PrintedPour {
  readonly name: string;
  readonly figures: Readonly<Record<string, number | null>>;
}

/** Runs a book on the command line, as saved, and gives the pours it prints. */
export function runBook(text: string): PrintedPour[] {
  const folder = mkdtempSync(join(tmpdir(), 'quietpour-book-'));
  try {
    const book = join(folder, 'book.pourbook.json');
    writeFileSync(book, text);
    const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, 'run', book, '--json'], {
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    });
    if (status !== 0) throw new Error(`The command line ended with ${status}: ${stderr}`);
    return JSON.parse(stdout).pours as PrintedPour[];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
