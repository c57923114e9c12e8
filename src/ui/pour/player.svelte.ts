import { fromMilliseconds } from '$src/core/units';

/** How fast time passes against the pour's own. */
export type Pace = 1 | 0.5 | 0.1;

/** Time between steps where motion is to be reduced [ms]. */
const STILL_STEP = 600;

const wantsStillness = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * The hand on the time of a pour or of several: it plays at true speed, half or tenth, and stops at the end. With
 * reduced motion it goes in single steps instead of moving.
 */
export class Player {
  /** Where the hand stands, 0 to `end` [s]. */
  time = $state(0);
  /** Time under the pointer on a chart [s], shown instead of `time` while it is there. */
  hovered: number | null = $state(null);
  isPlaying = $state(false);
  pace: Pace = $state(1);
  readonly shown: number = $derived(this.isPlaying ? this.time : (this.hovered ?? this.time));
  readonly #end: () => number;
  #request = 0;
  #last = 0;

  /** `end` says how long the pour is [s]; it may change. */
  constructor(end: () => number) {
    this.#end = end;
  }

  seek(time: number): void {
    this.time = Math.min(this.#end(), Math.max(0, time));
    this.hovered = null;
  }

  toggle(): void {
    if (this.isPlaying) this.pause();
    else this.play();
  }

  play(): void {
    if (this.time >= this.#end() - 1e-9) this.time = 0;
    this.isPlaying = true;
    this.#last = performance.now();
    this.#request = requestAnimationFrame(this.#advance);
  }

  pause(): void {
    this.isPlaying = false;
    cancelAnimationFrame(this.#request);
  }

  readonly #advance = (now: number): void => {
    if (!this.isPlaying) return;
    const gone = now - this.#last;
    if (gone > 0 && (gone >= STILL_STEP || !wantsStillness())) {
      this.#last = now;
      this.time = Math.min(this.#end(), this.time + fromMilliseconds(gone) * this.pace);
    }
    if (this.time >= this.#end()) this.pause();
    else this.#request = requestAnimationFrame(this.#advance);
  };
}
