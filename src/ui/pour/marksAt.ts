import type { PourRecord } from '$src/core/pour/record';
import { foldSizeText } from '$src/report/foldSizeText';
import { depthBehindFront } from '$src/report/frames';
import { momentAt } from '$src/report/moment';
import type { NumberedFold } from '$src/report/numberedFolds';
import { dieLength, isAtEnd } from '$src/report/series';
import { lengthText, percentText, placeText, secondsText, speedText } from '$src/report/wording';
import type { FrontMark, PinMark } from '../drawing/marks';
import { said } from '../said';

/** More leaders than this cross a picture. */
const PINS_SHOWN = 3;

export const foldName = (fold: NumberedFold): string =>
  `${fold.kind}, ${foldSizeText(fold)}, ${secondsText(fold.time)}`;

/** Pins of the folds that have happened by `time`, the nearest in time. */
export function pinsAt(folds: readonly NumberedFold[], time: number): PinMark[] {
  return folds
    .filter((fold) => fold.time <= time + 1e-9)
    .slice(-PINS_SHOWN)
    .map((fold) => ({ number: fold.number, size: fold.size, place: fold.place, name: foldName(fold) }));
}

/** The front's mark while it runs between mouth and end. */
export function frontAt(record: PourRecord, time: number): FrontMark | null {
  const { front, frontSpeed } = momentAt(record, time);
  if (front <= 0 || isAtEnd(front, dieLength(record))) return null;
  const depth = depthBehindFront(record, time);
  const parts = [
    ...(frontSpeed === null ? [] : [said(speedText(frontSpeed))]),
    ...(depth === null ? [] : [`${said(lengthText(depth))} deep`]),
  ];
  return {
    place: front,
    lines: [`front ${said(placeText(front))}`, ...(parts.length ? [parts.join(' · ')] : [])],
  };
}

export function captionAt(record: PourRecord, time: number): { strong: string; rest: string } {
  const { filledShare } = momentAt(record, time);
  return { strong: secondsText(time), rest: `${percentText(filledShare)} full` };
}
