import type { Metal } from '$src/core/metal/metal';
import { capital } from '$src/report/wording';
import type { MetalCell } from './kinds';

/** What a cell of that metal is called until its user says otherwise: "A356", "Aluminium bronze". */
export const metalName = ({ base }: Metal): string => capital(base);

/** What a card calls the alloy: one with freezing data of its user's own by the name he gave its cell, or as changed. */
export function alloyName({ name, metal }: MetalCell): string {
  if (!metal.thermal) return metal.name;
  return isNameOf(metal, name) ? `${metal.name}, changed` : name;
}

/** Whether a name is still the one that came with the metal, maybe with the number of a second cell behind it. */
export function isNameOf(metal: Metal, name: string): boolean {
  return [metal.name, metalName(metal)].some(
    (given) => name.startsWith(given) && /^( \d+)?$/.test(name.slice(given.length)),
  );
}
