import type { Metal } from '$src/core/metal/metal';
import { capital } from '$src/report/wording';

/** What a cell of that metal is called until its user says otherwise: "A356", "Aluminium bronze". */
export const metalName = ({ base }: Metal): string => capital(base);

/** Whether a name is still the one that came with the metal, maybe with the number of a second cell behind it. */
export function isNameOf(metal: Metal, name: string): boolean {
  return [metal.name, metalName(metal)].some(
    (given) => name.startsWith(given) && /^( \d+)?$/.test(name.slice(given.length)),
  );
}
