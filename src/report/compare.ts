import type { PourRecord } from '$src/core/pour/record';
import { METRIC, type PageUnits } from '$src/core/units';
import { compareSentence } from './compareSentence';
import { creditReason, type InputOfAll } from './creditReason';
import { differenceText } from './difference';
import { type FigureRow, figureRows, figuresOfPours } from './figures';
import { type InputWords, isAlike } from './inputWord';
import { inputWords } from './inputWords';
import { figureIn } from './inUnits';
import type { Sentence } from './sentence';
import { verdict } from './verdict';
import type { Reason } from './verdictReasons';
import { listText } from './wording';

/** A pour that takes part in a comparison. The first one is the reference. */
export interface Compared {
  readonly name: string;
  readonly record: PourRecord;
  /** What its metal is called; absent where that is not known. */
  readonly metal?: string;
}

export interface InputRow {
  readonly name: string;
  /** One per pour, in order. */
  readonly texts: readonly string[];
}

export interface ComparedFigure {
  readonly key: string;
  readonly label: string;
  readonly figures: readonly FigureRow[];
  /** From the first pour, one per pour; empty for the first. */
  readonly differences: readonly string[];
}

export interface Comparison {
  readonly sentence: Sentence;
  readonly reasons: readonly Reason[];
  readonly differs: readonly InputRow[];
  /** "Same in all: metal, charge, end angle." */
  readonly same: string;
  readonly figures: readonly ComparedFigure[];
  /** One per pour: "Sound", "Folds film". */
  readonly verdicts: readonly string[];
}

/** Figures in the comparison's table; the rest are in the command line's table and the exports. */
const SHOWN: readonly string[] = [
  'first_flow_deg',
  'peak_front_speed_m_per_s',
  'share_above_critical_percent',
  'mouth_to_end_s',
  'fill_time_s',
  'final_share_percent',
  'skin_folded_mm',
  'spilled_cm3',
  'arriving_temperature_C',
  'lap_margin_s',
  'folds_heavy',
  'folds_marked',
  'folds_slight',
  'folds_borderline',
];

function inputsSideBySide(pours: readonly Compared[], units: PageUnits): InputOfAll[] {
  const columns = pours.map(({ record }) => inputWords(record.plan, units));
  return namedInOrder(columns).map(({ name, group }) => {
    const all = columns.map((column) => column.find((words) => words.name === name) ?? without(name, group));
    return { name, group, isAside: all.every(({ isAside }) => isAside), all };
  });
}

/** An input that this kind of pour has none of, e.g. a smoothing of a tilt that was measured. */
const without = (name: string, group: InputWords['group']): InputWords => ({
  name,
  group,
  text: '–',
  decides: null,
  isAside: true,
});

/** Every name once, group by group: pours of other kinds of tilt have other inputs. */
function namedInOrder(columns: readonly (readonly InputWords[])[]): InputWords[] {
  const first = new Map<string, InputWords>();
  for (const words of columns.flat()) if (!first.has(words.name)) first.set(words.name, words);
  const groups = [...new Set(columns[0]!.map(({ group }) => group))];
  return [...first.values()].toSorted((a, b) => groups.indexOf(a.group) - groups.indexOf(b.group));
}

const equal = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

const isUnseen = ({ all }: InputOfAll): boolean =>
  all.every(({ isToTenths, text }) => isToTenths && text === all[0]!.text);

const isSame = ({ all }: InputOfAll): boolean => all.every((words) => isAlike(words, all[0]!));

/** What is the same, by its name: "vents", or "vents from the die end"; where only some keep to the end, those from the mouth are told too. */
function sameName({ name, all }: InputOfAll): string {
  const [first] = all;
  if (!first?.fromEnd || all.every(({ decides }) => equal(decides, first.decides))) return name;
  const isFromEnd = all.every(({ fromEnd }) => equal(fromEnd?.decides, first.fromEnd?.decides));
  return isFromEnd ? first.fromEnd.name : `${name} from mouth or die end`;
}

/** Words too coarse to show a difference say that there is one rather than repeat themselves. */
function differingTexts({ all, group }: InputOfAll): string[] {
  const texts = all.map(({ text }) => text);
  if (new Set(texts).size > 1) return texts;
  const [first] = all;
  if (all.every(({ decides }) => typeof decides === 'number'))
    return all.map(({ text, decides }) => `${text}${besideFirst(Number(decides) - Number(first!.decides))}`);
  const kinds = [...new Set(all.map(({ decides }) => JSON.stringify(decides)))];
  const word = group === 'section' || group === 'tilt' ? 'shape' : 'kind';
  return all.map(({ text, decides }) => `${text}, ${word} ${kinds.indexOf(JSON.stringify(decides)) + 1}`);
}

const besideFirst = (more: number): string =>
  more === 0 ? '' : more > 0 ? ', a little higher' : ', a little lower';

/** Whole groups by their name, single inputs of a group that differs elsewhere by theirs. */
function sameText(inputs: readonly InputOfAll[]): string {
  const groups = [...new Set(inputs.map(({ group }) => group))];
  const names = groups.flatMap((group) => {
    const ofGroup = inputs.filter((input) => input.group === group);
    const isShownSame = (input: InputOfAll) => isSame(input) || isUnseen(input);
    return ofGroup.every(isShownSame) ? [group] : ofGroup.filter(isShownSame).map(sameName);
  });
  return names.length === 0 ? 'Nothing is the same.' : `Same in all: ${listText(names)}.`;
}

/** A verdict in its own few words. */
const verdictWords = ({ record }: Compared): string => verdict(record).sentence[0]!.text.replace(/\.$/, '');

/** Two metals of different liquidus: which of them arrives warmer says nothing. */
const freezeAlike = (one: Compared, other: Compared): boolean =>
  one.record.plan.heat?.freezing.liquidus === other.record.plan.heat?.freezing.liquidus;

function figuresSideBySide(pours: readonly Compared[], units: PageUnits): ComparedFigure[] {
  const columns = pours.map(({ record }) => figureRows(record).map((figure) => figureIn(figure, units)));
  return figuresOfPours(columns)
    .filter(({ key }) => SHOWN.includes(key))
    .map(({ key, label, figures }) => ({
      key,
      label,
      figures,
      differences: figures.map((figure, pour) => {
        const isMeant = key !== 'arriving_temperature_C' || freezeAlike(pours[0]!, pours[pour]!);
        return pour === 0 || !isMeant ? '' : differenceText(figures[0]!, figure);
      }),
    }));
}

/** Two or more pours side by side: what differs in the inputs first, then the figures. */
export function compare(pours: readonly Compared[], units: PageUnits = METRIC): Comparison {
  if (pours.length === 0) throw new Error('compare: no pours');
  const inputs = inputsSideBySide(pours, units);
  const differing = inputs.filter((input) => !isSame(input));
  const told = differing.filter((input) => !isUnseen(input));
  return {
    sentence: compareSentence(pours, units),
    reasons: [creditReason({ told, unseen: differing.filter(isUnseen) }, pours)],
    differs: told.map((input) => ({ name: input.name, texts: differingTexts(input) })),
    same: sameText(inputs),
    figures: figuresSideBySide(pours, units),
    verdicts: pours.map(verdictWords),
  };
}
