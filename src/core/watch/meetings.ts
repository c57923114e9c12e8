import type { Fold } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import { FRONT_DEPTH, type Sample } from './sample';
import { stretchesWhere } from './stretches';
import type { Watcher } from './watcher';

/** Bare floor shorter than this between two metals is no gap [m], nor one that did not last this long [s]: film runs dry and wets again. */
const LEAST_GAP = 20e-3;
const LEAST_TIME = 20e-3;
/** Fronts that creep together slower than this do not meet as fronts [m/s]. */
const LEAST_CLOSING = 0.02;

/**
 * Two fronts that meet: a stretch of bare floor in the die with metal on both sides closes. Severity is the speed
 * they close at; the skins of the two fronts stay between them whatever it is.
 */
export function watchMeetings(criticalSpeed: number): Watcher {
  const folds: Fold[] = [];
  let before: Gap | null = null;

  function look(sample: Sample): void {
    const gap = widestGap(sample, before ? 1e-9 : LEAST_GAP);
    if (gap === null) {
      if (before && bridged(sample, before) && counts(before, 1))
        folds.push(meeting(before, sample, criticalSpeed));
      before = null;
      return;
    }
    const lasted = before ? before.lasted + sample.elapsed : 0;
    const opened = before ? Math.max(before.widest, gap.to - gap.from) : gap.to - gap.from;
    const openedFor = opened > (before?.widest ?? 0) ? 0 : (before?.sinceWidest ?? 0) + sample.elapsed;
    const closing = openedFor > 0 ? (opened - (gap.to - gap.from)) / openedFor : 0;
    before = { ...gap, lasted, widest: opened, sinceWidest: openedFor, closing };
  }

  return { name: 'meetings', look, folds: () => folds };
}

interface Gap {
  readonly from: number;
  readonly to: number;
  /** How long it has been there, how wide it was at most, how long since, and the mean closing speed since. */
  readonly lasted: number;
  readonly widest: number;
  readonly sinceWidest: number;
  readonly closing: number;
}

/** Whether two metals met over a gap as fronts, with limits so many times stricter. */
const counts = ({ lasted, closing, widest }: Gap, stricter: number): boolean =>
  lasted >= LEAST_TIME * stricter && closing > LEAST_CLOSING * stricter && widest >= LEAST_GAP * stricter;

/** The widest stretch of bare floor that has metal on both sides, along the floor path from the mouth [m]. */
function widestGap({ profile }: Sample, least: number): { from: number; to: number } | null {
  if (wetStretches(profile) < 2) return null;
  const wet = stretchesWhere(profile.places, (k) => profile.depth[k]! > FRONT_DEPTH);
  let best: { from: number; to: number } | null = null;
  for (let k = 1; k < wet.length; k++) {
    const from = wet[k - 1]![1] * profile.spacing;
    const to = wet[k]![0] * profile.spacing;
    if (to - from >= least && (best === null || to - from > best.to - best.from)) best = { from, to };
  }
  return best;
}

/** How many stretches of metal there are: nearly always one, and then nothing need be listed. */
function wetStretches(profile: Sample['profile']): number {
  let count = 0;
  let wet = false;
  for (let k = 0; k < profile.places; k++) {
    const here = profile.depth[k]! > FRONT_DEPTH;
    if (here && !wet) count++;
    wet = here;
  }
  return count;
}

/** Whether both sides are now wet across: else one of them merely ran dry. */
function bridged({ profile }: Sample, gap: { from: number; to: number }): boolean {
  const first = Math.round(gap.from / profile.spacing);
  const last = Math.round(gap.to / profile.spacing);
  return profile.depth[first]! > FRONT_DEPTH && profile.depth[last]! > FRONT_DEPTH;
}

function meeting(gap: Gap, sample: Sample, criticalSpeed: number): Fold {
  const speed = Math.max(0, gap.closing);
  return {
    kind: 'fronts meet',
    size: foldSize(speed / criticalSpeed, 0.5, 1),
    isClear: counts(gap, STRICTER),
    time: sample.time,
    place: (gap.from + gap.to) / 2,
    inclination: sample.inclination,
    severity: { value: speed, quantity: 'closing speed', unit: 'm/s' },
    details: {},
    cause: 'Two fronts come together and their skins lie face to face between them.',
    cure: 'Feed the die from one side only: no metal should lie ahead of the front.',
  };
}
