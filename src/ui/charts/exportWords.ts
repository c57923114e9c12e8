import type { Caption } from './exportCaption';
import { keepLook } from './keepLook';
import { textWidth } from './labelRoom';

/** Heights of a line of title, of small words and of the key, and what stands between two meanings [px]. */
const LINE = { title: 19, small: 16, key: 20 } as const;
const BETWEEN = 18;
const MARK_ROOM = 7;
/** Small words are told by this much less than those of a chart. */
const WIDER = 1.08;

const drawn = (name: string): SVGElement => document.createElementNS('http://www.w3.org/2000/svg', name);

function addWords(to: Element, words: string, x: number, y: number, isTitle = false): void {
  const text = drawn('text');
  const look = getComputedStyle(document.body);
  for (const [name, value] of [
    ['x', String(x)],
    ['y', String(y)],
    ['fill', look.color],
    ['font-family', look.fontFamily.replaceAll('"', "'")],
    ['font-size', isTitle ? '15' : '12'],
    ['font-weight', isTitle ? '700' : '400'],
  ] as const)
    text.setAttribute(name, value);
  text.textContent = words;
  to.append(text);
}

/** Words broken to a width, in lines [px]. */
export function brokenTo(width: number, words: string, wide: (text: string) => number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ').filter((each) => each !== '')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && wide(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** Book, cell and what was poured, above the picture. Gives the height it takes [px]. */
export function addCaption(to: Element, { title, of }: Caption, width: number): number {
  const titles = brokenTo(width, title, (text) => textWidth(text) * 1.3);
  const small = brokenTo(width, of, (text) => textWidth(text) * WIDER);
  const height = titles.length * LINE.title + small.length * LINE.small + 8;
  let y = -height;
  for (const line of titles) {
    y += LINE.title;
    addWords(to, line, 0, y - 4, true);
  }
  for (const line of small) {
    y += LINE.small;
    addWords(to, line, 0, y - 4);
  }
  return height;
}

/** The key of a chart stands in its figure, or after it. */
function keyOf(picture: Element): Element | null {
  const figure = picture.closest('figure');
  const within = figure?.querySelector('.chart-key');
  const after = figure?.nextElementSibling;
  return within ?? (after?.matches('.chart-key') ? after : null);
}

/** What the marks of a chart mean, below the picture. Gives the height it takes [px]; none where there is no key. */
export function addKey(picture: Element, to: Element, width: number, top: number): number {
  const key = keyOf(picture);
  if (!key) return 0;
  for (const hatches of key.querySelectorAll(':scope > svg defs')) {
    const copy = hatches.cloneNode(true) as Element;
    keepLook(hatches, copy);
    to.append(copy);
  }
  let [x, y] = [0, top + LINE.key];
  for (const meaning of key.querySelectorAll(':scope > span')) {
    const mark = meaning.querySelector('svg');
    const words = meaning.textContent.replaceAll(/\s+/g, ' ').trim();
    const markWidth = mark ? mark.getBoundingClientRect().width + MARK_ROOM : 0;
    const wide = markWidth + textWidth(words) * WIDER;
    if (x > 0 && x + wide > width) [x, y] = [0, y + LINE.key];
    if (mark) addMark(to, mark, x, y);
    const lines = brokenTo(width - markWidth, words, (text) => textWidth(text) * WIDER);
    for (const [index, line] of lines.entries()) addWords(to, line, x + markWidth, y + index * LINE.small);
    y += Math.max(0, lines.length - 1) * LINE.small;
    x += wide + BETWEEN;
  }
  return y + 8 - top;
}

function addMark(to: Element, mark: SVGSVGElement, x: number, y: number): void {
  const { width, height } = mark.getBoundingClientRect();
  const copy = mark.cloneNode(true) as SVGSVGElement;
  keepLook(mark, copy);
  for (const [name, value] of [
    ['x', x],
    ['y', y - 4 - height / 2],
    ['width', width],
    ['height', height],
  ] as const)
    copy.setAttribute(name, String(value));
  to.append(copy);
}
