/** Something to be drawn. */
interface Piece {
  readonly draw: () => void;
  /** Nothing else may be drawn in its frame: it goes on after `draw` has returned, or takes long. */
  readonly isAlone: boolean;
}

/** Further pieces are drawn in the same frame as long as this has not gone by [ms]: each frame has its own cost. */
const SHARE = 6;

/**
 * Work that draws waits its turn, little in a frame, first come first served: between two frames the page answers. What
 * a new record brings would else be drawn at once, and hold the page up for half a second.
 */
const waiting: Piece[] = [];
let isAsked = false;

/** Draws when its turn comes. Returns what takes it out of the line. */
export function drawInTurn(draw: () => void, isAlone = false): () => void {
  const piece = { draw, isAlone };
  waiting.push(piece);
  askFrame();
  return () => leave(piece);
}

/** As `drawInTurn`, before all that waits: for what has its place on the page already, and is missing in it. */
export function drawNext(draw: () => void): () => void {
  const piece = { draw, isAlone: false };
  waiting.unshift(piece);
  askPainted();
  return () => leave(piece);
}

/** What was fetched, once its turn to be drawn has come: fetching it and drawing it are two pieces of work. */
export async function inItsTurn<Part>(fetched: Promise<Part>): Promise<Part> {
  const part = await fetched;
  await new Promise<void>((resolve) => void drawInTurn(resolve, true));
  return part;
}

export const isAnyUndrawn = (): boolean => waiting.length > 0;

function leave(piece: Piece): void {
  const at = waiting.indexOf(piece);
  if (at >= 0) waiting.splice(at, 1);
}

function askFrame(): void {
  if (isAsked) return;
  isAsked = true;
  // A page that is not looked at is given no frames.
  if (document.hidden) setTimeout(takeTurn);
  else requestAnimationFrame(afterFrame);
}

/** Asked while a frame is being laid out: it is painted first, and no other frame waited for. */
function askPainted(): void {
  if (isAsked) return;
  isAsked = true;
  setTimeout(takeTurn);
}

/** Once the frame is laid out and painted: what is drawn next is then no longer one piece of work with that. */
const afterFrame = (): void => void setTimeout(takeTurn);

function takeTurn(): void {
  isAsked = false;
  const end = performance.now() + SHARE;
  let isAlone = false;
  do {
    const piece = waiting.shift();
    piece?.draw();
    isAlone = piece?.isAlone ?? true;
  } while (!isAlone && waiting[0]?.isAlone === false && performance.now() < end);
  if (waiting.length > 0) askFrame();
}

/** Paper waits for nobody. Call where the page is made; returns the undoing. */
export function drawAllForPrint(): () => void {
  const drawAll = () => {
    while (waiting.length > 0) waiting.shift()?.draw();
  };
  addEventListener('beforeprint', drawAll);
  return () => removeEventListener('beforeprint', drawAll);
}
