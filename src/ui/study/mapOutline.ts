import { contours, geoPath, geoTransform } from 'd3';
import type { MapAnswer } from '$src/report/study/mapAnswer';
import type { Region } from '$src/report/study/region';
import type { MapPlot } from './mapPlot';

/** SVG path around all points that are meant, through the middle between them and their neighbours. */
export function mapOutline(
  { grid, regions }: MapAnswer,
  { left, top, right, bottom }: MapPlot,
  isMeant: (region: Region) => boolean,
): string {
  const { columns, rows } = grid;
  const field = regions.map((region) => (isMeant(region) ? 1 : 0));
  const [shape] = contours().size([columns, rows]).smooth(true).thresholds([0.5])(field);
  const place = geoTransform({
    point(column: number, row: number) {
      this.stream.point(
        left + ((column - 0.5) / Math.max(1, columns - 1)) * (right - left),
        bottom - ((row - 0.5) / Math.max(1, rows - 1)) * (bottom - top),
      );
    },
  });
  return (shape && geoPath(place)(shape)) || '';
}
