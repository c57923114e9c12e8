import type { PourRecord } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';
import { METRIC, type PageUnits, toDegrees, toMilliseconds } from '$src/core/units';
import { metalOfFrame } from '../drawing/metalShape';
import { pathOf } from '../drawing/paper';
import { pictureAt } from '../frames';
import { inUnits } from '../inUnits';
import { lastTime, momentAt } from '../moment';
import { dieLength, isAtEnd } from '../series';
import { angleText, percentText, secondsText, speedText } from '../wording';
import type { Mark, SpeedChart } from './speedChart';

/** Pictures a second, and at most so many in all: the page has to stay small enough to be sent. */
const PICTURES_A_SECOND = 25;
const MOST_PICTURES = 160;

/** One picture: everything is a text or number the page's script only has to put in place. */
export interface ReplayPicture {
  /** [s] */
  readonly time: number;
  /** Turn of the body on the page [°], clockwise. */
  readonly turn: number;
  readonly metal: string;
  readonly skin: string;
  /** Where the front stands; null outside the die. */
  readonly front: readonly [x: number, y: number] | null;
  /** Where the marker of the chart of front speeds stands; absent where none does. */
  readonly mark?: Mark;
  readonly words: string;
}

/** A pour as the page replays it. */
export interface Replay {
  /** [s], and the same in the browser's unit. */
  readonly duration: number;
  readonly milliseconds: number;
  readonly pictures: readonly ReplayPicture[];
}

/** Points of the die frame [m] about the pivot [px], y down. */
export type Place = (point: Point) => { x: number; y: number };

export function replayOf(
  record: PourRecord,
  place: Place,
  units: PageUnits = METRIC,
  markAt: SpeedChart['markAt'] = () => null,
): Replay {
  const duration = lastTime(record);
  const count = Math.max(2, Math.min(MOST_PICTURES, Math.ceil(duration * PICTURES_A_SECOND) + 1));
  const pictures = Array.from({ length: count }, (_, index) => {
    const time = (duration * index) / (count - 1);
    const mark = markAt(time);
    return { ...pictureOf(record, time, place, units), ...(mark && { mark }) };
  });
  return { duration, milliseconds: toMilliseconds(duration), pictures };
}

function pictureOf(record: PourRecord, time: number, place: Place, units: PageUnits): ReplayPicture {
  const picture = pictureAt(record, time);
  const { inclination } = picture;
  const shape = metalOfFrame(record.outline, inclination, picture);
  const paths = (lines: readonly (readonly Point[])[], isClosed: boolean) =>
    lines.map((line) => pathOf(line.map(place), isClosed)).join('');
  return {
    time: Number(time.toFixed(4)),
    turn: Number((-toDegrees(inclination)).toFixed(2)),
    metal: paths(shape.bodies, true),
    skin: paths(shape.skins, false),
    front: frontOf(record, time, place),
    words: inUnits(wordsAt(record, time), units),
  };
}

function frontOf(record: PourRecord, time: number, place: Place): readonly [number, number] | null {
  const { front } = momentAt(record, time);
  if (front <= 0 || isAtEnd(front, dieLength(record))) return null;
  const { floor, mouth } = record.plan.section;
  const x = mouth + front;
  const after = floor.findIndex((point) => point.x >= x);
  const [a, b] = [floor[Math.max(0, after - 1)]!, floor[Math.max(0, after)]!];
  const share = b.x > a.x ? (x - a.x) / (b.x - a.x) : 0;
  const spot = place({ x, y: a.y + (b.y - a.y) * share });
  return [Number(spot.x.toFixed(1)), Number(spot.y.toFixed(1))];
}

function wordsAt(record: PourRecord, time: number): string {
  const { inclination, filledShare, frontSpeed } = momentAt(record, time);
  const speed = frontSpeed === null ? '' : ` · front ${speedText(frontSpeed)}`;
  return `${secondsText(time)} · ${angleText(inclination)} · ${percentText(filledShare)} full${speed}`;
}
