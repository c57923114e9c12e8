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
 * Two fronts that meet: a stretch of bare floor in the die with metal on both sides closes. Every such stretch is followed
 * by itself. Severity is the speed they close at; the skins of the two fronts stay between them whatever it is.
 */
export function watchMeetings(criticalSpeed: number): Watcher {
  const folds: Fold[] = [];
  let followed: readonly Gap[] = [];

  function look(sample: Sample): void {
    const left = gapsIn(sample);
    if (left.length === 0 && followed.length === 0) return;
    const going: Gap[] = [];
    for (const gap of followed) {
      const now = takeWidest(left, gap);
      if (now) going.push(later(gap, now, sample.elapsed));
      else if (bridged(sample, gap) && counts(gap, 1)) folds.push(meeting(gap, sample, criticalSpeed));
    }
    followed = [...going, ...left.filter((span) => widthOf(span) >= LEAST_GAP).map(opened)];
  }

  return { name: 'meetings', look, folds: () => folds };
}

/** Bare floor with metal on both sides, along the floor path from the mouth [m]. */
interface Span {
  readonly from: number;
  readonly to: number;
}

const widthOf = ({ from, to }: Span): number => to - from;

/** Takes out of the stretches that are bare now the widest of those that a gap has become; null when it is gone. */
function takeWidest(spans: Span[], gap: Span): Span | null {
  const pieces = spans.filter(({ from, to }) => from < gap.to && to > gap.from);
  if (pieces.length === 0) return null;
  const widest = pieces.reduce((a, b) => (widthOf(b) > widthOf(a) ? b : a));
  spans.splice(spans.indexOf(widest), 1);
  return widest;
}

const opened = (span: Span): Gap => ({
  ...span,
  lasted: 0,
  widest: widthOf(span),
  sinceWidest: 0,
  closing: 0,
});

/** A gap one look later, where it now lies. */
function later(gap: Gap, now: Span, elapsed: number): Gap {
  const widest = Math.max(gap.widest, widthOf(now));
  // Counted from when it was last as wide: a gap that stands open for a while has not begun to close.
  const sinceWidest = widthOf(now) >= gap.widest ? 0 : gap.sinceWidest + elapsed;
  const closing = sinceWidest > 0 ? (widest - widthOf(now)) / sinceWidest : 0;
  return { ...now, lasted: gap.lasted + elapsed, widest, sinceWidest, closing };
}

interface Gap extends Span {
  /** How long it has been there, how wide it was at most, how long since, and the mean closing speed since. */
  readonly lasted: number;
  readonly widest: number;
  readonly sinceWidest: number;
  readonly closing: number;
}

/** Whether two metals met over a gap as fronts, with limits so many times stricter. */
const counts = ({ lasted, closing, widest }: Gap, stricter: number): boolean =>
  lasted >= LEAST_TIME * stricter && closing > LEAST_CLOSING * stricter && widest >= LEAST_GAP * stricter;

/** The stretches of bare floor that have metal on both sides. */
function gapsIn({ profile }: Sample): Span[] {
  if (wetStretches(profile) < 2) return [];
  const wet = stretchesWhere(profile.places, (k) => profile.depth[k]! > FRONT_DEPTH);
  return wet.slice(1).map(([first], k) => ({
    from: wet[k]![1] * profile.spacing,
    to: first * profile.spacing,
  }));
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
function bridged({ profile }: Sample, gap: Span): boolean {
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
