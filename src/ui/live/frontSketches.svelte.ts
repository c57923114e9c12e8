import { SvelteMap } from 'svelte/reactivity';
import type { CellId } from '$src/cells/kinds';
import { type PourPlan, SKETCH_MESH_CELLS } from '$src/core/pour/plan';
import type { FrontSketch } from '$src/core/pour/record';
import type { SketchClient } from '$src/worker/client';

/** A sketch, and the full plan it stands for. */
export interface Sketched {
  readonly planHash: string;
  readonly sketch: FrontSketch;
}

interface Asked {
  readonly planHash: string;
  readonly plan: PourPlan;
  readonly at: number;
}

/** Name of the browser's time measures, from the ask to the sketch at hand. */
export const SKETCH_MEASURE = 'front sketch';

/**
 * Front-speed curves that keep up with a hand. Of many asks for one pour the newest wins; the run under way is always
 * finished, since it is short and a curve one step behind the hand is better than none.
 */
export class FrontSketches {
  /** Something is held by the hand: full runs wait, sketches are made. */
  isHeld: boolean = $state(false);
  readonly sketched = new SvelteMap<CellId, Sketched>();
  readonly #waiting = new Map<CellId, Asked>();
  #isBusy = false;
  #client: Promise<SketchClient> | null = null;
  readonly #makeClient: () => Promise<SketchClient>;

  constructor(makeClient: () => Promise<SketchClient>) {
    this.#makeClient = makeClient;
  }

  hold(): void {
    this.isHeld = true;
  }

  /** What was not begun is not needed any more. */
  release(): void {
    this.#waiting.clear();
    this.isHeld = false;
  }

  ask(id: CellId, plan: PourPlan, planHash: string): void {
    if (this.sketched.get(id)?.planHash === planHash) return;
    // Put behind the other pours that wait, so that none of them is starved.
    this.#waiting.delete(id);
    this.#waiting.set(id, { plan, planHash, at: performance.now() });
    if (!this.#isBusy) void this.#work();
  }

  async #work(): Promise<void> {
    this.#isBusy = true;
    try {
      this.#client ??= this.#makeClient();
      const client = await this.#client;
      for (let next = this.#take(); next; next = this.#take()) await this.#sketch(client, ...next);
    } catch {
      // No sketch is made; the full run that follows says what is wrong.
      this.#client = null;
      this.#waiting.clear();
    } finally {
      this.#isBusy = false;
    }
  }

  #take(): [CellId, Asked] | undefined {
    const [next] = this.#waiting;
    if (next) this.#waiting.delete(next[0]);
    return next;
  }

  async #sketch(client: SketchClient, id: CellId, { plan, planHash, at }: Asked): Promise<void> {
    const sketch = await client.front(asSketch(plan));
    this.sketched.set(id, { planHash, sketch });
    performance.measure(SKETCH_MEASURE, { start: at, end: performance.now() });
  }
}

/** Coarse and without heat, which the speed of the front hardly feels. */
function asSketch(plan: PourPlan): PourPlan {
  const meshCells = Math.min(SKETCH_MESH_CELLS, plan.computation.meshCells);
  return { ...plan, heat: null, computation: { ...plan.computation, meshCells } };
}
