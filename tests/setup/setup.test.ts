import { describe, expect, test } from 'vitest';
import { isNodeGoodEnough } from '$src/setup/checkNode.js';
import { isInstallNeeded } from '$src/setup/install.js';
import { chosenPort } from '$src/setup/port.js';
import { readTally } from '$src/setup/tally.js';

test.each([
  ['18.20.0', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['20.20.2', true],
  ['21.7.0', false],
  ['22.0.0', true],
  ['24.1.0', true],
])('Node %s is good enough: %s', (version, isGood) => expect(isNodeGoodEnough(version)).toBe(isGood));

describe('packages are installed', () => {
  const locked = {
    packages: {
      '': {},
      'node_modules/a': { version: '1.0.0' },
      'node_modules/b': { version: '2.0.0', optional: true },
    },
  };
  test('when nothing is there', () => expect(isInstallNeeded(locked, {})).toBe(true));
  test('when a version is another', () =>
    expect(isInstallNeeded(locked, { packages: { 'node_modules/a': { version: '0.9.0' } } })).toBe(true));
  test('not when only what is meant for other systems is absent', () =>
    expect(isInstallNeeded(locked, { packages: { 'node_modules/a': { version: '1.0.0' } } })).toBe(false));
});

describe('the port', () => {
  test('asked for is kept strictly', () => expect(chosenPort('8080')).toEqual({ port: 8080, strict: true }));
  test('0 takes any free one', () => expect(chosenPort('0')).toEqual({ port: 0, strict: false }));
  test('not asked for may give way', () => expect(chosenPort(undefined)).toMatchObject({ strict: false }));
  test.each(['http', '70000', '-1', '80.5'])('%s is refused with what to give', (asked) =>
    expect(chosenPort(asked)).toEqual({ problem: expect.stringContaining('from 0 to 65535') }),
  );
});

test('a test run that broke off counts as a failure', () => {
  expect(readTally('/no/such/file', 1)).toEqual({ passed: 0, failed: 1 });
  expect(readTally('/no/such/file', 0)).toEqual({ passed: 0, failed: 0 });
});
