import { expect, test } from 'vitest';
import { bench } from '$src/ui/bench.svelte';
import { keptAway } from '$src/ui/keptAway';

test('what is out of the window is read again when the hand lets go, or when it comes into view', () => {
  let reads = 0;
  const read = keptAway(
    () => 'far',
    () => ++reads,
  );
  expect([read(), read()]).toEqual([1, 2]);
  bench.hold();
  expect([read(), read()]).toEqual([2, 2]);
  bench.setVisible('far', true);
  expect(read()).toBe(3);
  bench.setVisible('far', false);
  expect(read()).toBe(3);
  bench.settle();
  expect(read()).toBe(4);
});

test('what has never been read is read even then', () => {
  bench.hold();
  expect(
    keptAway(
      () => 'new',
      () => 'drawn',
    )(),
  ).toBe('drawn');
  bench.settle();
});
