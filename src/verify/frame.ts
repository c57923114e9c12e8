import { setFaces } from '$src/core/flow/faces';
import { GRAVITY } from '$src/core/gravity';
import type { Section } from '$src/core/section/section';
import { type CaseRun, fillDepth, NO_FRICTION, runTo, setSpeed, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Family, Outcome } from './check';
import { atMost, type Finding, near } from './finding';
import { centre, settleDepths } from './measure';

interface Turning {
  readonly rate: number;
  readonly acceleration: number;
  readonly pivot: { readonly x: number; readonly y: number };
}

const sectionAbout = (pivot: Section['pivot'], cells: number): Section => ({
  ...channelSection({ length: 0.4, cells, roof: 0.5 }),
  pivot,
});

/** Push per second at a face that the turning of the body adds: with and without it, all else equal [m/s²]. */
function addedPush({ rate, acceleration, pivot }: Turning, face: number): { run: CaseRun; push: number } {
  const cells = 40;
  const dt = 1e-4;
  const run = startCase({ section: sectionAbout(pivot, cells), meshCells: cells });
  fillDepth(run, (x) => 0.02 + 0.05 * x);
  setSpeed(run, (x) => 0.3 + 0.5 * x);
  const { flow, mesh, forces } = run;
  flow.advected.set(flow.speed);
  flow.areaBefore.set(flow.area);
  const pushed = (turning: boolean) => {
    forces.rate = turning ? rate : 0;
    forces.acceleration = turning ? acceleration : 0;
    setFaces(flow, mesh, forces, dt);
    return flow.pushed[face]!;
  };
  const without = pushed(false);
  return { run, push: (pushed(true) - without) / dt };
}

/**
 * Body force along the floor of a thin layer seen from the turning die, φ = inclination, arms from the pivot:
 * φ̇² X + φ̈ Y − φ̈ X ∂h/∂s + 2 φ̇ ∂h/∂t. From the rigid-body equations; depth means of the Coriolis terms make
 * 2 φ̇ ∂h/∂t exactly.
 */
function expectedPush({ rate, acceleration, pivot }: Turning, x: number): number {
  const armX = x - pivot.x;
  const armY = -pivot.y;
  const depth = 0.02 + 0.05 * x;
  const speed = 0.3 + 0.5 * x;
  const swelling = -(0.05 * speed + depth * 0.5);
  return rate * rate * armX + acceleration * armY - acceleration * armX * 0.05 + 2 * rate * swelling;
}

function forceTerms(): Outcome {
  const face = 20;
  const cases: readonly (readonly [string, Turning])[] = [
    ['centrifugal, pivot at the back wall', { rate: -0.5, acceleration: 0, pivot: { x: 0, y: 0 } }],
    ['centrifugal, pivot past the face', { rate: -0.5, acceleration: 0, pivot: { x: 0.5, y: 0 } }],
    ['angular acceleration, pivot above the floor', { rate: 0, acceleration: -3, pivot: { x: 0.2, y: 0.1 } }],
    ['angular acceleration along a sloping surface', { rate: 0, acceleration: -3, pivot: { x: 0, y: 0 } }],
    ['all together', { rate: -1.5, acceleration: 2, pivot: { x: 0.05, y: -0.04 } }],
  ];
  const findings: Finding[] = cases.map(([name, turning]) => {
    const { run, push } = addedPush(turning, face);
    return near(`added push, ${name}`, expectedPush(turning, run.mesh.x[face]!), push, 1e-9, 'm/s²');
  });
  const turning = { rate: -1, acceleration: 0, pivot: { x: 0.2, y: 0 } };
  const { push } = addedPush(turning, face);
  findings.push(
    near('added push, Coriolis alone (face at the pivot)', expectedPush(turning, 0.2), push, 1e-9, 'm/s²'),
  );
  return { findings, plots: [] };
}

/** Metal at rest in a body that turns evenly about a pivot, gravity square to it: its surface is a parabola. */
function turningTank(): Outcome {
  const rate = 2;
  const pivot = { x: 0.1, y: 0 };
  const run = startCase({
    section: sectionAbout(pivot, 100),
    meshCells: 100,
    motion: { inclinationAt: () => 0, rateAt: () => rate, accelerationAt: () => 0 },
    conditions: { ...NO_FRICTION, friction: { kind: 'linear', rate: 3 } },
  });
  fillDepth(run, () => 0.05);
  runTo(run, 6);
  settleDepths(run);
  const rise = (x: number) => (rate * rate * (x - pivot.x) ** 2) / (2 * GRAVITY);
  const level = run.flow.depth[50]! - rise(centre(run, 50));
  let off = 0;
  for (let i = 0; i < 100; i++)
    off = Math.max(off, Math.abs(run.flow.depth[i]! - rise(centre(run, i)) - level));
  return { findings: [atMost('surface off the parabola, rise 18 mm', off, 2e-5, 'm')], plots: [] };
}

export const frames: Family = {
  name: 'The turning frame',
  about:
    'Forces that appear because the section turns with the die. The tables B07 and B07b give their sizes: under 0.1 rad/s they are under 1 % of gravity.',
  checks: [
    {
      id: 'B07',
      title: 'Terms of the turning frame',
      source: 'rigid-body kinematics, worked out here',
      setting: 'one step on a sloping, swelling layer, with and without turning',
      run: forceTerms,
    },
    {
      id: 'B07c',
      title: 'Metal at rest in a turning tank',
      source: 'textbook: parabola Ω² X²/(2g)',
      setting:
        '0.4 m tank held level in gravity, 2 rad/s about a pivot, linear friction, 6 s, 100 mesh cells',
      run: turningTank,
    },
  ],
};
