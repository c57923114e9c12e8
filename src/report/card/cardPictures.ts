import type { PourRecord } from '$src/core/pour/record';
import { metalOfFrame } from '../drawing/metalShape';
import { escaped, fittingScale, paperFor } from '../drawing/paper';
import { sectionMarks } from '../drawing/sectionMarks';
import { steelAround } from '../drawing/steel';
import { filmMoments } from '../filmMoments';
import { pictureAt } from '../frames';
import { angleText, secondsText } from '../wording';

const SIZE = { width: 164, height: 84 };
const ROOM = { left: 6, top: 5, right: SIZE.width - 6, bottom: SIZE.height - 5 };

/** Four pictures of the metal, all at one scale: what the caster should see. */
export function cardPictures(record: PourRecord, id: string): string {
  const steel = steelAround(record.plan.section);
  const moments = filmMoments(record).map((time) => ({ time, picture: pictureAt(record, time) }));
  const scale = Math.min(
    ...moments.map(({ picture }) => fittingScale(steel.corners, picture.inclination, ROOM)),
  );
  const pictures = moments.map(({ time, picture }, index) => {
    const { inclination } = picture;
    const paper = paperFor(steel.corners, inclination, ROOM, scale);
    // At this size a skin line would be thicker than a thin front.
    const metal = { ...metalOfFrame(record.outline, inclination, picture), skins: [] };
    const marks = sectionMarks(paper, steel, metal, { id: `${id}-${index}`, step: 3.4 });
    const words = `${angleText(inclination)}, ${secondsText(time)}`;
    return `<figure><svg class="film" viewBox="0 0 ${SIZE.width} ${SIZE.height}" role="img" aria-label="${escaped(`The metal at ${words}`)}">${marks}</svg><figcaption><b>${escaped(angleText(inclination))}</b> ${escaped(secondsText(time))}</figcaption></figure>`;
  });
  return `<div class="film-strip">${pictures.join('')}</div>`;
}
