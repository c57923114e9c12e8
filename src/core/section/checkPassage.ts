import type { Issue } from '$src/core/issue';
import { pointName } from './checkLine';
import { closedRoof } from './closedRoof';
import { lineAt, SAME_PLACE } from './lineAt';
import { millimetres as mm } from './millimetres';
import type { Section } from './section';
import { SIZES } from './sizes';

/**
 * Steps that shut the way: floor and roof are apart on both sides of a place, but the floor on one side stands as
 * high as the roof on the other.
 */
export function checkPassage(section: Section): Issue[] {
  const roof = closedRoof(section);
  const inside = [...new Set([...section.floor, ...roof].map((point) => point.x))]
    .sort((a, b) => a - b)
    .slice(1, -1);
  return inside.flatMap((x) => {
    const sill = Math.max(lineAt(section.floor, x, 'left'), lineAt(section.floor, x, 'right'));
    const top = Math.min(lineAt(roof, x, 'left'), lineAt(roof, x, 'right'));
    if (top - sill >= SIZES.leastHeight) return [];
    const index = section.floor.findIndex(
      (point) => Math.abs(point.x - x) <= SAME_PLACE && Math.abs(point.y - sill) <= SAME_PLACE,
    );
    const name = index < 0 ? 'the floor there' : pointName('floor', index);
    return [
      {
        path: `floor.${Math.max(index, 0)}.y`,
        message: `The steps of floor and roof at ${mm(x)} mm leave no way through.`,
        remedy: `Lower y of ${name} to less than ${mm(top)} mm, or move the steps apart.`,
        at: { x, y: sill },
      },
    ];
  });
}
