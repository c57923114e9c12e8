import { expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { PourPlan } from '$src/core/pour/plan';
import { runFront, runPour } from '$src/core/pour/runPour';
import { sampleBook } from '../../book/sample';

function samplePlan(): PourPlan {
  const [found] = [...evaluateBook(sampleBook()).values()].flatMap((one) =>
    one.state === 'needs a run' ? [one.plan] : [],
  );
  if (!found) throw new Error('The sample book has a pour.');
  return { ...found, heat: null, computation: { ...found.computation, meshCells: 50 } };
}

test('the sketch of a front is the front of the full run on the same mesh, looked at less often', () => {
  const plan = samplePlan();
  const run = runPour(plan);
  let step = run.next();
  while (!step.done) step = run.next();
  const { figures, frontSpeeds } = step.value;
  const sketch = runFront(plan);
  expect(figures.arrivalTime).not.toBeNull();
  expect(Math.abs(sketch.arrivalTime! / figures.arrivalTime! - 1)).toBeLessThan(0.02);
  expect(sketch.frontSpeeds.place.at(-1)).toBe(frontSpeeds.place.at(-1));
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(Math.abs(mean(sketch.frontSpeeds.speed) / mean(frontSpeeds.speed) - 1)).toBeLessThan(0.05);
});
