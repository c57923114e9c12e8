import type { PageUnits } from '$src/core/units';
import type { Compared } from './compare';
import { inUnits } from './inUnits';
import { bold, named, plain, type Sentence } from './sentence';
import { MESH_SPREAD, type SpeedCall, speedCall } from './speedCall';
import { type VerdictKind, verdict } from './verdict';
import { capital, countText, fixed, percentText, speedText } from './wording';

interface Ranked extends Compared {
  readonly peak: number;
  /** The peak in metric words, a digit finer where two would read the same in the page's units. */
  readonly text: string;
  /** "65 % of its limit", where pours have limits of their own. */
  readonly ofLimit: string | null;
}

const CALLS: Readonly<Record<SpeedCall, string>> = {
  under: 'under critical',
  'too close to call': 'too close to critical to call',
  over: 'over critical',
};

const callOf = ({ record }: Compared): string => CALLS[speedCall(record) ?? 'under'];

/** Share of its own limit that a front reaches: what tells pours of different metals apart. */
const shareOfLimit = ({ peak, record }: Pick<Ranked, 'peak' | 'record'>): number =>
  peak / record.plan.liquid.criticalSpeed;

/** Limits that differ by more than rounding. */
const APART = 1.005;

function haveOneLimit(pours: readonly Compared[]): boolean {
  const limits = pours.map(({ record }) => record.plan.liquid.criticalSpeed);
  return Math.max(...limits) <= APART * Math.min(...limits);
}

const foldsOf = ({ record }: Compared): string => countText(record.folds.length, 'fold');

/** A number that stands alone: three, none. */
const numberOf = (count: number): string => (count === 0 ? 'none' : countText(count, '', '').trim());

/** Pours whose front ran in the die, slowest first; of several metals, the furthest under its limit first. */
function ranked(pours: readonly Compared[], units: PageUnits): Ranked[] {
  const isOne = haveOneLimit(pours);
  const order = pours
    .flatMap((pour) => {
      const peak = pour.record.figures.peakFrontSpeed;
      if (peak === null) return [];
      const limit = pour.record.plan.liquid.criticalSpeed;
      return [{ ...pour, peak, ofLimit: isOne ? null : `${percentText(peak / limit)} of its limit` }];
    })
    .toSorted((a, b) => (isOne ? a.peak - b.peak : shareOfLimit(a) - shareOfLimit(b)));
  const shown = order.map(({ peak }) => inUnits(speedText(peak), units));
  const isFine = new Set(shown).size === shown.length;
  return order.map((pour) => ({
    ...pour,
    text: isFine ? speedText(pour.peak) : `${fixed(pour.peak, 3)} m/s`,
  }));
}

/** Slowest and quickest, with their folds against each other. */
function pair(slow: Ranked, quick: Ranked): Sentence {
  const folds = `${foldsOf(slow)} against ${numberOf(quick.record.folds.length)}.`;
  return [...runOf(slow, true), plain('; '), ...runOf(quick, false), plain(`. ${capital(folds)}`)];
}

/** "Staged runs at up to 0.16 m/s, under critical". */
const runOf = (pour: Ranked, isFirst: boolean): Sentence => [
  named(pour.name),
  plain(isFirst ? ' runs at up to ' : ' at '),
  bold(pour.text),
  plain(`, ${pour.ofLimit ?? callOf(pour)}`),
];

/** More pours than these are told by the slowest, the quickest and what lies between. */
const MOST_TOLD = 4;

/** Every pour with its folds, slowest first. */
function each(order: readonly Ranked[]): Sentence {
  const told = order.length <= MOST_TOLD ? order : [order[0]!, order.at(-1)!];
  const between = order.length <= MOST_TOLD ? [] : order.slice(1, -1);
  return [
    ...told.flatMap((pour, index) => [
      ...(index === 0 ? [] : [plain('; ')]),
      ...runOf(pour, index === 0),
      plain(`, with ${index === 0 ? foldsOf(pour) : numberOf(pour.record.folds.length)}`),
    ]),
    plain('.'),
    ...betweenThem(between),
  ];
}

function betweenThem(between: readonly Ranked[]): Sentence {
  if (between.length === 0) return [];
  const counts = between.map(({ record }) => record.folds.length);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  const range = least === most ? '' : `${numberOf(least)} to `;
  return [
    plain(
      ` The other ${numberOf(between.length)} lie between them, with ${range}${countText(most, 'fold')}.`,
    ),
  ];
}

/** More names than these are no sentence; the table has them. */
const MOST_NAMED = 6;

/** Verdicts that say by themselves that the die is not full. */
const TELLS_UNFILLED: ReadonlySet<VerdictKind> = new Set(['not filled', 'gas held', 'misrun']);

function unfilled(pours: readonly Compared[], isVerdictTold: boolean): Sentence {
  const all = pours.filter(({ record }) => record.figures.filledTime === null);
  const short =
    isVerdictTold && all.length < pours.length
      ? all.filter(({ record }) => !TELLS_UNFILLED.has(verdict(record).kind))
      : all;
  if (short.length === 0) return [];
  if (short.length === pours.length) return [plain(pours.length === 2 ? ' Neither fills.' : ' None fills.')];
  if (short.length > MOST_NAMED) return [plain(` ${short.length} of ${pours.length} do not fill.`)];
  return [plain(' '), ...names(short), plain(short.length === 1 ? ' does not fill.' : ' do not fill.')];
}

function names(pours: readonly Compared[]): Sentence {
  const joint = (index: number): string => (index === pours.length - 1 ? ' and ' : ', ');
  return pours.flatMap(({ name }, index) => [...(index === 0 ? [] : [plain(joint(index))]), named(name)]);
}

/** Pours in which no metal runs have no place in the order of speeds, and are told besides. */
function unmoved(pours: readonly Compared[]): Sentence {
  const still = pours.filter(({ record }) => record.figures.peakFrontSpeed === null);
  if (still.length === 0) return [];
  if (still.length > MOST_NAMED)
    return [plain(` In ${still.length} of ${pours.length} no metal runs in the die.`)];
  return [plain(' In '), ...names(still), plain(' no metal runs in the die.')];
}

const VERDICTS: Readonly<Record<VerdictKind, string>> = {
  sound: 'is sound',
  'not judged': 'is not judged',
  'near the limit': 'is near the limit',
  'folds film': 'folds film',
  laps: 'laps',
  misrun: 'misruns',
  'gas held': 'is held up by gas',
  'not filled': 'does not fill',
  spills: 'spills metal over a rim',
  stopped: 'stopped early',
};

/** Nothing is called sound whose feeder is short. */
function verdictWords({ record }: Compared): string {
  const { kind, shortage } = verdict(record);
  return kind === 'sound' && shortage !== null ? `fills quietly, but ${shortage}` : VERDICTS[kind];
}

/** What decides between pours comes first: their verdicts, where they differ. More than can be named are told by the table. */
function verdictsOf(pours: readonly Compared[]): Sentence {
  const words = pours.map(verdictWords);
  if (new Set(words).size === 1 || pours.length > MOST_TOLD) return [];
  const told = pours.flatMap(({ name }, index) => [
    ...(index === 0 ? [] : [plain('; ')]),
    named(name),
    plain(` ${words[index]!}`),
  ]);
  return [...told, plain('. ')];
}

/** Two or more pours: their verdicts where they differ, then how their fronts ran. */
export const compareSentence = (pours: readonly Compared[], units: PageUnits): Sentence => [
  ...verdictsOf(pours),
  ...frontSentence(pours, units),
];

/** How far apart peaks lie that are too close to call, in a figure that no unit rounds away. */
function apartWords(slow: number, quick: number): string {
  const share = slow > 0 ? (100 * (quick - slow)) / slow : 0;
  return share < 0.5 ? 'less than 1 %' : `${fixed(share, 0)} %`;
}

/** Peaks inside the spread of the mesh: "0.28 m/s, 2 %"; of several metals, by the share of their limits. Null where they lie apart. */
function closeWords(slow: Ranked, quick: Ranked): string | null {
  const [from, to] =
    slow.ofLimit === null ? [slow.peak, quick.peak] : [shareOfLimit(slow), shareOfLimit(quick)];
  if (to > from * (1 + MESH_SPREAD)) return null;
  return `${quick.ofLimit?.replace('its limit', 'their limits') ?? quick.text}, ${apartWords(from, to)}`;
}

/** One sentence on two or more pours: their fronts from slowest to quickest, their folds, and who does not fill. */
function frontSentence(pours: readonly Compared[], units: PageUnits): Sentence {
  const order = ranked(pours, units);
  const [slow, quick] = [order[0], order.at(-1)];
  if (!slow || !quick) return [plain('In none of these pours does metal run in the die.')];
  if (order.length === 1) return [plain('Only in '), named(slow.name), plain(' does metal run in the die.')];
  const rest = [...unmoved(pours), ...unfilled(pours, verdictsOf(pours).length > 0)];
  const close = closeWords(slow, quick);
  if (close)
    return [
      bold('Front speeds are too close to call.'),
      plain(` They peak at up to ${close} apart.`),
      ...rest,
    ];
  return [...(order.length === 2 ? pair(slow, quick) : each(order)), ...rest];
}
