import type { CellId } from '$src/cells/kinds';
import { drawInTurn } from './drawingTurns';

/** However long the book, all of it is drawn after so many turns. */
const TURNS = 40;
/** Frames of cells are drawn so far ahead of their bodies. */
const AHEAD = 3;

/**
 * Bodies of the cells are drawn from the top down, each in its turn, so that the window is soon full and the page answers
 * between two of them; a book that is opened later is drawn so too.
 */
class Bodies {
  /** So many are drawn: none before a turn for it has come, since to open a book is a piece of work of its own. */
  count: number = $state(0);
  /** What the window shows of the book is drawn. Work that takes the processor from the page can begin. */
  isWindowFull: boolean = $state(false);

  /** Another book is about to be shown. */
  begin(): void {
    this.count = 0;
    this.isWindowFull = false;
  }

  /** So many cells are on the page, with or without a body. */
  get frames(): number {
    return this.count === 0 ? 0 : this.count + AHEAD;
  }

  get isAllDrawn(): boolean {
    return this.count === Number.POSITIVE_INFINITY;
  }

  /** Draws on when its turn comes; returns the undoing. Call inside an effect that names the cells on the page. */
  drawOn(ids: readonly CellId[]): (() => void) | undefined {
    return this.isAllDrawn ? undefined : drawInTurn(() => this.#draw(ids), true);
  }

  #draw(ids: readonly CellId[]): void {
    const last = ids[this.count - 1];
    this.isWindowFull ||= this.count >= ids.length || (last !== undefined && reachesBelowWindow(last));
    const step = Math.ceil(ids.length / TURNS);
    this.count = this.count < ids.length ? this.count + step : Number.POSITIVE_INFINITY;
  }
}

function reachesBelowWindow(id: CellId): boolean {
  const bottom = document.getElementById(id)?.getBoundingClientRect().bottom;
  return bottom !== undefined && bottom > innerHeight;
}

export const bodies = new Bodies();
