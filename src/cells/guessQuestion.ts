import type { GuessAsk } from '$src/report/guess/ask';

/** The question a guess begins with, by how it is answered; the teacher words their own in its place. */
const QUESTIONS: Readonly<Record<GuessAsk, string>> = {
  'front speed': 'How fast does the front run along the die? Draw it before you look.',
  'speed call': 'Does the front stay under critical speed? Choose before you look.',
  'first flow': 'How does the metal come into the die? Choose before you look.',
  filling: 'Does the die fill while the metal is warm enough? Choose before you look.',
  quickest: 'In which of these pours does the front run fastest? Choose before you look.',
  'own answers': 'Which of these is right? Choose before you look.',
};

export const firstQuestion = (ask: GuessAsk): string => QUESTIONS[ask];

/** The question once it is answered otherwise: one that stands as it was begun goes with the answer, one of the teacher's stays. */
export const questionFor = (ask: GuessAsk, question: string): string =>
  Object.values(QUESTIONS).includes(question) ? QUESTIONS[ask] : question;
