import type { FoldSize, PourRecord } from '$src/core/pour/record';
import type { PageUnits } from '$src/core/units';
import { shownLength, shownSpeed, withUnit } from '../measureText';
import { momentAt } from '../moment';
import { numberedFolds } from '../numberedFolds';
import { dieLength } from '../series';
import { spilledWords } from '../spilledReason';
import { spillStart } from '../spillStart';
import { angleText, percentText, secondsNumber, secondsText } from '../wording';
import type { CardSource, CardWatch } from './shopCard';

interface Sight {
  readonly time: number;
  /** When the last of what is told in one line happens [s]. */
  readonly until?: number;
  readonly inclination: number;
  readonly text: string;
}

const MOST_FOLDS = 2;
/** Sights closer than this are one to the eye [s]. */
const AT_ONCE = 0.1;
/** Lines that leave the card on one page. */
const MOST_LINES = 5;
const WEIGHT: Readonly<Record<FoldSize, number>> = { heavy: 3, marked: 2, slight: 1 };

/** What the caster should see, in order of time: the metal at the mouth, at level, at its quickest, at the end. */
export function cardWatch(source: CardSource): CardWatch[] {
  const { record } = source;
  const told = [
    ...firstFlow(record),
    ...atLevel(source),
    ...quickest(source),
    ...arrival(record),
    ...filled(record),
    ...spilling(record),
  ];
  return withFolds(told, worstFolds(source)).map(({ time, until = time, inclination, text }) => ({
    angle: angleText(inclination),
    time: spanText(time, until),
    text,
  }));
}

/** One moment, or from the first to the last of several that are one to the eye. */
function spanText(from: number, until: number): string {
  const [first, last] = [secondsNumber(from), secondsText(until)];
  return `${first} s` === last ? last : `${first}–${last}`;
}

/** The folds that still have room beside what is told anyway, in order of time. */
function withFolds(told: readonly Sight[], folds: readonly Sight[]): Sight[] {
  const lines = together([...told, ...folds].toSorted((a, b) => a.time - b.time));
  return lines.length <= MOST_LINES || folds.length === 0 ? lines : withFolds(told, folds.slice(0, -1));
}

/** What happens at once is one line. */
function together(sights: readonly Sight[]): Sight[] {
  const lines: Sight[] = [];
  for (const sight of sights) {
    const last = lines.at(-1);
    if (last && sight.time - last.time < AT_ONCE)
      lines[lines.length - 1] = { ...last, until: sight.time, text: `${last.text}; ${sight.text}` };
    else lines.push(sight);
  }
  return lines;
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
  if (front <= 0) return [at(record, time[index]!, 'die level and still empty: metal will run downhill')];
  const reach = Math.min(front, dieLength(record));
  const place = `front at ${withUnit(shownLength(reach, units))}`;
  return [at(record, time[index]!, `die level: ${percentText(filledShare)} full, ${place}`)];
}

function quickest({ record, units }: CardSource): Sight[] {
  const { peakFrontSpeed, peakFrontSpeedTime, peakFrontSpeedPlace } = record.figures;
  if (peakFrontSpeed === null || peakFrontSpeedTime === null || peakFrontSpeedPlace === null) return [];
  const place = placeWords(peakFrontSpeedPlace, units);
  return [
    at(
      record,
      peakFrontSpeedTime,
      `front quickest, ${withUnit(shownSpeed(peakFrontSpeed, units))}, ${place}`,
    ),
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

/** The moment to stand clear of, whatever else the card tells. */
function spilling(record: PourRecord): Sight[] {
  const start = spilledWords(record) === null ? null : spillStart(record);
  return start ? [{ ...start, text: 'metal runs over a rim: everybody away' }] : [];
}

/** A place under "places from the mouth"; one in the basin says so. */
const placeWords = (place: number, units: PageUnits): string => {
  const size = withUnit(shownLength(Math.abs(place), units));
  return place < 0 ? `${size} before the mouth` : `at ${size}`;
};

/** The heaviest folds the other sights do not tell of. */
function worstFolds({ record, units }: CardSource): Sight[] {
  return numberedFolds(record)
    .filter(({ kind }) => kind !== 'front over critical')
    .toSorted((a, b) => WEIGHT[b.size] - WEIGHT[a.size])
    .slice(0, MOST_FOLDS)
    .map(({ kind, size, time, inclination, place }) => ({
      time,
      inclination,
      text: `${kind}, ${size}, ${placeWords(place, units)}`,
    }));
}
