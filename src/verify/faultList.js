/**
 * Faults that the tests must see, each planted alone. `find` must stand exactly once in the file; `tests` are the
 * test files that are asked, so that a round takes seconds.
 *
 * @typedef {{ name: string, file: string, find: string, put: string, tests: string[] }} Fault
 */

const verify = (/** @type {string[]} */ ...names) => names.map((name) => `tests/verify/${name}.test.ts`);

/** @type {readonly Fault[]} */
export const FAULTS = [
  {
    name: 'gravity points up the slope',
    file: 'core/flow/rotate.ts',
    find: 'rotateLevels(flow.levels, mesh, forces.sin, forces.cos, from, to)',
    put: 'rotateLevels(flow.levels, mesh, -forces.sin, forces.cos, from, to)',
    tests: verify('film', 'stillMetal'),
  },
  {
    name: 'the body does not turn',
    file: 'core/flow/rotate.ts',
    find: 'rotateLevels(flow.levels, mesh, forces.sin, forces.cos, from, to)',
    put: 'rotateLevels(flow.levels, mesh, 0, 1, from, to)',
    tests: verify('film', 'slosh'),
  },
  {
    name: 'friction doubled',
    file: 'core/flow/faces.ts',
    find: '1 / (1 + dt * frictionRate(',
    put: '1 / (1 + 2 * dt * frictionRate(',
    tests: verify('steady', 'basin'),
  },
  {
    name: 'capillary gate off',
    file: 'core/flow/adjustFace.ts',
    find: 'forces.capillaryGate && !bothFull',
    put: '!forces.capillaryGate && !bothFull',
    tests: verify('stand'),
  },
  {
    name: 'thin walls held by the law of open fronts',
    file: 'core/flow/gate.ts',
    find: 'return (dt * (slotFront / height + (gravity * opening) / 2)) / path',
    put: 'return (dt * 2 * slotFront) / (0.5 * height) / path',
    tests: verify('stand'),
  },
  {
    name: 'a front in a slot stopped at every face',
    file: 'core/flow/advance.ts',
    find: 'if (!breakSkins(flow, mesh, forces, dt)) return true',
    put: 'if (flow.steps >= 0) return true',
    tests: ['tests/core/flow/slotFront.test.ts'],
  },
  {
    name: 'no heat conducted along the metal',
    file: 'core/heat/carryHeat.ts',
    find: 'conduct(heat, flow, mesh, heat.owed)',
    put: 'conduct(heat, flow, mesh, 0)',
    tests: ['tests/core/heat/conduct.test.ts'],
  },
  {
    name: 'skin as thick as a film',
    file: 'core/flow/settings.ts',
    find: 'export const SKIN_DEPTH = 1e-6',
    put: 'export const SKIN_DEPTH = 2e-5',
    tests: verify('stand'),
  },
  {
    name: 'a hundred-millionth of the metal leaks each step',
    file: 'core/flow/finish.ts',
    find: 'const next = volume[i]! - dt * (leaving - entering)',
    put: 'const next = (volume[i]! - dt * (leaving - entering)) * (1 - 1e-8)',
    tests: verify('pours'),
  },
  {
    name: 'spilled metal not counted',
    file: 'core/flow/finish.ts',
    find: 'flow.spilled += leaving',
    put: 'flow.spilled += 0',
    tests: verify('pours'),
  },
  {
    name: 'front read in whole mesh cells',
    file: 'core/watch/sample.ts',
    find: 'const share = here >= behind ? 1 : here / behind',
    put: 'const share = here > 2 * behind ? here : 1',
    tests: verify('frontReading'),
  },
  {
    name: 'new level weighed fully (theta 1)',
    file: 'core/flow/settings.ts',
    find: 'export const TIME_WEIGHT = 0.55',
    put: 'export const TIME_WEIGHT = 1',
    tests: verify('slosh'),
  },
  {
    name: 'face area not centred in time',
    file: 'core/flow/settings.ts',
    find: 'export const CENTRING_LIMIT = 1.5',
    put: 'export const CENTRING_LIMIT = 1',
    tests: verify('damBreak'),
  },
  {
    name: 'Coriolis sign',
    file: 'core/flow/faces.ts',
    find: 'const twice = 2 * rate',
    put: 'const twice = -2 * rate',
    tests: verify('frame'),
  },
  {
    name: 'centrifugal force inwards',
    file: 'core/flow/faces.ts',
    find: 'const square = rate * rate',
    put: 'const square = -rate * rate',
    tests: verify('frame'),
  },
  {
    name: 'pivot ignored',
    file: 'core/mesh/mesh.ts',
    find: 'place - mesh.pivotX',
    put: 'place - 0 * mesh.pivotX',
    tests: verify('frame'),
  },
  {
    name: 'momentum driven along the axis, not the floor',
    file: 'core/mesh/mesh.ts',
    find: 'floorCos[i] = Math.max(run / Math.hypot(run, rise), STEEPEST_FLOOR_COS)',
    put: 'floorCos[i] = Math.max(run / Math.hypot(run, 0 * rise), STEEPEST_FLOOR_COS)',
    tests: verify('film'),
  },
  {
    name: 'momentum not carried',
    file: 'core/flow/advect.ts',
    find: 'const next = u - (dt * change)',
    put: 'const next = u - (0 * dt * change)',
    tests: verify('damBreak'),
  },
  {
    name: 'momentum carried in first order',
    file: 'core/flow/advect.ts',
    find: 'if (a * b <= 0) return 0',
    put: 'if (a * b <= Infinity) return 0',
    tests: verify('steady'),
  },
  {
    name: 'no critical flow over a step',
    file: 'core/flow/adjustFace.ts',
    find: 'if (likely * height[j]! <= most) return true',
    put: 'if (likely * height[j]! <= 9 * most) return true',
    tests: verify('steady'),
  },
  {
    name: 'storage of steep cells off by a thousandth',
    file: 'core/mesh/levels.ts',
    find: 'low = roofLow;',
    put: 'low = roofLow * 1.001;',
    tests: [...verify('pours', 'stillMetal'), 'tests/core/flow/properties.test.ts'],
  },
  {
    name: 'a plan names its record without its charge',
    file: 'core/pour/planHash.ts',
    find: '([, part]) => part !== undefined',
    put: "([key, part]) => part !== undefined && key !== 'volume'",
    tests: ['tests/core/pour/planHash.test.ts', 'tests/cells/evaluate.test.ts'],
  },
  {
    name: 'an old answer served for a changed book',
    file: 'cells/remember.ts',
    find: 'one.args.every((arg, index) => Object.is(arg, args[index]))',
    put: 'one.args.length === args.length',
    tests: ['tests/cells/evaluate.test.ts'],
  },
  {
    name: 'degrees taken for grads',
    file: 'core/units.ts',
    find: 'const DEGREES_PER_RADIAN = 180 / Math.PI',
    put: 'const DEGREES_PER_RADIAN = 200 / Math.PI',
    tests: verify('stand', 'exact'),
  },
  {
    name: 'stand of the level fill a tenth too high',
    file: 'core/level/stand.ts',
    find: 'return Math.sqrt((2 * stand.sigma) / (GRAVITY * cos))',
    put: 'return 1.1 * Math.sqrt((2 * stand.sigma) / (GRAVITY * cos))',
    tests: verify('levelFillStand', 'slowTilt'),
  },
  {
    name: 'contact angle read from the wrong side',
    file: 'core/metal/capillarity.ts',
    find: 'Math.sin(contactAngle / 2)',
    put: 'Math.cos(contactAngle / 2)',
    tests: verify('exact'),
  },
];
