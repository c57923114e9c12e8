import type { PourRecord } from '$src/core/pour/record';
import { dieLength } from '../series';
import { MESH_SPREAD } from '../speedCall';
import { fixed, percentText, placeText, speedText } from '../wording';

/** Points a guess is drawn with, mouth and die end counted: enough for a shape, few enough to set by hand. */
export const DRAWN_POINTS = 7;

/** Places of the drawn points from the mouth [m]. */
export function drawnPlaces(length: number, count: number = DRAWN_POINTS): number[] {
  return Array.from({ length: count }, (_, index) => (length * index) / (count - 1));
}

/** Front speed of the record at a place from the mouth [m]; held at its ends; null when no front ran in the die. */
export function frontSpeedAt({ frontSpeeds }: PourRecord, place: number): number | null {
  const { place: places, speed } = frontSpeeds;
  const count = places.length;
  if (count === 0) return null;
  const next = places.findIndex((each) => each >= place);
  if (next < 0) return speed[count - 1]!;
  if (next === 0) return speed[0]!;
  const share = (place - places[next - 1]!) / (places[next]! - places[next - 1]!);
  return speed[next - 1]! + share * (speed[next]! - speed[next - 1]!);
}

/** A drawn curve against the computed one, in figures. */
export interface DrawnDifference {
  /** Highest drawn speed [m/s] and its place [m]. */
  readonly drawnPeak: number;
  readonly drawnPlace: number;
  readonly peak: number;
  readonly place: number;
  /** Mean of drawn less computed over the drawn points [m/s]. */
  readonly lean: number;
  /** Mean distance between the two, either way [m/s]. */
  readonly distance: number;
}

/** How a drawn curve lies to the computed one; null when no front ran in the die. */
export function drawnDifference(record: PourRecord, drawn: readonly number[]): DrawnDifference | null {
  const { peakFrontSpeed: peak, peakFrontSpeedPlace: place } = record.figures;
  const places = drawnPlaces(dieLength(record), drawn.length);
  const computed = places.map((each) => frontSpeedAt(record, each));
  if (peak === null || place === null || computed.some((speed) => speed === null)) return null;
  const apart = drawn.map((speed, index) => speed - computed[index]!);
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const drawnPeak = Math.max(...drawn);
  return {
    drawnPeak,
    drawnPlace: places[drawn.indexOf(drawnPeak)]!,
    peak,
    place,
    lean: mean(apart),
    distance: mean(apart.map(Math.abs)),
  };
}

/** The difference in words, most telling first. */
export function drawnWords(record: PourRecord, drawn: readonly number[]): string[] {
  const found = drawnDifference(record, drawn);
  if (found === null) return ['No front ran in the die, so there is no speed to set the drawing against.'];
  return [
    peakWords(found),
    sideWords(found, record.plan.liquid.criticalSpeed),
    placeWords(found, dieLength(record)),
    leanWords(found),
  ];
}

/** Drawn and computed peaks within the spread of the mesh are the same answer. */
const isClose = (drawn: number, computed: number): boolean =>
  Math.abs(drawn - computed) <= MESH_SPREAD * computed;

function peakWords({ drawnPeak, peak }: DrawnDifference): string {
  const both = `You drew a peak of ${speedText(drawnPeak)}; the computed one is ${speedText(peak)}`;
  if (isClose(drawnPeak, peak)) return `${both}: as near as the computation itself can tell.`;
  const ratio = drawnPeak / peak;
  return `${both}: ${ratio > 1 ? `${fixed(ratio, 1)} times as fast as computed` : `${percentText(ratio)} of what is computed`}.`;
}

function sideWords({ drawnPeak, peak }: DrawnDifference, critical: number): string {
  const side = (speed: number): string => (speed > critical ? 'over' : 'under');
  const limit = `critical speed, ${speedText(critical)}`;
  if (side(drawnPeak) === side(peak)) return `Both peaks lie ${side(peak)} ${limit}.`;
  return `You put the peak ${side(drawnPeak)} ${limit}; it lies ${side(peak)} it.`;
}

function placeWords({ drawnPlace, place }: DrawnDifference, length: number): string {
  const both = `The drawn curve is highest at ${placeText(drawnPlace)} from the mouth, the computed one at ${placeText(place)}`;
  return Math.abs(drawnPlace - place) <= length / (DRAWN_POINTS - 1)
    ? `${both}: the same stretch of the die.`
    : `${both}.`;
}

function leanWords({ lean, distance }: DrawnDifference): string {
  const apart = `Along the die the two are ${speedText(distance)} apart on average`;
  if (Math.abs(lean) < distance / 2) return `${apart}, now above, now below.`;
  return `${apart}; yours lies ${lean > 0 ? 'above' : 'below'}.`;
}
