import { LONGEST_STEP } from '$src/core/flow/settings';
import { GRAVITY } from '$src/core/gravity';
import { highestLevel, lowestLevel } from '$src/core/mesh/levels';
import type { Section } from '$src/core/section/section';
import { fromDegrees, toMillimetres } from '$src/core/units';
import { type CaseRun, fillDepth, fillLevel, runTo, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Family, Outcome } from './check';
import { atMost, type Finding } from './finding';
import { centre, centres, greatestSpeed, settleDepths } from './measure';
import { SHAPES } from './stillShapes';

/** The whole range, +75° to −100°; the bar asks for +60° to −90°. */
const INCLINATIONS = [
  75, 60, 45, 30, 20, 10, 5, 1, 0, -1, -5, -10, -20, -30, -45, -60, -75, -89, -90, -91, -95, -100,
];
const SHARES = [0.15, 0.45, 0.8];

/** Elevation of a level surface that holds a share of the section's height range at this inclination. */
function surfaceAt(run: CaseRun, share: number): number {
  const low = lowestLevel(run.flow.levels);
  const high = highestLevel(run.flow.levels);
  return low + share * (high - low);
}

function worstSpeed(shape: Section, cells: number, steps: number): number {
  let worst = 0;
  for (const degrees of INCLINATIONS)
    for (const share of SHARES) {
      const run = startCase({ section: shape, meshCells: cells, inclination: fromDegrees(degrees) });
      const level = surfaceAt(run, share);
      fillLevel(run, () => level);
      runTo(run, steps * LONGEST_STEP, () => {
        worst = Math.max(worst, greatestSpeed(run));
      });
    }
  return worst;
}

/** Two pools at different levels on either side of a crest both are below. */
function twoPools(): number {
  const run = startCase({ section: SHAPES['ramps and a taper']!, meshCells: 120, inclination: 0 });
  fillLevel(run, (x) => (x < 0.165 ? 0.02 : 0.01));
  let worst = 0;
  runTo(run, 0.3, () => {
    worst = Math.max(worst, greatestSpeed(run));
  });
  return worst;
}

function stillEverywhere(): Outcome {
  const findings = Object.entries(SHAPES).map(([name, shape]) =>
    atMost(`greatest speed, ${name}`, worstSpeed(shape, 90, 60), 1e-10, 'm/s'),
  );
  return {
    findings: [
      ...findings,
      atMost('greatest speed, two pools at different levels', twoPools(), 1e-10, 'm/s'),
    ],
    plots: [],
  };
}

const bump = (x: number) => (x > 8 && x < 12 ? 0.2 - 0.05 * (x - 10) ** 2 : 0);

function emergedBump(): Outcome {
  const run = startCase({
    section: channelSection({ length: 25, cells: 200, bed: bump, roof: 0.6 }),
    meshCells: 200,
  });
  fillLevel(run, () => 0.1);
  let worst = 0;
  runTo(run, 20, () => {
    worst = Math.max(worst, greatestSpeed(run));
  });
  const off = wetLevelsOff(run, 0.1);
  return {
    findings: [
      atMost('greatest speed in 20 s', worst, 1e-12, 'm/s'),
      atMost('level off 0.1 m where wet', off, 1e-13, 'm'),
    ],
    plots: [],
  };
}

function wetLevelsOff(run: CaseRun, level: number): number {
  return run.flow.level.reduce(
    (most, value, i) => (run.flow.volume[i]! > 0 ? Math.max(most, Math.abs(value - level)) : most),
    0,
  );
}

const TANK = { length: 0.4, area: 0.012 };

/** Depth square to the axis of still metal in a tank turned down at its far end by theta. */
export function tiltedTankDepth(x: number, theta: number): number {
  const { length, area } = TANK;
  const tan = Math.tan(theta);
  const atStart = area / length - (length / 2) * tan;
  if (atStart >= 0) return atStart + x * tan;
  const dry = length - Math.sqrt((2 * area) / tan);
  return Math.max(0, (x - dry) * tan);
}

function tiltedTank(): Outcome {
  const findings: Finding[] = [];
  for (const degrees of [2, 5, 10, 15, 30, 60]) {
    const theta = fromDegrees(degrees);
    const run = startCase({
      section: channelSection({ length: TANK.length, cells: 200, roof: 1 }),
      meshCells: 200,
      inclination: -theta,
    });
    const depthAtStart = tiltedTankDepth(0, theta);
    const edge = depthAtStart > 0 ? 0 : TANK.length - Math.sqrt((2 * TANK.area) / Math.tan(theta));
    fillLevel(run, () => -edge * Math.sin(theta) + depthAtStart * Math.cos(theta));
    let worst = 0;
    runTo(run, 3, () => {
      worst = Math.max(worst, greatestSpeed(run));
    });
    settleDepths(run);
    const wholeCells = centres(run).flatMap((x, i) =>
      x - TANK.length / 400 > edge
        ? [Math.abs(run.flow.depth[i]! - tiltedTankDepth(centre(run, i), theta))]
        : [],
    );
    findings.push(
      atMost(`greatest speed in 3 s, ${degrees}°`, worst, 1e-12, 'm/s'),
      atMost(`depth off the exact one, ${degrees}°`, Math.max(...wholeCells), 1e-12, 'm'),
    );
  }
  return { findings, plots: [] };
}

/** The trap beside still metal: a scheme that keeps rest by losing the pull of a thin film on a slope. */
function filmOnSlope(): Outcome {
  const theta = fromDegrees(20);
  const time = 0.05;
  const cells = 100;
  const length = 5;
  const fall = (length / cells) * Math.tan(theta);
  const findings = [0.05, 0.2, 0.5, 1, 2, 4].map((ratio) =>
    filmRatio(length, cells, theta, fall / ratio, time, `bed falls ${ratio} film depths a cell`),
  );
  const steep = [30, 45, 60, 80, 89].flatMap((degrees) =>
    [0.2e-3, 2e-3, 10e-3].map((depth) =>
      filmRatio(2, cells, fromDegrees(degrees), depth, time, `${degrees}°, film ${toMillimetres(depth)} mm`),
    ),
  );
  return { findings: [...findings, ...steep], plots: [] };
}

function filmRatio(
  length: number,
  cells: number,
  theta: number,
  depth: number,
  time: number,
  what: string,
): Finding {
  const run = startCase({
    section: channelSection({ length, cells, roof: 2 * length }),
    meshCells: cells,
    inclination: -theta,
  });
  fillDepth(run, () => depth);
  runTo(run, time);
  const speed = run.flow.speed[cells / 2]!;
  const ratio = speed / (GRAVITY * Math.sin(theta) * time);
  return {
    what: `speed over g sin θ t, ${what}`,
    expected: 1,
    found: ratio,
    unit: '',
    low: 0.99,
    high: 1.01,
    bar: '± 1 %',
  };
}

const OURS = 'worked out here: a level surface at rest needs no source';

export const stillMetal: Family = {
  name: 'Still metal',
  about:
    'Metal at rest must stay at rest whichever way the body lies, and a film on the same slopes must still be pulled by all of gravity: passing one without the other proves nothing. Friction and gate are off, so that nothing hides a false current.',
  checks: [
    {
      id: 'still',
      title: 'Still metal at every inclination',
      source: OURS,
      setting: `${INCLINATIONS.length} inclinations from +75° to −100°, ${SHARES.length} levels, 90 mesh cells, partly dry, under roofs`,
      run: stillEverywhere,
    },
    {
      id: 'A01',
      title: 'Lake at rest with a bump through its surface',
      source: 'Delestre et al. 2013, Int. J. Numer. Meth. Fluids 72, section 3.1.2',
      setting: '25 m, level 0.1 m, 20 s, 200 mesh cells',
      run: emergedBump,
    },
    {
      id: 'A02',
      title: 'Lake at rest in a tilted tank',
      source: 'geometry, worked out here',
      setting: '0.4 m tank, 12 000 mm² of metal, 3 s, 200 mesh cells',
      run: tiltedTank,
    },
    {
      id: 'A13',
      title: 'A film let go on a slope',
      source:
        'exact by Newton’s second law; the defect of well-balanced schemes: Delestre et al. 2012, C. R. Math. 350 (from memory)',
      setting: '0.05 s, 100 mesh cells',
      run: filmOnSlope,
    },
  ],
};
