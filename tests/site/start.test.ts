import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const START = fileURLToPath(new URL('../../src/setup/start.js', import.meta.url));

/** Starts Quietpour as a user does and gathers what it prints. */
function start(
  port: string,
  words: readonly string[] = [],
): { child: ChildProcess; said: () => string; ended: Promise<number | null> } {
  const child = spawn(process.execPath, [START, ...words], {
    env: { ...process.env, PORT: port },
    stdio: 'pipe',
  });
  let text = '';
  const keep = (piece: Buffer) => {
    text += piece.toString();
  };
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  return { child, said: () => text, ended: new Promise((resolve) => child.on('close', resolve)) };
}

const lastLine = (text: string): string => text.trimEnd().split('\n').at(-1) ?? '';

test('start prints the real address last, serves the page on this machine only, and ends when asked', async () => {
  const { child, said, ended } = start('0');
  try {
    await expect.poll(said, { timeout: 55_000 }).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/m);
    const answer = await fetch(lastLine(said()));
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<html');
  } finally {
    child.kill('SIGTERM');
  }
  expect(await ended).toBe(0);
});

test('a word it does not know is refused with the way to another port', async () => {
  const { said, ended } = start('0', ['--port', '4199']);
  expect(await ended).toBe(1);
  expect(said()).toContain('PORT=4199');
});

test('a port that is taken is said to be taken', async () => {
  const other = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve) => other.once('listening', resolve));
  const { port } = other.address() as AddressInfo;
  const { said, ended } = start(String(port));
  expect(await ended).toBe(1);
  expect(said()).toContain(`could not be served on port ${port}`);
  other.close();
});
