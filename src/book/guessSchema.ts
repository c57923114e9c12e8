import * as v from 'valibot';
import { ASKS } from '$src/report/guess/ask';

/** The guess made first in a book: shapes and sizes only. */

const LONGEST_ID = 300;
const LONGEST_QUESTION = 2000;
const MOST_POINTS = 50;
const MOST_POURS = 20;
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_ID));

export const guessFields = {
  pours: v.pipe(v.array(id), v.maxLength(MOST_POURS)),
  question: v.pipe(v.string(), v.maxLength(LONGEST_QUESTION)),
  ask: v.picklist(ASKS.map(({ ask }) => ask)),
  drawn: v.pipe(v.array(v.pipe(v.number(), v.finite())), v.maxLength(MOST_POINTS)),
  picked: v.nullable(v.pipe(v.string(), v.maxLength(LONGEST_ID))),
  given: v.boolean(),
  hides: v.boolean(),
};
