import type { CellId } from '$src/cells/kinds';
import { bench } from '../bench.svelte';

/** Which cell is being read: the one at hand while it is in the window, else the one the window stands at. */
class PlaceInBook {
  /** The cell on the line a fifth down the window; null before any has been seen. */
  onLine: CellId | null = $state(null);
  /** The cell that holds the focus, until the page is scrolled on by hand. */
  #focused: CellId | null = $state(null);

  get here(): CellId | null {
    const focused = this.#focused;
    return focused !== null && bench.isVisible(focused) ? focused : this.onLine;
  }

  /** A cell added or gone to at the end of a book cannot be scrolled up to the line, but takes the focus. */
  focusMoved(event: FocusEvent): void {
    const { target } = event;
    this.#focused = target instanceof Element ? (target.closest('[data-cell]')?.id ?? null) : null;
  }

  scrolledOn(): void {
    this.#focused = null;
  }
}

export const placeInBook = new PlaceInBook();
