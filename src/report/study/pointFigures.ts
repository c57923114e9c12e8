import type { Fold, FoldKind, Outcome, PourRecord } from '$src/core/pour/record';
import { type Cold, coldOf } from '../coldOf';
import { isFeederJudged } from '../feederShortage';
import { shareAtStart } from '../ladledIn';
import { speedCall } from '../speedCall';
import { otherFolds, type VerdictKind, verdict } from '../verdict';
import type { PointResult } from './region';
import { type Spill, spillByEnd } from './spillByEnd';

/** How near a pour came to lapping; margin [s] left before freezing, negative = laps, null = no front to speak of. */
export interface Lap {
  readonly kind: Cold;
  readonly margin: number | null;
}

/** What is kept of one pour of a study: figures in SI, not its record. */
export interface PointFigures {
  readonly outcome: Outcome['kind'];
  readonly verdict: VerdictKind;
  /** What the feeder lacks by the verdict: "the feeder is short of metal"; null where that is nothing or not told. */
  readonly shortage: string | null;
  /** The feeder was looked at: without a shortage it is enough. */
  readonly isFeederJudged: boolean;
  /** The fold that speaks loudest; null when none is seen. */
  readonly cause: FoldKind | null;
  readonly folds: number;
  /** null when the pour was computed without heat. */
  readonly lap: Lap | null;
  readonly firstFlow: number | null;
  /** Share of the die that is full before the tilt begins. */
  readonly shareAtStart: number;
  readonly peakFrontSpeed: number | null;
  readonly criticalSpeed: number;
  readonly shareAboveCritical: number | null;
  readonly arrivalTime: number | null;
  readonly filledTime: number | null;
  readonly fillTime: number | null;
  readonly finalShare: number;
  /** By the end of the stroke; null where that cannot be told. */
  readonly spill: Spill | null;
  readonly skinFolded: number;
  readonly foldScore: number;
}

const WEIGHT = { heavy: 3, marked: 2, slight: 1 } as const;

function loudestFold(record: PourRecord): FoldKind | null {
  if (speedCall(record) === 'over') return 'front over critical';
  const heavier = (best: Fold | null, fold: Fold): Fold =>
    best && WEIGHT[best.size] >= WEIGHT[fold.size] ? best : fold;
  return otherFolds(record).reduce<Fold | null>(heavier, null)?.kind ?? null;
}

/** Cold metal is a region of its own, so its laps do not count as folded film. */
const withoutLaps = (record: PourRecord): PourRecord => ({
  ...record,
  folds: record.folds.filter(({ kind }) => kind !== 'lap'),
});

/** What runs over a rim after the die is full is a fault of the setting too, and is lost to the feeder. */
const withSpill = (record: PourRecord, spill: Spill | null): PourRecord => ({
  ...record,
  figures: { ...record.figures, spilled: spill?.volume ?? record.figures.spilled },
});

/** Infinite margins are no numbers in a file. */
function lapOf(record: PourRecord): Lap | null {
  const { lap } = record.figures;
  return lap && { kind: coldOf(record), margin: Number.isFinite(lap.margin) ? lap.margin : null };
}

export function pointFigures(whole: PourRecord): PointFigures {
  const spill = spillByEnd(whole);
  const record = withSpill(withoutLaps(whole), spill);
  const { figures } = record;
  const { firstFlow } = figures;
  const { kind, shortage } = verdict(record);
  return {
    outcome: record.outcome.kind,
    verdict: kind,
    shortage,
    isFeederJudged: (kind === 'sound' || kind === 'near the limit') && isFeederJudged(record),
    cause: loudestFold(record),
    folds: record.folds.length,
    lap: lapOf(whole),
    firstFlow: firstFlow.kind === 'angle' ? firstFlow.inclination : null,
    shareAtStart: shareAtStart(record),
    peakFrontSpeed: figures.peakFrontSpeed,
    criticalSpeed: record.plan.liquid.criticalSpeed,
    shareAboveCritical: figures.shareAboveCritical,
    arrivalTime: figures.arrivalTime,
    filledTime: figures.filledTime,
    fillTime: figures.fillTime,
    finalShare: figures.finalShare,
    spill,
    skinFolded: figures.skinFolded,
    foldScore: figures.foldScore,
  };
}

/** A run that stopped by itself says nothing about its setting, only why it stopped. */
export function pointResult(record: PourRecord): PointResult {
  const { outcome } = record;
  return outcome.kind === 'stopped' ? { failed: outcome.reason } : { figures: pointFigures(record) };
}
