import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell, replaceCell } from '$src/cells/edit';
import type { Book, Cell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { withPourAt } from '$src/cells/pourAt';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { simulate } from '$src/core/pour/simulate';
import { fromDegrees } from '$src/core/units';
import { escaped } from '$src/report/drawing/paper';
import { pourJson } from '$src/report/pourFile';
import { gridOf, valuesAt } from '$src/report/study/grid';
import { mapAnswer } from '$src/report/study/mapAnswer';
import { marginsWithin } from '$src/report/study/mapLine';
import { beyondMachine, marginsOf } from '$src/report/study/margins';
import { namedAxes } from '$src/report/study/namedAxes';
import { planAt, type SettingValues } from '$src/report/study/planAt';
import { pointAt } from '$src/report/study/pointAt';
import { pointResult } from '$src/report/study/pointFigures';
import { type PointResult, type Region, regionOf } from '$src/report/study/region';
import { soundFinding } from '$src/report/study/soundFinding';
import { soundOfPour } from '$src/report/study/soundOfPour';
import { rangeWords } from '$src/report/study/soundRanges';
import type { NamedAxis } from '$src/report/study/studyFile';
import { studyPlan } from '$src/report/study/studyPlan';
import { firstOf, sampleBook } from '../book/sample';
import { thinWallWindow } from '../books/sources/thinWall';
import { planOf } from '../study/samplePlan';

/** The command as people run it: it builds itself first when its sources have changed. */
const COMMAND = fileURLToPath(new URL('../../src/setup/quietpour.js', import.meta.url));
/** What it has built, run directly once it is known to be fresh. */
const BUILT = fileURLToPath(new URL('../../dist/quietpour.js', import.meta.url));
const BUILD_TIME = 120_000;

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

const quietpour = (...words: string[]): Promise<Ended> => command(BUILT, words);

function command(program: string, words: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(process.execPath, [program, ...words], { maxBuffer: 1e8 }, (failure, out, error) => {
      resolve({ code: typeof failure?.code === 'number' ? failure.code : 0, out, error });
    });
  });
}

/** Two pours on a very coarse mesh, looked at shortly after the tilt: what the command does with them depends on neither. */
function quickBook(): Book {
  const sample = sampleBook();
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 0.5 };
  const cells = sample.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  return { ...sample, cells };
}

/** Every point of a study, poured here. */
function resultsOf(base: PourPlan, axes: readonly NamedAxis[]): Map<number, PointResult> {
  const grid = gridOf({ axes });
  return new Map(
    Array.from({ length: grid.count }, (_, point) => {
      const at = pointAt(base, valuesAt(grid, point));
      return [point, 'refused' in at ? at : pointResult(recordFrom(at.plan))];
    }),
  );
}

const recordOf = (book: Book, id: string): PourRecord => recordFrom(planOf(book, id));

function recordFrom(plan: PourPlan): PourRecord {
  const pour = simulate(plan);
  let step = pour.next();
  while (!step.done) step = pour.next();
  return step.value;
}

const book = quickBook();
let folder = '';
const file = async (name: string, text: string): Promise<string> => {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quietpour-'));
  expect((await command(COMMAND, ['help'])).code).toBe(0);
}, BUILD_TIME);
afterAll(() => rm(folder, { recursive: true }));

describe('run', () => {
  it('gives the same record as a run here, as JSON', async () => {
    const { code, out, error } = await quietpour(
      'run',
      await file('sound.pourbook.json', writeBook(book)),
      '--json',
    );
    expect([code, error]).toEqual([0, '']);
    const { pours } = JSON.parse(out);
    expect(pours.map((pour: { name: string }) => pour.name)).toEqual(['Pour', 'Pour 2']);
    expect(pours[0]).toEqual(JSON.parse(JSON.stringify(pourJson('Pour', recordOf(book, 'pour-1')))));
    expect(Object.keys(pours[0].figures)).toContain('peak_front_speed_m_per_s');
    expect(pours[0].series.time_s.length).toBeGreaterThan(100);
  });

  it('prints a table, of one pour when one is named', async () => {
    const path = await file('named.pourbook.json', writeBook(book));
    const { code, out } = await quietpour('run', path, '--cell', 'Pour 2');
    expect(code).toBe(0);
    expect(out).toMatch(/^Hinge arms, trial 1\n/);
    expect(out).toMatch(/front speed, peak +0\.\d\d m\/s\n/);
    expect(out).not.toMatch(/Pour +Pour 2/);
  });

  it('works out a front-led tilt and says how, as text and as JSON', async () => {
    const cell = firstOf(book, 'tilt');
    const { start, limits } = cell.tilt;
    const tilt = {
      kind: 'front-led',
      start,
      end: fromDegrees(-90),
      limits,
      share: 0.5,
      homeWithin: null,
    } as const;
    const path = await file('led.pourbook.json', writeBook(replaceCell(book, { ...cell, tilt })));
    const text = await quietpour('run', path, '--cell', 'Pour');
    expect([text.code, text.error]).toEqual([0, '']);
    expect(text.out).toMatch(/Wanted 0\.\d\d m\/s/);
    expect(text.out).toMatch(/In \w+ stages?: to /);
    expect(text.out).toMatch(/They stray from it by \d\.\d° at most/);
    const { pours } = JSON.parse((await quietpour('run', path, '--cell', 'Pour', '--json')).out);
    const { tries, chosen, stages } = pours[0].front_led;
    expect(tries.length).toBeGreaterThan(0);
    expect(tries[chosen].peak_front_speed_m_per_s).toBe(pours[0].figures.peak_front_speed_m_per_s);
    expect(pours[0].front_led.stages_stray_deg).toBeGreaterThan(0);
    expect(stages.at(-1).to_deg).toBeCloseTo(-90, 3);
  });

  it('takes the pours of a compare', async () => {
    const { out } = await quietpour(
      'run',
      await file('compare.pourbook.json', writeBook(book)),
      '--cell',
      'Compare',
    );
    expect(out).toMatch(/Pour +Pour 2/);
  });

  it('computes nothing of a book that is wrong, and says what is', async () => {
    const tilt = firstOf(book, 'tilt');
    const wrong = replaceCell(book, { ...tilt, tilt: { ...tilt.tilt, start: 3 } });
    const { code, out, error } = await quietpour('run', await file('wrong.pourbook.json', writeBook(wrong)));
    expect([code, out]).toEqual([1, '']);
    expect(error).toContain(
      'Tilt: A start at 171.89° is above the highest start, 75°.\n  book.cells.3.tilt.start: ',
    );
  });

  it('knows which names there are', async () => {
    const { code, error } = await quietpour(
      'run',
      await file('names.pourbook.json', writeBook(book)),
      '--cell',
      'Pour 9',
    );
    expect(code).toBe(1);
    expect(error).toContain('“Pour”, “Pour 2”');
  });
});

describe('check', () => {
  it('says that a book is in order', async () => {
    const { code, out } = await quietpour('check', await file('good.pourbook.json', writeBook(book)));
    expect([code, out]).toEqual([0, '“Hinge arms, trial 1” is in order: 8 cells.\n']);
  });

  it.each([
    ['no file', 'gone.pourbook.json', null, 'There is no file'],
    ['no JSON', 'text.pourbook.json', 'metal', 'The file is not a book file.'],
    [
      'a newer book',
      'newer.pourbook.json',
      writeBook(book).replace('"version": 1', '"version": 2'),
      'version 2',
    ],
  ])('refuses %s', async (_, name, content, message) => {
    const path = content === null ? join(folder, name) : await file(name, content);
    const { code, error } = await quietpour('check', path);
    expect(code).toBe(1);
    expect(error).toContain(message);
  });

  it('names the nearest tilt the machine can do', async () => {
    const cell = firstOf(book, 'tilt');
    const knots = [{ time: 6, inclination: fromDegrees(-80) }];
    const limits = { ...cell.tilt.limits, highestStart: 0 };
    const tilt = { kind: 'drawn', start: fromDegrees(20), limits, knots, origin: '' } as const;
    const path = await file('drawn.pourbook.json', writeBook(replaceCell(book, { ...cell, tilt })));
    const { code, error } = await quietpour('check', path);
    expect(code).toBe(1);
    expect(error).toContain('The nearest the machine can do: drawn, 0.0° to −80.0° in 6.00 s');
  });

  it('lists what is wrong as JSON when asked', async () => {
    const charge = firstOf(book, 'charge');
    const wrong = replaceCell(book, { ...charge, charge: { by: 'mass', mass: -1 } });
    const { code, out } = await quietpour(
      'check',
      await file('json.pourbook.json', writeBook(wrong)),
      '--json',
    );
    expect(code).toBe(1);
    expect(JSON.parse(out).issues).toMatchObject([{ path: 'book.cells.4.charge.mass', cellName: 'Charge' }]);
  });
});

describe('what is not understood', () => {
  it.each([
    [[]],
    [['bake']],
    [['run']],
    [['run', 'a', 'b']],
    [['run', 'a', '--loud']],
    [['check', 'a', '--cell', 'b']],
  ])('%j is refused with the help', async (words) => {
    const { code, error } = await quietpour(...words);
    expect(code).toBe(1);
    expect(error).toContain('quietpour run BOOK');
  });
});

describe('card', () => {
  const book = addCell(quickBook(), { ...newCell('shop card', quickBook()), name: 'Next shift' });

  it('writes one page without a script, with the figures of the run', async () => {
    const path = await file('card.pourbook.json', writeBook(book));
    const page = join(folder, 'card.html');
    const { code, out, error } = await quietpour('card', path, '--out', page);
    expect([code, error]).toEqual([0, '']);
    expect(out).toBe(`Shop card of “Pour 2”.\n${page}\n`);
    const html = await readFile(page, 'utf8');
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).not.toMatch(/<script|<link|src=|url\(['"]?http/);
    const { figures, planHash } = recordOf(book, 'pour-2');
    expect(html).toMatch(new RegExp(`>${figures.peakFrontSpeed!.toFixed(2)} \\([\\d.]+ to [\\d.]+\\) m/s<`));
    expect(html).toContain(planHash.slice(0, 12));
    expect(html).toContain('size: A4 portrait');
  });

  it('takes a pour by name, follows the units of the book, and says what it cannot find', async () => {
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    const path = await file('card-units.pourbook.json', writeBook({ ...book, units }));
    const page = join(folder, 'pour.html');
    expect((await quietpour('card', path, '--cell', 'Pour', '--out', page)).code).toBe(0);
    const html = await readFile(page, 'utf8');
    expect(html).toMatch(/<td class="unit">lb</);
    expect(html).not.toMatch(/<td class="unit">kg</);
    const lost = await quietpour('card', path, '--cell', 'Nobody', '--out', page);
    expect(lost.code).toBe(1);
    expect(lost.error).toMatch(/no one card or pour “Nobody”.*\n.*“Next shift”/s);
    expect((await quietpour('card', path)).error).toMatch(/needs --out/);
  });

  it('says that no study was run, or tells how far settings may stray as the study of the pour finds it', async () => {
    const path = await file('card-no-study.pourbook.json', writeBook(book));
    const page = join(folder, 'studied.html');
    expect((await quietpour('card', path, '--out', page)).code).toBe(0);
    expect(await readFile(page, 'utf8')).toContain('no study of this pour');

    const axes = [
      { setting: 'tilt.time', from: 3, to: 27, points: 5 },
      { setting: 'tilt.start', from: 0, to: fromDegrees(40), points: 5 },
    ];
    // The pour of the 4 mm wall is sound as it is set, on this mesh too.
    const studied: Book = {
      ...thinWallWindow,
      cells: thinWallWindow.cells.flatMap((cell): Cell[] => {
        if (cell.kind === 'pour') return [{ ...cell, computation: { ...cell.computation, meshCells: 40 } }];
        if (cell.kind !== 'study') return [cell];
        return cell.id === 'window'
          ? [{ ...cell, name: 'Window', study: { ...cell.study, axes, meshCells: 40 } }]
          : [];
      }),
    };
    const { code, out } = await quietpour(
      'card',
      await file('card-study.pourbook.json', writeBook(studied)),
      '--out',
      page,
    );
    expect(code).toBe(0);
    expect(out).toMatch(/How far it may stray: “Window”, \d+ pours\./);
    const html = await readFile(page, 'utf8');
    const base = studyPlan(planOf(studied, 'pour'), { axes, meshCells: 40 });
    const regionAt = async (values: SettingValues): Promise<Region> => {
      // What the ladle fills in part is known before it is poured, on a map and here.
      const at = pointAt(base, values);
      return regionOf('refused' in at ? at : pointResult(recordFrom(at.plan)));
    };
    const named = namedAxes(axes, base);
    const at = named.map(({ setPoint }) => setPoint!);
    const isBeyondMachine = beyondMachine(base);
    const setRegion = await regionAt({ 'tilt.time': at[0]!, 'tilt.start': at[1]! });
    const margins =
      setRegion === 'sound' ? await marginsOf({ axes: named, at, regionAt, isBeyondMachine }) : null;
    const told = marginsWithin(margins, named, mapAnswer(named, resultsOf(base, named)));
    const { ranges, without } = soundFinding(1, [{ axes: named, margins: told, setRegion }]);
    expect([setRegion, without]).toEqual(['sound', '']);
    for (const range of ranges) expect(html).toContain(escaped(rangeWords(range)));
    expect(html).not.toContain('how far it may stray');
  });

  it('goes by the study of another pour that differs only in what the study varies, as the page does', async () => {
    const axes = [{ setting: 'tilt.time', from: 6, to: 12, points: 5 }];
    const study = { axes, meshCells: 40 };
    const cells = thinWallWindow.cells.flatMap((cell): Cell[] => {
      if (cell.kind === 'pour') return [{ ...cell, computation: { ...cell.computation, meshCells: 40 } }];
      if (cell.kind !== 'study') return [cell];
      return cell.id === 'window' ? [{ ...cell, name: 'Times', study: { ...cell.study, ...study } }] : [];
    });
    const book: Book = { ...thinWallWindow, cells };
    const base = planOf(book, 'pour');
    const at = planAt(base, { 'tilt.time': 9.6 });
    if (!('plan' in at)) throw new Error('There is no such pour.');
    const opened = withPourAt(book, 'pour', { base, values: { 'tilt.time': 9.6 }, plan: at.plan }, 'so');
    const plan = planOf(opened.book, opened.id);
    const results = resultsOf(studyPlan(base, study), namedAxes(axes, base));
    const known = { plan: base, axes: namedAxes(axes, base), results, margins: null, setRegion: null };
    const { ranges } = soundOfPour(plan, [{ isOwn: false, known, isOld: false }]);
    expect(ranges.length).toBeGreaterThan(0);

    const page = join(folder, 'opened.html');
    const path = await file('card-opened.pourbook.json', writeBook(opened.book));
    const { code, out } = await quietpour('card', path, '--cell', opened.id, '--out', page);
    expect(code).toBe(0);
    expect(out).toContain('“Times”, 5 pours.');
    const html = await readFile(page, 'utf8');
    expect(html).not.toContain('no study of this pour');
    for (const range of ranges) expect(html).toContain(escaped(rangeWords(range)));
  });
});
