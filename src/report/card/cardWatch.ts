import type { FoldSize, PourRecord } from '$src/core/pour/record';
import { toDegrees } from '$src/core/units';
import { shownLength, withUnit } from '../measureText';
import { momentAt } from '../moment';
import { numberedFolds } from '../numberedFolds';
import { dieLength } from '../series';
import { angleText, percentText, secondsText, speedText } from '../wording';
import type { CardSource, CardWatch } from './shopCard';

interface Sight {
  readonly time: number;
  readonly inclination: number;
  readonly text: string;
}

const MOST_FOLDS = 2;
const WEIGHT: Readonly<Record<FoldSize, number>> = { heavy: 3, marked: 2, slight: 1 };

/** What the caster should see, in order of time: the metal at the mouth, at level, at its quickest, at the end. */
export function cardWatch(source: CardSource): CardWatch[] {
  const { record } = source;
  const sights = [
    ...firstFlow(record),
    ...atLevel(source),
    ...quickest(source),
    ...arrival(record),
    ...filled(record),
    ...worstFolds(source),
  ];
  return sights
    .toSorted((a, b) => a.time - b.time)
    .map(({ time, inclination, text }) => ({ angle: angleText(inclination), time: secondsText(time), text }));
}

const at = (record: PourRecord, time: number, text: string): Sight => ({
  time,
  inclination: momentAt(record, time).inclination,
  text,
});

function firstFlow(record: PourRecord): Sight[] {
  const { firstFlow, firstFlowTime } = record.figures;
  if (firstFlow.kind === 'already in the die')
    return [at(record, 0, 'metal stands in the die before the tilt: ladle gently')];
  if (firstFlowTime === null) return [];
  const isUphill = momentAt(record, firstFlowTime).inclination > 0;
  return [
    at(
      record,
      firstFlowTime,
      `first metal passes the mouth${isUphill ? ', rolling in uphill' : ', running downhill'}`,
    ),
  ];
}

/** How full the die is as it passes level: what is still behind must come downhill. */
function atLevel({ record, units }: CardSource): Sight[] {
  const { inclination, time } = record.series;
  const index = inclination.findIndex((each) => each <= 0);
  if (index <= 0 || inclination[0]! <= 0) return [];
  const { front, filledShare } = momentAt(record, time[index]!);
  if (front <= 0)
    return [at(record, time[index]!, 'die level: no metal in it yet; what comes now comes downhill')];
  const reach = Math.min(front, dieLength(record));
  const place = `front ${withUnit(shownLength(reach, units))} past the mouth`;
  return [at(record, time[index]!, `die level: ${percentText(filledShare)} full, ${place}`)];
}

function quickest({ record, units }: CardSource): Sight[] {
  const { peakFrontSpeed, peakFrontSpeedTime, peakFrontSpeedPlace } = record.figures;
  if (peakFrontSpeed === null || peakFrontSpeedTime === null || peakFrontSpeedPlace === null) return [];
  const place = withUnit(shownLength(peakFrontSpeedPlace, units));
  return [
    at(record, peakFrontSpeedTime, `front quickest, ${speedText(peakFrontSpeed)}, ${place} past the mouth`),
  ];
}

function arrival(record: PourRecord): Sight[] {
  const { arrivalTime } = record.figures;
  return arrivalTime === null ? [] : [at(record, arrivalTime, 'front reaches the die end')];
}

function filled(record: PourRecord): Sight[] {
  const { filledTime } = record.figures;
  return filledTime === null ? [] : [at(record, filledTime, 'die full')];
}

/** The heaviest folds the other sights do not tell of. */
function worstFolds({ record, units }: CardSource): Sight[] {
  return numberedFolds(record)
    .filter(({ kind }) => kind !== 'front over critical')
    .toSorted((a, b) => WEIGHT[b.size] - WEIGHT[a.size])
    .slice(0, MOST_FOLDS)
    .map(({ kind, size, time, inclination, place }) => ({
      time,
      inclination,
      text: `${kind}, ${size}, ${withUnit(shownLength(place, units))} ${place < 0 ? 'from' : 'past'} the mouth: ${sideOf(inclination)}`,
    }));
}

const sideOf = (inclination: number): string =>
  toDegrees(inclination) > 0
    ? 'slower here, or start further uphill'
    : 'slower here; look for it on the casting';
