/** What a guess can be asked for. Every answer is read off the computed pours. */
export const ASKS = [
  { ask: 'front speed', name: 'draw the front speed' },
  { ask: 'speed call', name: 'under or over critical' },
  { ask: 'first flow', name: 'how the metal comes in' },
  { ask: 'filling', name: 'whether it fills warm' },
  { ask: 'quickest', name: 'which pour runs fastest' },
] as const;
export type GuessAsk = (typeof ASKS)[number]['ask'];
