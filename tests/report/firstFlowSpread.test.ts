import { expect, test } from 'vitest';
import { firstFlow } from '$src/core/level/firstFlowBand';
import { standOf } from '$src/core/level/stand';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { cavityVolume } from '$src/core/section/cavity';
import type { Point, Section } from '$src/core/section/section';
import { pitBehindSill } from '$src/core/section/shapes';
import { STARTING_SHAPES } from '$src/core/section/startingShapes';
import { fromDegrees } from '$src/core/units';
import { compare } from '$src/report/compare';
import { FIRST_FLOW_SPREAD } from '$src/report/firstFlowSpread';
import { samplePlan } from '../study/samplePlan';

const thinWall = STARTING_SHAPES.find(({ name }) => name === 'thin wall')!.make();

/** The thin wall with its die end so much further out [m]. */
function longer(section: Section, by: number): Section {
  const end = section.floor.at(-1)!.x;
  const moved = <P extends Point>(point: P): P =>
    Math.abs(point.x - end) < 1e-9 ? { ...point, x: point.x + by } : point;
  const last = section.regions.length - 1;
  return {
    ...section,
    floor: section.floor.map(moved),
    roof: section.roof.map(moved),
    regions: section.regions.map((region, k) => (k === last ? { ...region, end: region.end + by } : region)),
    vents: [],
  };
}

function planOf(section: Section): PourPlan {
  const base = samplePlan(100);
  return {
    ...base,
    section,
    volume: 1.3 * cavityVolume(thinWall),
    tilt: {
      kind: 'steady',
      start: fromDegrees(30),
      end: fromDegrees(-90),
      rate: fromDegrees(10),
      smoothing: 0.3,
      limits: base.tilt.limits,
    },
    heat: null,
  };
}

/** The pour until a fiftieth of the die is full: its first flow is known by then. */
function begun(plan: PourPlan): PourRecord {
  const run = runPour(plan);
  let step = run.next();
  while (!step.done) step = run.next({ stop: step.value.filledShare > 0.02 });
  return step.value;
}

const angleOf = ({ figures: { firstFlow: flow } }: PourRecord): number =>
  flow.kind === 'angle' ? flow.inclination : Number.NaN;

const onMesh = (plan: PourPlan, meshCells: number): PourPlan => ({
  ...plan,
  computation: { ...plan.computation, meshCells },
});

test('two dies almost alike, whose basins are cut into other cells, begin at the same angle', () => {
  const plans = [longer(thinWall, 0.004), longer(thinWall, 0.0044)].map(planOf);
  const [first, second] = plans.map(begun);
  const level = plans.map(({ section, volume, tilt, liquid }) =>
    firstFlow(section, volume, tilt.start, fromDegrees(-90), standOf(liquid)),
  );
  expect(level[0]).toEqual(level[1]);
  expect(Math.abs(angleOf(first!) - angleOf(second!))).toBeLessThanOrEqual(FIRST_FLOW_SPREAD);
  const { figures } = compare([
    { name: 'One', record: first! },
    { name: 'Twin', record: second! },
  ]);
  expect(['the same', 'too close to call']).toContain(
    figures.find(({ key }) => key === 'first_flow_deg')!.differences[1],
  );
});

test.each([
  ['thin wall', () => thinWall],
  ['pit behind a sill', pitBehindSill],
] as const)('behind a basin of the %s five meshes have one first flow', (_, make) => {
  const angles = [94, 97, 100, 103, 106].map((cells) => angleOf(begun(onMesh(planOf(make()), cells))));
  expect(Math.max(...angles) - Math.min(...angles)).toBeLessThanOrEqual(FIRST_FLOW_SPREAD);
});
