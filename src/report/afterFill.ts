import { type Feeding, freezePart } from '$src/core/heat/afterFill';
import { COMMON_DWELL, type Ejection, earliestEjection } from '$src/core/heat/ejection';
import type { HeatPlan, SetMetal } from '$src/core/heat/heatPlan';
import { type RestingParts, restingParts } from '$src/core/heat/restingParts';
import { setMetalOf } from '$src/core/heat/thermalMetals';
import type { PourRecord } from '$src/core/pour/record';
import { feedingOf, metalWords, timeWords } from './feederShortage';
import type { KeyFigure } from './keyFigures';
import { bold, plain, type Sentence } from './sentence';
import { fixed } from './wording';

/** What happens once the die is full: figures for people, and when the die may be opened. */
export interface AfterFill {
  readonly figures: readonly Omit<KeyFigure, 'unit'>[];
  readonly ejection: Ejection;
}

/** What the two times of a span are, and what they are not for. */
export const OPENING_CAUTION: Sentence = [
  plain(
    'Two times: with the metal touching the coat, and with a gap of 0.1 mm opening as it sets (assumed). ',
  ),
  bold('Never open a die on a simulated time alone:'),
  plain(
    ' a feeder still liquid inside runs out. Ask a competent person, and shorten a dwell in small steps on real castings only.',
  ),
];

/** Freezing time [s] with the metal touching the coat all along, and with a gap that opens. */
interface Span {
  readonly name: string;
  readonly touching: number;
  readonly gapped: number;
  /** Power of the modulus that the shorter time follows: 1 where the coat alone holds the heat, 2 where the metal does. */
  readonly power: number;
}

/** Over this power the time is short by about as much; said in core/heat/afterFill.ts. */
const LINEAR = 1.1;

const ALUMINIUM = ['A356', 'AlSi12'];

const isFull = ({ figures }: PourRecord): boolean => figures.filledTime !== null;

/**
 * Freezing after the fill. Null where heat was not computed, the metal's solid is not known or the die is not full.
 * @param provenDwell time the die stayed closed on good castings [s]; null = none
 */
export function afterFill(record: PourRecord, provenDwell: number | null): AfterFill | null {
  const { heat, section, volume } = record.plan;
  const metal = heat && setMetalOf(heat);
  if (!heat || !metal || !isFull(record)) return null;
  const left = volume - record.figures.spilled;
  const touching = restingParts(section, heat, left, false);
  const gapped = restingParts(section, heat, left, true);
  const spans = spansOf(heat, metal, touching, gapped);
  // The last of them, and not by its name: a region of the die may be called feeder as well.
  const feeder = touching.feeder ? spans.at(-1) : undefined;
  const die = spans.filter((span) => span !== feeder);
  const slowest = die.reduce((a, b) => (b.gapped > a.gapped ? b : a));
  const times = spans.map((span) => span.gapped);
  const ejection = earliestEjection(times, provenDwell, ALUMINIUM.includes(metal.base));
  return {
    ejection,
    figures: [
      spanFigure(
        'freezing_die_s',
        'thickest part of the die',
        slowest,
        `${slowest.name}, all solid${shortOf(slowest)}`,
      ),
      feederFigure(feeder, feedingOf(section, heat, left, metal.freezingShrinkage)),
      closedFigure(ejection),
    ],
  };
}

function spansOf(heat: HeatPlan, metal: SetMetal, a: RestingParts, b: RestingParts): Span[] {
  const timesOf = (parts: RestingParts) =>
    [...parts.die, ...(parts.feeder ? [parts.feeder] : [])].map((part) =>
      freezePart(heat.freezing, part, metal.solidConductivity),
    );
  const gapped = timesOf(b);
  return timesOf(a).map(({ name, time, power }, i) => ({
    name,
    touching: time,
    gapped: gapped[i]!.time,
    power,
  }));
}

/** Where the metal itself holds heat back beside its coat, the shorter time is too short. */
const shortOf = ({ power }: Span): string =>
  power > LINEAR ? '; the first time is rather longer, for the metal itself holds heat back here' : '';

function spanFigure(key: string, label: string, { touching, gapped }: Span, note: string) {
  const text = Number.isFinite(gapped) ? `${fixed(touching, 0)}–${fixed(gapped, 0)} s` : 'never: die too hot';
  return { key, label, value: gapped, text, note };
}

function feederFigure(feeder: Span | undefined, feeding: Feeding | null): Omit<KeyFigure, 'unit'> {
  const label = 'feeder, under the roof';
  if (!feeder || !feeding)
    return {
      key: 'freezing_feeder_s',
      label,
      value: null,
      text: 'none',
      note: 'no metal left over the mouth',
    };
  const lack = feeding.enough.metal ? '' : 'too little metal: ';
  const note = `${timeWords(feeding)}; ${lack}${metalWords(feeding)}`;
  return spanFigure('freezing_feeder_s', label, feeder, note);
}

function closedFigure(ejection: Ejection): Omit<KeyFigure, 'unit'> {
  const { earliest, because } = ejection;
  const { shortest, longest, mark } = COMMON_DWELL;
  const common = ejection.withinCommon === null ? '' : `; usual ${shortest} to ${longest} s (${mark})`;
  return {
    key: 'earliest_opening_s',
    label: 'keep the die closed',
    value: earliest,
    text: Number.isFinite(earliest) ? `${fixed(Math.ceil(earliest), 0)} s at least` : 'unknown',
    note: `${because}${common}`,
  };
}
