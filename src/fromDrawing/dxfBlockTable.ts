import { type Block, type Entity, numberOf, textOf } from './dxfPairs';
import { withVertices } from './dxfPolyline';

/** The blocks of a drawing by their names; of two with one name the later. */
export function blockTable(listed: readonly Entity[]): Map<string, Block> {
  const blocks = new Map<string, Block>();
  let begin = -1;
  for (const [index, { type }] of listed.entries())
    if (type === 'BLOCK') begin = index;
    else if (type === 'ENDBLK' && begin >= 0) {
      const head = listed[begin]!;
      blocks.set(nameOf(head), {
        base: baseOf(head),
        entities: withVertices(listed.slice(begin + 1, index)),
      });
      begin = -1;
    }
  return blocks;
}

/** Names of blocks are the same in large and small letters; '' for a thing without one. */
export const nameOf = (entity: Entity): string => (textOf(entity, 2) ?? '').toUpperCase();

/** 10 and 20 of a BLOCK; the origin where a file leaves them out. */
const baseOf = (block: Entity): Block['base'] => ({
  x: numberOf(block, 10) || 0,
  y: numberOf(block, 20) || 0,
});
