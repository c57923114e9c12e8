import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TERMS, type Term, termPieces, termSentence } from '$src/report/terms';

const glossary = readFileSync(new URL('../../docs/glossary.md', import.meta.url), 'utf8');
const rows = new Map(
  [...glossary.matchAll(/^\| (.+?)(?: ▪)? \| (.+) \|$/gm)].map(([, word, meaning]) => [word!, meaning!]),
);

describe('words explained on the page', () => {
  it.each(Object.keys(TERMS) as Term[])('%s means on the page what the glossary says', (term) => {
    expect(rows.get(TERMS[term].entry)).toBe(TERMS[term].meaning);
  });

  it('are one sentence each', () => {
    expect(termSentence('first flow')).toBe('First flow: inclination at which metal first passes the mouth.');
  });

  it.each([
    ['uphill: it rolls in; +17.9° without stand', 'stand', 'stand'],
    ['−3.0° without the capillary stand, −10.1° at a contact angle of 180°', 'stand', 'capillary stand'],
    ['over critical speed', 'critical', 'critical speed'],
    ['Not filled: gas held.', 'gas', 'gas held'],
    ['Folds film.', 'film', 'Folds film'],
  ] as const)('are found in “%s”', (text, term, words) => {
    const pieces = termPieces(text, [term]);
    expect(pieces.find((piece) => piece.term === term)?.text).toBe(words);
    expect(pieces.map((piece) => piece.text).join('')).toBe(text);
  });

  it('are marked at their first place only, and not where they are not asked for', () => {
    expect(termPieces('film upon film', ['film']).filter(({ term }) => term)).toHaveLength(1);
    expect(termPieces('film upon film', ['gas'])).toEqual([{ text: 'film upon film', term: null }]);
    expect(termPieces('it stands above', ['stand'])).toEqual([{ text: 'it stands above', term: null }]);
  });
});
