import type { Figures, PourRecord } from '$src/core/pour/record';
import { METRIC, type PageUnits } from '$src/core/units';
import { shareAtStart } from './ladledIn';
import { shownSpeed, withUnit } from './measureText';
import { angleText, percentText, secondsText, significant } from './wording';

/** What is read of a pour's figures to say how sure they are; both a record's figures and those of a study's point have it. */
export type HeadlineSource = Pick<
  Figures,
  'peakFrontSpeed' | 'fillTime' | 'shareAboveCritical' | 'foldScore'
> & {
  /** [rad] */
  readonly firstFlow: number | null;
  /** Share of the die that is full before the tilt begins. */
  readonly shareAtStart: number;
  /** How long the place nearest to freezing had left [s]; null = heat was not computed. */
  readonly lap: { readonly margin: number | null } | null;
};

export interface Headline {
  readonly key: string;
  readonly label: string;
  readonly read: (figures: HeadlineSource) => number | null;
  readonly show: (value: number, units: PageUnits) => string;
  /** Said where there is no value. */
  readonly missing: string;
  /** Said instead where metal stood in the die before the tilt began, so that no front came over the mouth. */
  readonly missingInDie?: string;
  /** Differences smaller than this cannot be read off and are no spread [SI]. */
  readonly least: number;
}

/** The figures a founder decides by, in the order they are read. */
export const HEADLINES: readonly Headline[] = [
  {
    key: 'peakFrontSpeed',
    label: 'front speed, peak',
    read: ({ peakFrontSpeed }) => peakFrontSpeed,
    show: (speed, units) => withUnit(shownSpeed(speed, units)),
    missing: 'never in the die',
    missingInDie: 'in the die while ladling',
    least: 0.005,
  },
  {
    key: 'firstFlow',
    label: 'first flow',
    read: ({ firstFlow }) => firstFlow,
    show: (inclination) => angleText(inclination),
    missing: 'no angle',
    missingInDie: 'before the tilt',
    least: 0.004,
  },
  {
    key: 'fillTime',
    label: 'fill time',
    read: ({ fillTime }) => fillTime,
    show: secondsText,
    missing: 'not filled',
    least: 0.01,
  },
  {
    key: 'shareAboveCritical',
    label: 'path over critical',
    read: ({ shareAboveCritical }) => shareAboveCritical,
    show: percentText,
    missing: 'no front',
    missingInDie: 'not measured',
    least: 0.005,
  },
  {
    key: 'foldScore',
    label: 'fold score',
    read: ({ foldScore }) => foldScore,
    show: significant,
    missing: '',
    least: 0.05,
  },
  {
    key: 'lapMargin',
    label: 'left before freezing',
    read: ({ lap }) => (lap && lap.margin !== null && Number.isFinite(lap.margin) ? lap.margin : null),
    show: secondsText,
    missing: 'nowhere near',
    least: 0.01,
  },
];

/** Those that this pour has: nothing is left before freezing where heat was not computed. */
export const headlinesOf = ({ lap }: HeadlineSource): readonly Headline[] =>
  lap ? HEADLINES : HEADLINES.filter(({ key }) => key !== 'lapMargin');

/** The figures of a record as the headlines read them. */
export const headlineSource = (record: PourRecord): HeadlineSource => ({
  ...record.figures,
  shareAtStart: shareAtStart(record),
  firstFlow: record.figures.firstFlow.kind === 'angle' ? record.figures.firstFlow.inclination : null,
});

/** Less than this of the die full at the start is rounding. */
const DRY = 1e-6;

/** Metal stood in the die before the tilt began: no front came over the mouth, though the die may fill. */
export const stoodInDie = ({ firstFlow, fillTime, shareAtStart }: HeadlineSource): boolean =>
  firstFlow === null && (shareAtStart > DRY || fillTime !== null);

/** A figure in words; where there is none, why. */
export function headlineText(
  { read, show, missing, missingInDie }: Headline,
  figures: HeadlineSource,
  units: PageUnits = METRIC,
): string {
  const value = read(figures);
  if (value !== null) return show(value, units);
  return stoodInDie(figures) ? (missingInDie ?? missing) : missing;
}

/** A figure of two runs of one pour that the mesh moves by more than 5 %. */
export interface MeshSpread {
  readonly label: string;
  readonly coarse: string;
  readonly full: string;
  /** Difference over the full run's value; null where one of them has none, or the full one is nought. */
  readonly share: number | null;
}

const TOLD_FROM = 0.05;

/** Where the coarse and the full run of one pour differ by more than 5 %, and by more than can be read off. */
export function meshSpread(
  coarse: HeadlineSource,
  full: HeadlineSource,
  units: PageUnits = METRIC,
): MeshSpread[] {
  return headlinesOf(full).flatMap((headline) => {
    const { label, read, least } = headline;
    const [rough, fine] = [read(coarse), read(full)];
    if (rough === null && fine === null) return [];
    const told = {
      label,
      coarse: headlineText(headline, coarse, units),
      full: headlineText(headline, full, units),
    };
    if (rough === null || fine === null) return [{ ...told, share: null }];
    const off = Math.abs(rough - fine);
    if (off <= TOLD_FROM * Math.abs(fine) || off <= least) return [];
    return [{ ...told, share: fine === 0 ? null : off / Math.abs(fine) }];
  });
}

/** The range of one figure over some runs, in words. */
export function rangeText(
  { show }: Headline,
  values: readonly (number | null)[],
  units: PageUnits = METRIC,
): string {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return 'none to be read';
  const [low, high] = [Math.min(...known), Math.max(...known)].map((value) => show(value, units));
  return low === high ? low! : `${low} to ${high}`;
}
