import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A source file: its path below src/, with slashes, and its text. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

/** One import: what it names, and whether it takes shapes only. */
export interface Import {
  readonly specifier: string;
  readonly isTypeOnly: boolean;
}

const SRC = fileURLToPath(new URL('../../src', import.meta.url));
const IS_SOURCE = /\.(ts|svelte)$/;

/** All sources of the project. The set-up scripts run before anything is built and are no layer. */
export function projectSources(): Source[] {
  return readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .map((path) => path.split(sep).join('/'))
    .filter((path) => IS_SOURCE.test(path) && !path.startsWith('setup/') && !path.endsWith('.d.ts'))
    .map((path) => ({ path, text: readFileSync(join(SRC, path), 'utf8') }));
}

const STATEMENT = /(?:^|[\n;>])\s*(import|export)\s+(type\s+)?(?:[\w*{}\s,$]+?\s+from\s+)?['"]([^'"]+)['"]/g;
const DYNAMIC = /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;
const WORKER_FILE = /new URL\(\s*['"](\.[^'"]+)['"]\s*,\s*import\.meta\.url/g;

/** Everything a source imports: statements, `import(…)` for code, and files named for a worker. */
export function importsOf({ text }: Source): Import[] {
  const statements = [...text.matchAll(STATEMENT)].map((match) => ({
    specifier: match[3] ?? '',
    isTypeOnly: match[2] !== undefined,
  }));
  const others = [...text.matchAll(DYNAMIC), ...text.matchAll(WORKER_FILE)];
  return [...statements, ...others.map((match) => ({ specifier: match[1] ?? '', isTypeOnly: false }))];
}

/** Path below src/ without extension of an import of our own; null for a library. */
export function ownTarget(from: Source, specifier: string): string | null {
  const plain = specifier.replace(/\.(ts|js|svelte)$/, '');
  if (plain.startsWith('$src/')) return plain.slice('$src/'.length);
  if (!plain.startsWith('.')) return null;
  return relative('/', join('/', dirname(from.path), plain))
    .split(sep)
    .join('/');
}

/** Path below src/ as imports write it. */
export const withoutExtension = (path: string): string => path.replace(/\.(ts|svelte)$/, '');

/** The code alone: comments and the insides of strings are blanked, so that words in them do not count. */
export function codeOf(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|[^:])\/\/[^\n]*/g, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, "''");
}
