import type { Compared } from './compare';
import { bold, named, plain, type Sentence } from './sentence';
import { MESH_SPREAD, type SpeedCall, speedCall } from './speedCall';
import { countText, speedText } from './wording';

interface Ranked extends Compared {
  readonly peak: number;
}

const CALLS: Readonly<Record<SpeedCall, string>> = {
  under: 'under critical',
  'too close to call': 'too close to critical to call',
  over: 'over critical',
};

const callOf = ({ record }: Compared): string => CALLS[speedCall(record) ?? 'under'];

const foldsOf = ({ record }: Compared): string => countText(record.folds.length, 'fold');

/** Pours whose front ran in the die, slowest first. */
function ranked(pours: readonly Compared[]): Ranked[] {
  return pours
    .flatMap((pour) => {
      const peak = pour.record.figures.peakFrontSpeed;
      return peak === null ? [] : [{ ...pour, peak }];
    })
    .toSorted((a, b) => a.peak - b.peak);
}

function extremes(slow: Ranked, quick: Ranked): Sentence {
  const start: Sentence = [
    named(slow.name),
    plain(' runs at up to '),
    bold(speedText(slow.peak)),
    plain(`, ${callOf(slow)}; `),
    named(quick.name),
    plain(' at '),
    bold(speedText(quick.peak)),
    plain(`, ${callOf(quick)}. `),
  ];
  const folds = `${foldsOf(slow)} against ${countText(quick.record.folds.length, '', '').trim()}.`;
  return [...start, plain(folds[0]!.toUpperCase() + folds.slice(1))];
}

/** More names than these are no sentence; the table has them. */
const MOST_NAMED = 6;

function unfilled(pours: readonly Compared[]): Sentence {
  const short = pours.filter(({ record }) => record.figures.filledTime === null);
  if (short.length === 0) return [];
  if (short.length === pours.length) return [plain(pours.length === 2 ? ' Neither fills.' : ' None fills.')];
  if (short.length > MOST_NAMED) return [plain(` ${short.length} of ${pours.length} do not fill.`)];
  const joint = (index: number): string => (index === 0 ? ' ' : index === short.length - 1 ? ' and ' : ', ');
  return [
    ...short.flatMap(({ name }, index) => [plain(joint(index)), named(name)]),
    plain(short.length === 1 ? ' does not fill.' : ' do not fill.'),
  ];
}

/** One sentence on two or more pours: slowest against quickest front, their folds, and who does not fill. */
export function compareSentence(pours: readonly Compared[]): Sentence {
  const order = ranked(pours);
  const [slow, quick] = [order[0], order.at(-1)];
  if (!slow || !quick) return [plain('In none of these pours does metal run in the die.')];
  if (order.length === 1) return [plain('Only in '), named(slow.name), plain(' does metal run in the die.')];
  if (quick.peak <= slow.peak * (1 + MESH_SPREAD))
    return [
      bold('Too close to call.'),
      plain(` All fronts peak within ${speedText(slow.peak)} to ${speedText(quick.peak)}.`),
      ...unfilled(pours),
    ];
  return [...extremes(slow, quick), ...unfilled(pours)];
}
