import { expect, test } from 'vitest';
import { makeTurns } from '$src/ui/shelf/inTurn';

const later = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 1));

test('work begun together is done one after the other, in the order asked', async () => {
  const inTurn = makeTurns();
  const said: string[] = [];
  const piece = (name: string) => async () => {
    said.push(`${name} begins`);
    await later();
    said.push(`${name} ends`);
    return name;
  };
  expect(await Promise.all([inTurn(piece('a')), inTurn(piece('b'))])).toEqual(['a', 'b']);
  expect(said).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
});

test('work that fails tells its own caller, and the next goes on', async () => {
  const inTurn = makeTurns();
  const failing = inTurn(async () => {
    await later();
    throw new Error('full');
  });
  const next = inTurn(async () => 'kept');
  await expect(failing).rejects.toThrow('full');
  expect(await next).toBe('kept');
});
