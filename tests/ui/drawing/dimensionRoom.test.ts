import { expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import { meet } from '$src/report/drawing/box';
import { measuresOf } from '$src/report/drawing/dimensions';
import { steelAround } from '$src/report/drawing/steel';
import { boxInCorner } from '$src/ui/drawing/corner';
import { dimensionRoom } from '$src/ui/drawing/dimensionRoom';
import { placeLabels } from '$src/ui/drawing/labels';
import { toolsSize } from '$src/ui/drawing/layout';
import { namedParts } from '$src/ui/drawing/names';
import { toPage } from '$src/ui/drawing/view';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { inLongBasin } from '../../report/longBasin';
import { editorLayout } from './editorLayout';

const evaluation = evaluateBook(levelOrUphill).get('level-sill')!;
if (evaluation.state !== 'needs a run') throw new Error(evaluation.state);
const { section } = inLongBasin(evaluation.plan);

test.each([356, 520, 760, 1050])(
  'no name lies on the figure of the opening or on the lines below, %i px wide',
  (width) => {
    const steel = steelAround(section);
    const layout = editorLayout(section, width);
    const view = { ...layout.view, turn: 0 };
    const size = toolsSize(layout.narrow, false);
    const tools = boxInCorner(layout.corner, layout.view, size.width, size.height);
    const names = namedParts(section, steel)
      .slice(0, 2)
      .map(({ key, name, at, away }) => ({
        key,
        lines: [name],
        anchor: toPage(view, at),
        towards: { x: away.x, y: -away.y },
      }));
    const bodies = [steel.floorBlock, steel.shell, steel.cavity, ...steel.roofBlocks].map((body) =>
      body.map((p) => toPage(view, p)),
    );
    const placed = placeLabels(names, bodies, [tools, ...dimensionRoom(section, steel, view)], view);
    expect(placed.map(({ wish }) => wish.key)).toContain('mouth');
    const opening = measuresOf(section, steel).find(({ side }) => side === 'above')!;
    const [from, to] = [toPage(view, opening.from), toPage(view, opening.to)];
    const figure = {
      left: (from.x + to.x) / 2 - 14,
      right: (from.x + to.x) / 2 + 14,
      top: from.y - 40,
      bottom: from.y - 25,
    };
    expect(placed.filter(({ box }) => meet(box, figure))).toEqual([]);
  },
);
