import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Issue } from '$src/core/issue';
import type { PointResult } from '$src/report/study/region';
import { type StudyHead, type StudyResults, studyCsv, studyJson } from '$src/report/study/studyFile';
import { studyFileName } from '$src/report/study/studyFileName';
import { studySvg } from '$src/report/study/studySvg';
import { pointsOf, type Shard } from './studyPoints';

/** One part of a study as it lies in its folder. */
export interface ShardFile {
  readonly format: 'pourstudy part';
  readonly shard: Shard;
  readonly head: StudyHead;
  readonly points: readonly (readonly [point: number, result: PointResult])[];
}

const ENDING = '.part.json';

export const shardName = ({ number, of }: Shard): string => `study-${number}-of-${of}${ENDING}`;

/** Table, JSON and, of a map, a picture, named after book and study. */
export async function writeStudy(folder: string, head: StudyHead, results: StudyResults): Promise<string[]> {
  const picture = studySvg(head, results);
  const named = studyFileName(head);
  const files: [string, string][] = [
    [`${named}.csv`, studyCsv(head, results)],
    [`${named}.json`, studyJson(head, results)],
    ...(picture ? [[`${named}.svg`, picture] as [string, string]] : []),
  ];
  for (const [name, text] of files) await writeWhole(folder, name, text);
  return files.map(([name]) => join(folder, name));
}

export async function writeShard(
  folder: string,
  head: StudyHead,
  shard: Shard,
  results: StudyResults,
): Promise<string> {
  const file: ShardFile = { format: 'pourstudy part', shard, head, points: [...results] };
  await writeWhole(folder, shardName(shard), `${JSON.stringify(file)}\n`);
  return join(folder, shardName(shard));
}

/** A job that is killed leaves no half file: the name appears when all of it is written. */
async function writeWhole(folder: string, name: string, text: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  const draft = join(folder, `.${name}.${process.pid}.draft`);
  await writeFile(draft, text);
  await rename(draft, join(folder, name));
}

export interface Merged {
  readonly head: StudyHead;
  readonly results: StudyResults;
}

interface NamedShard extends ShardFile {
  readonly name: string;
}

/** All parts of a study put together; refused by name when one is missing, doubled, broken or of another study. */
export async function mergeFolder(folder: string): Promise<Merged | { readonly issues: readonly Issue[] }> {
  const shards: NamedShard[] = [];
  const issues: Issue[] = [];
  for (const name of await shardNames(folder)) {
    const shard = await readShard(folder, name);
    if (shard) shards.push({ ...shard, name });
    else
      issues.push({
        path: name,
        message: `“${name}” is not a part of a study.`,
        remedy: 'Take it out, or compute that part again.',
      });
  }
  issues.push(...strangers(shards), ...wrongCount(folder, shards));
  if (issues.length > 0) return { issues };
  const points = shards.flatMap((shard) => shard.points).toSorted(([a], [b]) => a - b);
  return { head: shards[0]!.head, results: new Map(points) };
}

async function shardNames(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).filter((name) => name.endsWith(ENDING) && !name.startsWith('.')).sort();
  } catch {
    return [];
  }
}

async function readShard(folder: string, name: string): Promise<ShardFile | null> {
  try {
    const file = JSON.parse(await readFile(join(folder, name), 'utf8')) as ShardFile;
    const numbers = file.points.map(([point]) => point).sort((a, b) => a - b);
    const isWhole = JSON.stringify(numbers) === JSON.stringify(pointsOf(file, file.shard));
    return file.format === 'pourstudy part' && isWhole ? file : null;
  } catch {
    return null;
  }
}

/** Parts whose study or whose division is another than that of the first. */
function strangers(shards: readonly NamedShard[]): Issue[] {
  const [first] = shards;
  if (!first) return [];
  const kin = ({ head, shard }: ShardFile): string => JSON.stringify([head, shard.of]);
  return shards
    .filter((shard) => kin(shard) !== kin(first))
    .map(({ name }) => ({
      path: name,
      message: `“${name}” belongs to another study than “${first.name}”, or to another division of it.`,
      remedy: 'Keep the parts of one study in a folder of their own.',
    }));
}

function wrongCount(folder: string, shards: readonly NamedShard[]): Issue[] {
  const of = shards[0]?.shard.of;
  if (of === undefined) {
    const message = `There is no part of a study in “${folder}”.`;
    return [{ path: folder, message, remedy: 'Give the folder named with --out.' }];
  }
  const numbers = Array.from({ length: of }, (_, index) => index + 1);
  return numbers.flatMap((number): Issue[] => {
    const same = shards.filter(({ shard }) => shard.of === of && shard.number === number);
    if (same.length === 1) return [];
    const path = shardName({ number, of });
    if (same.length === 0)
      return [
        {
          path,
          message: `Part ${number} of ${of} is missing.`,
          remedy: `Compute it with --shard ${number}/${of}.`,
        },
      ];
    const names = same.map(({ name }) => `“${name}”`).join(' and ');
    return [
      {
        path,
        message: `Part ${number} of ${of} is there ${same.length} times: ${names}.`,
        remedy: 'Keep one of them.',
      },
    ];
  });
}
