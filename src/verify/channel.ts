import type { Region, Section } from '$src/core/section/section';

/** A straight channel to compute a known solution in: one cavity, no openings, its roof out of reach. */
export interface Channel {
  readonly length: number;
  readonly cells: number;
  /** Height of the floor at x [m]; flat when absent. */
  bed?(x: number): number;
  /** Width at x [m]; 1 m when absent. */
  width?(x: number): number;
  /** Height of the roof [m]. */
  readonly roof: number;
}

/** The channel as a section: a floor point at every mesh face, so that the mesh follows the bed exactly there. */
export function channelSection(channel: Channel): Section {
  const faces = facesOf(channel);
  const bed = channel.bed ?? (() => 0);
  const floor = channel.bed
    ? faces.map((x) => ({ x, y: bed(x) }))
    : [
        { x: 0, y: 0 },
        { x: channel.length, y: 0 },
      ];
  return {
    floor,
    roof: [
      { x: 0, y: channel.roof },
      { x: channel.length, y: channel.roof },
    ],
    openings: [],
    regions: regionsOf(channel, faces),
    mouth: 0,
    cavities: 1,
    pivot: { x: 0, y: 0 },
    vents: [],
  };
}

const facesOf = ({ length, cells }: Channel): number[] =>
  Array.from({ length: cells + 1 }, (_, j) => (length * j) / cells);

/** A region from mesh face to mesh face, each with an even taper, so that the width is exact at every face. */
function regionsOf({ width, length }: Channel, faces: readonly number[]): Region[] {
  if (!width) return [{ name: 'channel', end: length, width: 1 }];
  return faces
    .slice(1)
    .map((end, i) => ({ name: `reach ${i}`, end, width: width(faces[i]!), widthAtEnd: width(end) }));
}
