/** What can be wrong with a casting, as it is sorted on the floor. */
export const FAULTS = [
  { fault: 'fold', name: 'fold or oxide' },
  { fault: 'lap', name: 'lap or misrun' },
  { fault: 'gas', name: 'gas' },
  { fault: 'shrinkage', name: 'shrinkage' },
  { fault: 'other', name: 'other' },
] as const;
export type Fault = (typeof FAULTS)[number]['fault'];

/** Castings poured alike: one row of the log. Settings as run are SI; null = not written down. */
export interface CastingRow {
  /** As typed. */
  readonly date: string;
  /** The pour of the book they belong to. */
  readonly pour: string | null;
  /** [rad] */
  readonly startAngle: number | null;
  /** [s] */
  readonly tiltTime: number | null;
  /** Charge [kg]. */
  readonly mass: number | null;
  /** [K] */
  readonly metalTemperature: number | null;
  /** [K] */
  readonly dieTemperature: number | null;
  readonly good: number;
  /** Bad castings, each counted once, under its worst fault. */
  readonly bad: Readonly<Record<Fault, number>>;
  readonly remark: string;
}

/** Which bad castings are counted. */
export type CountedFault = Fault | 'any';
/** Which predicted figure they are set against. */
export type PredictedFigure = 'front speed' | 'lap margin';

export const NO_FAULTS: CastingRow['bad'] = { fold: 0, lap: 0, gas: 0, shrinkage: 0, other: 0 };

export const EMPTY_ROW: CastingRow = {
  date: '',
  pour: null,
  startAngle: null,
  tiltTime: null,
  mass: null,
  metalTemperature: null,
  dieTemperature: null,
  good: 0,
  bad: NO_FAULTS,
  remark: '',
};

/** All castings of a row. */
export const castingsIn = ({ good, bad }: CastingRow): number =>
  good + FAULTS.reduce((sum, { fault }) => sum + bad[fault], 0);

/** Those of a row that are bad in the way that is counted. */
export const countedBad = ({ bad }: CastingRow, counted: CountedFault): number =>
  counted === 'any' ? FAULTS.reduce((sum, { fault }) => sum + bad[fault], 0) : bad[counted];
