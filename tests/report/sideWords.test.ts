import { expect, test } from 'vitest';
import { sideWords } from '$src/report/sideWords';

test('a value that reads the same as its limit lies just on its side', () => {
  const text = (value: number): string => value.toFixed(2);
  expect(sideWords(0.484, 0.476, text)).toBe('just over');
  expect(sideWords(0.476, 0.484, text)).toBe('just within');
  expect(sideWords(0.5, 0.48, text)).toBe('over');
  expect(sideWords(0.3, 0.48, text)).toBe('within');
  expect(sideWords(0.48, 0.48, text)).toBe('within');
});
