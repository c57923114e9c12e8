import { describe, expect, test } from 'vitest';
import { pitBehindSill } from '$src/core/section/shapes';
import { meet } from '$src/report/drawing/box';
import { toPage } from '$src/ui/drawing/view';
import { editorMarks, handleTag } from '$src/ui/section/editorMarks';
import { handleKey, handlesOf } from '$src/ui/section/handles';
import { levelWordsSpot } from '$src/ui/section/levelWordsSpot';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { editorLayout } from '../drawing/editorLayout';

const WORDS = 'metal level at the start';
const HALF = { width: 62, height: 6 };

/** The editor's picture of a section, its metal level with the lip all along basin and die. */
function editor(width: number, chosen: string | null) {
  const section = pitBehindSill();
  const view = { ...editorLayout(section, width).view, turn: 0 };
  const lip = Math.max(...section.floor.map(({ y }) => y));
  const at = (x: number) => toPage(view, { x, y: lip + 3e-4 });
  const [left, right] = [at(section.floor[0]!.x), at(section.floor.at(-1)!.x)];
  const taken = editorMarks(section, view, 'mm', chosen, true);
  return { section, view, taken, spot: levelWordsSpot(WORDS, left, right, taken) };
}

describe('the words on the level line', () => {
  test.each([1050, 760, 356])(
    'keep off handles, gap figures and the tag of any chosen point, %i px wide',
    (width) => {
      for (const handle of [null, ...handlesOf(pitBehindSill())]) {
        const { section, view, taken, spot } = editor(width, handle && handleKey(handle));
        if (!spot) continue;
        const words = {
          left: spot.x - HALF.width,
          right: spot.x + HALF.width,
          top: spot.y - HALF.height,
          bottom: spot.y + HALF.height,
        };
        expect(taken.filter((box) => meet(box, words))).toEqual([]);
        if (handle) expect(meet(handleTag(section, handle, view, 'mm').box, words)).toBe(false);
      }
    },
  );

  test('stand on the line where it has room', () => {
    expect(levelWordsSpot(WORDS, { x: 0, y: 100 }, { x: 400, y: 100 }, [])).toMatchObject({ y: 91 });
    expect(editor(1050, null).spot).not.toBeNull();
  });

  test('have room between the grip and the gap figure in the basin of the first example', () => {
    const cell = levelOrUphill.cells.find((one) => one.kind === 'section')!;
    if (cell.kind !== 'section') throw new Error(cell.kind);
    const { section } = cell;
    const view = { ...editorLayout(section, 1084).view, turn: 0 };
    const [left, right] = [section.floor[0]!.x, section.mouth].map((x) => toPage(view, { x, y: -0.001 }));
    const grip = left!.x + (right!.x - left!.x) * 0.26;
    const held = { left: grip - 12, right: grip + 12, top: left!.y - 12, bottom: left!.y + 12 };
    const spot = levelWordsSpot(WORDS, left!, right!, [
      ...editorMarks(section, view, 'mm', null, true),
      held,
    ]);
    expect(spot).not.toBeNull();
  });

  test('are left out where they would not fit or only on something else', () => {
    expect(levelWordsSpot(WORDS, { x: 0, y: 0 }, { x: 120, y: 0 }, [])).toBeNull();
    const wall = { left: 0, right: 400, top: 80, bottom: 100 };
    expect(levelWordsSpot(WORDS, { x: 0, y: 100 }, { x: 400, y: 100 }, [wall])).toBeNull();
  });
});
