import { fromDegrees } from '$src/core/units';
import type { Margin } from './margins';
import type { Region } from './region';
import type { NamedAxis } from './studyFile';

/** How far a setting strays from pour to pour in a shop, either way [unit of the axis]. */
export interface Hold {
  readonly within: number;
  /** Measured or typed for this study; else a step that a shop can hold: common practice, no source. */
  readonly isOwn: boolean;
  /** What a step of common practice is, in words: "5 %". */
  readonly words: string;
}

/** An edge that lies nearer to the set point than what a shop can hold. */
export interface CloseEdge {
  readonly margin: Margin & { readonly distance: number; readonly meets: Region };
  readonly hold: Hold;
}

const PACE = { 'tilt.time': 0.05, 'tilt.rate': 0.05 } as const;
const MASS = 0.02;
const ANGLE = fromDegrees(2);

/** What a shop can hold of that setting; null where neither repeats nor common practice tell. */
export function holdOf({ setting, setPoint }: NamedAxis, spread: number): Hold | null {
  if (spread > 0) return { within: spread, isOwn: true, words: '' };
  if (setPoint === null) return null;
  const share = setting === 'charge.mass' ? MASS : PACE[setting as keyof typeof PACE];
  if (share !== undefined)
    return { within: share * Math.abs(setPoint), isOwn: false, words: `${Math.round(share * 100)} %` };
  const isAngle = setting === 'tilt.start' || setting === 'tilt.end';
  return isAngle ? { within: ANGLE, isOwn: false, words: '2°' } : null;
}

/** What the machine cannot do and what is no pour at all is no fault that a stray runs into. */
const isFault = (region: Region): boolean => region !== 'outside the machine' && region !== 'no such pour';

/** Edges nearer than a shop can hold, the one with the least room for what strays first. */
export function closeEdges(
  axes: readonly NamedAxis[],
  margins: readonly Margin[] | null,
  spreads: readonly number[],
): readonly CloseEdge[] {
  const close = (margins ?? []).flatMap((margin): CloseEdge[] => {
    const { axis, distance, meets } = margin;
    const hold = holdOf(axes[axis]!, spreads[axis] ?? 0);
    if (!hold || distance === null || meets === null || !isFault(meets) || distance >= hold.within) return [];
    return [{ margin: { ...margin, distance, meets }, hold }];
  });
  const room = ({ margin, hold }: CloseEdge): number => margin.distance / hold.within;
  return close.toSorted((a, b) => room(a) - room(b));
}
