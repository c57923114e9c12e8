import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { lexer, type Token, walkTokens } from 'marked';
import { describe, expect, it } from 'vitest';
import { headingName } from '$src/ui/guide/headingName';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const DOCUMENTS = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(PROJECT, 'docs')).flatMap((file) => (file.endsWith('.md') ? [`docs/${file}`] : [])),
];
/** No picture of the guide weighs more [bytes]. */
const HEAVIEST = 120_000;

const textOf = (document: string): string => readFileSync(join(PROJECT, document), 'utf8');
/** Every token of a document, those within others too. */
function tokensOf(text: string): Token[] {
  const all: Token[] = [];
  walkTokens(lexer(text), (token) => {
    all.push(token);
  });
  return all;
}

/** Where links and pictures lead, but for other sites. */
function targets(text: string): string[] {
  return tokensOf(text)
    .flatMap((token) => (token.type === 'link' || token.type === 'image' ? [String(token['href'])] : []))
    .filter((target) => !/^[a-z]+:/.test(target));
}

/** The names by which headings can be linked to. */
function headings(text: string): string[] {
  return tokensOf(text)
    .flatMap((token) => (token.type === 'heading' ? [String(token['text'])] : []))
    .map(headingName);
}

function leadsNowhere(document: string, target: string): boolean {
  const [path = '', heading] = decodeURIComponent(target).split('#');
  const file = path === '' ? document : join(dirname(document), path);
  if (!existsSync(join(PROJECT, file))) return true;
  return heading !== undefined && !headings(textOf(file)).includes(heading);
}

describe('every link leads somewhere', () => {
  it.each(DOCUMENTS)('%s', (document) => {
    expect(targets(textOf(document)).filter((target) => leadsNowhere(document, target))).toEqual([]);
  });

  it('finds a file and a heading that are not there', () => {
    expect(leadsNowhere('docs/glossary.md', 'nothing.md')).toBe(true);
    expect(leadsNowhere('docs/glossary.md', '../README.md#nothing')).toBe(true);
    expect(leadsNowhere('docs/user-guide.md', '../README.md#how-far-to-believe-it')).toBe(false);
  });
});

describe('the pictures', () => {
  const guide = targets(textOf('docs/user-guide.md')).filter((target) => target.startsWith('pictures/'));
  const kept = readdirSync(join(PROJECT, 'docs/pictures')).map((file) => `pictures/${file}`);

  it('are all in the guide, each once, and light', () => {
    expect([...guide].sort()).toEqual([...kept].sort());
    for (const file of kept) expect(statSync(join(PROJECT, 'docs', file)).size, file).toBeLessThan(HEAVIEST);
  });
});
