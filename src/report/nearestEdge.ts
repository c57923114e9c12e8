import type { PageUnits } from '$src/core/units';
import type { Variation } from './sensitivity';
import type { Margin } from './study/margins';
import type { PointFigures } from './study/pointFigures';
import { shownDistance, shownValue } from './study/quantities';
import { type PointResult, regionOf } from './study/region';
import { faultWords, regionWords, resultWords, shortageOf } from './study/regionWords';
import type { FoundByStudy } from './study/soundFinding';
import type { NamedAxis } from './study/studyFile';
import type { Reason } from './verdictReasons';
import { countText, listText } from './wording';

/** A margin that something lies beyond. */
interface Edge extends Margin {
  readonly distance: number;
  readonly meets: NonNullable<Margin['meets']>;
}

const isEdge = (margin: Margin): margin is Edge => margin.distance !== null && margin.meets !== null;

/** Share of the range looked at: what makes a degree and a second comparable. */
const nearness = ({ from, to }: NamedAxis, { distance }: Edge): number => distance / Math.abs(to - from);

/** Edges are sought between regions, which tell how a die fills. */
const FILLING_ONLY = 'Of the filling alone: feeders are not judged there.';

/**
 * What a study has found of how near an unsound setting lies to this sound pour: along each setting the nearer edge,
 * the nearest first. Null when the study has not looked.
 */
export function edgeOfStudy(
  name: string,
  { axes, margins, setRegion }: FoundByStudy,
  units: PageUnits,
): Reason | null {
  const by = `by the study “${name}”`;
  if (setRegion !== null && setRegion !== 'sound')
    return {
      name: 'close to an edge',
      line: `On the coarser mesh of the study “${name}” this very pour has another verdict: ${regionWords(setRegion)}.`,
    };
  if (margins === null) return null;
  const edges = axes.flatMap((axis, index) => {
    const own = margins.filter(isEdge).filter((edge) => edge.axis === index);
    const [nearest] = own.toSorted((a, b) => a.distance - b.distance);
    return nearest ? [{ axis, edge: nearest }] : [];
  });
  if (edges.length === 0)
    return {
      name: 'no edge met',
      line: `Sound to the ends of all that was looked at, ${by}. ${FILLING_ONLY}`,
    };
  const told = edges
    .toSorted((a, b) => nearness(a.axis, a.edge) - nearness(b.axis, b.edge))
    .map(({ axis, edge }) => edgeWords(axis, edge, units));
  return { name: 'nearest edge', line: `${told.join('; ')}; ${by}. ${FILLING_ONLY}` };
}

/** "tilt time sound to 3.1 s, 0.9 s less, then folds film". */
function edgeWords({ name, quantity }: NamedAxis, edge: Edge, units: PageUnits) {
  const { limit, distance, direction, meets } = edge;
  const way = direction < 0 ? 'less' : 'more';
  const room = shownDistance(distance, quantity, units);
  if (Number.parseFloat(room) === 0)
    return `${name} with no room for ${way}: then ${faultWords(edge, meets)}`;
  return `${name} sound to ${shownValue(limit, quantity, units)}, ${room} ${way}, then ${faultWords(edge, meets)}`;
}

/** The pour with one input a little off, as far as it is known. */
export interface TriedAround {
  readonly base: PointFigures;
  readonly variations: readonly Pick<Variation, 'id' | 'name' | 'change' | 'isAssumed'>[];
  readonly results: ReadonlyMap<string, { readonly figures: PointFigures } | { readonly reason: string }>;
}

const fillsSoundly = (result: PointResult): boolean => regionOf(result) === 'sound';
const isFed = (result: PointResult): boolean => shortageOf(result) === null;
/** Where the feeder is short as it is, that stands in the verdict, and the rest is asked of the filling. */
const SHORT_AS_IT_IS = ' Of the filling alone: the feeder is short as it is.';

/** What inputs a little off have shown of how near an unsound setting lies to this sound pour. */
export function edgeOfSensitivity({ base, variations, results }: TriedAround): Reason {
  const own = { figures: base };
  const feederCounts = isFed(own);
  const isSound = (result: PointResult): boolean => fillsSoundly(result) && (!feederCounts || isFed(result));
  const scope = feederCounts ? '' : SHORT_AS_IT_IS;
  if (!fillsSoundly(own))
    return {
      name: 'close to an edge',
      line: `On the coarse mesh of the runs below this very pour has another verdict: ${resultWords(own)}.`,
    };
  const judged = variations.flatMap((variation) => {
    const result = results.get(variation.id);
    return result && 'figures' in result ? [{ ...variation, result }] : [];
  });
  const unsound = judged.filter(({ result }) => !isSound(result));
  const tried = countText(judged.length, 'change');
  if (unsound.length === 0)
    return {
      name: 'no edge met',
      line: `Still sound with all that was tried below, one at a time: ${tried}.${scope}`,
    };
  const words = unsound.map(
    ({ name, change, result, isAssumed }) =>
      `${name} ${isAssumed ? 'at ' : ''}${change} (${resultWords(result)}${isAssumed ? '; an assumed value' : ''})`,
  );
  const left = judged.length - unsound.length;
  const rest = left === 0 ? '' : ` Sound still with the other ${countText(left, 'change')} tried.`;
  return { name: 'edge within a step', line: `No longer sound with ${listText(words)}.${rest}${scope}` };
}
