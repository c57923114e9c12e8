import { describe, expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { PourPlan } from '$src/core/pour/plan';
import { fromDegrees, fromMillimetres, METRIC } from '$src/core/units';
import { cardSketch } from '$src/report/card/cardSketch';
import { type Box, meet } from '$src/report/drawing/box';
import { fillHeight } from '../../books/sources/fillHeight';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { barOverTheLip, inLongBasin } from '../longBasin';

/** Room for one letter on the card, as a browser draws it, and for one of the bold first line [px]. */
const LETTER = 5.7;
const BOLD_LETTER = 6.4;

const plans = [...evaluateBook(levelOrUphill)].flatMap(([id, evaluation]): [string, PourPlan][] =>
  evaluation.state === 'needs a run' ? [[id, evaluation.plan]] : [],
);
const levelSill = plans.find(([id]) => id === 'level-sill')![1];
const overTheLip = (pit: number, over: number): [string, PourPlan] => [
  `${over} mm over the lip of a pit of ${pit} mm`,
  barOverTheLip(levelSill, fromMillimetres(pit), fromMillimetres(over)),
];
const drawings = [
  ...plans,
  ['long basin', inLongBasin(levelSill)] as [string, PourPlan],
  overTheLip(20, 8),
  overTheLip(60, 14),
].flatMap(([id, plan]) => {
  const svgs = cardSketch(plan, METRIC, id).match(/<svg class="sketch.*?<\/svg>/gs)!;
  return svgs.map((svg): [string, string, string] => [id, /class="sketch (\w+)"/.exec(svg)![1]!, svg]);
});

const centred = (x: number, y: number, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

/** Figures of measures on the sketch, with the paper they stand on, and the words of the mark. */
function wordsOn(svg: string): { text: string; box: Box }[] {
  const plates = [
    ...svg.matchAll(
      /translate\(([-\d.]+) ([-\d.]+)\) rotate\(([-\d.]+)\)"><rect class="plate"[^>]* width="([\d.]+)" height="(\d+)"\/><text[^>]*>([^<]*)</g,
    ),
  ];
  const figures = plates.map(([, x, y, turn, long, high, text]) => {
    const angle = fromDegrees(Number(turn));
    const width = Math.abs(Math.cos(angle)) * Number(long) + Math.abs(Math.sin(angle)) * Number(high);
    const height = Math.abs(Math.sin(angle)) * Number(long) + Math.abs(Math.cos(angle)) * Number(high);
    return { text: text!, box: centred(Number(x), Number(y), width, height) };
  });
  const mark = [...svg.matchAll(/<text x="12" y="([-\d.]+)" class="halo([^"]*)">([^<]*)</g)].map(
    ([, y, kind, text]) => ({
      text: text!,
      box: {
        left: 12,
        right: 12 + text!.length * (kind ? BOLD_LETTER : LETTER),
        top: Number(y) - 9,
        bottom: Number(y) + 2,
      },
    }),
  );
  return [...figures, ...mark];
}

describe.each(drawings)('%s, %s', (id, __, svg) => {
  const isLevel = !id.startsWith('uphill');
  const words = wordsOn(svg);
  const [width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg)!.slice(1).map(Number) as [number, number];

  test('has its words off each other', () => {
    expect(words.length).toBeGreaterThan(5);
    const over = words.flatMap((one, i) =>
      words
        .slice(i + 1)
        .flatMap((other) => (meet(one.box, other.box) ? [`${one.text} on ${other.text}`] : [])),
    );
    expect(over).toEqual([]);
  });

  test('has no figure across the outer edge of the die', () => {
    const steel = [...svg.matchAll(/class="steel"[^>]* d="([^"]*)"/g)].flatMap(([, path]) =>
      [...path!.matchAll(/([-\d.]+)[ ,]([-\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) })),
    );
    const end = Math.max(...steel.map(({ x }) => x));
    const top = Math.min(...steel.map(({ y }) => y));
    const across = words.filter(({ box }) => box.left < end - 1 && box.right > end + 1 && box.bottom > top);
    expect(steel.length).toBeGreaterThan(10);
    expect(isLevel ? across : []).toEqual([]);
  });

  test('has no figure on an edge of the steel', () => {
    const edges = [...svg.matchAll(/class="steel"[^>]* d="([^"]*)"/g)].flatMap(([, path]) => {
      const spots = [...path!.matchAll(/([-\d.]+)[ ,]([-\d.]+)/g)].map(
        ([, x, y]) => [Number(x), Number(y)] as const,
      );
      return spots.map((spot, i) => [spot, spots[(i + 1) % spots.length]!] as const);
    });
    // Along an edge in steps of a tenth of a pixel or less.
    const lies = ({ left, right, top, bottom }: Box): boolean =>
      edges.some(([[ax, ay], [bx, by]]) =>
        Array.from({ length: 4001 }, (_, k) => k / 4000).some((share) => {
          const [x, y] = [ax + share * (bx - ax), ay + share * (by - ay)];
          return x > left + 0.5 && x < right - 0.5 && y > top + 0.5 && y < bottom - 0.5;
        }),
      );
    expect(edges.length).toBeGreaterThan(10);
    expect(words.filter(({ box }) => lies(box)).map(({ text }) => text)).toEqual([]);
  });

  test('has no line of a level through a word or a figure', () => {
    const levels = [...svg.matchAll(/class="(?:plane|hair)" d="M12 ([-\d.]+)H([-\d.]+)"/g)].map(
      ([, y, right]) => ({ left: 12, right: Number(right), top: Number(y) - 0.5, bottom: Number(y) + 0.5 }),
    );
    expect(levels.length).toBeGreaterThan(0);
    const crossed = words.filter(({ box }) => levels.some((level) => meet(level, box)));
    expect(crossed.map(({ text }) => text)).toEqual([]);
  });

  test('has its words in the picture', () => {
    const outside = words.filter(
      ({ box }) => box.left < 0 || box.right > width || box.top < 0 || box.bottom > height,
    );
    expect(outside).toEqual([]);
  });
});

/** Figures that stand away from their line, and the word at the mouth. */
const leadersOn = (svg: string) =>
  [...svg.matchAll(/class="hair" d="M([-\d.]+)[ ,]([-\d.]+)L([-\d.]+)[ ,]([-\d.]+)"/g)].map(([, ...four]) =>
    four.map(Number),
  );

test('no line that leads to a figure runs through the word at the mouth', () => {
  const more = [...evaluateBook(fillHeight)].flatMap(([id, evaluation]): [string, PourPlan][] =>
    evaluation.state === 'needs a run' ? [[id, evaluation.plan]] : [],
  );
  const svgs = [...plans, ...more].flatMap(
    ([id, plan]) => cardSketch(plan, METRIC, id).match(/<svg class="sketch.*?<\/svg>/gs)!,
  );
  const struck = svgs.filter((svg) => {
    const [, x, y] = /<text x="([-\d.]+)" y="([-\d.]+)" class="middle halo bold">mouth/
      .exec(svg)!
      .map(Number);
    const word = centred(x!, y! - 4, 5 * BOLD_LETTER, 10);
    return leadersOn(svg).some(([ax, ay, bx, by]) =>
      Array.from({ length: 401 }, (_, k) => k / 400).some((share) => {
        const [px, py] = [ax! + share * (bx! - ax!), ay! + share * (by! - ay!)];
        return px > word.left && px < word.right && py > word.top && py < word.bottom;
      }),
    );
  });
  expect(svgs.length).toBeGreaterThan(8);
  expect(struck).toEqual([]);
});
