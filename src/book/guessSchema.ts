import * as v from 'valibot';
import { ASKS } from '$src/report/guess/ask';
import { MOST_ANSWERS } from '$src/report/guess/teachersAnswers';

/** The guess made first in a book: shapes and sizes only. */

const LONGEST_ID = 300;
const LONGEST_QUESTION = 2000;
const MOST_POINTS = 50;
const MOST_POURS = 20;
const LONGEST_ANSWER = 300;
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_ID));

const own = v.strictObject({
  answers: v.pipe(v.array(v.pipe(v.string(), v.maxLength(LONGEST_ANSWER))), v.maxLength(MOST_ANSWERS)),
  right: v.nullable(v.pipe(v.number(), v.finite())),
  reason: v.pipe(v.string(), v.maxLength(LONGEST_QUESTION)),
});

export const guessFields = {
  pours: v.pipe(v.array(id), v.maxLength(MOST_POURS)),
  question: v.pipe(v.string(), v.maxLength(LONGEST_QUESTION)),
  ask: v.picklist(ASKS.map(({ ask }) => ask)),
  own: v.exactOptional(own),
  drawn: v.pipe(v.array(v.pipe(v.number(), v.finite())), v.maxLength(MOST_POINTS)),
  picked: v.nullable(v.pipe(v.string(), v.maxLength(LONGEST_ID))),
  given: v.boolean(),
  hides: v.boolean(),
};
