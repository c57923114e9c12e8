import * as v from 'valibot';
import { LARGEST_PICTURE } from '$src/cells/underlay';

/** The picture under a section in a book. Only a picture in the book itself: an address elsewhere would be fetched. */

const number = v.pipe(v.number(), v.finite());
const point = v.strictObject({ x: number, y: number });

export const underlaySchema = v.strictObject({
  image: v.pipe(
    v.string(),
    v.maxLength(LARGEST_PICTURE),
    v.regex(/^data:image\/(jpeg|png);base64,[A-Za-z0-9+/]+=*$/),
  ),
  width: number,
  height: number,
  marks: v.strictTuple([point, point]),
  length: number,
  at: point,
  direction: number,
  opacity: number,
});
