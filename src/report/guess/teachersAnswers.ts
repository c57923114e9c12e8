import type { Issue } from '$src/core/issue';
import type { Answer, Choice } from './choices';

/** Answers that a teacher wrote to a question of their own: what is right is the teacher's word, and nothing computed. */
export interface TeachersAnswers {
  readonly answers: readonly string[];
  /** Which of them is right, counted from 0; null before one is marked. */
  readonly right: number | null;
  /** Why it is right, in plain text; may be empty. */
  readonly reason: string;
}

export const FEWEST_ANSWERS = 2;
export const MOST_ANSWERS = 5;
export const NO_ANSWERS: TeachersAnswers = { answers: ['', ''], right: null, reason: '' };

const keyOf = (index: number): string => `answer ${index + 1}`;

export const teachersChoices = ({ answers }: TeachersAnswers): Choice[] =>
  answers.map((label, index) => ({ key: keyOf(index), label }));

/** Null while no answer is marked as right. */
export const teachersAnswer = ({ right, reason }: TeachersAnswers): Answer | null =>
  right === null ? null : { key: keyOf(right), because: reason.trim(), by: 'teacher' };

/** What is wrong with them; paths from `own` on. */
export function checkTeachersAnswers(own: TeachersAnswers | null): Issue[] {
  if (own === null || isUntouched(own)) return [UNWRITTEN];
  return [...countIssues(own), ...answerIssues(own), ...rightIssues(own)];
}

/** Empty fields that nobody has typed into are no mistake yet. */
const isUntouched = ({ answers, right }: TeachersAnswers): boolean =>
  right === null && answers.join('') === '';

const UNWRITTEN: Issue = {
  path: 'own',
  message: 'The teacher has written no answers.',
  remedy: 'Write two to five answers and mark the right one.',
  lacking: 'answers',
};

function countIssues({ answers: { length } }: TeachersAnswers): Issue[] {
  if (length >= FEWEST_ANSWERS && length <= MOST_ANSWERS) return [];
  const found = length === 1 ? 'There is one answer' : `There are ${length} answers`;
  return [{ path: 'own.answers', message: `${found} to choose from.`, remedy: 'Give two to five answers.' }];
}

function answerIssues({ answers }: TeachersAnswers): Issue[] {
  const words = answers.map((answer) => answer.trim());
  return words.flatMap((answer, index): Issue[] => {
    const path = `own.answers.${index}`;
    if (answer === '')
      return [{ path, message: `Answer ${index + 1} is empty.`, remedy: 'Write it, or take it out.' }];
    const first = words.indexOf(answer);
    if (first === index) return [];
    const message = `Answers ${first + 1} and ${index + 1} are the same.`;
    return [{ path, message, remedy: 'Write another, or take one out.' }];
  });
}

function rightIssues({ answers, right }: TeachersAnswers): Issue[] {
  const path = 'own.right';
  if (right === null)
    return [{ path, message: 'No answer is marked as right.', remedy: 'Mark the right one.' }];
  if (Number.isInteger(right) && right >= 0 && right < answers.length) return [];
  const message = `The answer marked as right, number ${right} counted from 0, is not there.`;
  return [{ path, message, remedy: 'Mark one of the answers that are there.' }];
}
