import type { Section } from '$src/core/section/section';
import { type StrokeReadings, strokeSteps } from './levelReadings';
import type { DrawnWith } from './sectionDrawnWith';

/** Above this cost [ms] the stroke is not worked out within a frame, but after a short pause. */
const WITHIN_A_FRAME = 8;
const PAUSE = 140;

/** What was worked out, and from what. */
interface Kept {
  readonly section: Section;
  readonly key: string;
  readonly readings: StrokeReadings;
}

const keyOf = ({ start, end, volume, liquid }: DrawnWith): string =>
  [start, end, volume, liquid.density, liquid.surfaceTension, liquid.contactAngle, liquid.criticalSpeed].join(
    ' ',
  );

/**
 * Works out the readings over the stroke: within the frame while they are cheap here, else as soon as the hand rests.
 * The last ones stay on show meanwhile, marked late.
 */
export class StrokeClock {
  #kept: Kept | null = $state.raw(null);
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Cost of the last time [ms]; unknown counts as dear. */
  cost: number = Number.POSITIVE_INFINITY;

  get readings(): StrokeReadings | null {
    return this.#kept?.readings ?? null;
  }

  isLate(section: Section, drawn: DrawnWith): boolean {
    return this.#kept?.section !== section || this.#kept.key !== keyOf(drawn);
  }

  /** Call inside an effect; gives its clean-up. */
  follow(section: Section, drawn: DrawnWith): () => void {
    clearTimeout(this.#timer);
    const key = keyOf(drawn);
    const steps = strokeSteps(section, drawn);
    const isCheap = this.cost <= WITHIN_A_FRAME;
    let spent = 0;
    const work = () => {
      const before = performance.now();
      const step = steps.next();
      spent += performance.now() - before;
      if (step.done) {
        this.cost = spent;
        this.#kept = { section, key, readings: step.value };
      } else if (isCheap) work();
      else this.#timer = setTimeout(work);
    };
    if (isCheap) work();
    else this.#timer = setTimeout(work, PAUSE);
    return () => clearTimeout(this.#timer);
  }
}
