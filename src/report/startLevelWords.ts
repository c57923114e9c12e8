import type { StartLevel } from '$src/core/level/startLevel';
import type { PageUnits } from '$src/core/units';
import { isLadledIn } from './ladledIn';
import { shownLength, withUnit } from './measureText';
import { percentText } from './wording';

/** Metal that stops less than this before the mouth has reached it, for the eye [m]. */
const AT_THE_MOUTH = 1e-3;

const size = (length: number, units: PageUnits): string => withUnit(shownLength(Math.abs(length), units));

/** A level from the lip [m] in words. */
export function fromLipWords(fromLip: number, units: PageUnits): string {
  const isNought = Number(shownLength(Math.abs(fromLip), units).number) === 0;
  return isNought ? 'just at the lip' : `${size(fromLip, units)} ${fromLip > 0 ? 'above' : 'below'} the lip`;
}

/** A mark nearer than this below the lip cannot be told from it by eye [m]; chosen. */
const AT_THE_BRINK = 1e-3;

/** A level from the lip [m], below it or at it, that looks brimful. */
export const isAtBrink = (fromLip: number): boolean => fromLip <= 0 && fromLip > -AT_THE_BRINK;

/** How far before the mouth metal stops that stands higher than the lip, for want of running on; null when it does not. */
export const stopsShort = ({ held, shortOfMouth }: StartLevel, units: PageUnits): string | null =>
  held !== null && held > 0 && shortOfMouth > AT_THE_MOUTH
    ? `${size(shortOfMouth, units)} before the mouth`
    : null;

/** Metal that runs into the die while it is ladled; null where skin or lip holds it back. */
export const inDieWords = ({ inDie }: StartLevel): string | null =>
  isLadledIn(inDie) ? `already in the die: the ladle fills ${percentText(inDie)} of it` : null;

/** The dead level where it reads otherwise than the level as held; null where the two are one, or it covers the lip. */
export function deadLevelWords({ held, dead }: StartLevel, units: PageUnits): string | null {
  if (held === null || dead === null) return null;
  const words = fromLipWords(dead, units);
  return words === fromLipWords(held, units) ? null : words;
}

/**
 * Where the metal stands before the tilt: one level, as it is drawn and as the pour begins, and, where it differs, what
 * it would be if the metal lay dead level. Two figures without that would be two marks for one charge.
 */
export function startLevelWords(level: StartLevel, units: PageUnits): string {
  const inDie = inDieWords(level);
  if (inDie) return inDie;
  if (level.held === null) return 'it covers the lip at first';
  const dead = deadLevelWords(level, units);
  const short = stopsShort(level, units);
  const where = `${fromLipWords(level.held, units)}${short ? `, stopping ${short}` : ''}`;
  return dead ? `${where}, as its skin holds it (dead level it would be ${dead})` : where;
}
