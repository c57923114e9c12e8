import { type PointResult, regionOf } from './region';
import { shortageOf } from './regionWords';
import type { StudyResults } from './studyFile';

/** What the feeders do at the points a study calls sound, which says only how the die fills. */
export interface Feeders {
  /** What the feeder of the pour as it is set lacks: "the feeder is short of metal"; null where that is nothing. */
  readonly atSetting: string | null;
  /** Sound points that were computed, and at how many of them the feeder cannot feed. */
  readonly sound: number;
  readonly short: number;
}

export function feedersOf(results: StudyResults, setResult: PointResult | null): Feeders {
  const sound = [...results.values()].filter((result) => regionOf(result) === 'sound');
  const short = sound.filter((result) => shortageOf(result) !== null);
  return {
    atSetting: setResult && shortageOf(setResult),
    sound: sound.length,
    short: short.length,
  };
}

/** Of one point: "enough", what the feeder lacks, or that it was not judged; null where there is no pour. */
export function feederText(result: PointResult): string | null {
  if (!('figures' in result)) return null;
  const { shortage, isFeederJudged } = result.figures;
  return shortage ?? (isFeederJudged ? 'enough' : 'not judged');
}

/** The same in a column that is called feeder: "short of metal"; a dash where there is no pour. */
export const feederCell = (result: PointResult): string =>
  feederText(result)?.replace(/^the feeder (is )?/, '') ?? '–';

/** Said after whatever calls points of a study sound; empty where all of them are fed. */
export function feederWords({ sound, short }: Feeders): string {
  if (short === 0) return '';
  const where = short === sound ? 'all' : `${short}`;
  return ` Sound is said of the filling here: at ${where} of the ${sound} sound points computed the feeder cannot feed the casting; each point tells what it lacks.`;
}
