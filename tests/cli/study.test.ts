import { execFile, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile, cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { fromDegrees } from '$src/core/units';
import { fileNameFrom } from '$src/report/fileName';
import { sampleBook } from '../book/sample';

/** Builds itself first when its sources have changed. */
const COMMAND = fileURLToPath(new URL('../../src/setup/quietpour.js', import.meta.url));
const BUILT = fileURLToPath(new URL('../../dist/quietpour.js', import.meta.url));

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

function command(program: string, words: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(program, words, { maxBuffer: 1e8 }, (failure, out, error) => {
      resolve({ code: typeof failure?.code === 'number' ? failure.code : failure ? -1 : 0, out, error });
    });
  });
}

const quietpour = (...words: string[]): Promise<Ended> => command(process.execPath, [BUILT, ...words]);

/** A machine that cannot start above +50°. */
function withLowMachine(book: Book): Book {
  const cells = book.cells.map((cell) =>
    cell.kind === 'tilt'
      ? { ...cell, tilt: { ...cell.tilt, limits: { ...cell.tilt.limits, highestStart: fromDegrees(50) } } }
      : cell,
  );
  return { ...book, cells };
}

function quickPours(book: Book): Book {
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 0.5 };
  return {
    ...book,
    cells: book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell)),
  };
}

/** A study of 4 × 4 points on a very coarse mesh, around the last pour of the sample book; three parts of it are unequal. */
function studyBook(): Book {
  const sample = quickPours(withLowMachine(sampleBook()));
  const study = newCell('study', sample);
  const pour = sample.cells.findLast(({ kind }) => kind === 'pour')!.id;
  if (study.kind !== 'study') throw new Error('A new study is a study.');
  const axes = [
    { setting: 'tilt.time', from: 1.5, to: 4, points: 4 },
    { setting: 'tilt.start', from: fromDegrees(0), to: fromDegrees(60), points: 4 },
  ];
  return addCell(sample, { ...study, name: 'Window', pour, study: { ...study.study, axes, meshCells: 40 } });
}

let folder = '';
let book = '';
let whole = '';
/** As the page names them: after book and study. */
const NAMED = `${fileNameFrom(`${sampleBook().title} Window`)}-map`;
const FILES = ['csv', 'json', 'svg'].map((ending) => `${NAMED}.${ending}`);
const read = async (place: string): Promise<string[]> =>
  Promise.all(FILES.map((name) => readFile(join(place, name), 'utf8')));
const partsIn = async (place: string): Promise<string[]> =>
  (await readdir(place)).filter((name) => name.endsWith('.part.json')).sort();

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quietpour-study-'));
  book = join(folder, 'study.pourbook.json');
  whole = join(folder, 'whole');
  await writeFile(book, writeBook(studyBook()));
  expect((await command(process.execPath, [COMMAND, 'help'])).code).toBe(0);
  const { code, error } = await quietpour('study', book, '--cell', 'Window', '--out', whole);
  expect([code, error]).toEqual([0, '']);
}, 240_000);
afterAll(() => rm(folder, { recursive: true }));

/** The parts 1 to 3 of 3 in a folder of their own. */
async function threeParts(name: string): Promise<string> {
  const place = join(folder, name);
  for (const part of ['1/3', '2/3', '3/3']) {
    const { code } = await quietpour('study', book, '--out', place, '--shard', part);
    expect(code).toBe(0);
  }
  return place;
}

describe('a study', () => {
  it('is a table with a line for each point, and says why there is no pour', async () => {
    const lines = (await readFile(join(whole, `${NAMED}.csv`), 'utf8')).trim().split('\n');
    expect(lines).toHaveLength(1 + 16);
    expect(lines[0]).toMatch(/^point,tilt_time_s,start_angle_deg,verdict,feeder,/);
    expect((await readdir(whole)).sort()).toEqual(FILES.toSorted());
    expect(lines.at(-1)).toMatch(/past what the machine can do.*above the highest start/);
  });

  it('in parts and merged is the same, byte for byte', async () => {
    const place = await threeParts('parts');
    expect((await quietpour('merge', place)).code).toBe(0);
    expect(await read(place)).toEqual(await read(whole));
  }, 240_000);
});

describe('merge refuses by name', () => {
  let place = '';
  beforeAll(async () => {
    place = join(folder, 'refused');
    await cp(join(folder, 'parts'), place, { recursive: true });
    await Promise.all(FILES.map((name) => rm(join(place, name))));
  });

  it('a missing part', async () => {
    await rm(join(place, 'study-2-of-3.part.json'));
    const { code, error } = await quietpour('merge', place);
    expect(code).toBe(1);
    expect(error).toContain('Part 2 of 3 is missing.');
    expect(error).toContain('--shard 2/3');
    expect(await readdir(place)).not.toContain(`${NAMED}.csv`);
  });

  it('a doubled part', async () => {
    await copyFile(join(place, 'study-1-of-3.part.json'), join(place, 'copy.part.json'));
    const { code, error } = await quietpour('merge', place);
    expect(code).toBe(1);
    expect(error).toContain('“copy.part.json” and “study-1-of-3.part.json”');
  });

  it('a part that is cut short', async () => {
    await writeFile(join(place, 'copy.part.json'), '{"format": "pourstudy part"');
    expect((await quietpour('merge', place)).error).toContain('“copy.part.json” is not a part of a study.');
  });

  it('a folder without any', async () => {
    expect((await quietpour('merge', folder)).code).toBe(1);
  });
});

describe('what is not understood', () => {
  it.each([
    [['study', 'a']],
    [['study', 'a', '--out', 'b', '--shard', '4/3']],
    [['study', 'a', '--out', 'b', '--shard', 'first']],
    [['study', 'a', '--out', 'b', '--json']],
    [['merge']],
    [['merge', 'a', '--cell', 'b']],
  ])('%j is refused', async (words) => {
    expect((await quietpour(...words)).code).toBe(1);
  });
});

const PARALLEL = ['/usr/bin/parallel', '/usr/local/bin/parallel'].find(existsSync);

describe('16 points through GNU parallel, one job killed on the way', () => {
  if (!PARALLEL) {
    it('is left out: GNU parallel is not installed (apt-get install parallel)', () =>
      expect(PARALLEL).toBeUndefined());
    return;
  }

  it('gives the same bytes as the study in one run', async () => {
    const place = join(folder, 'parallel');
    const log = join(folder, 'jobs.log');
    const job = `${process.execPath} ${BUILT} study ${book} --out ${place} --shard {}/4`;
    const engine = spawn(PARALLEL, [
      '--jobs',
      '2',
      '--retries',
      '3',
      '--joblog',
      log,
      job,
      ':::',
      '1',
      '2',
      '3',
      '4',
    ]);
    const ended = new Promise<number | null>((resolve) => engine.once('exit', resolve));
    expect(await killOneJob(engine.pid!)).toBe(true);
    expect(await ended).toBe(0);
    expect(await partsIn(place)).toHaveLength(4);
    expect((await quietpour('merge', place)).code).toBe(0);
    expect(await read(place)).toEqual(await read(whole));
  }, 240_000);
});

/** Kills the first job of that engine as soon as it runs. */
async function killOneJob(engine: number): Promise<boolean> {
  for (let look = 0; look < 200; look++) {
    const job = (await descendants(engine)).find(
      ({ words }) => words.startsWith(process.execPath) && words.includes('--shard'),
    );
    if (job) return process.kill(job.id, 'SIGKILL');
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
}

async function descendants(of: number): Promise<{ readonly id: number; readonly words: string }[]> {
  const { out } = await command('ps', ['-eo', 'pid=,ppid=,args=']);
  const all = out.split('\n').flatMap((line) => {
    const [, id, parent, words] = /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line) ?? [];
    return id ? [{ id: Number(id), parent: Number(parent), words: words! }] : [];
  });
  const family = new Set([of]);
  for (const member of family) for (const one of all) if (one.parent === member) family.add(one.id);
  return all.filter(({ id }) => family.has(id) && id !== of);
}
