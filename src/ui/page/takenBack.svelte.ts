import { bench } from '../bench.svelte';
import { fetchPart } from '../fetchPart';

/** Long enough to be read [ms]. */
const TOLD = 5000;

/** Undoing and redoing as the page does it: it tells what was taken back, and goes there where that is out of sight. */
class TakenBack {
  /** The step taken back or done again last; empty once it has been told. */
  told = $state('');
  #timer: ReturnType<typeof setTimeout> | undefined;

  undo(): void {
    this.#step('undone', bench.undoLabel, () => bench.undo());
  }

  redo(): void {
    this.#step('done again', bench.redoLabel, () => bench.redo());
  }

  #step(done: string, label: string | null, step: () => void): void {
    if (!label) return;
    const before = bench.book;
    step();
    this.told = `${done}: ${label}`;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => (this.told = ''), TOLD);
    void fetchPart('What goes to the change', () => import('./showChange')).then((part) =>
      part?.showChange(before, bench.book),
    );
  }
}

export const takenBack = new TakenBack();
