import { GRAVITY } from '$src/core/gravity';
import { standHeight } from '$src/core/metal/capillarity';
import type { Section } from '$src/core/section/section';
import { fromDegrees, fromMillimetres, toMillimetres } from '$src/core/units';
import { type CaseRun, fillDepth, fillLevel, NO_FRICTION, runTo, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Family, Outcome } from './check';
import { atMost, type Finding, near } from './finding';
import { placeOfDepth, rootBetween, settleDepths } from './measure';

/** The liquid of the reference pours. */
export const LIQUID = { density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) };

/** How far a block of metal 100 mm long on a level plate has spread after a while [m]. */
function spread(depth: number, cells: number, contactAngle: number): number {
  const run = startCase({
    section: channelSection({ length: 0.3, cells, roof: 0.2 }),
    meshCells: cells,
    gate: { ...LIQUID, contactAngle },
  });
  fillDepth(run, (x) => (x > 0.1 && x < 0.2 ? depth : 0));
  const before = placeOfDepth(run, depth / 2);
  runTo(run, 0.5);
  settleDepths(run);
  return placeOfDepth(run, 1e-4) - before;
}

function puddle(): Outcome {
  const findings: Finding[] = [];
  for (const cells of [90, 300]) {
    const cell = 0.3 / cells;
    findings.push(
      atMost(
        `spread of a block 11.90 mm deep, 150°, ${cells} cells`,
        Math.max(0, spread(11.9e-3, cells, fromDegrees(150)) - cell),
        0,
        'm',
        'beyond its own mesh cell',
      ),
      {
        what: `spread of a block 11.95 mm deep, 150°, ${cells} cells`,
        expected: null,
        found: spread(11.95e-3, cells, fromDegrees(150)),
        unit: 'm',
        low: cell,
        high: 0.1,
        bar: 'more than a mesh cell',
      },
    );
  }
  for (const degrees of [90, 120, 150, 180]) {
    const exact = standHeight(LIQUID.surfaceTension, LIQUID.density, fromDegrees(degrees));
    const found = rootBetween(
      0.6 * exact,
      1.4 * exact,
      (depth) => (spread(depth, 90, fromDegrees(degrees)) > 0.3 / 90 ? 1 : -1),
      12,
    );
    findings.push(near(`depth at which a block starts to spread, ${degrees}°`, exact, found, 0.005, 'm'));
  }
  return { findings, plots: [] };
}

const SLOT_START = 0.1;

/** A basin with a level surface feeding a level slot between floor and roof. */
function slotSection(height: number): Section {
  return {
    floor: [
      { x: 0, y: 0 },
      { x: 0.2, y: 0 },
    ],
    roof: [
      { x: 0, y: 0.1 },
      { x: SLOT_START, y: 0.1 },
      { x: SLOT_START, y: height },
      { x: 0.2, y: height },
    ],
    openings: [],
    regions: [{ name: 'all', end: 0.2, width: 1 }],
    mouth: SLOT_START,
    cavities: 1,
    pivot: { x: 0, y: 0 },
    vents: [],
  };
}

/** Whether metal under this head above the middle of the slot moves a front that fills the slot. */
function frontMoves(height: number, head: number, cells: number): boolean {
  const run: CaseRun = startCase({
    section: slotSection(height),
    meshCells: cells,
    gate: LIQUID,
    conditions: { ...NO_FRICTION, friction: { kind: 'linear', rate: 50 } },
  });
  const level = height / 2 + head;
  fillLevel(run, (x) => (x < SLOT_START + 0.02 ? level : -1));
  const before = placeOfDepth(run, height / 2);
  runTo(run, 0.2);
  settleDepths(run);
  return placeOfDepth(run, height / 2) - before > (0.5 * 0.2) / cells;
}

function slotHeads(): Outcome {
  const findings = [3, 4, 6, 10].map((millimetres) => {
    const height = fromMillimetres(millimetres);
    const exact =
      (2 * LIQUID.surfaceTension * Math.abs(Math.cos(LIQUID.contactAngle))) /
      (LIQUID.density * GRAVITY * height);
    const found = rootBetween(0.5 * exact, 2 * exact, (head) => (frontMoves(height, head, 100) ? 1 : -1), 12);
    return near(
      `head that moves a front standing full height, ${toMillimetres(height)} mm slot`,
      exact,
      found,
      0.05,
      'm',
    );
  });
  return { findings, plots: [] };
}

export const stands: Family = {
  name: 'Capillary stand',
  about:
    'What surface tension holds back: a puddle’s edge and a front that fills a thin wall. The contact angle is an assumed input; the law is what is tested.',
  checks: [
    {
      id: 'C04',
      title: 'A block of metal on a level plate',
      source: 'de Gennes, Brochard-Wyart & Quéré 2004 (from memory): h = 2 √(γ/(ρ g)) sin(θ/2)',
      setting: 'γ 0.9 N/m, ρ 2400 kg/m³, block 100 mm long',
      run: puddle,
    },
    {
      id: 'slots',
      title: 'Head that moves a front in a thin wall',
      source: 'capillary pressure between parallel plates, 2 γ |cos θ|/H (Laplace; textbook)',
      setting: 'γ 0.9 N/m, 150°, 100 mesh cells, damped',
      run: slotHeads,
    },
  ],
};
