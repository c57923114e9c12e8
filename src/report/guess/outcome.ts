import type { Answer, Choice } from './choices';

/** What came of a guess from choices, in words. */
export interface Outcome {
  readonly isRight: boolean;
  /** Right or not, in a word. */
  readonly head: string;
  readonly sentence: string;
  /** Says whether model or teacher answers; what the answer rests on follows it. */
  readonly whose: string;
}

export function outcomeOf(picked: string | null, answer: Answer, choices: readonly Choice[]): Outcome {
  const [yours, right] = [labelOf(picked, choices), labelOf(answer.key, choices)];
  const isRight = picked === answer.key;
  const whose = whoseAnswer(answer);
  if (answer.by === 'teacher') {
    const head = isRight ? 'As the teacher says.' : 'Not as the teacher says.';
    const sentence = isRight
      ? `You chose “${yours}”.`
      : `You chose “${yours}”; the teacher's answer is “${right}”.`;
    return { isRight, head, sentence, whose };
  }
  const head = isRight ? 'As computed.' : 'Not as computed.';
  const sentence = isRight
    ? `You chose “${yours}”, and so it is computed.`
    : `You chose “${yours}”; computed is “${right}”.`;
  return { isRight, head, sentence, whose };
}

export const whoseAnswer = ({ by }: Answer): string =>
  by === 'teacher' ? "The teacher's answer, not computed." : "The model's answer.";

export const labelOf = (key: string | null, choices: readonly Choice[]): string =>
  choices.find((choice) => choice.key === key)?.label ?? 'nothing';
