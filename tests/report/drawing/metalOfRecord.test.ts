import { describe, expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { PourRecord } from '$src/core/pour/record';
import { fromDegrees } from '$src/core/units';
import { metalOfFrame } from '$src/report/drawing/metalShape';
import { type Picture, pictureAt } from '$src/report/frames';
import { computed } from '../../books/computed';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { areaOf } from './areaOf';

/** Metal no deeper than this in three cells side by side is a film [m]. */
const THIN = 5e-3;

/** Pours of the first example: what is drawn of them is what the record holds. */
function pours(): [name: string, PourRecord][] {
  const evaluations = evaluateBook(levelOrUphill);
  return levelOrUphill.cells.flatMap((cell): [string, PourRecord][] => {
    const evaluation = evaluations.get(cell.id);
    if (cell.kind !== 'pour' || evaluation?.state !== 'needs a run') return [];
    return [[cell.name, computed(evaluation.plan)]];
  });
}

describe.each(pours())('%s as drawn', (_, record) => {
  const { x } = record.outline;
  const pictures = Array.from(record.frames.time, (time) => pictureAt(record, time));

  test('has as much metal as the record, in every frame', () => {
    for (const picture of pictures) {
      const drawn = metalOfFrame(record.outline, picture.inclination, picture).bodies.reduce(
        (sum, body) => sum + areaOf(body),
        0,
      );
      const held = Array.from(x.slice(1), (right, j) =>
        Number.isNaN(picture.levelOf(j)) ? 0 : picture.depthOf(j) * (right - x[j]!),
      ).reduce((sum, area) => sum + area, 0);
      expect(Math.abs(drawn / held - 1)).toBeLessThan(0.02);
    }
  });

  test('hangs no thicker on the wall of the basin than the record has it there', () => {
    const { floorLeft, floorRight } = record.outline;
    const thin = (picture: Picture, j: number) =>
      j < 0 || Number.isNaN(picture.levelOf(j)) || picture.depthOf(j) < THIN;
    const places = pictures
      .filter(({ inclination }) => inclination < fromDegrees(-60))
      .flatMap((picture) =>
        metalOfFrame(record.outline, picture.inclination, picture)
          .bodies.flat()
          .flatMap((point) => {
            const j = x.findLastIndex((left) => left < point.x);
            const isThinAbout = [j - 1, j, j + 1].every((cell) => thin(picture, cell));
            return isThinAbout ? [point.y - Math.max(floorLeft[j] ?? 0, floorRight[j] ?? 0)] : [];
          }),
      );
    expect(places.length).toBeGreaterThan(20);
    expect(Math.max(...places)).toBeLessThan(THIN);
  });
});
