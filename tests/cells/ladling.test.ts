import { describe, expect, it } from 'vitest';
import { replaceCell } from '$src/cells/edit';
import { type Evaluation, evaluateBook } from '$src/cells/evaluate';
import type { ChargeBy } from '$src/cells/kinds';
import { type Ladling, USUAL_LADLING } from '$src/core/heat/ladling';
import { fromCelsius, fromMillimetres } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';

const book = sampleBook();
const charge = firstOf(book, 'charge');
const pour = firstOf(book, 'pour');
const metal = firstOf(book, 'metal').metal;

function evaluated(ladling: Ladling | null, by: ChargeBy = { by: 'mass', mass: 0.6 }) {
  const { ladling: _, ...plain } = { ...charge, charge: by };
  const all = evaluateBook(replaceCell(book, ladling ? { ...plain, ladling } : plain));
  return { charge: all.get(charge.id)!, pour: all.get(pour.id)! };
}
function value(evaluation: Evaluation) {
  if (!('charge' in evaluation)) throw new Error(evaluation.state);
  return evaluation.charge;
}
function plan(evaluation: Evaluation) {
  if (!('plan' in evaluation)) throw new Error(evaluation.state);
  return evaluation.plan;
}
const warned = (ladling: Ladling, by?: ChargeBy): string[] =>
  value(evaluated(ladling, by).charge).ladled!.warnings.map((warning) => warning.path);

describe('ladling and the wait', () => {
  it('leaves skull and dross out of what is poured, by mass', () => {
    const before = evaluated(null);
    const after = evaluated(USUAL_LADLING);
    expect(value(after.charge).mass).toBe(0.6);
    expect(plan(after.pour).volume / plan(before.pour).volume).toBeCloseTo(0.97, 12);
    expect(plan(after.pour).volume).toBeCloseTo(value(after.charge).volume, 15);
  });

  it('asks for more metal when a level or a head is wanted', () => {
    const head: ChargeBy = { by: 'head', head: 0.02 };
    const [before, after] = [evaluated(null, head), evaluated(USUAL_LADLING, head)];
    expect(plan(after.pour).volume).toBe(plan(before.pour).volume);
    expect(value(after.charge).mass / value(before.charge).mass).toBeCloseTo(1 / 0.97, 12);
  });

  it('starts the pour with what the wait left of the temperature', () => {
    const waited = (settleTime: number) =>
      plan(evaluated({ ...USUAL_LADLING, settleTime }).pour).heat!.startTemperature;
    expect(plan(evaluated(null).pour).heat!.startTemperature).toBe(metal.pouringTemperature.value);
    expect(waited(1)).toBeLessThan(metal.pouringTemperature.value - 10);
    expect(waited(2)).toBeLessThan(waited(1));
    const measured = fromCelsius(668);
    expect(
      plan(evaluated({ ...USUAL_LADLING, measuredTemperature: measured }).pour).heat!.startTemperature,
    ).toBe(measured);
  });

  it('refuses a wait that freezes the metal in the basin', () => {
    const frozen = evaluated({ ...USUAL_LADLING, settleTime: 300 }).pour;
    expect(frozen.state === 'wrong input' && frozen.issues[0]!.path).toBe('startTemperature');
  });

  it('warns of a high drop, an early tilt, a bar out of the metal and dross at the lip', () => {
    expect(warned({ ...USUAL_LADLING, dropHeight: 0.01 })).toEqual([]);
    expect(warned({ ...USUAL_LADLING, dropHeight: 0.05 })).toEqual(['dropHeight']);
    expect(warned({ ...USUAL_LADLING, dropHeight: 0, tiltStart: 2 })).toEqual(['tiltStart']);
    const level: ChargeBy = { by: 'fill level', fromLip: fromMillimetres(-4) };
    const calm = { ...USUAL_LADLING, dropHeight: 0 };
    expect(warned({ ...calm, skimBar: fromMillimetres(-2) }, level)).toEqual(['skimBar']);
    expect(warned({ ...calm, skimBar: fromMillimetres(-8) }, level)).toEqual([]);
    const brimming: ChargeBy = { by: 'fill level', fromLip: fromMillimetres(1) };
    expect(warned(calm, brimming)).toEqual(['dross']);
  });

  it.each([
    ['dropHeight', { dropHeight: -0.01 }],
    ['skimTime', { skimTime: Number.NaN }],
    ['skullShare', { skullShare: 0.4, drossShare: 0.3 }],
  ])('refuses a wrong %s', (field, change) => {
    const { charge: wrong, pour: blocked } = evaluated({ ...USUAL_LADLING, ...change });
    expect(wrong.state === 'wrong input' && wrong.issues.map(({ path }) => path)).toEqual([
      `ladling.${field}`,
    ]);
    expect(blocked.state).toBe('blocked');
  });
});
