import type { Point } from '$src/core/section/section';

/** One line of a DXF file's code and the line of its value: what kind of thing it is, and the thing. */
export interface Pair {
  readonly code: number;
  readonly value: string;
}

/** A drawn thing: its type and its pairs in order. Of a POLYLINE its vertices follow as things of their own. */
export interface Entity {
  readonly type: string;
  readonly pairs: readonly Pair[];
}

/** Things drawn once and inserted by name. */
export interface Block {
  /** The point of it that an INSERT sets down. */
  readonly base: Point;
  readonly entities: readonly Entity[];
}

export interface DxfContent {
  readonly entities: readonly Entity[];
  /** What the BLOCKS section lists: each BLOCK, its things after it, and its ENDBLK. */
  readonly blockEntities: readonly Entity[];
  /** $INSUNITS of the header; null when it has none. */
  readonly unitCode: number | null;
}

export type ReadPairs = DxfContent | { readonly wrong: string };

/** What a code must look like: a whole number, spaces before it (DXF reference, "Group codes"). */
const CODE = /^\s*\d{1,4}\s*$/;

/** Takes the text of a DXF file apart, once from top to bottom: whatever the text, it ends. */
export function readPairs(text: string): ReadPairs {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const lists: Record<'ENTITIES' | 'BLOCKS', { type: string; pairs: Pair[] }[]> = {
    ENTITIES: [],
    BLOCKS: [],
  };
  let [section, variable] = ['', ''];
  let unitCode: number | null = null;
  for (let at = 0; at + 1 < lines.length; at += 2) {
    if (!CODE.test(lines[at]!)) return { wrong: `line ${at + 1} is not a group code.` };
    const pair = { code: Number(lines[at]), value: lines[at + 1]!.trim() };
    const { code, value } = pair;
    const list = section === 'ENTITIES' || section === 'BLOCKS' ? lists[section] : null;
    if (code === 0 && value === 'EOF') break;
    if (code === 0 && (value === 'SECTION' || value === 'ENDSEC')) section = '';
    else if (section === '' && code === 2) section = value;
    else if (list && code === 0) list.push({ type: value, pairs: [] });
    else if (list) list.at(-1)?.pairs.push(pair);
    else if (section === 'HEADER' && code === 9) variable = value;
    else if (section === 'HEADER' && variable === '$INSUNITS' && code === 70) unitCode = Number(value);
  }
  return { entities: lists.ENTITIES, blockEntities: lists.BLOCKS, unitCode };
}

/** The first value with this code; null when there is none. */
export const textOf = ({ pairs }: Entity, code: number): string | null =>
  pairs.find((pair) => pair.code === code)?.value ?? null;

/** The first number with this code; NaN when there is none or it is no number. */
export const numberOf = (entity: Entity, code: number): number =>
  Number.parseFloat(textOf(entity, code) ?? '');

/** All numbers with this code, in order; NaN where one is none. */
export const numbersOf = ({ pairs }: Entity, code: number): number[] =>
  pairs.filter((pair) => pair.code === code).map(({ value }) => Number.parseFloat(value));
