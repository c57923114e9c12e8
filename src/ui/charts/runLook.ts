/**
 * How a line is drawn. Runs a to h keep colour, dash and marker in every chart, each its own; `level` is the level fill, `bare`
 * the level fill without stand, `sketch` the coarse run that follows a hand.
 */
export type RunLook = 'a' | 'b' | 'c' | 'd' | 'e' | 'f' | 'g' | 'h' | 'level' | 'bare' | 'ink' | 'sketch';

const RUNS: readonly RunLook[] = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];

/** Has a marker of its own. */
export const isRun = (look: RunLook): boolean => RUNS.includes(look);

/** Look of the pour at this place in a comparison; after eight the looks repeat, told apart by their labels. */
export const runLook = (index: number): RunLook => RUNS[index % RUNS.length]!;

/** What the level fill does stands behind the pour: quieter words, no readings. */
export const isBackground = (look: RunLook): boolean => look === 'level' || look === 'bare';

/** Height of a line in a key of runs [px]. */
export const KEY_LINE = 17;
