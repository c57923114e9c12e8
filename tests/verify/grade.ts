import { describe, expect, test } from 'vitest';
import type { Family } from '$src/verify/check';
import { type Finding, holds, isReport, short } from '$src/verify/finding';

const sentence = ({ what, expected, found, unit, bar }: Finding): string =>
  `${what}: ${short(found)} ${unit}${expected === null ? '' : `, expected ${short(expected)}`}, bar ${bar}`;

/** Runs every check of a family and names each figure that misses its bar. */
export function grade(family: Family): void {
  describe(family.name, () => {
    test.each(
      family.checks.map((check) => [`${check.id}: ${check.title} (${check.source})`, check] as const),
    )('%s', (_, check) => {
      const { findings } = check.run('test');
      expect(findings.filter((finding) => !isReport(finding)).length).toBeGreaterThan(0);
      expect(findings.filter((finding) => !holds(finding)).map(sentence)).toEqual([]);
    });
  });
}
