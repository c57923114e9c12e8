import { capital } from './wording';
/** Words of ours that are explained where they are met, each with its line of docs/glossary.md. */
export const TERMS = {
  stand: {
    entry: 'capillary stand',
    seenAs: /(?:capillary )?stand\b|stands on/,
    meaning: 'the depth a blunt front reaches before it moves, held by surface tension',
  },
  critical: {
    entry: 'critical speed',
    seenAs: /critical(?: front)?(?: speed)?/,
    meaning: 'front speed above which the surface can fold in its film; called critical velocity elsewhere',
  },
  film: {
    entry: 'film, skin',
    seenAs: /[Ff]olds film|film/,
    meaning: 'the thin oxide on liquid metal; harmless on top, a crack when it is folded in',
  },
  'folded skin': {
    entry: 'folded skin',
    seenAs: /folded skin/,
    meaning: 'length of skin, seen in the section, that the surface has folded into the metal',
  },
  gas: {
    entry: 'gas sealed in',
    seenAs: /gas held|held up by gas|gas sealed in|gas left under the roof/,
    meaning:
      'air that the metal has shut in; it is pressed and holds the metal back until a vent lets it out',
  },
  'first flow': {
    entry: 'first flow',
    seenAs: /first flow/,
    meaning: 'inclination at which metal first passes the mouth',
  },
  'largest fall': {
    entry: 'largest fall',
    seenAs: /largest fall/,
    meaning: 'greatest height metal drops from the pool that feeds to what receives it',
  },
  fresh: {
    entry: 'fresh, out of date',
    seenAs: /fresh|out of date/,
    meaning: 'computed from the present inputs, or from earlier ones',
  },
} as const satisfies Readonly<Record<string, TermEntry>>;

interface TermEntry {
  /** The word as the glossary lists it. */
  readonly entry: string;
  /** How it is written on the page. */
  readonly seenAs: RegExp;
  readonly meaning: string;
}

export type Term = keyof typeof TERMS;

/** A piece of a text; with a term where it is one that is explained. */
export interface TermPiece {
  readonly text: string;
  readonly term: Term | null;
}

/** A text in pieces, the first place of each of those terms by itself. */
export function termPieces(text: string, terms: readonly Term[]): TermPiece[] {
  const found = terms
    .flatMap((term) => {
      const match = TERMS[term].seenAs.exec(text);
      return match ? [{ term, from: match.index, text: match[0] }] : [];
    })
    .toSorted((a, b) => a.from - b.from);
  const pieces: TermPiece[] = [];
  let at = 0;
  for (const { term, from, text: words } of found) {
    if (from < at) continue;
    if (from > at) pieces.push({ text: text.slice(at, from), term: null });
    pieces.push({ text: words, term });
    at = from + words.length;
  }
  if (at < text.length) pieces.push({ text: text.slice(at), term: null });
  return pieces;
}

/** What a term means, as a sentence with the word itself. */
export function termSentence(term: Term): string {
  const { entry, meaning } = TERMS[term];
  return `${capital(entry)}: ${meaning}.`;
}
