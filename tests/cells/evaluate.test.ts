import { describe, expect, it } from 'vitest';
import { copyCell, deleteCell, moveCell, renameCell, replaceCell } from '$src/cells/edit';
import { type ChargeValue, type Evaluation, evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellKind, ChargeBy } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { cavityVolume } from '$src/core/section/cavity';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';

const book = sampleBook();
const charge = firstOf(book, 'charge');
const pour = firstOf(book, 'pour');

function of(changed: Book, cell: Cell): Evaluation {
  return evaluateBook(changed).get(cell.id)!;
}
function chargeOf(by: ChargeBy, changed: Book = book): ChargeValue {
  const evaluation = of(replaceCell(changed, { ...charge, charge: by }), charge);
  if (evaluation.state !== 'ready' || !('charge' in evaluation))
    throw new Error(`charge is ${evaluation.state}`);
  return evaluation.charge;
}
function issuePaths(evaluation: Evaluation): string[] {
  return evaluation.state === 'wrong input'
    ? evaluation.issues.map((issue) => issue.path)
    : [evaluation.state];
}

describe('a book in order', () => {
  it('is ready, and its pours need a run', () => {
    const states = book.cells.map((cell) => [cell.kind, of(book, cell).state]);
    expect(Object.fromEntries(states)).toEqual({
      note: 'ready',
      section: 'ready',
      metal: 'ready',
      tilt: 'ready',
      charge: 'ready',
      pour: 'needs a run',
      compare: 'ready',
    });
  });

  it('leaves a charge the very same while a tilt only turns otherwise between its ends', () => {
    const cell = firstOf(book, 'tilt');
    const turned = (part: object) => replaceCell(book, { ...cell, tilt: { ...cell.tilt, ...part } } as Cell);
    expect(of(turned({ smoothing: 0.31 }), charge)).toBe(of(book, charge));
    expect(of(turned({ start: cell.tilt.start - 0.01 }), charge)).not.toBe(of(book, charge));
  });

  it('makes the plan of a pour from what it takes', () => {
    const evaluation = of(book, pour);
    if (evaluation.state !== 'needs a run') throw new Error(evaluation.state);
    expect(evaluation.plan.section).toBe(firstOf(book, 'section').section);
    expect(evaluation.plan.tilt).toBe(firstOf(book, 'tilt').tilt);
    expect(evaluation.plan.volume).toBe(chargeOf(charge.charge).volume);
    expect(evaluation.planHash).toMatch(/^[0-9a-f]{64}$/);
  });
});

describe('a charge', () => {
  it('by head fills the cavity and the feeder over it', () => {
    const value = chargeOf({ by: 'head', head: fromMillimetres(30) });
    const section = firstOf(book, 'section').section;
    // At −90° the feeder is 30 mm high and 20 mm by 90 mm across (the section's own numbers).
    expect(value.volume).toBeCloseTo(cavityVolume(section) + 0.03 * 0.02 * 0.09, 12);
    expect(value.mass).toBeCloseTo(value.volume * firstOf(book, 'metal').metal.density.value, 12);
  });

  it('gives the other two whichever is given', () => {
    const byHead = chargeOf({ by: 'head', head: fromMillimetres(25) });
    const byMass = chargeOf({ by: 'mass', mass: byHead.mass });
    const byLevel = chargeOf({ by: 'fill level', fromLip: byHead.fromLip! });
    for (const value of [byMass, byLevel]) {
      expect(value.volume / byHead.volume).toBeCloseTo(1, 7);
      expect(value.head).toBeCloseTo(0.025, 6);
      expect(value.fromLip).toBeCloseTo(byHead.fromLip!, 7);
    }
    expect(byHead.startInclination).toBeCloseTo(fromDegrees(30), 14);
    expect(byHead.endInclination).toBeCloseTo(fromDegrees(-90), 14);
  });

  it('keeps exactly the number that was given', () => {
    expect(chargeOf({ by: 'mass', mass: 0.612 }).mass).toBe(0.612);
    expect(chargeOf({ by: 'head', head: 0.0123 }).head).toBe(0.0123);
    expect(chargeOf({ by: 'fill level', fromLip: -0.0042 }).fromLip).toBe(-0.0042);
  });

  it.each([
    ['no mass', { by: 'mass', mass: 0 }, 'charge.mass'],
    ['a mass below nought', { by: 'mass', mass: -1 }, 'charge.mass'],
    ['a mass that is no number', { by: 'mass', mass: Number.NaN }, 'charge.mass'],
    ['more than the die holds', { by: 'mass', mass: 50 }, 'charge.mass'],
    ['a level under the floor', { by: 'fill level', fromLip: -1 }, 'charge.fromLip'],
    ['a head over the rim', { by: 'head', head: 1 }, 'charge.head'],
  ] satisfies [string, ChargeBy, string][])('refuses %s', (_, by, path) => {
    expect(issuePaths(of(replaceCell(book, { ...charge, charge: by }), charge))).toEqual([path]);
  });

  it('by mass stays that mass when it is poured in another metal', () => {
    const bronze = { ...newCell('metal', book), name: 'Bronze' } as Extract<Cell, { kind: 'metal' }>;
    const heavy = {
      ...bronze,
      metal: { ...bronze.metal, density: { ...bronze.metal.density, value: 6700 } },
    };
    const byMass = replaceCell(book, { ...charge, charge: { by: 'mass', mass: 0.5 } });
    const changed = replaceCell({ ...byMass, cells: [...byMass.cells, heavy] }, { ...pour, metal: heavy.id });
    const evaluation = of(changed, pour);
    expect(evaluation.state === 'needs a run' && evaluation.plan.volume).toBeCloseTo(0.5 / 6700, 12);
  });
});

describe('what is wrong is told where it is, and blocks what needs it', () => {
  const wrongTilt = replaceCell(book, {
    ...firstOf(book, 'tilt'),
    tilt: { ...firstOf(book, 'tilt').tilt, start: fromDegrees(80) },
  } as Cell);

  it('names the cell that blocks', () => {
    expect(issuePaths(of(wrongTilt, firstOf(book, 'tilt')))).toEqual(['start']);
    expect(of(wrongTilt, charge)).toEqual({
      state: 'blocked',
      by: ['tilt-1'],
      reason: 'Waits for “Tilt” to be put right.',
    });
    expect(of(wrongTilt, pour)).toMatchObject({ state: 'blocked', by: ['charge-1', 'tilt-1'] });
    expect(of(wrongTilt, firstOf(book, 'compare')).state).toBe('blocked');
    expect(of(wrongTilt, firstOf(book, 'section')).state).toBe('ready');
  });

  it('asks for what is not chosen', () => {
    const changed = replaceCell(book, { ...pour, metal: null, tilt: 'gone' });
    expect(issuePaths(of(changed, pour))).toEqual(['metal', 'tilt']);
  });

  it('does not take a cell of the wrong kind', () => {
    expect(issuePaths(of(replaceCell(book, { ...pour, tilt: 'note-1' }), pour))).toEqual(['tilt']);
  });

  it('asks a compare for two different pours', () => {
    const compare = firstOf(book, 'compare');
    for (const pours of [[], ['pour-1'], ['pour-1', 'pour-1']]) {
      expect(issuePaths(of(replaceCell(book, { ...compare, pours }), compare))).toEqual(['pours']);
    }
  });

  it.each([19, 2001, 100.5, Number.NaN])('refuses %d mesh cells', (meshCells) => {
    const changed = replaceCell(book, { ...pour, computation: { ...pour.computation, meshCells } });
    expect(issuePaths(of(changed, pour))).toEqual(['computation.meshCells']);
  });
});

describe('nothing is worked out twice', () => {
  const sameAsBefore = (before: Book, after: Book): string[] => {
    const [old, now] = [evaluateBook(before), evaluateBook(after)];
    return after.cells.filter((cell) => now.get(cell.id) === old.get(cell.id)).map((cell) => cell.id);
  };
  const allIds = book.cells.map((cell) => cell.id);

  it('gives the same objects for the same book', () => {
    expect(sameAsBefore(book, { ...book, title: 'Another' })).toEqual(allIds);
  });

  it('gives the same objects after a rename, a move or a fold', () => {
    expect(sameAsBefore(book, renameCell(book, 'section-1', 'Arm'))).toEqual(allIds);
    expect(sameAsBefore(book, moveCell(book, 'section-1', 2)).sort()).toEqual([...allIds].sort());
    expect(sameAsBefore(book, replaceCell(book, { ...firstOf(book, 'section'), folded: true }))).toEqual(
      allIds,
    );
  });

  it('works out only what a change reaches', () => {
    const changed = replaceCell(book, { ...charge, charge: { by: 'mass', mass: 0.55 } });
    const reached = ['charge-1', 'pour-1', 'pour-2'];
    expect(sameAsBefore(book, changed)).toEqual(allIds.filter((id) => !reached.includes(id)));
  });

  it('gives the same objects for what is wrong, too', () => {
    const wrong = replaceCell(book, { ...pour, metal: null });
    expect(sameAsBefore(wrong, { ...wrong })).toEqual(allIds);
  });

  it('answers from the inputs alone: a book made anew gives equal answers', () => {
    const anew = structuredClone(book);
    expect(evaluateBook(anew)).toEqual(evaluateBook(book));
  });
});

describe('changes of the book leave the rest in order', () => {
  it('a deleted cell is asked for where it was taken', () => {
    const changed = deleteCell(book, 'tilt-1');
    expect(issuePaths(of(changed, pour))).toEqual(['tilt']);
    expect(issuePaths(of(deleteCell(book, 'pour-2'), firstOf(book, 'compare')))).toEqual(['pours']);
  });

  it('a copied cell works at once', () => {
    const changed = copyCell(book, 'pour-1');
    const copy = changed.cells.find((cell) => cell.name === 'Pour copy')!;
    expect(of(changed, copy)).toEqual(of(book, pour));
  });

  it('a new cell of every kind works in a book that has what it needs', () => {
    for (const kind of new Set(book.cells.map((cell): CellKind => cell.kind))) {
      const cell = newCell(kind, book);
      const changed = { ...book, cells: [...book.cells, cell] };
      expect(['ready', 'needs a run']).toContain(of(changed, cell).state);
    }
  });

  it('a new cell takes the nearest cell above its place, else the nearest below', () => {
    const two = copyCell(book, 'pour-1');
    const second = two.cells.findIndex((cell) => cell.name === 'Pour copy');
    const taken = (place: number) =>
      firstOf({ ...two, cells: [newCell('shop card', two, place)] }, 'shop card').pour;
    expect(taken(second)).toBe('pour-1');
    expect(taken(second + 1)).toBe(two.cells[second]!.id);
    expect(taken(0)).toBe('pour-1');
  });

  it('a new study takes the only pour of the book, and asks where there are more', () => {
    const pourOf = (given: Book) => firstOf({ ...given, cells: [newCell('study', given)] }, 'study').pour;
    const one = { ...book, cells: book.cells.filter(({ kind, id }) => kind !== 'pour' || id === 'pour-1') };
    expect(pourOf(one)).toBe('pour-1');
    expect(pourOf(book)).toBeNull();
    const study = newCell('study', book);
    expect(issuePaths(of({ ...book, cells: [...book.cells, study] }, study))).toEqual(['pour']);
  });

  it('a new pour in an empty book says what it lacks', () => {
    const cell = newCell('pour', { title: '', casting: '', cells: [] });
    expect(issuePaths(of({ title: '', casting: '', cells: [cell] }, cell))).toEqual([
      'section',
      'metal',
      'charge',
      'tilt',
    ]);
  });
});
