/**
 * Work that draws waits its turn, one piece a frame, first come first served: between two pieces the page answers. What
 * a new record brings would else be drawn at once, and hold the page up for half a second.
 */
const waiting: (() => void)[] = [];
let isAsked = false;

/** Draws when its turn comes. Returns what takes it out of the line. */
export function drawInTurn(draw: () => void): () => void {
  waiting.push(draw);
  askFrame();
  return () => {
    const at = waiting.indexOf(draw);
    if (at >= 0) waiting.splice(at, 1);
  };
}

export const isAnyUndrawn = (): boolean => waiting.length > 0;

function askFrame(): void {
  if (isAsked) return;
  isAsked = true;
  // A page that is not looked at is given no frames.
  if (document.hidden) setTimeout(takeTurn);
  else requestAnimationFrame(afterFrame);
}

/** Once the frame is laid out and painted: what is drawn next is then no longer one piece of work with that. */
const afterFrame = (): void => void setTimeout(takeTurn);

function takeTurn(): void {
  isAsked = false;
  waiting.shift()?.();
  if (waiting.length > 0) askFrame();
}

/** Paper waits for nobody. Call where the page is made; returns the undoing. */
export function drawAllForPrint(): () => void {
  const drawAll = () => {
    while (waiting.length > 0) waiting.shift()?.();
  };
  addEventListener('beforeprint', drawAll);
  return () => removeEventListener('beforeprint', drawAll);
}
