import { expect, test } from 'vitest';
import { newTitle } from '$src/ui/shelf/newTitle';

test('the first new book has no number, the next the lowest that is free', () => {
  expect(newTitle(['Spring trials'])).toBe('New book');
  expect(newTitle(['New book'])).toBe('New book 2');
  expect(newTitle(['New book 2', ' New book ', 'New book 4'])).toBe('New book 3');
  expect(newTitle(['New book 2'])).toBe('New book');
});
