import type { Issue } from '$src/core/issue';
import { checkHeights } from './checkHeights';
import { checkLine, WITHIN_SIZES } from './checkLine';
import { checkOpenings } from './checkOpenings';
import { checkRegions } from './checkRegions';
import { lineAt, SAME_PLACE } from './lineAt';
import { millimetres as mm } from './millimetres';
import type { Point, Section } from './section';
import { SIZES } from './sizes';

/**
 * What is wrong with a section, each with its place and remedy; empty when level fill and solver can take it.
 * Paths are relative to the section, e.g. `roof.4.y`. Points are called F1, F2 … on the floor, R1, R2 … on the roof.
 */
export function checkSection(section: Section): Issue[] {
  const lines = [...checkLine(section.floor, 'floor'), ...checkLine(section.roof, 'roof')];
  if (lines.length > 0) return [...lines, ...checkPivot(section.pivot)];
  const extent = checkExtent(section);
  const openings = checkOpenings(section);
  const rest = [
    ...extent,
    ...openings,
    ...checkRegions(section),
    ...checkMouth(section),
    ...checkCavities(section),
    ...checkPivot(section.pivot),
    ...checkVents(section),
  ];
  const canCompare = extent.length === 0 && openings.length === 0;
  return canCompare ? [...checkHeights(section), ...rest] : rest;
}

function checkExtent({ floor, roof }: Section): Issue[] {
  const issues: Issue[] = [];
  const length = floor.at(-1)!.x - floor[0]!.x;
  if (length < SIZES.least || length > SIZES.most) {
    issues.push({
      path: `floor.${floor.length - 1}.x`,
      message: `The section is ${mm(length)} mm long.`,
      remedy: `Make it ${mm(SIZES.least)} to ${mm(SIZES.most)} mm long.`,
      at: floor.at(-1)!,
    });
  }
  issues.push(...sameEnd(floor[0]!, roof[0]!, 0, 'R1', 'starts'));
  issues.push(...sameEnd(floor.at(-1)!, roof.at(-1)!, roof.length - 1, `R${roof.length}`, 'ends'));
  return issues;
}

function sameEnd(floorPoint: Point, roofPoint: Point, index: number, name: string, verb: string): Issue[] {
  const gap = roofPoint.x - floorPoint.x;
  if (Math.abs(gap) <= SAME_PLACE) return [];
  return [
    {
      path: `roof.${index}.x`,
      message: `The roof ${verb} ${mm(Math.abs(gap))} mm ${gap > 0 ? 'after' : 'before'} the floor.`,
      remedy: `Set x of ${name} to ${mm(floorPoint.x)} mm, where the floor ${verb}.`,
      at: roofPoint,
    },
  ];
}

function checkMouth({ floor, mouth }: Section): Issue[] {
  const from = floor[0]!.x;
  const to = floor.at(-1)!.x;
  if (mouth > from + SAME_PLACE && mouth < to - SAME_PLACE) return [];
  const at = Number.isFinite(mouth) ? { x: mouth, y: lineAt(floor, mouth, 'right') } : floor[0]!;
  return [
    {
      path: 'mouth',
      message: Number.isFinite(mouth)
        ? `The mouth, at ${mm(mouth)} mm, is not inside the section.`
        : 'The mouth has no place.',
      remedy: `Put it between ${mm(from)} and ${mm(to)} mm, where the basin ends and the die begins.`,
      at,
    },
  ];
}

function checkCavities({ cavities }: Section): Issue[] {
  if (Number.isInteger(cavities) && cavities >= 1 && cavities <= SIZES.mostCavities) return [];
  return [
    {
      path: 'cavities',
      message: `${cavities} is not a number of cavities.`,
      remedy: `Type a whole number from 1 to ${SIZES.mostCavities}.`,
    },
  ];
}

function checkPivot({ x, y }: Point): Issue[] {
  return (['x', 'y'] as const)
    .filter((axis) => !(Math.abs({ x, y }[axis]) <= SIZES.most))
    .map((axis) => ({
      path: `pivot.${axis}`,
      message: Number.isFinite({ x, y }[axis])
        ? `The pivot lies ${mm({ x, y }[axis])} mm away.`
        : `${axis} of the pivot is not a number.`,
      remedy: WITHIN_SIZES,
    }));
}

function checkVents({ floor, roof, vents }: Section): Issue[] {
  const from = floor[0]!.x;
  const to = floor.at(-1)!.x;
  return vents.flatMap((vent, i) => {
    const issues: Issue[] = [];
    if (!(vent.place >= from && vent.place <= to)) {
      issues.push({
        path: `vents.${i}.place`,
        message: `Vent ${i + 1} is not over the section.`,
        remedy: `Put it between ${mm(from)} and ${mm(to)} mm.`,
      });
    }
    const at = {
      x: Math.min(Math.max(vent.place || from, from), to),
      y: lineAt(roof, vent.place || from, 'right'),
    };
    if (!(vent.area > 0 && vent.area <= SIZES.most ** 2)) {
      issues.push({
        path: `vents.${i}.area`,
        message: `Vent ${i + 1} has no usable area.`,
        remedy: 'Type its free area, or take the vent out.',
        at,
      });
    }
    if (!(vent.blocked >= 0 && vent.blocked <= 1)) {
      issues.push({
        path: `vents.${i}.blocked`,
        message: `Vent ${i + 1} cannot be blocked by that share.`,
        remedy: 'Type a share from 0 to 100 %.',
        at,
      });
    }
    return issues;
  });
}
