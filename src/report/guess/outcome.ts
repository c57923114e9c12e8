import type { Answer, Choice } from './choices';

/** What came of a guess from choices, in words. */
export interface Outcome {
  readonly isRight: boolean;
  readonly sentence: string;
}

export function outcomeOf(picked: string | null, answer: Answer, choices: readonly Choice[]): Outcome {
  const labelOf = (key: string | null): string =>
    choices.find((choice) => choice.key === key)?.label ?? 'nothing';
  const isRight = picked === answer.key;
  const sentence = isRight
    ? `You chose “${labelOf(picked)}”, and so it is computed.`
    : `You chose “${labelOf(picked)}”; computed is “${labelOf(answer.key)}”.`;
  return { isRight, sentence };
}
