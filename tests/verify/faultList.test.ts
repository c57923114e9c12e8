import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { FAULTS } from '../../src/verify/faultList.js';

const pathOf = (name: string) => fileURLToPath(new URL(`../../${name}`, import.meta.url));

test('there are at least 15 faults, each with its own name', () => {
  expect(new Set(FAULTS.map((fault) => fault.name)).size).toBe(FAULTS.length);
  expect(FAULTS.length).toBeGreaterThanOrEqual(15);
});

test.each(FAULTS.map((fault) => [fault.name, fault] as const))('%s: can be planted', (_, fault) => {
  const text = readFileSync(pathOf(`src/${fault.file}`), 'utf8');
  expect(text.split(fault.find).length - 1).toBe(1);
  expect(fault.put).not.toBe(fault.find);
  for (const file of fault.tests) expect(existsSync(pathOf(file)), file).toBe(true);
});
