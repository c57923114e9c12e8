/**
 * What a guess can be asked for. Every answer but the teacher's own is read off the computed pours; `tells` is what it shows
 * of them: to a drawn front speed, to under or over and to the fastest belongs a speed, which answers the other two as well.
 */
export const ASKS = [
  { ask: 'front speed', name: 'draw the front speed', tells: 'front speed' },
  { ask: 'speed call', name: 'under or over critical', tells: 'front speed' },
  { ask: 'first flow', name: 'how the metal comes in', tells: 'first flow' },
  { ask: 'filling', name: 'whether it fills warm', tells: 'filling' },
  { ask: 'quickest', name: 'which pour runs fastest', tells: 'front speed' },
  { ask: 'own answers', name: 'answers of your own', tells: null },
] as const;
export type GuessAsk = (typeof ASKS)[number]['ask'];

/** What the answer to such a question shows of its pours; null = nothing that is computed. */
export type Told = (typeof ASKS)[number]['tells'];
export const toldBy = (ask: GuessAsk): Told => ASKS.find((one) => one.ask === ask)!.tells;
