import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { sampleBook } from '../../book/sample';

const evaluation = evaluateBook(sampleBook()).get('pour-1');
const plan: PourPlan = evaluation?.state === 'needs a run' ? evaluation.plan : (undefined as never);

describe('planHash', () => {
  it('is the SHA-256 of the canonical text (FIPS 180-4; the reference is the platform’s own)', () => {
    const small = { b: 2.5, a: [1, 'x', null, true] } as unknown as PourPlan;
    const expected = createHash('sha256').update('{"a":[1,"x",null,true],"b":2.5}').digest('hex');
    expect(planHash(small)).toBe(expected);
  });

  it('does not depend on the order of keys', () => {
    const turned = Object.fromEntries(Object.entries(plan).reverse()) as unknown as PourPlan;
    expect(planHash(turned)).toBe(planHash(plan));
  });

  it('changes with the last digit of any number', () => {
    expect(planHash({ ...plan, volume: plan.volume * (1 + Number.EPSILON) })).not.toBe(planHash(plan));
    expect(planHash({ ...plan, computation: { ...plan.computation, meshCells: 401 } })).not.toBe(
      planHash(plan),
    );
  });

  it('refuses a number that is none', () => {
    expect(() => planHash({ ...plan, volume: Number.NaN })).toThrow('NaN');
  });
});
