/** One setting of a pour over a range; `points` values from `from` to `to`, both counted, equally spaced. SI. */
export interface StudyAxis {
  /** Id of the setting, e.g. `tilt.time`; see settings.ts. */
  readonly setting: string;
  readonly from: number;
  readonly to: number;
  readonly points: number;
}

/** The figure a curve shows. */
export type CurveFigure =
  | 'peakFrontSpeed'
  | 'firstFlow'
  | 'fillTime'
  | 'arrivalTime'
  | 'finalShare'
  | 'shareAboveCritical'
  | 'skinFolded';

/** What is varied around a pour: one setting is a curve, two are a map (first across, second up). */
export interface Study {
  readonly axes: readonly StudyAxis[];
  /** What a curve shows; a map shows regions. */
  readonly figure: CurveFigure;
  /** Mesh cells of every pour of the study; the pour's own mesh is finer. */
  readonly meshCells: number;
  /** How far repeated pours stray from the setting, either way, one for each axis [unit of the axis]; empty = not known. */
  readonly repeatability: readonly number[];
}

export const AXIS_POINTS = { least: 2, most: 60 } as const;
/** More pours than this are a day's work, not a study. */
export const MOST_POINTS = 1600;
