import { expect, test } from 'vitest';
import { coldWords } from '$src/report/study/coldWords';

test('a lap with time left says why it laps; other pours say what is left, or lacking', () => {
  expect(coldWords({ kind: 'none', margin: 5.83 })).toBe('5.83 s left before it freezes.');
  expect(coldWords({ kind: 'laps', margin: 5.71 })).toBe(
    'A front stood still, or two met, too cold to join. 5.71 s left before its slowest place freezes.',
  );
  expect(coldWords({ kind: 'laps', margin: -0.4 })).toBe('Freezes 0.40 s too soon.');
  expect(coldWords({ kind: 'misrun', margin: -2 })).toBe('Freezes 2.00 s too soon.');
  expect(coldWords({ kind: 'laps', margin: null })).toBe(
    'A front stood still, or two met, too cold to join.',
  );
  expect(coldWords({ kind: 'none', margin: null })).toBe('');
});
