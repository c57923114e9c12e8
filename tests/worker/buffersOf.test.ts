import { expect, test } from 'vitest';
import { buffersOf } from '$src/worker/buffersOf';

test('every buffer is found once, at any depth', () => {
  const shared = new Float64Array(4);
  const deep = new Uint8Array(2);
  const value = { a: shared, again: shared.subarray(1), list: [{ deep }], none: null, word: 'x', number: 1 };
  expect(buffersOf(value)).toEqual([shared.buffer, deep.buffer]);
});
