import { describe, expect, it } from 'vitest';
import { watchMeetings } from '$src/core/watch/meetings';
import { lookAt } from './profileSample';

/** Bare floor [m from the mouth] whose near side runs forward from a time on [s] at a speed [m/s]. */
interface Bare {
  readonly from: number;
  readonly to: number;
  readonly since: number;
  readonly speed: number;
}

/** What is told of a second of looks at metal 5 mm deep with bare stretches in it. */
function told(...stretches: readonly Bare[]) {
  const watch = watchMeetings(0.5);
  for (let k = 0; k < 500; k++) {
    const time = k * 2e-3;
    const isBare = (place: number) =>
      stretches.some(({ from, to, since, speed }) => {
        const near = from + speed * Math.max(0, time - since);
        return place > near && place < to;
      });
    watch.look(lookAt(time, (place) => ({ depth: isBare(place) ? 0 : 5e-3, speed: 0 })));
  }
  return watch.folds().map(({ time, place, severity }) => ({ time, place, speed: severity.value }));
}

const QUICK: Bare = { from: 0.061, to: 0.094, since: 0, speed: 0.3 };
const SLOW: Bare = { from: 0.126, to: 0.154, since: 0, speed: 0.05 };

describe('fronts that meet', () => {
  it('are told once, where and how fast bare floor between them closes', () => {
    const [one, ...more] = told(QUICK);
    expect(more).toEqual([]);
    expect(one!.time).toBeCloseTo(0.1, 1);
    expect(one!.place).toBeCloseTo(0.09, 2);
    expect(Math.abs(one!.speed / 0.3 - 1)).toBeLessThan(0.15);
  });

  it('close as fast after a gap has stood open for a while', () => {
    const [one] = told({ ...QUICK, since: 0.5 });
    expect(Math.abs(one!.speed / 0.3 - 1)).toBeLessThan(0.15);
  });

  it('are told of each of two gaps as if it were alone', () => {
    expect(told(QUICK, SLOW)).toEqual([...told(QUICK), ...told(SLOW)]);
    expect(told(QUICK, SLOW)).toHaveLength(2);
  });

  it('are none where one side runs dry, the gap is short, or it closes at a creep', () => {
    const watch = watchMeetings(0.5);
    for (let k = 0; k < 100; k++) {
      const end = k < 50 ? 0.2 : 0.05;
      watch.look(
        lookAt(k * 2e-3, (place) => ({
          depth: place > end || (place > 0.06 && place < 0.1) ? 0 : 5e-3,
          speed: 0,
        })),
      );
    }
    expect(watch.folds()).toEqual([]);
    expect(told({ ...QUICK, from: 0.081 })).toEqual([]);
    expect(told({ ...SLOW, from: 0.13, speed: 0.015, since: -0.6 })).toEqual([]);
  });
});
