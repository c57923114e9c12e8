import type { PourPlan } from '$src/core/pour/plan';
import { alsoCovered, type StudyOfAnother } from './alsoCovered';
import { type FoundByStudy, type SoundFinding, soundFinding } from './soundFinding';

/** What a study of a book has found, as far as it was computed. */
export type KnownStudy = StudyOfAnother & FoundByStudy;

/** A study of the book a pour is in. */
export interface StudyOfBook {
  /** It varies that very pour, and no other. */
  readonly isOwn: boolean;
  /** Null while nothing of it was computed. */
  readonly known: KnownStudy | null;
  /** What it varies has been changed since. */
  readonly isOld: boolean;
}

/**
 * How far the settings of a pour may stray by the studies of its book, for its card: by its own, and where it has none,
 * by those of a pour that differs only in what they vary. `plan` is null while the pour is not in order.
 */
export function soundOfPour(plan: PourPlan | null, studies: readonly StudyOfBook[]): SoundFinding {
  const own = studies.filter(({ isOwn }) => isOwn);
  const current = (some: readonly StudyOfBook[]): KnownStudy[] =>
    some.flatMap(({ known, isOld }) => (known && !isOld ? [known] : []));
  if (own.length === 0) {
    const others = plan ? current(studies).flatMap((study) => alsoCovered(study, plan) ?? []) : [];
    return soundFinding(others.length, others);
  }
  const isOldKnown = own.some(({ known, isOld }) => isOld && (known?.results.size ?? 0) > 0);
  return soundFinding(own.length, current(own), isOldKnown);
}
