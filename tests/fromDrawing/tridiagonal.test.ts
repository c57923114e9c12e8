import { expect, it } from 'vitest';
import { solvedAround, solvedInLine, type Tridiagonal } from '$src/fromDrawing/tridiagonal';

/** Equations whose right sides were worked out from an answer: solving them must give that answer back. */
function equations(answer: readonly number[], isRing: boolean): Tridiagonal {
  const count = answer.length;
  return answer.map((value, index) => {
    const [below, middle, above] = [1 + (index % 3), 9 + index, 2 - (index % 2)];
    const before = isRing || index > 0 ? answer[(index + count - 1) % count]! : 0;
    const behind = isRing || index < count - 1 ? answer[(index + 1) % count]! : 0;
    return { below, middle, above, right: below * before + middle * value + above * behind };
  });
}

it.each([
  ['in a line', false, solvedInLine],
  ['in a ring', true, solvedAround],
] as const)('equations %s are solved', (_, isRing, solve) => {
  for (const answer of [
    [4, -1, 2],
    [1, 2, 3, 4, 5],
    [0, 0, 7, -3, 1e3, 2, 8],
  ])
    for (const [index, value] of solve(equations(answer, isRing)).entries())
      expect(value).toBeCloseTo(answer[index]!, 9);
});
