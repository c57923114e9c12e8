import { type Feeding, judgeFeeding, WANTED_TIME_RATIO } from '$src/core/heat/afterFill';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { restingParts } from '$src/core/heat/restingParts';
import { FEEDER_EFFICIENCY } from '$src/core/heat/shrinkage';
import { setMetalOf } from '$src/core/heat/thermalMetals';
import type { PourRecord } from '$src/core/pour/record';
import type { Section } from '$src/core/section/section';
import { toCubicCentimetres } from '$src/core/units';
import { ladleMoreText } from './ladleMore';
import { toldApart } from './toldApart';
import type { Reason } from './verdictReasons';
import { capital, fixed, listText, significant } from './wording';

/** Why the feeder of a full die cannot feed it: "the feeder is short of metal", and the figures. */
export interface FeederShortage {
  readonly inShort: string;
  readonly reason: Reason;
}

/**
 * What the feeder lacks to feed a die that has filled; null when it can, when the die is not full, or when heat or the
 * metal's solid is not known.
 */
export function feederShortage(record: PourRecord): FeederShortage | null {
  const { plan, figures } = record;
  const { heat, section, volume } = plan;
  const metal = heat && setMetalOf(heat);
  if (!heat || !metal || figures.filledTime === null) return null;
  const judge = (amount: number) => feedingOf(section, heat, amount, metal.freezingShrinkage);
  const left = volume - figures.spilled;
  return shortageOf(judge(left), () => ladleMoreText(plan, left, judge));
}

/** Whether anything can be said of its feeder: the die is full, and heat and the metal's solid are known. */
export const isFeederJudged = ({ plan: { heat }, figures }: PourRecord): boolean =>
  Boolean(heat && setMetalOf(heat)) && figures.filledTime !== null;

/**
 * The feeder over so much metal left in basin and die [m³], with the metal touching the coat and with a gap that opens;
 * the smaller of the two ratios of time counts, for a gap takes away much of what a thicker coat in the basin gives.
 * Null where nothing stands over the mouth.
 */
export function feedingOf(
  section: Section,
  heat: HeatPlan,
  amount: number,
  shrinkage: number,
): Feeding | null {
  const [touching, gapped] = [false, true].map((opensGap) => {
    const { die, feeder } = restingParts(section, heat, amount, opensGap);
    return feeder && judgeFeeding(heat.freezing, die, feeder, shrinkage, FEEDER_EFFICIENCY.plain);
  });
  return touching && gapped && gapped.timeRatio < touching.timeRatio ? gapped : touching!;
}

const NO_FEEDER =
  'No metal is left over the mouth under the roof: nothing makes up for what the casting loses as it freezes.';

const LASTS_LONGER = 'A feeder coat there or a higher roof over the mouth keeps it liquid longer.';

/** `more` tells how much more to ladle; it takes a search, and most who ask for a shortage do not read it. */
function shortageOf(feeding: Feeding | null, more: () => string): FeederShortage | null {
  if (!feeding)
    return {
      inShort: 'no metal is left to feed it',
      reason: told('no feeder', () => `${NO_FEEDER} ${more()}`),
    };
  const { enough } = feeding;
  const lacks = [
    ...(enough.metal ? [] : ['is short of metal']),
    ...(enough.time ? [] : ['freezes too soon']),
  ];
  if (lacks.length === 0) return null;
  const line = () => {
    const remedies = [...(enough.metal ? [] : [more()]), ...(enough.time ? [] : [LASTS_LONGER])];
    return [
      `${lackWords(feeding)}.`,
      ...remedies,
      'The casting may draw or shrink inside. An estimate.',
    ].join(' ');
  };
  return {
    inShort: `the feeder ${listText(lacks)}`,
    reason: told(`feeder ${enough.metal ? 'freezes too soon' : 'short of metal'}`, line),
  };
}

/** A reason whose line is worked out once, when it is read. */
function told(name: string, line: () => string): Reason {
  let text: string | null = null;
  return {
    name,
    get line() {
      text ??= line();
      return text;
    },
  };
}

/** What is lacking first, and what there is enough of after it. */
export function lackWords(feeding: Feeding): string {
  const { enough } = feeding;
  const metal = `it lacks ${lackingText(feeding)} cm³ of metal: ${metalWords(feeding)}`;
  const time = `it freezes too soon: it lasts ${timeWords(feeding)}`;
  if (enough.time) return capital(`${metal}; it lasts long enough, ${timeWords(feeding)}`);
  if (enough.metal) return capital(`${time}; it has metal enough: ${metalWords(feeding)}`);
  return capital(`${metal}; and ${time}`);
}

/** The difference of the two volumes as they are shown beside it. */
function lackingText({ supply, demand }: Feeding): string {
  const shown = toldApart(supply, demand);
  const [given, asked] = shown.map(Number);
  const lacking = fixed(asked! - given!, shown.some((text) => text.includes('.')) ? 1 : 0);
  return Number(lacking) === 0 ? 'under 0.1' : lacking;
}

/** "1.0 × the die's time, 1.2 wanted"; a digit finer where a ratio too small would read as what is wanted. */
export function timeWords({ timeRatio, enough }: Feeding): string {
  const wanted = fixed(WANTED_TIME_RATIO, 1);
  const decimals = !enough.time && fixed(timeRatio, 1) === wanted ? 2 : 1;
  return `${fixed(timeRatio, decimals)} × the die's time, ${fixed(WANTED_TIME_RATIO, decimals)} wanted`;
}

/** "it can give 20 cm³, die and feeder draw 26 cm³ as they cool and freeze, 6 cm³ of it the feeder itself". */
export function metalWords({ supply, demand, ownDemand }: Feeding): string {
  const [given, asked] = toldApart(supply, demand);
  const own = significant(toCubicCentimetres(ownDemand));
  return `it can give ${given} cm³, die and feeder draw ${asked} cm³ as they cool and freeze, ${own} cm³ of it the feeder itself`;
}
