import type { Fit, FittedValue } from '$src/core/fit/fitMachine';
import type { Reach } from '$src/core/fit/reachProfile';
import { type ReachedTime, TIME_RANGE } from '$src/core/fit/reachTime';
import { isBeyondShop, openingOf, type ReachedSetting } from '$src/core/fit/settings';
import type { UnknownId } from '$src/core/fit/unknowns';
import type { Issue } from '$src/core/issue';
import type { Machine } from '$src/core/tilt/machine/machine';
import { toDegrees, toMillimetres } from '$src/core/units';
import { fixed, listText, secondsText } from '$src/report/wording';

/** Said behind an answer that is older than the tilt that stands there now. */
export const ASKED_BEFORE = ' This was asked before the last change.';

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

/** What a setting of the machine is at present. */
export const presentOf = ({ setting, index }: ReachedSetting, machine: Machine): number | undefined =>
  setting === 'valve' ? openingOf(machine) : machine.weights[index]?.mass;

/** A setting that was found, beside what it is at present. */
export function settingText(found: ReachedSetting, machine: Machine): string {
  const present = presentOf(found, machine);
  const { name, amount } = shownAs(found, machine);
  const edge = found.isAtEdge ? ', as far as it goes' : '';
  const now =
    present === undefined || present === found.value ? ', as it is now' : ` (now ${amount(present)})`;
  return `${name} ${amount(found.value)}${now}${edge}`;
}

interface Shown {
  readonly name: string;
  readonly amount: (value: number) => string;
}

function shownAs({ setting, index }: ReachedSetting, { valve }: Machine): Shown {
  if (setting === 'weight')
    return { name: `weight ${index + 1}`, amount: (value) => `${fixed(value, 1)} kg` };
  return valve.by === 'turns'
    ? { name: 'valve open', amount: (value) => `${fixed(value, 2)} turns` }
    : { name: 'Kv', amount: (value) => `${fixed(value, 4)} m³/h` };
}

/** A time to begin asking from: what the machine takes now, as a watch shows it [s]. */
export const wantedTime = (duration: number): number => Number(duration.toFixed(1));

export const timeIssue = (wanted: number): Issue | null =>
  wanted >= TIME_RANGE.least && wanted <= TIME_RANGE.most
    ? null
    : {
        path: 'time',
        message: 'This is out of range.',
        remedy: `Give ${TIME_RANGE.least} to ${TIME_RANGE.most} s.`,
      };

/** What the empty machine then takes from stop to stop, and whether that is what was wanted. */
export function timeSentence(found: ReachedTime, wanted: number): string {
  const { time, timeBefore, isReached, isNearer, settings } = found;
  if (!isReached && !isNearer)
    return `${takesText(timeBefore)} as it stands, and with what may change it comes no nearer to ${secondsText(wanted)}. ${missingText(found, wanted)}`;
  const takes = takesText(time);
  if (!isReached)
    return `${takes}: nearer to ${secondsText(wanted)} it does not come with what may change. ${missingText(found, wanted)}`;
  const weights = settings.filter(({ setting }) => setting === 'weight');
  const areLeft = weights.length > 0 && weights.every(({ before, value }) => before === value);
  return `${takes}.${areLeft ? ' The valve alone does it: no weight need change.' : ''}`;
}

const takesText = (time: number | null): string =>
  time === null
    ? 'Let go empty it does not come to its stop within a minute'
    : `Let go empty it takes ${secondsText(time)} from stop to stop`;

/** What stands in the way of a time that is out of reach. */
function missingText(found: ReachedTime, wanted: number): string {
  const isTooSlow = found.time === null || found.time > wanted;
  return isTooSlow
    ? `To turn quicker it lacks drive, or a wider way for its oil${atEdgeText(found)}: look at oil, linkage and the other weights.`
    : `To turn slower it lacks what holds it back${atEdgeText(found)}: look at oil, linkage and the other weights.`;
}

/** ", though the valve is as far as it goes": which of what may change has no more to give; empty when none is known. */
function atEdgeText({ settings }: Pick<ReachedTime, 'settings'>): string {
  const ended = settings.filter(({ isAtEdge }) => isAtEdge);
  const names = ended.map((one) => (one.setting === 'valve' ? 'the valve' : `weight ${one.index + 1}`));
  if (names.length === 0) return '';
  const heavy = ended.some(isBeyondShop) ? ', and heavier than any weight of a shop' : '';
  return `, with ${listText(names)} as far as it goes${heavy}`;
}

/**
 * How close the machine comes, and where it does not; where it comes no closer than it does now, that and what is
 * missing. `until` is when the die of its pour is full [s]; null when no pour tells.
 */
export function reachSentence(found: Reach, until: number | null): string {
  const { residual, residualBefore, isNearer, worst, worstTime, missed } = found;
  if (!isNearer && missed.length > 0)
    return `As it stands it strays by ${degrees(residualBefore)} on the whole, and with what may change it comes no closer${atEdgeText(found)}. What is missing is another way of turning: look at linkage, start and stops, or let a weight change.`;
  const span = until === null ? '' : `Until the die is full, at ${secondsText(until)}: `;
  const close = `${span}${span ? 'it' : 'It'} comes within ${degrees(residual)} on the whole, at worst ${degrees(worst)} at ${secondsText(worstTime)}.`;
  if (missed.length === 0) return `${close} No part is out of reach by more than 3°.`;
  const parts = missed.map(({ from, to }) => `${secondsText(from)} to ${secondsText(to)}`);
  return `${close} Out of reach by more than 3°: ${listText(parts)}.`;
}
