import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runLook } from '$src/ui/charts/runLook';

/** As many as a comparison draws. */
const DRAWN = 8;
const looks = Array.from({ length: DRAWN }, (_, place) => runLook(place));
const read = (name: string): string => readFileSync(new URL(`../../../src/${name}`, import.meta.url), 'utf8');
const charts = read('ui/charts/charts.css');
const tokens = read('ui/tokens.css');
const savedPage = read('report/bookPage/bookPageStyle.ts');

test('every pour that a comparison draws looks like no other', () => {
  expect(new Set(looks).size).toBe(DRAWN);
});

const found = (text: string, pattern: RegExp): string => {
  const match = pattern.exec(text);
  if (!match) throw new Error(`Nothing like ${pattern}.`);
  return match[1]!;
};

test('no two of them have one dash, on the page and in a saved page', () => {
  const onPage = looks.map((look) =>
    found(charts, new RegExp(`\\.run-${look} \\{[^}]*--run-dash: ([^;]+);`)),
  );
  expect(new Set(onPage).size).toBe(DRAWN);
  const saved = looks.map(
    (_, place) => /dasharray:([^}]+)/.exec(found(savedPage, new RegExp(`\\.look-${place}\\{([^}]*)`)))?.[1],
  );
  expect(new Set(saved).size).toBe(DRAWN);
});

/** The block of tokens that begins so. */
const block = (start: string): string => tokens.slice(tokens.indexOf(start)).split('}')[0]!;
const LIGHT = block(':root {');
const DARK = block(':root[data-theme="dark"] {');
const MORE = tokens.slice(tokens.indexOf('@media (prefers-contrast: more)'));
const PAPERS = {
  light: { inks: LIGHT, papers: [LIGHT] },
  dark: { inks: DARK, papers: [DARK] },
  'light, more contrast': { inks: LIGHT, papers: [MORE.split('}')[0]!] },
  'dark, more contrast': { inks: DARK, papers: [MORE.split('}')[1]!] },
  print: {
    inks: tokens.slice(tokens.indexOf('@media print')),
    papers: [tokens.slice(tokens.indexOf('@media print'))],
  },
};

const channel = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
/** Relative luminance, WCAG 2. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) =>
    channel(Number.parseInt(colour.slice(at, at + 2), 16) / 255),
  );
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}
function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}
const colourOf = (text: string, name: string): string => found(text, new RegExp(`--${name}: (#[0-9a-f]{6})`));

const ALL = Object.entries(PAPERS);

test.each(ALL)('in %s each is seen on its paper, and words in its colour are read', (_, { inks, papers }) => {
  const grounds = papers.flatMap((text) => ['sheet', 'field'].map((paper) => colourOf(text, paper)));
  for (const look of looks) {
    const words = found(charts, new RegExp(`\\.run-${look} \\{[^}]*--run-words: var\\(--([^)]+)\\)`));
    for (const paper of grounds) {
      expect(contrast(colourOf(inks, `s-${look}`), paper), `line ${look}`).toBeGreaterThanOrEqual(3);
      expect(contrast(colourOf(inks, words), paper), `words of ${look}`).toBeGreaterThanOrEqual(4.5);
    }
  }
});

// Paper has no colours: there dashes, markers and labels tell them apart.
test.each(ALL.filter(([name]) => name !== 'print'))('in %s no two are one colour', (_, { inks }) => {
  expect(new Set(looks.map((look) => colourOf(inks, `s-${look}`))).size).toBe(DRAWN);
});
