import { type InputWords, isAlike } from './inputWord';
import type { Reason } from './verdictReasons';
import { countText, listText } from './wording';

/** An input of pours that are set side by side. */
export interface InputOfAll {
  readonly name: string;
  readonly group: InputWords['group'];
  readonly isAside: boolean;
  /** One per pour, in order. */
  readonly all: readonly InputWords[];
}

/** Inputs that differ: those that are told, and those that read alike to a tenth of a degree. */
export interface Differing {
  readonly told: readonly InputOfAll[];
  readonly unseen: readonly InputOfAll[];
}

interface Named {
  readonly name: string;
}

/** A thing by which pours differ, as a founder counts: another metal is one, and so is another way of turning the die. */
interface Thing {
  readonly name: string;
  readonly inputs: readonly InputOfAll[];
  /** Named by its parts where it has several, since no one of them can be credited alone; a metal is one metal. */
  readonly hasParts: boolean;
}

/** So many values of the metal are no change of one of them, but another metal. */
const OTHER_METAL = 4;
const OTHER_TILT = 2;

function thingsThatDiffer(inputs: readonly InputOfAll[]): Thing[] {
  const gathered = new Set<InputOfAll>();
  const together = (name: string, parts: readonly InputOfAll[], least: number): Thing[] => {
    if (parts.length < least) return [];
    for (const part of parts) gathered.add(part);
    return [{ name, inputs: parts, hasParts: name === 'tilt' }];
  };
  const metal = together(
    'metal',
    inputs.filter(({ group }) => group === 'metal'),
    OTHER_METAL,
  );
  const tilt = together('tilt', inputs.filter(isOfTilt), OTHER_TILT);
  const alone = inputs
    .filter((input) => !gathered.has(input))
    .map((input) => ({ name: input.name, inputs: [input], hasParts: false }));
  const placeOf = (thing: Thing): number => inputs.indexOf(thing.inputs[0]!);
  return [...metal, ...tilt, ...alone].toSorted((a, b) => placeOf(a) - placeOf(b));
}

const isOfTilt = ({ all }: InputOfAll): boolean => all.some((words) => words.isOfTilt);

const differsFromFirst = ({ inputs }: Thing, pour: number): boolean =>
  inputs.some((input) => isOtherThanFirst(input, pour));

const isOtherThanFirst = ({ all }: InputOfAll, pour: number): boolean => !isAlike(all[pour]!, all[0]!);

/** The thing, or the one part of it by which this pour differs. */
function nameIn({ name, inputs, hasParts }: Thing, pour: number): string {
  const parts = hasParts ? inputs.filter((input) => isOtherThanFirst(input, pour)) : [];
  return parts.length === 1 ? parts[0]!.name : name;
}

/** The parts of a tilt, each as it is called beside it. */
const partName = ({ name }: InputOfAll): string =>
  name === 'tilt' ? 'how it turns' : name.replace(' of the tilt', '');

/** How far the comparison can be trusted to show the effect of one thing. */
export function creditReason({ told, unseen }: Differing, pours: readonly Named[]): Reason {
  const things = thingsThatDiffer(told.filter(({ isAside }) => !isAside));
  const asides = listText(told.filter(({ isAside }) => isAside).map(({ name }) => name));
  // Where the whole tilt is another, its end is none that was meant to be the same.
  const finer = listText(
    unseen
      .filter((input) => !(isOfTilt(input) && things.some(({ inputs }) => inputs.some(isOfTilt))))
      .map(({ name }) => name),
  );
  if (things.length === 0 && finer !== '')
    return {
      name: 'nothing differs by a tenth of a degree',
      line: `Only the ${finer}, by less than that; where metal folds, even so little can move a figure.`,
    };
  if (told.length === 0)
    return { name: 'nothing differs', line: 'The inputs are the same; so must the figures be.' };
  if (things.length === 0)
    return {
      name: 'nothing differs that decides a pour',
      line: `Only ${asides}: the figures must be the same.`,
    };
  const { name, line } = creditOf(things, pours);
  const beside = [
    ...(asides === '' ? [] : [` Beside it, and deciding no figure: ${asides}.`]),
    ...(finer === '' ? [] : [` Beside it, by less than a tenth of a degree: ${finer}.`]),
  ];
  return { name, line: `${line}${beside.join('')}` };
}

function creditOf(things: readonly Thing[], pours: readonly Named[]): Reason {
  const [only] = things;
  if (things.length === 1 && !isPartByPart(only!, pours.length))
    return { name: 'one thing differs', line: onlyLine(only!) };
  const changes = pours
    .slice(1)
    .map((_, index) => things.filter((thing) => differsFromFirst(thing, index + 1)));
  if (changes.every(({ length }) => length <= 1))
    return {
      name: 'one thing at a time',
      line: `Against “${pours[0]!.name}” each differs by one thing at most: ${listText(changes.flatMap(([one], index) => (one ? `“${pours[index + 1]!.name}” by the ${nameIn(one, index + 1)}` : [])))}.`,
    };
  return {
    name: `${countText(things.length, 'thing')} differ`,
    line: `${listText(things.map(({ name }) => name))}: no one of them can be credited alone.`,
  };
}

/** Several pours may each have another part of it changed, and no more: then each part has its own pour. */
const isPartByPart = ({ inputs, hasParts }: Thing, pours: number): boolean =>
  hasParts &&
  Array.from({ length: pours - 1 }, (_, index) => index + 1).every(
    (pour) => inputs.filter((input) => isOtherThanFirst(input, pour)).length <= 1,
  );

function onlyLine({ name, inputs, hasParts }: Thing): string {
  const line = `Only the ${name}: what changes, changes by it.`;
  return hasParts
    ? `${line} Its parts, ${listText(inputs.map(partName))}, are one choice: none can be credited alone.`
    : line;
}
