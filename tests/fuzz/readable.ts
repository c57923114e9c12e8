import { expect } from 'vitest';
import type { Issue } from '$src/core/issue';

/** Words of a machine: none of them belongs in a sentence for a founder. */
const MACHINE = /undefined|\[object|TypeError|RangeError|ReferenceError|at .*\.ts:\d/;

/** Every issue is a sentence with a remedy, short enough to be read. */
export function expectReadable(issues: readonly Issue[]): void {
  expect(issues.length).toBeGreaterThan(0);
  for (const { path, message, remedy } of issues) {
    expect(typeof path).toBe('string');
    for (const sentence of [message, remedy]) {
      expect(sentence.trim().length, `“${sentence}” at ${path}`).toBeGreaterThan(5);
      expect(sentence.length, `a sentence at ${path}`).toBeLessThan(1000);
      expect(sentence, `at ${path}`).not.toMatch(MACHINE);
    }
  }
}

/** Nothing that was read has reached into what all objects share. */
export function expectNothingShared(): void {
  const shared = {} as Record<string, unknown>;
  expect(shared['polluted']).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect(Object.keys(Array.prototype)).toEqual([]);
}

/**
 * Beyond this an input is held to hang [ms of the processor]; it measures no speed. What is read in a second or two takes
 * several on a machine that does much else, and what grows with the square of a drawing takes minutes.
 */
const PATIENCE = 20_000;

const processorTime = () => process.cpuUsage().user / 1000;

/** Does it, and fails when it hung. */
export function promptly<T>(what: () => T): T {
  const begin = processorTime();
  const result = what();
  expect(processorTime() - begin).toBeLessThan(PATIENCE);
  return result;
}
