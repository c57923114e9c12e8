import { expect, test } from 'vitest';
import { readClip, writeClip } from '$src/book/clipText';
import { clipOf, pasteClip } from '$src/cells/clip';
import { replaceCell } from '$src/cells/edit';
import type { Book } from '$src/cells/kinds';
import { firstOf, sampleBook } from '../book/sample';

const EMPTY: Book = { title: 'Another', casting: '', cells: [] };

test('a pour is copied with all it takes, and nothing else', () => {
  const book = sampleBook();
  const clip = clipOf(book, [firstOf(book, 'pour').id]);
  expect(clip.cells.map(({ kind }) => kind)).toEqual(['section', 'metal', 'tilt', 'charge', 'pour']);
});

test('into an empty book the inputs come along, linked as they were', () => {
  const book = sampleBook();
  const { book: after, pasted, copied } = pasteClip(EMPTY, clipOf(book, [firstOf(book, 'pour').id]), null);
  const [pour, charge] = [firstOf(after, 'pour'), firstOf(after, 'charge')];
  expect(pasted).toEqual([pour.id]);
  expect(copied).toHaveLength(4);
  expect(pour.charge).toBe(charge.id);
  expect(charge.section).toBe(firstOf(after, 'section').id);
  expect(pour.section).toBe(charge.section);
});

test('equal inputs of the other book are taken, whatever they are called there', () => {
  const book = sampleBook();
  const clip = clipOf(book, [firstOf(book, 'pour').id]);
  const once = pasteClip(EMPTY, clip, null).book;
  const renamed = replaceCell(once, { ...firstOf(once, 'section'), name: 'Otherwise', folded: true });
  const { book: twice, copied, relinked } = pasteClip(renamed, clip, null);
  expect(copied).toEqual([]);
  expect(relinked).toHaveLength(4);
  expect(relinked).toContain('Otherwise');
  expect(twice.cells).toHaveLength(renamed.cells.length + 1);
  const added = twice.cells.at(-1)!;
  expect(added.kind === 'pour' && added.charge).toBe(firstOf(twice, 'charge').id);
});

test('an input that differs comes along, and so does all that is worked out from it', () => {
  const book = sampleBook();
  const clip = clipOf(book, [firstOf(book, 'pour').id]);
  const once = pasteClip(EMPTY, clip, null).book;
  const tilt = firstOf(once, 'tilt');
  const changed = replaceCell(once, { ...tilt, tilt: { ...tilt.tilt, start: 0.1 } });
  const { copied, relinked } = pasteClip(changed, clip, null);
  expect(copied).toEqual([tilt.name, firstOf(once, 'charge').name]);
  expect(relinked).toHaveLength(2);
});

test('pasted cells go below the cell they are pasted at, under names and ids of their own', () => {
  const book = sampleBook();
  const note = firstOf(book, 'note');
  const { book: after, pasted } = pasteClip(book, clipOf(book, [note.id]), note.id);
  expect(after.cells[1]!.id).toBe(pasted[0]);
  expect(after.cells[1]!.name).not.toBe(note.name);
  expect(new Set(after.cells.map(({ id }) => id)).size).toBe(after.cells.length);
});

test('the text of a clip is read back as it was', () => {
  const book = sampleBook();
  const clip = clipOf(book, [firstOf(book, 'compare').id]);
  expect(readClip(writeClip(clip))).toEqual({ clip });
});

test('anything else on the clipboard is refused in words', () => {
  const text = writeClip(clipOf(sampleBook(), ['note-1']));
  const broken = [
    '',
    'metal',
    '{}',
    text.slice(0, -20),
    text.replace('"version":1', '"version":99'),
    text.replace('"kind":"note"', '"kind":"poem"'),
    text.replace('"chosen":["note-1"]', '"chosen":[]'),
  ];
  for (const one of broken) {
    const result = readClip(one);
    if (!('issues' in result)) throw new Error(`accepted: ${one.slice(0, 60)}`);
    expect(result.issues[0]!.message.length).toBeGreaterThan(10);
  }
});
