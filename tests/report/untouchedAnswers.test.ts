import { expect, test } from 'vitest';
import { checkTeachersAnswers, NO_ANSWERS } from '$src/report/guess/teachersAnswers';

test('answers nobody has touched lack one thing; begun ones are told field by field', () => {
  const [untouched, ...more] = checkTeachersAnswers(NO_ANSWERS);
  expect(more).toEqual([]);
  expect(untouched).toMatchObject({ path: 'own', lacking: 'answers' });
  const begun = checkTeachersAnswers({ ...NO_ANSWERS, answers: ['It froze', ''] });
  expect(begun.map(({ path }) => path)).toEqual(['own.answers.1', 'own.right']);
  expect(begun.every(({ lacking }) => lacking === undefined)).toBe(true);
});
