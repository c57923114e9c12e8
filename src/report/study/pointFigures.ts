import type { Fold, FoldKind, Outcome, PourRecord } from '$src/core/pour/record';
import { type Cold, coldOf } from '../coldOf';
import { isFeederJudged } from '../feederShortage';
import { shareAtStart } from '../ladledIn';
import { speedCall } from '../speedCall';
import { otherFolds, type VerdictKind, verdict } from '../verdict';
import type { PointResult } from './region';
import { isCutShort, type Spill, spillByEnd } from './spillByEnd';

/** How near a pour came to lapping; margin [s] left before freezing, negative = laps, null = no front to speak of. */
export interface Lap {
  readonly kind: Cold;
  readonly margin: number | null;
}

/** Where a pour of a map was left before the end of its stroke: the die full, or its front stiff. */
export type Cut = 'full' | 'stiff';

/** What is kept of one pour of a study: figures in SI, not its record. */
export interface PointFigures {
  readonly outcome: Outcome['kind'];
  /** Poured only so far; null = to its end. What only the end tells is then not told: see `endFigure`. */
  readonly cut: Cut | null;
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

/**
 * Infinite margins are no numbers in a file. What a misrun lacked is known only at its end: what still creeps in counts.
 */
function lapOf(record: PourRecord, cut: Cut | null): Lap | null {
  const { lap } = record.figures;
  const isKnown = lap !== null && Number.isFinite(lap.margin) && cut !== 'stiff';
  return lap && { kind: coldOf(record), margin: isKnown ? lap.margin : null };
}

function cutOf(record: PourRecord): Cut | null {
  if (!isCutShort(record)) return null;
  return record.outcome.kind === 'filled and quiet' ? 'full' : 'stiff';
}

export function pointFigures(whole: PourRecord): PointFigures {
  const spill = spillByEnd(whole);
  const cut = cutOf(whole);
  const record = withSpill(withoutLaps(whole), spill);
  const { figures } = record;
  const { firstFlow } = figures;
  const { kind, shortage } = verdict(record);
  return {
    outcome: record.outcome.kind,
    cut,
    verdict: kind,
    shortage,
    isFeederJudged: (kind === 'sound' || kind === 'near the limit') && isFeederJudged(record),
    cause: loudestFold(record),
    folds: record.folds.length,
    lap: lapOf(whole, cut),
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

type EndFigure = 'finalShare' | 'skinFolded' | 'foldScore' | 'folds';

/** A figure that grows to the end of a pour; null where the pour was left before. */
export const endFigure = (figures: PointFigures, name: EndFigure): number | null =>
  figures.cut === null ? figures[name] : null;

/** Why a pour of a map tells less than one of its own; empty where it was poured to its end. */
export function cutWords({ cut }: Pick<PointFigures, 'cut'>): string {
  if (cut === null) return '';
  return cut === 'full'
    ? 'A map pours no further than the full die: what the end of the stroke adds is not told here.'
    : 'A map pours no further than a stiff front: how full the die ends, and what spills by then, is not told here.';
}

/** A run that stopped by itself says nothing about its setting, only why it stopped. */
export function pointResult(record: PourRecord): PointResult {
  const { outcome } = record;
  return outcome.kind === 'stopped' ? { failed: outcome.reason } : { figures: pointFigures(record) };
}
