import { expect, it } from 'vitest';
import { guessSaid } from '$src/report/guess/guessSaid';

const choices = [
  { key: 'under', label: 'stays under critical speed' },
  { key: 'over', label: 'runs over it' },
];

it('tells the choice, or the quickest place of what was drawn', () => {
  const said = (picked: string | null, drawn: readonly number[]) =>
    guessSaid({ picked, drawn }, choices, 0.3);
  expect(said('over', [])).toBe('You chose “runs over it”.');
  expect(said(null, [0.1, 0.2, 0.62, 0.2])).toBe(
    'You drew a front that is quickest at 200 mm from the mouth, with 0.62 m/s.',
  );
  expect(said(null, [0.25, 0.25, 0.25])).toBe('You drew a front of 0.25 m/s all the way.');
});
