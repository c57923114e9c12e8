/** A point of the section in the die frame [m]: x along the die axis from the back wall, y square to it. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A stretch of the section whose width into the page is one, or tapers evenly. Regions follow each other from the back wall to the die end. */
export interface Region {
  readonly name: string;
  /** Where the region ends along the axis [m]; it starts where the one before ends. */
  readonly end: number;
  /** Width into the page where the region begins [m]. Past the mouth this is the width of one cavity. */
  readonly width: number;
  /** Width where it ends [m]; in between it changes evenly along the axis. Absent = the same width throughout. */
  readonly widthAtEnd?: number;
  /** Heat transfer from metal to die [W/(m² K)]; absent = a normal insulating coat. */
  readonly transfer?: number;
  /** Die surface when the metal comes [K]; absent = 350 °C. */
  readonly dieTemperature?: number;
}

/**
 * A place where metal can leave. Its two rims are points of the outline.
 * `roof`: roof segments from point `from` to point `to` are open; those two points are the rims.
 * `back wall`: the gap between floor[0] and roof[0] is open; those two points are the rims.
 */
export type Opening =
  | { readonly wall: 'roof'; readonly from: number; readonly to: number }
  | { readonly wall: 'back wall' };

/** A way out for gas through the roof. Area is the free area of one cavity's vent [m²]. */
export interface Vent {
  readonly place: number;
  readonly area: number;
  /** Share of the area that is blocked, 0 to 1. */
  readonly blocked: number;
}

/**
 * The die-and-basin cross section in the die frame.
 *
 * Floor and roof are polylines over the same stretch of x, from the back wall (first point) to the die end
 * (last point). x never decreases; two points with one x make a vertical step. The gaps between the first
 * points and between the last points are walls unless an opening says otherwise. Over an open basin the roof
 * polyline joins its rims; the roof's outer face, where it stands beside the basin, is a vertical step.
 *
 * Example (m): floor (0,0) (0.355,0); roof (0,0.095) (0.103,0.095) (0.103,0.03) (0.355,0.03);
 * openings [{ wall: 'roof', from: 0, to: 1 }]; mouth 0.155.
 */
export interface Section {
  readonly floor: readonly Point[];
  readonly roof: readonly Point[];
  readonly openings: readonly Opening[];
  readonly regions: readonly Region[];
  /** Where the basin ends and the die begins, along the axis [m]. */
  readonly mouth: number;
  /** Equal cavities side by side past the mouth, fed symmetrically from one basin. */
  readonly cavities: number;
  /** The hinge the body turns about. */
  readonly pivot: Point;
  readonly vents: readonly Vent[];
}
