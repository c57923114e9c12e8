import type { Fold, PourRecord } from '$src/core/pour/record';
import { toCubicCentimetres, toDegrees } from '$src/core/units';
import { coldOf } from './coldOf';
import { isCloseToFreezing } from './coldReason';
import { type FeederShortage, feederShortage } from './feederShortage';
import { gasHeld } from './gasHeld';
import { isLadledIn, shareAtStart } from './ladledIn';
import { isMachineWrong } from './machineFall';
import { isNearlyShut } from './nearlyShut';
import { bold, plain, type Sentence } from './sentence';
import { shortOfCavity } from './shortCharge';
import { criticalRange, peakRange, type SpeedCall, speedCall } from './speedCall';
import { spilledWords } from './spilledReason';
import { type Reason, verdictReasons } from './verdictReasons';
import { angleText, fixed, percentText, secondsText, significant, speedInRange, speedText } from './wording';

export type VerdictKind =
  | 'sound'
  | 'not judged'
  | 'near the limit'
  | 'folds film'
  | 'laps'
  | 'misrun'
  | 'gas held'
  | 'not filled'
  | 'spills'
  | 'stopped';

/** What a founder would say of a pour, and why. */
export interface Verdict {
  readonly kind: VerdictKind;
  /** Peak front speed against critical, both with their bands; null when no front ran in the die. */
  readonly speed: SpeedCall | null;
  readonly sentence: Sentence;
  /** What the feeder lacks where the filling is nothing to stop at: "the feeder is short of metal"; null elsewhere. */
  readonly shortage: string | null;
  /** At most three, the weightiest first. */
  readonly reasons: readonly Reason[];
}

const HEADLINES: Readonly<Record<VerdictKind, string>> = {
  sound: 'Sound.',
  'not judged': 'Not judged.',
  'near the limit': 'Near the limit.',
  'folds film': 'Folds film.',
  laps: 'Laps.',
  misrun: 'Misrun.',
  'gas held': 'Not filled: gas held.',
  'not filled': 'Not filled.',
  spills: 'Spills metal over a rim.',
  stopped: 'Stopped early.',
};

/** Folds the peak front speed does not already speak for. */
export const otherFolds = (record: PourRecord): readonly Fold[] =>
  record.folds.filter((fold) => fold.kind !== 'front over critical');

export const endedEarly = ({ outcome }: PourRecord): boolean =>
  outcome.kind === 'stopped' || outcome.kind === 'stopped by the user';

/** Sizes of what folds film; laps have a verdict of their own. */
function filmSizes(record: PourRecord): ReadonlySet<Fold['size']> {
  const film = otherFolds(record).filter(({ kind }) => kind !== 'lap');
  return new Set(film.map((fold) => fold.size));
}

/** A die less full than this has no front worth judging. */
const MOSTLY = 0.5;

function kindOf(record: PourRecord, speed: SpeedCall | null): VerdictKind {
  const sizes = filmSizes(record);
  const { lap, filledTime } = record.figures;
  const cold = coldOf(record);
  // Metal that stiffened before gas was shut in stopped by itself.
  const isHeld = gasHeld(record) && !endedEarly(record) && cold !== 'misrun';
  // Where metal is simply missing, neither gas nor cold is what leaves the die unfilled.
  if (isTooLittle(record) && (isHeld || lap?.kind === 'misrun') && speed !== 'over') return 'not filled';
  // Gas that keeps most of the metal out comes before what the little metal inside does.
  if (isHeld && record.figures.finalShare < MOSTLY) return 'gas held';
  if (speed === 'over') return 'folds film';
  if (isHeld) return 'gas held';
  if (sizes.has('heavy')) return 'folds film';
  if (endedEarly(record)) return 'stopped';
  const isShort = shortOfCavity(record.plan.section, record.plan.volume) > 0;
  if (isShort && filledTime === null && cold === 'none') return 'not filled';
  if (cold !== 'none') return cold;
  if (filledTime === null) return 'not filled';
  // Metal on the floor is a worse fault than any doubt of the casting.
  if (spilledWords(record)) return 'spills';
  if (isLadledIn(shareAtStart(record))) return 'not judged';
  const isNear =
    speed === 'too close to call' || sizes.has('marked') || isNearlyShut(record) || isCloseToFreezing(record);
  return isNear ? 'near the limit' : 'sound';
}

/** A pour that could not fill its die however it was tilted, and did not. */
const isTooLittle = (record: PourRecord): boolean =>
  record.figures.filledTime === null &&
  !endedEarly(record) &&
  shortOfCavity(record.plan.section, record.plan.volume) > 0;

/** What is lacking leads; what a front over critical or a lap does besides stands beside it. */
function tooLittleHeadline({ plan }: PourRecord, kind: VerdictKind): string {
  const lacking = `${significant(toCubicCentimetres(shortOfCavity(plan.section, plan.volume)))} cm³`;
  const besides = kind === 'folds film' ? ', and folds film' : kind === 'laps' ? ', and laps' : '';
  return `Too little metal: ${lacking} short of the cavity${besides}.`;
}

function stoodIn(record: PourRecord): string {
  const share = shareAtStart(record);
  return share >= 0.005 ? `${percentText(share)} of the die` : 'the die';
}

/** How the metal comes in. Within half a degree of level it is called level. */
function entry(record: PourRecord): string {
  const { firstFlow } = record.figures;
  if (firstFlow.kind === 'never') return 'No metal passes the mouth';
  if (firstFlow.kind === 'already in the die')
    return `Metal stands in ${stoodIn(record)} before the tilt begins (how the ladle let it in is not computed)`;
  const degrees = toDegrees(firstFlow.inclination);
  const angle = angleText(firstFlow.inclination);
  if (degrees > 0.5) return `Metal rolls in uphill from ${angle}`;
  if (degrees < -0.5) return `Metal leaves the basin at ${angle}, with the die already downhill`;
  return 'Metal enters as the die passes level';
}

function running(record: PourRecord, speed: SpeedCall | null): string {
  const { peakFrontSpeed, firstFlow } = record.figures;
  const { criticalSpeed } = record.plan.liquid;
  if (peakFrontSpeed === null || speed === null) return '';
  const peak = speedText(peakFrontSpeed);
  const front = firstFlow.kind === 'already in the die' ? ', and its front then runs at' : ', at';
  if (speed === 'under')
    return `${front} no more than ${peak}, under critical${foldingAnyway(record, 'but')}`;
  if (speed === 'too close to call')
    return `, and its front reaches ${peak}${apart(record)}: too close to ${criticalText(criticalSpeed)} to call${foldingAnyway(record, 'and')}`;
  return `, and its front runs at up to ${peak}, ${fixed(peakFrontSpeed / criticalSpeed, 1)} times critical`;
}

/** Critical speed with what surface tension leaves open: a peak over it may still be under what it truly is. */
const criticalText = (criticalSpeed: number): string =>
  `the critical ${speedInRange(criticalSpeed, criticalRange(criticalSpeed))}`;

/** What is assumed moves the peak to both sides of critical; without that said, a peak far off it seems no close call. */
function apart(record: PourRecord): string {
  const range = peakRange(record);
  return range ? `, or anything from ${fixed(range.from, 2)} to ${speedText(range.to)}` : '';
}

const HEAVIEST = { heavy: 3, marked: 2, slight: 1 } as const;

/** A front that is not over critical does not make a pour sound: what folds its skin then is named beside it. */
function foldingAnyway(record: PourRecord, joined: 'and' | 'but'): string {
  const [loudest] = otherFolds(record)
    .filter(({ kind }) => kind !== 'lap')
    .toSorted((a, b) => HEAVIEST[b.size] - HEAVIEST[a.size]);
  if (loudest?.size !== 'heavy') return '';
  const how =
    loudest.kind === 'skin contraction' ? 'is drawn together and folds' : `folds by ${loudest.kind}`;
  return `, ${joined} its skin ${how}`;
}

function filling(record: PourRecord): string {
  const { fillTime, filledTime, finalShare } = record.figures;
  const { firstFlow } = record.figures;
  if (filledTime !== null && fillTime !== null && firstFlow.kind === 'angle')
    return `; the die is full ${secondsText(fillTime)} after first flow.`;
  if (filledTime !== null) return `; the die is full at ${secondsText(filledTime)}.`;
  const share = percentText(finalShare);
  if (record.outcome.kind === 'stopped by the user')
    return `; it was ${share} full when you stopped the run.`;
  if (record.outcome.kind === 'stopped') return `; it was ${share} full when the computation stopped.`;
  return `; the die ends ${share} full${gasHeld(record) ? ', held up by gas' : ''}.`;
}

/** Said in the sentence too: whoever reads no further must know. */
function spilling(record: PourRecord): string {
  const words = spilledWords(record);
  return words ? ` ${words} of metal spilled over a rim on the way.` : '';
}

/** A pour that folds film may go cold besides, and whoever slows it down for its folds must know. */
function foldingHeadline(record: PourRecord): string {
  const cold = coldOf(record);
  if (cold === 'laps') return 'Folds film and laps.';
  return cold === 'misrun' ? 'Folds film and misruns.' : HEADLINES['folds film'];
}

/** Metal that ran in while ladling may have folded its skin on the way, so nothing is called sound without that said. */
function headline(record: PourRecord, kind: VerdictKind, shortage: FeederShortage | null): string {
  const besides = ownHeadline(record, kind, shortage);
  // A hazard to whoever stands there leads, whatever becomes of the casting.
  return spilledWords(record) && kind !== 'spills' ? `${HEADLINES.spills} ${besides}` : besides;
}

function ownHeadline(record: PourRecord, kind: VerdictKind, shortage: FeederShortage | null): string {
  const { figures } = record;
  if (isTooLittle(record)) return tooLittleHeadline(record, kind);
  if (kind === 'folds film') return foldingHeadline(record);
  if (kind !== 'sound') return HEADLINES[kind];
  const isPartOnly = figures.firstFlow.kind === 'already in the die';
  const limited = isMachineWrong(record) ? ', but for the machine' : isPartOnly ? ' from the tilt on' : '';
  // Sound means no shrinkage either to a founder: only the filling is, where the feeder cannot feed.
  return shortage ? `Fills quietly${limited}; ${shortage.inShort}.` : `Sound${limited}.`;
}

/** Told where the filling itself is nothing to stop at; what folds or laps comes before what feeds. */
const shortageFor = (record: PourRecord, kind: VerdictKind): FeederShortage | null =>
  kind === 'sound' || kind === 'near the limit' ? feederShortage(record) : null;

/** Of a die that fills, what its feeder lacks weighs more than a slight fold, whatever the verdict is. */
const shortageBeside = (record: PourRecord, shortage: FeederShortage | null): FeederShortage | null =>
  shortage ?? (record.figures.filledTime !== null ? feederShortage(record) : null);

const isSlight = (record: PourRecord, { name }: Reason): boolean => {
  const ofKind = record.folds.filter(({ kind }) => kind === name);
  return ofKind.length > 0 && ofKind.every(({ size }) => size === 'slight');
};

/** The shortage leads where all else is sound, stands second beside a limit, and before slight folds beside worse. */
function reasonsWith(
  record: PourRecord,
  shortage: FeederShortage | null,
  kind: VerdictKind,
  reasons: readonly Reason[],
): Reason[] {
  if (!shortage) return reasons.slice(0, 3);
  const firstSlight = reasons.findIndex((reason) => isSlight(record, reason));
  const heavier = firstSlight < 0 ? reasons.length : firstSlight;
  const before = kind === 'sound' ? 0 : kind === 'near the limit' ? 1 : Math.max(1, heavier);
  return [...reasons.slice(0, before), shortage.reason, ...reasons.slice(before)].slice(0, 3);
}

/** The verdict on one pour: under, too close to call or over, with its reasons. */
export function verdict(record: PourRecord): Verdict {
  const speed = speedCall(record);
  const kind = kindOf(record, speed);
  const shortage = shortageFor(record, kind);
  const sentence = [
    bold(headline(record, kind, shortage)),
    plain(` ${entry(record)}${running(record, speed)}${filling(record)}${spilling(record)}`),
  ];
  const reasons = reasonsWith(record, shortageBeside(record, shortage), kind, verdictReasons(record, speed));
  return { kind, speed, sentence, shortage: shortage?.inShort ?? null, reasons };
}
