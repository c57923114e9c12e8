import type { Reading } from './readRows';

/** No longer than this from rest to where the turn is seen [s]: a body that creeps longer has another cause. */
const LONGEST_REST = 0.5;

export interface Rest {
  /** When the body set off, or stood again [s]. */
  readonly time: number;
  /** The angle between then and where the turn is seen; null outside. */
  readonly within: (time: number) => number | null;
}

/**
 * A turn is seen only where the body is well away from where it stood. From rest to there, or from there to rest, it is
 * taken to have gained or lost its speed evenly: over the way d at the speed v that takes 2 d / v. Cut off there it
 * would seem to jump to its speed.
 * @param seen index of the outermost reading that is away from `stood`; `way` −1 = towards the beginning, 1 = the end
 * @param half of the time that the line is smoothed over [s]; `moved` is how far from `stood` it is seen [rad]
 */
export function restBeyond(
  line: readonly Reading[],
  seen: number,
  way: -1 | 1,
  stood: number,
  { half, moved }: { readonly half: number; readonly moved: number },
): Rest {
  // Over as much as the line is smoothed over, since two readings side by side have more noise than way between them.
  const reach = (on: -1 | 1): Reading => {
    let i = Math.min(line.length - 1, Math.max(0, seen + on));
    while (line[i + on] && Math.abs(line[i + on]!.time - line[seen]!.time) <= half) i += on;
    return line[i]!;
  };
  const edge = crossing(line[seen + way] ?? line[seen]!, line[seen]!, stood, moved);
  const [a, b] = [reach(-1), reach(1)];
  const speed = Math.abs((b.angle - a.angle) / (b.time - a.time));
  const d = Math.abs(edge.angle - stood);
  const outermost = way < 0 ? edge.time - line[0]!.time : line.at(-1)!.time - edge.time;
  const took = Math.min(outermost, LONGEST_REST, speed > 0 ? (2 * d) / speed : 0);
  const time = edge.time + way * took;
  const within = (now: number): number | null => {
    const left = (way * (time - now)) / took;
    return took > 0 && left >= 0 && left <= 1 ? stood + (edge.angle - stood) * left ** 2 : null;
  };
  return { time, within };
}

/** Where the line between a reading near rest and the first one away from it is just `moved` from where it stood. */
function crossing(near: Reading, away: Reading, stood: number, moved: number): Reading {
  const [d, e] = [Math.abs(near.angle - stood), Math.abs(away.angle - stood)];
  const share = e > d && d < moved ? Math.min(1, (moved - d) / (e - d)) : 1;
  return {
    time: near.time + share * (away.time - near.time),
    angle: near.angle + share * (away.angle - near.angle),
  };
}
