import type { Fit, FittedValue } from '$src/core/fit/fitMachine';
import type { Reach, ReachedSetting } from '$src/core/fit/reachProfile';
import type { UnknownId } from '$src/core/fit/unknowns';
import { toDegrees, toMillimetres } from '$src/core/units';
import { fixed, listText, secondsText } from '$src/report/wording';

/** Shown unit and decimals of an unknown. */
const SHOWN: Readonly<
  Record<UnknownId, { unit: string; decimals: number; toShown: (si: number) => number }>
> = {
  'valve.length': { unit: 'mm', decimals: 2, toShown: toMillimetres },
  'valve.leak': { unit: 'mm', decimals: 3, toShown: toMillimetres },
  'valve.coefficient': { unit: '', decimals: 3, toShown: (value) => value },
  'valve.kv': { unit: 'm³/h', decimals: 4, toShown: (value) => value },
  'bearing.friction': { unit: '', decimals: 3, toShown: (value) => value },
  'cushion.damping': { unit: 'N·m·s', decimals: 0, toShown: (value) => value },
};

/** More than this share of a value, and the tilt hardly decides it. */
const DOUBTFUL = 0.5;

export const unitOf = (id: UnknownId): string => SHOWN[id].unit;

export function shownOf(id: UnknownId, value: number): string {
  const { decimals, toShown } = SHOWN[id];
  return Number.isFinite(value) ? fixed(toShown(value), decimals) : 'not known';
}

/** What to make of a fitted value; empty when nothing is amiss. */
export function doubtOf({ value, deviation, isAtEdge }: FittedValue): string {
  if (isAtEdge) return 'at the edge of its range: something else is wrong';
  return deviation > DOUBTFUL * value ? 'hardly decided by this tilt' : '';
}

const degrees = (radians: number): string => `${fixed(toDegrees(radians), 2)}°`;

export function fitSentence({ residual, residualBefore, isOff }: Fit): string {
  const told = `As given the machine strays from the readings by ${degrees(residualBefore)}, as fitted by ${degrees(residual)} (root mean square).`;
  if (!isOff) return told;
  return `${told} That is more than readings scatter: no value of what is ticked makes this machine turn like that. Check its weights, linkage and oil, and whether the file is of a dry run of it; the ± below is then too small.`;
}

export function settingText(
  { setting, index, before, value, isAtEdge }: ReachedSetting,
  byTurns: boolean,
): string {
  const edge = isAtEdge ? ', as far as it goes' : '';
  if (setting === 'weight')
    return `weight ${index + 1} ${fixed(value, 1)} kg (now ${fixed(before, 1)} kg)${edge}`;
  return byTurns
    ? `valve open ${fixed(value, 2)} turns (now ${fixed(before, 2)})${edge}`
    : `Kv ${fixed(value, 4)} m³/h (now ${fixed(before, 4)})${edge}`;
}

/** How close the machine comes, and where it does not. */
/** `until` is when the die of its pour is full [s]; null when no pour tells. */
export function reachSentence({ residual, worst, worstTime, missed }: Reach, until: number | null): string {
  const span = until === null ? '' : `Until the die is full, at ${secondsText(until)}: `;
  const close = `${span}${span ? 'it' : 'It'} comes within ${degrees(residual)} on the whole, at worst ${degrees(worst)} at ${secondsText(worstTime)}.`;
  if (missed.length === 0) return `${close} No part is out of reach by more than 3°.`;
  const parts = missed.map(({ from, to }) => `${secondsText(from)} to ${secondsText(to)}`);
  return `${close} Out of reach by more than 3°: ${listText(parts)}.`;
}
