import type { Issue } from '$src/core/issue';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { degrees } from '../degrees';
import { LEAST_TURN, ROUNDING, usableLimits } from '../range';
import type { MachineTilt } from '../tilt';
import type { Machine } from './machine';

/** A number of a machine with the range it makes sense in [SI]. */
type Rule = readonly [path: string, value: number, least: number, most: number, remedy: string];

/** Coldest and warmest oil that is taken [K]; ours. */
export const OIL_TEMPERATURE = { least: fromCelsius(-20), most: fromCelsius(100) } as const;

/** What is wrong with a machine tilt; paths are relative to the tilt. What it would do wrong is `machineWarnings`. */
export function checkMachineTilt(tilt: MachineTilt): Issue[] {
  const broken = rulesOf(tilt.machine).flatMap(issueOf);
  return [...broken, ...turnIssues(tilt), ...massIssues(tilt.machine)];
}

function issueOf([path, value, least, most, remedy]: Rule): Issue[] {
  if (value >= least && value <= most) return [];
  const message = Number.isFinite(value) ? 'This is out of range.' : 'This is not a number.';
  return [{ path: `machine.${path}`, message, remedy }];
}

function rulesOf({ parts, weights, cylinder, valve, line, oil, ...machine }: Machine): Rule[] {
  const place = 'Give a place within 5 m of the pivot.';
  const mass = 'Give 0 to 5000 kg.';
  return [
    ...parts.flatMap((part, i): Rule[] => [
      [`parts.${i}.mass`, part.mass, 0, 5000, mass],
      [`parts.${i}.at.x`, part.at.x, -5, 5, place],
      [`parts.${i}.at.y`, part.at.y, -5, 5, place],
      [`parts.${i}.gyration`, part.gyration, 0, 5, 'Give 0 to 5 m.'],
    ]),
    ...weights.flatMap((weight, i): Rule[] => [
      [`weights.${i}.mass`, weight.mass, 0, 5000, mass],
      [`weights.${i}.radius`, weight.radius, 0, 5, 'Give 0 to 5 m.'],
      [`weights.${i}.angle`, weight.angle, -fromDegrees(360), fromDegrees(360), 'Give −360° to 360°.'],
    ]),
    ['cylinder.bore', cylinder.bore, 0.005, 0.5, 'Give 5 to 500 mm.'],
    ['cylinder.rod', cylinder.rod, 0.001, cylinder.bore * 0.95, 'Give a rod thinner than the bore.'],
    ['cylinder.shortest', cylinder.shortest, 0.01, cylinder.longest, 'Give less than the longest.'],
    ['cylinder.longest', cylinder.longest, 0.01, 5, 'Give up to 5 m.'],
    ...(['attachment', 'anchor'] as const).flatMap((eye): Rule[] => [
      [`cylinder.${eye}.x`, cylinder[eye].x, -5, 5, place],
      [`cylinder.${eye}.y`, cylinder[eye].y, -5, 5, place],
    ]),
    ...valveRules(valve),
    ['line.diameter', line.diameter, 0.001, 0.1, 'Give 1 to 100 mm.'],
    ['line.length', line.length, 0, 20, 'Give 0 to 20 m.'],
    ['oil.temperature', oil.temperature, OIL_TEMPERATURE.least, OIL_TEMPERATURE.most, 'Give −20 to 100 °C.'],
    ['oil.thinning.massShare', oil.thinning?.massShare ?? 0, 0, 0.5, 'Give 0 to 50 %.'],
    ['reservoir', machine.reservoir, 0, 0.1, 'Give 0 to 100 l.'],
    ['oilVolume', machine.oilVolume, 1e-6, 0.1, 'Give up to 100 l.'],
    ['bearing.radius', machine.bearing.radius, 0, 0.5, 'Give 0 to 500 mm.'],
    ['bearing.friction', machine.bearing.friction, 0, 1, 'Give 0 to 1; plain bearings have about 0.1.'],
    ['cushion.over', machine.cushion.over, 0, fromDegrees(90), 'Give 0 to 90°.'],
    ['cushion.damping', machine.cushion.damping, 0, 1e6, 'Give 0 or more.'],
    ['returnTorque', machine.returnTorque ?? 1, 0.01, 1e6, 'Give more than 0 N·m.'],
    ['highestPressure', machine.highestPressure, 1, 1e8, 'Give up to 1000 bar.'],
  ];
}

function valveRules(valve: Machine['valve']): Rule[] {
  if (valve.by === 'Kv') return [['valve.kv', valve.kv, 1e-5, 100, 'Give 0.00001 to 100 m³/h.']];
  return [
    ['valve.open', valve.open, 0, valve.turns, 'Give 0 turns to all of them.'],
    ['valve.turns', valve.turns, 0.1, 50, 'Give up to 50 turns.'],
    ['valve.diameter', valve.diameter, 1e-4, 0.1, 'Give 0.1 to 100 mm.'],
    ['valve.leak', valve.leak, 0, valve.diameter, 'Give less than the open passage.'],
    ['valve.length', valve.length, 0, 1, 'Give 0 to 1 m.'],
    ['valve.coefficient', valve.coefficient, 0.1, 1, 'Give 0.1 to 1; a sharp edge has about 0.6.'],
  ];
}

function turnIssues({ start, end, limits }: MachineTilt): Issue[] {
  const { highestStart, lowestEnd } = usableLimits(limits);
  const issues: Issue[] = [];
  if (!(start <= highestStart + ROUNDING && Number.isFinite(start)))
    issues.push({
      path: 'start',
      message: `The upper stop is above the highest start, ${degrees(highestStart)}.`,
      remedy: `Move the stop it is let go from to ${degrees(highestStart)} or lower.`,
    });
  if (!(end >= lowestEnd - ROUNDING && start - end >= LEAST_TURN))
    issues.push({
      path: 'end',
      message: `The lower stop is not between the start and the lowest end, ${degrees(lowestEnd)}.`,
      remedy: `Move the lower stop to ${degrees(lowestEnd)} or higher, and below the start.`,
    });
  return issues;
}

function massIssues({ parts, weights }: Machine): Issue[] {
  const mass = [...parts, ...weights].reduce((sum, part) => sum + part.mass, 0);
  const turns = parts.some(({ mass: m, at, gyration }) => m > 0 && Math.hypot(at.x, at.y, gyration) > 1e-3);
  if (mass > 0 && turns) return [];
  return [
    { path: 'machine.parts', message: 'Nothing on the body has weight.', remedy: 'Give the die its mass.' },
  ];
}
