import type { Drawing, ReadDrawing } from '$src/fromDrawing/drawing';

/** The drawing that was read. */
export function drawn(read: ReadDrawing): Drawing {
  if ('refused' in read) throw new Error(read.refused[0]!.message);
  return read;
}

export const refusal = (read: ReadDrawing): string =>
  'refused' in read ? read.refused[0]!.message : 'it was read';

/** Floor and roof of the flush basin in millimetres, as a person would draw them, y down. */
export const SVG = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200">
  <script>throw new Error('run')</script>
  <defs><path id="unseen" d="M0 0H9"/></defs>
  <g id="die" transform="translate(10 20)">
    <path id="floor" d="M0 100 H355"/>
    <polyline id="roof" points="0,0 103,0 103,70 355,70"/>
    <text x="5" y="5">arm</text>
  </g>
</svg>`;
