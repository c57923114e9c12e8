import type { MachineWarning } from '$src/core/tilt/machine/machineWarnings';
import type { Turned } from '$src/core/tilt/machine/turned';
import type { KnotTilt } from '$src/core/tilt/tilt';
import type { PourPlan } from './plan';

/** A place-time field, row by row: value(i, j) = data[i * stride[0] + j * stride[1]], i = frame, j = mesh cell. */
export interface Field {
  readonly data: Float32Array;
  readonly shape: readonly [frames: number, cells: number];
  readonly stride: readonly [number, number];
}

/** Mesh cells as drawn [m]: cell j lies between x[j] and x[j+1]; two-sided floor and roof, so steps sit on faces. */
export interface MeshOutline {
  readonly x: Float64Array;
  readonly floorLeft: Float64Array;
  readonly floorRight: Float64Array;
  readonly roofLeft: Float64Array;
  readonly roofRight: Float64Array;
  /** 1 where the cell is under an opening. */
  readonly open: Uint8Array;
}

/** Pictures of the pour for playback, thinned to about 50 a second. */
export interface Frames {
  readonly time: Float64Array;
  readonly inclination: Float64Array;
  /** Lab elevation of the metal surface [m] (see docs/conventions.md); NaN where the cell is dry. */
  readonly level: Field;
  /** Depth normal to the axis, mean of the cell [m]. */
  readonly depth: Field;
  /** Speed along the floor at cell centres [m/s]. */
  readonly speed: Field;
}

/** Figures against time, one value per sample (every 10 ms). */
export interface Series {
  readonly time: Float64Array;
  readonly inclination: Float64Array;
  /** Foremost metal on the floor, from the mouth along the axis [m]; negative while still in the basin. */
  readonly front: Float64Array;
  /** Share of the cavity that is full, 0 to 1. */
  readonly filledShare: Float64Array;
  /** Metal that has left over a rim [m³]. */
  readonly spilled: Float64Array;
  /** Skin folded in so far per unit width [m]. */
  readonly skinFolded: Float64Array;
}

/** Front speed by place, one value each 5 mm of die: the mean over the window that ends here. */
export interface FrontSpeeds {
  /** From the mouth, along the axis [m]: middle of the window. */
  readonly place: Float64Array;
  /** Along the floor path [m/s]. */
  readonly speed: Float64Array;
  /** When the front passed the end of the window [s]. */
  readonly time: Float64Array;
  readonly inclination: Float64Array;
  /** Mean depth of the last 20 mm behind the front [m]. */
  readonly depth: Float64Array;
  /** Share of the section that stands full over those 20 mm: 1 = a full-height wall. */
  readonly fullness: Float64Array;
  /** Froude number of their mean speed; over 1 the metal shoots. */
  readonly froude: Float64Array;
  /** Length of the window [m]: 20 mm, or a fifth of a short die. */
  readonly window: number;
}

export type FoldKind =
  | 'front over critical'
  | 'tongue'
  | 'breaking bore'
  | 'undular bore'
  | 'lip jet'
  | 'end impact'
  | 'return wave'
  | 'fronts meet'
  | 'front stalls'
  | 'front falls back'
  | 'gas sealed in'
  | 'gas left under the roof'
  | 'skin contraction'
  | 'lap';
export type FoldSize = 'slight' | 'marked' | 'heavy';

/** One surface folding event. */
export interface Fold {
  readonly kind: FoldKind;
  readonly size: FoldSize;
  /** Whether it would count with every limit a fifth stricter; else it is borderline, and another mesh may not show it. */
  readonly isClear: boolean;
  /** [s] from the start of the tilt. */
  readonly time: number;
  /** From the mouth along the axis [m]. */
  readonly place: number;
  /** [rad] */
  readonly inclination: number;
  /** Severity in SI, with what it measures, e.g. { value: 0.81, quantity: 'front speed', unit: 'm/s' }. */
  readonly severity: {
    readonly value: number;
    readonly quantity: string;
    readonly unit: 'm/s' | 'm' | '1/s' | 'm²' | 'Pa' | 's' | 'K';
  };
  /** Further figures with units in their names, e.g. depth_m, froude, weber, length_scale_m. */
  readonly details: Readonly<Record<string, number>>;
  /** One plain sentence. */
  readonly cause: string;
  /** The usual cures, one sentence, whatever the machine can do; `report/cureFor` says those that it can. */
  readonly cure: string;
}

export type FirstFlow =
  | { readonly kind: 'angle'; readonly inclination: number; readonly time: number }
  | { readonly kind: 'already in the die' }
  | { readonly kind: 'never' };

/** Where gas in the die had the narrowest way out over the metal, with no vent to serve it: see core/watch/gasWay. */
export interface NarrowWay {
  /** Free height there over the opening, 0 to 1, and the free height itself [m]. */
  readonly share: number;
  readonly height: number;
  /** From the mouth along the floor path [m], when [s] and at which inclination [rad]. */
  readonly place: number;
  readonly time: number;
  readonly inclination: number;
}

/** Cold metal: what it did, and the seconds that the metal nearest to freezing had left (negative: so much too late). */
export interface LapFigure {
  readonly kind: 'none' | 'laps' | 'misrun';
  readonly margin: number;
}

/** The figures of a pour, SI; null where the pour did not get there. */
export interface Figures {
  readonly firstFlow: FirstFlow;
  /** Highest front speed in the die, 20 mm window [m/s]. */
  readonly peakFrontSpeed: number | null;
  /** Where [m from the mouth], when [s] and at which inclination [rad] the peak was. */
  readonly peakFrontSpeedPlace: number | null;
  readonly peakFrontSpeedTime: number | null;
  readonly peakFrontSpeedInclination: number | null;
  /** Length of die floor path run above critical speed, over the path's length, 0 to 1. */
  readonly shareAboveCritical: number | null;
  /** When the front first touched the end wall [s]; null also when it stood there before the tilt began. */
  readonly arrivalTime: number | null;
  /** Whether the front stood at the end wall before the tilt began; absent in older records. */
  readonly stoodAtEnd?: boolean;
  /** When the front first passed the mouth [s]; 0 when it was in the die before the tilt began. */
  readonly firstFlowTime: number | null;
  readonly filled50Time: number | null;
  readonly filled90Time: number | null;
  /** When 99.5 % of the cavity was full [s]. */
  readonly filledTime: number | null;
  /** From first passing the mouth to filled [s]. */
  readonly fillTime: number | null;
  readonly finalShare: number;
  /** [m³] */
  readonly spilled: number;
  /** Skin folded in per unit width [m]: the sum of the skin contraction. */
  readonly skinFolded: number;
  /** Rank among pours of one casting, 0 = nothing seen; formula in core/watch/foldScore.ts. */
  readonly foldScore: number;
  /** Whether cold metal laps or stops, and the time left before it would; null = heat was not computed. */
  readonly lap: LapFigure | null;
  /** Temperature of the front at the die end [K]. */
  readonly arrivingTemperature: number | null;
  /** Whether a sealed pocket of gas keeps the cavity from filling. */
  readonly gasHeld: boolean;
  /** Where gas had the narrowest way out; null where vents served it, or gas was not counted. */
  readonly narrowestGasWay: NarrowWay | null;
}

export type Outcome =
  | { readonly kind: 'filled and quiet' }
  | { readonly kind: 'quiet, not filled' }
  | { readonly kind: 'out of time' }
  | { readonly kind: 'stopped by the user' }
  | { readonly kind: 'stopped'; readonly reason: string };

/** How the computation went. */
export interface Health {
  readonly steps: number;
  readonly newtonIterations: number;
  readonly searchedSolves: number;
  /** Greatest relative volume drift, spilled metal counted. */
  readonly volumeDrift: number;
  readonly greatestSpeed: number;
}

/** The same pour at the two ends of what is assumed about capillarity, on a coarse mesh: the band of the verdict. */
export interface Band {
  /** No capillary stand at all. */
  readonly gateOff: Pick<Figures, 'firstFlow' | 'peakFrontSpeed' | 'arrivalTime'>;
  /** Contact angle 180°. */
  readonly nonWetting: Pick<Figures, 'firstFlow' | 'peakFrontSpeed' | 'arrivalTime'>;
  readonly meshCells: number;
}

/** One tilt that was tried while a front-led tilt was worked out. */
export interface FrontLedTry {
  readonly tilt: KnotTilt;
  /** Front speed asked for [m/s]. */
  readonly wished: number;
  readonly peakFrontSpeed: number | null;
  /** From the mouth to the die end [s]; null when the front did not get there. */
  readonly homeTime: number | null;
  readonly lap: LapFigure['kind'] | null;
  /** Folds counted. */
  readonly folds: number;
  /** Front speed [m/s] by place from the mouth [m], as in `FrontSpeeds`. */
  readonly place: Float64Array;
  readonly speed: Float64Array;
}

/** How the tilt of a front-led pour was found. */
export interface FrontLed {
  /** The first is the tilt from the level fill alone; the rest are corrections. */
  readonly tries: readonly FrontLedTry[];
  /** Which of them was poured. */
  readonly chosen: number;
}

/** What a machine did as it fell with its metal in it, the metal's weight where it lay at each step. */
export interface MachineFall extends Turned {
  /** What it did that it must not. */
  readonly warnings: readonly MachineWarning[];
}

/** What a pour gave. Series and figures are exact; frames are thinned. */
export interface PourRecord {
  readonly solver: string;
  readonly planHash: string;
  readonly plan: PourPlan;
  readonly outcome: Outcome;
  readonly outline: MeshOutline;
  readonly frames: Frames;
  readonly series: Series;
  readonly frontSpeeds: FrontSpeeds;
  readonly figures: Figures;
  readonly folds: readonly Fold[];
  /** null in preview runs and in runs that stopped early. */
  readonly band: Band | null;
  readonly health: Health;
  /** How the tilt was found; absent when it was given. */
  readonly frontLed?: FrontLed;
  /** How the machine fell; absent when the tilt was given, and in older records. */
  readonly machine?: MachineFall;
}

/** What a coarse run that ends with the front's arrival keeps. */
export interface FrontSketch {
  readonly frontSpeeds: FrontSpeeds;
  /** When the front reached the die end [s]; null when it did not. */
  readonly arrivalTime: number | null;
}

/** What a run says between its beginning and its record. */
export interface Progress {
  readonly time: number;
  /** Share of the run done, 0 to 1, by time. */
  readonly done: number;
  readonly inclination: number;
  readonly filledShare: number;
}
