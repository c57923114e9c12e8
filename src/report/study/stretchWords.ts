import type { PageUnits } from '$src/core/units';
import { capital } from '../wording';
import type { Feeders } from './feeders';
import { axisValue } from './grid';
import type { MapAnswer } from './mapAnswer';
import { shownValue } from './quantities';
import type { Region } from './region';
import { regionWords } from './regionWords';
import type { NamedAxis } from './studyFile';
import { type Stretch, tellingStretch } from './tellingStretch';

/** Where the region lies that one would tell, in words with a space before; empty where it lies nowhere. */
export function stretchWords(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  region: Region,
  units: PageUnits,
): string {
  const found = tellingStretch(axes, answer, (point) => answer.regions[point] === region);
  if (!found) return '';
  const told = `${placedRange(axes, found.stretch, units)} is ${regionWords(region)}.`;
  const [, up] = axes;
  if (!found.isElsewhere || !up || up.setPoint === null) return ` ${told}`;
  const set = `${up.name} ${shownValue(up.setPoint, up.quantity, units)}`;
  return ` Nothing is ${regionWords(region)} near ${set}, as it is set. The widest range lies elsewhere: ${told.replace(/^At/, 'at')}`;
}

/** "At start angle +20°, tilt time 3 s to 5 s"; of a curve "Tilt time 3 s to 5 s". */
function placedRange([across, up]: readonly NamedAxis[], stretch: Stretch, units: PageUnits): string {
  const value = (axis: NamedAxis, index: number) => shownValue(axisValue(axis, index), axis.quantity, units);
  const [low, high] = [value(across!, stretch.from), value(across!, stretch.to)];
  const range = `${across!.name} ${stretch.from === stretch.to ? low : `${low} to ${high}`}`;
  return up ? `At ${up.name} ${value(up, stretch.row)}, ${range}` : capital(range);
}

/** Of a curve every point is computed: where some of its sound points are fed and others are not, the fed ones are told. */
export function fedWords(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  { sound, short }: Feeders,
  units: PageUnits,
): string {
  if (axes.length > 1 || short === 0 || short === sound) return '';
  const isFed = (point: number) => answer.regions[point] === 'sound' && answer.shortages[point] === null;
  const found = tellingStretch(axes, answer, isFed);
  return found
    ? ` ${placedRange(axes, found.stretch, units)} fills quietly and has a feeder that is enough.`
    : '';
}
