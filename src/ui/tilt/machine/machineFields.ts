import type { Machine } from '$src/core/tilt/machine/machine';
import type { QuantityKind } from '../../inputs/quantity';

/** One number of a machine as the page asks for it. */
export interface MachineField {
  readonly path: string;
  readonly label: string;
  readonly kind: QuantityKind;
}

export interface FieldGroup {
  readonly title: string;
  /** What the words of its fields mean, and where they are measured from. */
  readonly hint: string;
  readonly fields: readonly MachineField[];
}

const field = (path: string, label: string, kind: QuantityKind): MachineField => ({ path, label, kind });

/** The fields of a machine in groups, in the order a fitter would measure them. */
export function fieldGroups(machine: Machine): FieldGroup[] {
  return [
    {
      title: 'Weights that turn',
      hint: 'Centres of gravity are measured from the pivot, along the die axis away from the basin and up from the floor; the angle of a weight from the die axis towards the roof. Gyration is how far from its own centre of gravity the mass of a part lies on the whole: of a plain block, some 0.3 of its length.',
      fields: [...machine.parts.flatMap(partFields), ...machine.weights.flatMap(weightFields)],
    },
    {
      title: 'Cylinder and linkage',
      hint: 'Shortest and longest are from eye to eye. The eye on the body is measured from the pivot along the die axis and up from the floor, the anchor from the pivot level and up, as the room has it.',
      fields: cylinderFields(),
    },
    {
      title: 'Valve, line and oil',
      hint: 'The passage of the valve grows evenly with its turns; shut, what leaks past the needle is left. Its maker gives narrow length and coefficient, or they are fitted to a measured tilt below. Cold oil is thick oil: measure it when you pour.',
      fields: [...valveFields(machine), ...oilFields(machine)],
    },
    {
      title: 'Bearing and stop',
      hint: 'The cushion holds more and more over the last stretch before the lower stop.',
      fields: stopFields(),
    },
  ];
}

const partFields = ({ name }: { name: string }, i: number): MachineField[] => [
  field(`parts.${i}.mass`, `${name} mass`, 'mass'),
  field(`parts.${i}.at.x`, `${name} along`, 'level'),
  field(`parts.${i}.at.y`, `${name} up`, 'level'),
  field(`parts.${i}.gyration`, `${name} gyration`, 'length'),
];

const weightFields = (_: unknown, i: number): MachineField[] => [
  field(`weights.${i}.mass`, `weight ${i + 1}`, 'mass'),
  field(`weights.${i}.radius`, `weight ${i + 1} radius`, 'length'),
  field(`weights.${i}.angle`, `weight ${i + 1} angle`, 'angle'),
];

const cylinderFields = (): MachineField[] => [
  field('cylinder.bore', 'bore', 'length'),
  field('cylinder.rod', 'rod', 'length'),
  field('cylinder.shortest', 'shortest', 'length'),
  field('cylinder.longest', 'longest', 'length'),
  field('cylinder.attachment.x', 'eye on body along', 'level'),
  field('cylinder.attachment.y', 'eye on body up', 'level'),
  field('cylinder.anchor.x', 'anchor level', 'level'),
  field('cylinder.anchor.y', 'anchor up', 'level'),
];

function valveFields({ valve }: Machine): MachineField[] {
  if (valve.by === 'Kv') return [];
  return [
    field('valve.turns', 'turns in all', 'turns'),
    field('valve.diameter', 'passage wide open', 'length'),
    field('valve.leak', 'passage shut', 'length'),
    field('valve.length', 'narrow length', 'length'),
    field('valve.coefficient', 'orifice coefficient', 'ratio'),
  ];
}

function oilFields({ oil }: Machine): MachineField[] {
  const second = oil.thinning ? [field('oil.thinning.massShare', 'second liquid, by mass', 'share')] : [];
  return [
    field('line.diameter', 'line diameter', 'length'),
    field('line.length', 'line length', 'length'),
    field('oil.temperature', 'oil temperature', 'temperature'),
    ...second,
    field('reservoir', 'reservoir', 'volume'),
    field('oilVolume', 'oil in all', 'volume'),
    field('highestPressure', 'highest pressure', 'pressure'),
  ];
}

const stopFields = (): MachineField[] => [
  field('bearing.radius', 'journal radius', 'length'),
  field('bearing.friction', 'friction', 'ratio'),
  field('cushion.over', 'cushion over', 'angle'),
  field('cushion.damping', 'cushion holds', 'rotary damping'),
];

/** The number at a path such as `parts.0.at.x`. */
export function numberAt(machine: Machine, path: string): number {
  let at: unknown = machine;
  for (const key of path.split('.')) at = (at as Readonly<Record<string, unknown>>)[key];
  if (typeof at !== 'number') throw new RangeError(`machine: no number at ${path}`);
  return at;
}

/** The machine with another number at that path. */
export function withNumber(machine: Machine, path: string, value: number): Machine {
  return replaced(machine, path.split('.'), value) as Machine;
}

function replaced(whole: unknown, [key, ...rest]: readonly string[], value: number): unknown {
  if (key === undefined) return value;
  if (Array.isArray(whole)) return whole.with(Number(key), replaced(whole[Number(key)], rest, value));
  const fields = whole as Readonly<Record<string, unknown>>;
  return { ...fields, [key]: replaced(fields[key], rest, value) };
}
