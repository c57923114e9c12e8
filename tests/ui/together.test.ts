import { expect, test } from 'vitest';
import { together } from '$src/ui/together';

const shown = (text: string): string => together(text).replaceAll('\u00a0', '_');

test('a number keeps its unit on its line', () => {
  expect(shown('runs at up to 0.74 m/s, 1.5 times critical; full 2.53 s after')).toBe(
    'runs at up to 0.74_m/s, 1.5_times critical; full 2.53_s after',
  );
  expect(shown('15 °/s to +12°, 25 °/s, 58 % of 210 cm³')).toBe('15_°/s to +12°, 25_°/s, 58_% of 210_cm³');
});

test('a word that only begins like a unit does not', () => {
  expect(shown('4 kinds, 1 minute, 12 steps, 3 metals')).toBe('4 kinds, 1 minute, 12 steps, 3 metals');
});
