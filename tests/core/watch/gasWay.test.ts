import { expect, test } from 'vitest';
import type { Mesh } from '$src/core/mesh/mesh';
import { watchGasWay } from '$src/core/watch/gasWay';
import type { Sample } from '$src/core/watch/sample';
import { lookAt } from './profileSample';

const OPENING = 0.02;
/** One mesh cell stands for the vent: 1 mm³ of room, full or not. */
const VENT_CELL = { facePlace: Float64Array.from([0.19, 0.2]), volume: [1e-9] } as unknown as Mesh;

/** Looks 2 ms apart at metal 10 mm deep under a roof of 20 mm, with a crest of a depth [m] at 100 mm. */
function seen(crests: readonly number[], vent: 'none' | 'open' | 'covered' = 'none') {
  const watch = watchGasWay();
  crests.forEach((crest, k) => {
    const look = lookAt(k * 2e-3, (place) => ({
      depth: Math.abs(place - 0.1) < 3e-3 ? crest : 0.01,
      speed: 0,
    }));
    const opening = new Float64Array(look.profile.places).fill(OPENING);
    const vents = vent === 'none' ? [] : [{ cell: 0, area: 1e-6 }];
    const flow = { gas: { vents }, volume: [vent === 'covered' ? 1e-9 : 0] };
    watch.look({
      ...look,
      profile: { ...look.profile, opening },
      flow,
      mesh: VENT_CELL,
    } as unknown as Sample);
  });
  return watch.narrowest();
}

const steady = (crest: number, looks = 60) => Array.from({ length: looks }, () => crest);

test('the narrowest place between gas and the mouth is told with its height', () => {
  const way = seen(steady(0.019))!;
  expect(way.share).toBeCloseTo(0.05, 12);
  expect(way.height).toBeCloseTo(1e-3, 12);
  expect(way.place).toBeCloseTo(0.1, 12);
});

test('a wave that narrows the way for less than 60 ms narrows nothing', () => {
  const wave = steady(0.01).map((depth, k) => (k >= 20 && k < 40 ? 0.0199 : depth));
  expect(seen(wave)!.share).toBeCloseTo(0.5, 12);
});

test('gas that a vent serves has no need of the way; a covered vent serves none', () => {
  expect(seen(steady(0.019), 'open')).toBeNull();
  expect(seen(steady(0.019), 'covered')!.share).toBeCloseTo(0.05, 12);
});
