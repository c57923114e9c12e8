import type { Motion } from './tilt';

/** A motion known at instants: rising times [s], inclination [rad], rate [rad/s]. Two or more instants. */
export interface Samples {
  readonly time: ArrayLike<number>;
  readonly inclination: ArrayLike<number>;
  readonly rate: ArrayLike<number>;
}

/** The motion through samples: cubic from one to the next, so inclination and rate are continuous. Starts at time 0. */
export function sampledMotion({ time, inclination, rate }: Samples): Motion {
  const last = time.length - 1;
  const duration = time[last]!;
  const start = inclination[0]!;
  const end = inclination[last]!;
  const cubicAt = (at: number) => {
    const i = stretchAt(time, at);
    const h = time[i + 1]! - time[i]!;
    return {
      s: (at - time[i]!) / h,
      h,
      a: inclination[i]!,
      b: inclination[i + 1]!,
      c: rate[i]! * h,
      d: rate[i + 1]! * h,
    };
  };
  return {
    duration,
    start,
    end,
    inclinationAt(at) {
      if (at <= 0) return start;
      if (at >= duration) return end;
      const { s, a, b, c, d } = cubicAt(at);
      return a + s * (c + s * (3 * (b - a) - 2 * c - d + s * (2 * (a - b) + c + d)));
    },
    rateAt(at) {
      if (at < 0 || at >= duration) return 0;
      const { s, h, a, b, c, d } = cubicAt(at);
      return (c + s * (2 * (3 * (b - a) - 2 * c - d) + s * 3 * (2 * (a - b) + c + d))) / h;
    },
    accelerationAt(at) {
      if (at < 0 || at >= duration) return 0;
      const { s, h, a, b, c, d } = cubicAt(at);
      return (2 * (3 * (b - a) - 2 * c - d) + 6 * s * (2 * (a - b) + c + d)) / (h * h);
    },
  };
}

/** Index of the sample at or before that time, not the last. */
function stretchAt(time: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}
