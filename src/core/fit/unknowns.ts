import type { Machine } from '$src/core/tilt/machine/machine';

/** Something of a machine that is hard to measure by itself and shows in how it tilts. */
export type UnknownId =
  | 'valve.length'
  | 'valve.coefficient'
  | 'valve.leak'
  | 'valve.kv'
  | 'bearing.friction'
  | 'cushion.damping';

export interface Unknown {
  readonly id: UnknownId;
  readonly name: string;
  /** Range it is looked for in [SI]. */
  readonly least: number;
  readonly most: number;
  readonly read: (machine: Machine) => number;
  readonly write: (machine: Machine, value: number) => Machine;
}

const ofValve = (key: 'length' | 'coefficient' | 'leak'): Pick<Unknown, 'read' | 'write'> => ({
  read: ({ valve }) => (valve.by === 'turns' ? valve[key] : Number.NaN),
  write: (machine, value) =>
    machine.valve.by === 'turns' ? { ...machine, valve: { ...machine.valve, [key]: value } } : machine,
});

const FRICTION: Unknown = {
  id: 'bearing.friction',
  name: 'bearing friction',
  least: 1e-3,
  most: 0.6,
  read: ({ bearing }) => bearing.friction,
  write: (machine, friction) => ({ ...machine, bearing: { ...machine.bearing, friction } }),
};

const CUSHION: Unknown = {
  id: 'cushion.damping',
  name: 'cushion',
  least: 1,
  most: 1e5,
  read: ({ cushion }) => cushion.damping,
  write: (machine, damping) => ({ ...machine, cushion: { ...machine.cushion, damping } }),
};

/** What can be fitted of this machine. Passage and orifice both scale with the passage, so its width stays as given. */
export function unknownsOf({ valve }: Machine): readonly Unknown[] {
  if (valve.by === 'Kv') {
    const kv: Unknown = {
      id: 'valve.kv',
      name: 'Kv',
      least: 1e-4,
      most: 20,
      read: (machine) => (machine.valve.by === 'Kv' ? machine.valve.kv : Number.NaN),
      write: (machine, value) => ({ ...machine, valve: { by: 'Kv', kv: value } }),
    };
    return [kv, FRICTION, CUSHION];
  }
  return [
    { id: 'valve.length', name: 'narrow length', least: 1e-4, most: 0.2, ...ofValve('length') },
    { id: 'valve.coefficient', name: 'orifice coefficient', least: 0.1, most: 1, ...ofValve('coefficient') },
    { id: 'valve.leak', name: 'passage shut', least: 1e-5, most: valve.diameter * 0.95, ...ofValve('leak') },
    FRICTION,
    CUSHION,
  ];
}

/**
 * Fitted unless others are chosen. One tilt tells one resistance of the valve and the bearing apart, hardly two
 * resistances: the orifice coefficient of a sharp edge is known better than any fit would have it.
 */
export const USUAL: readonly UnknownId[] = ['valve.length', 'valve.kv', 'bearing.friction'];
