import { checkHeat } from '$src/core/heat/checkHeat';
import { checkLadling, type Ladling, shareThatLeaves } from '$src/core/heat/ladling';
import type { Issue } from '$src/core/issue';
import { fillLevelFromVolume, fillLevels, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { headFromVolume, volumeFromHead } from '$src/core/level/head';
import { heldAtEnd } from '$src/core/level/heldAtEnd';
import { standOf } from '$src/core/level/stand';
import { startLevel } from '$src/core/level/startLevel';
import { liquidOf } from '$src/core/metal/liquidOf';
import type { Metal } from '$src/core/metal/metal';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { ladledMetal } from '$src/core/pour/ladledMetal';
import { cavityVolume, wholeVolume } from '$src/core/section/cavity';
import { millimetres } from '$src/core/section/millimetres';
import type { Section } from '$src/core/section/section';
import { SIZES } from '$src/core/section/sizes';
import { degrees } from '$src/core/tilt/degrees';
import type { ChargeValue } from './evaluate';
import type { ChargeBy } from './kinds';
import { largestHead } from './largestHead';
import { wholeTenthsIn } from './levelsThatStand';

/** Less than this share of the cavity is a slip of typing, and nothing to compute a front from. */
const LEAST_SHARE = 1e-3;

export type ChargeResult = { readonly value: ChargeValue } | { readonly issues: readonly Issue[] };

/**
 * What a charge comes to in a section and metal that are in order, turned from `start` to `end` [rad]: the one of mass,
 * fill level and head that is given, and the two that follow from it, with a level surface and no capillary stand; and
 * where it stands with one. What stays behind as skull and dross is ladled besides.
 */
export function chargeValue(
  section: Section,
  metal: Metal,
  start: number,
  end: number,
  charge: ChargeBy,
  ladling: Ladling | null,
): ChargeResult {
  const [field, amount] = amountOf(charge);
  const path = `charge.${field}`;
  if (!Number.isFinite(amount)) return refusal(path, 'The charge is not a number.', 'Type a number.');
  if (charge.by === 'head' && !(charge.head >= 0)) return { issues: [belowMouth(section, path, start, end)] };
  const wrong = ladling ? checkLadling(ladling) : [];
  if (wrong.length > 0)
    return { issues: wrong.map((issue) => ({ ...issue, path: `ladling.${issue.path}` })) };
  const density = metal.density.value;
  const share = ladling ? shareThatLeaves(ladling) : 1;
  const volume = volumeOf(section, start, end, density / share, charge);
  if (volume === null) return { issues: [unreachable(section, path, charge, start, end)] };
  const wrongSize = sizeIssue(path, section, volume, density);
  if (wrongSize) return { issues: [wrongSize] };
  const headOnce = once(() =>
    charge.by === 'head' ? charge.head : headFromVolume(section, start, end, volume),
  );
  const levelOnce = once(() => startLevel(section, volume, start, standOf(liquidOf(metal))));
  const spilledOnce = once(() => heldAtEnd(section, volume, start, end).spilled);
  const value: ChargeValue = {
    mass: charge.by === 'mass' ? charge.mass : (volume * density) / share,
    volume,
    fromLip: charge.by === 'fill level' ? charge.fromLip : fillLevelFromVolume(section, start, volume),
    get startLevel() {
      return levelOnce();
    },
    get head() {
      return headOnce();
    },
    get spilled() {
      return spilledOnce();
    },
    startInclination: start,
    endInclination: end,
    ladled: ladling && ladledIn(section, metal, volume, start, ladling),
  };
  return { value };
}

/** It takes a level fill over the whole tilt, and most who read a charge do not ask for it. */
function once<T>(work: () => T): () => T {
  let done: { readonly result: T } | null = null;
  return () => {
    done ??= { result: work() };
    return done.result;
  };
}

/** Worked out with the metal and the coats that the charge itself takes. */
function ladledIn(section: Section, metal: Metal, volume: number, start: number, ladling: Ladling) {
  const heat = heatPlanOf(metal, section);
  const usable = heat && checkHeat(heat).length === 0 ? heat : null;
  return ladledMetal(section, usable, volume, start, ladling, metal);
}

function amountOf(charge: ChargeBy): [string, number] {
  switch (charge.by) {
    case 'mass':
      return ['mass', charge.mass];
    case 'fill level':
      return ['fromLip', charge.fromLip];
    case 'head':
      return ['head', charge.head];
  }
}

function volumeOf(
  section: Section,
  start: number,
  end: number,
  density: number,
  charge: ChargeBy,
): number | null {
  switch (charge.by) {
    case 'mass':
      return charge.mass / density;
    case 'fill level':
      return volumeFromFillLevel(section, start, charge.fromLip);
    case 'head':
      return volumeFromHead(section, start, end, charge.head);
  }
}

function unreachable(section: Section, path: string, charge: ChargeBy, start: number, end: number): Issue {
  if (charge.by === 'head') return unreachableHead(section, path, charge.head, start, end);
  return {
    path,
    message: `No metal can stand at that level at ${degrees(start)}: it lies under the basin floor or over a rim.`,
    remedy: levelsThatGo(section, start),
  };
}

function levelsThatGo(section: Section, start: number): string {
  const levels = fillLevels(section, start);
  const tenths = levels && wholeTenthsIn(levels);
  if (!tenths) return 'No level stands in this basin: make it deeper, or start at another inclination.';
  const [low, high] = tenths.map(millimetres);
  return `Give a level between ${low} and ${high} mm from the lip, or make the basin deeper.`;
}

function belowMouth(section: Section, path: string, start: number, end: number): Issue {
  const most = largestHead(section, start, end, SIZES.most);
  return {
    path,
    message: 'A head is measured up from the mouth, and this one lies below it.',
    remedy: most === 0 ? NO_HEAD : `Type 0 to ${millimetres(most)} mm.`,
  };
}

const NO_HEAD = 'No head goes here: give a mass or a fill level, or roof more of the basin.';

function unreachableHead(section: Section, path: string, head: number, start: number, end: number): Issue {
  const most = largestHead(section, start, end, head);
  return {
    path,
    message: `No charge leaves that head at ${degrees(end)}: it would stand over a rim, or run out on the way.`,
    remedy:
      most === 0
        ? NO_HEAD
        : `The most that goes here is ${millimetres(most)} mm: ask for no more, or roof more of the basin.`,
  };
}

function sizeIssue(path: string, section: Section, volume: number, density: number): Issue | null {
  const least = LEAST_SHARE * cavityVolume(section);
  const most = wholeVolume(section);
  if (volume >= least && volume <= most) return null;
  const kilograms = (volumeShown: number) => `${Number((volumeShown * density).toPrecision(3))} kg`;
  const message =
    volume > most
      ? `A charge of ${kilograms(volume)} is more than basin and die hold together.`
      : `A charge of ${kilograms(volume)} is too little to fill anything.`;
  return { path, message, remedy: `Give between ${kilograms(least)} and ${kilograms(most)}.` };
}

function refusal(path: string, message: string, remedy: string): ChargeResult {
  return { issues: [{ path, message, remedy }] };
}
