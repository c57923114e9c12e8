import type { Fold } from '$src/core/pour/record';
import type { Sample } from './sample';

/**
 * Watches the pour from outside the step and remembers what it saw. `look` is called every 2 ms with the same
 * reused sample; `folds` after the last look.
 */
export interface Watcher {
  readonly name: string;
  look(sample: Sample): void;
  folds(): Fold[];
}
