import { METALS } from '$src/core/metal/metals';
import { DEFAULT_COMPUTATION } from '$src/core/pour/plan';
import { FIRST_SIZE } from '$src/core/section/firstSize';
import { flushBasin } from '$src/core/section/shapes';
import { nearestTilt } from '$src/core/tilt/nearestTilt';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import type { MachineLimits, Tilt } from '$src/core/tilt/tilt';
import { fromDegrees, METRIC } from '$src/core/units';
import { firstCharge } from './firstCharge';
import { firstQuestion } from './guessQuestion';
import type { Book, Cell, CellId, CellKind } from './kinds';
import { metalName } from './metalName';
import { freeId, freeName } from './names';
import { wholeSection } from './wholeLengths';
import { windowFor } from './windowFor';

/** What a study is called until somebody names it, by how many settings it varies. */
export const STUDY_NAMES = { one: 'Curve', two: 'Pour window' } as const;

const NAMES: Readonly<Record<CellKind, string>> = {
  note: 'Note',
  section: 'Section',
  metal: metalName(METALS[0]!),
  charge: 'Charge',
  tilt: 'Tilt',
  pour: 'Pour',
  compare: 'Compare',
  study: STUDY_NAMES.two,
  castings: 'Castings log',
  guess: 'Guess first',
  'shop card': 'Shop card',
};

/** Of a new tilt [°/s]: slow enough that the front of a small die comes home quietly, quick enough that it comes warm. Our choice. */
const FIRST_RATE = 8;

/** Pours that a new comparison takes: the last ones, as many as are told apart at a glance. */
const MOST_COMPARED = 4;

/**
 * A cell to start from, for that place in the book. It takes the nearest cell above of each kind it needs, else the
 * nearest below, so that a new charge, tilt or pour works at once, and a new tilt the machine of the nearest; where
 * there is none the reference is null and the cell says so. A study takes the only pour of the book, or asks for one.
 */
export function newCell(kind: CellKind, book: Book, place: number = book.cells.length): Cell {
  const nearest = (wanted: CellKind): CellId | null => nearestOf(book, wanted, place);
  const base = { id: freeId(book, kind), name: freeName(book, NAMES[kind]), folded: false };
  const section = nearest('section');
  const metal = nearest('metal');
  const tilt = nearest('tilt');
  switch (kind) {
    case 'note':
      return { ...base, kind, text: '' };
    case 'section':
      return {
        ...base,
        kind,
        section: wholeSection(flushBasin(FIRST_SIZE), (book.units ?? METRIC).length),
        drawnWith: null,
      };
    case 'metal':
      return { ...base, kind, metal: METALS[0]! };
    case 'charge': {
      const charge = { ...base, kind, section, metal, tilt };
      return { ...charge, charge: firstCharge(charge, book) };
    }
    case 'tilt':
      return { ...base, kind, tilt: steadyTilt(limitsOf(book, tilt)) };
    case 'pour':
      return {
        ...base,
        kind,
        section,
        metal,
        charge: nearest('charge'),
        tilt,
        computation: DEFAULT_COMPUTATION,
      };
    case 'compare':
      return { ...base, kind, pours: pourIds(book).slice(-MOST_COMPARED), stepBy: 'inclination' };
    case 'study':
      return { ...base, kind, pour: onlyOf(book, 'pour'), study: windowFor(book, onlyOf(book, 'pour')) };
    case 'shop card':
      return { ...base, kind, pour: nearest('pour'), date: '', remark: '' };
    case 'castings':
      return { ...base, kind, castings: [], counted: 'fold', against: 'front speed' };
    case 'guess':
      return {
        ...base,
        kind,
        ...UNANSWERED,
        pours: [nearest('pour')].filter((id) => id !== null),
        ask: 'front speed',
        question: firstQuestion('front speed'),
      };
  }
}

const UNANSWERED = { drawn: [], picked: null, given: false, hides: true } as const;

function nearestOf(book: Book, kind: CellKind, place: number): CellId | null {
  const isMeant = (cell: Cell): boolean => cell.kind === kind;
  const above = book.cells.slice(0, place).findLast(isMeant);
  return (above ?? book.cells.slice(place).find(isMeant))?.id ?? null;
}

/** A study is hundreds of pours: which pour they vary is asked where there is a choice. */
function onlyOf(book: Book, kind: CellKind): CellId | null {
  const all = book.cells.filter((cell) => cell.kind === kind);
  return all.length === 1 ? all[0]!.id : null;
}

function pourIds(book: Book): CellId[] {
  return book.cells.filter((cell) => cell.kind === 'pour').map((cell) => cell.id);
}

/** A shop mostly has one machine, so a new tilt is turned by the one of the tilt beside it. */
function limitsOf(book: Book, tilt: CellId | null): MachineLimits {
  const found = book.cells.find(({ id }) => id === tilt);
  return found?.kind === 'tilt' ? found.tilt.limits : DEFAULT_LIMITS;
}

function steadyTilt(limits: MachineLimits): Tilt {
  return nearestTilt({
    kind: 'steady',
    start: fromDegrees(30),
    end: fromDegrees(-90),
    rate: fromDegrees(FIRST_RATE),
    smoothing: 0.3,
    limits,
  });
}
