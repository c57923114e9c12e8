import type { CellKind } from '$src/cells/kinds';

/** The kinds in the order a book is usually built, each with what it is for. */
export const KINDS: readonly { readonly kind: CellKind; readonly what: string }[] = [
  { kind: 'note', what: 'Words between the cells.' },
  { kind: 'section', what: 'Die and basin in cross section, with the metal at the start.' },
  { kind: 'metal', what: 'What is poured, each value with its source.' },
  { kind: 'charge', what: 'How much metal goes in.' },
  { kind: 'tilt', what: 'How the machine turns, against time.' },
  { kind: 'pour', what: 'One run: section, metal, charge and tilt.' },
  { kind: 'compare', what: 'Pours side by side, and what differs.' },
  { kind: 'study', what: 'One or two settings varied; the pour window.' },
  { kind: 'shop card', what: 'One printed page for the shop floor.' },
  { kind: 'castings', what: 'Castings actually poured, good and bad, against what was predicted.' },
  { kind: 'guess', what: 'For a class: a guess, made before the result is seen.' },
];
