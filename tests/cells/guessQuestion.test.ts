import { expect, test } from 'vitest';
import { firstQuestion, questionFor } from '$src/cells/guessQuestion';
import { ASKS } from '$src/report/guess/ask';

test('a question that stands as it was begun fits how it is answered: only what is drawn is to be drawn', () => {
  for (const { ask } of ASKS) {
    const question = questionFor(ask, firstQuestion('front speed'));
    expect(question).toBe(firstQuestion(ask));
    expect(/Draw/.test(question), ask).toBe(ask === 'front speed');
  }
});

test('a question of the teacher stays, and so does one that was emptied', () => {
  for (const { ask } of ASKS)
    for (const own of ['Why does it fold?', '']) expect(questionFor(ask, own)).toBe(own);
});
