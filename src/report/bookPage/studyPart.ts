import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { criticalBand } from '../chartWords';
import { escaped } from '../drawing/paper';
import { evenFigures } from '../evenFigures';
import { plain, type Sentence } from '../sentence';
import { answerSentence, firstLookOf, marginWords, triedWords } from '../study/answer';
import { changeWords } from '../study/changeWords';
import { curveOf } from '../study/curve';
import { feederCell, feedersOf } from '../study/feeders';
import { axisValue, gridOf } from '../study/grid';
import { type MapAnswer, mapAnswer } from '../study/mapAnswer';
import type { Margin } from '../study/margins';
import type { TriedChange } from '../study/openings';
import { markMeanings, pointMark } from '../study/pointMark';
import { shownNumber, shownQuantity } from '../study/quantities';
import { type PointResult, type Region, regionOf } from '../study/region';
import { regionWords } from '../study/regionWords';
import type { Study } from '../study/study';
import type { NamedAxis, StudyResults } from '../study/studyFile';
import { type MarkKind, verdictShape } from '../verdictShape';
import { significant } from '../wording';
import { lineChart } from './lineChart';
import { studyMap } from './studyMap';
import { plainTable } from './table';
import { answer, list, paragraph, said } from './words';

/** A pour of the book on a curve: where it lies in the units shown, and whether it is the one that is varied. */
export interface KeptPour {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly isVaried: boolean;
  readonly meshCells: number;
}

/** A study as far as it was computed. */
export interface KeptStudy {
  readonly study: Study;
  /** The pour it varies, as it was then. */
  readonly plan: PourPlan;
  readonly axes: readonly NamedAxis[];
  readonly results: StudyResults;
  readonly margins: readonly Margin[] | null;
  readonly tried: readonly TriedChange[] | null;
  readonly setRegion: Region | null;
  /** The pour as it is set; null when that was not computed. */
  readonly setResult: PointResult | null;
  /** How far repeats stray on each axis, either way; 0 where that is not known. */
  readonly spreads: readonly number[];
  /** Pours of the book that lie on the axis of a curve, in the units shown; none of a map. */
  readonly pours: readonly KeptPour[];
  /** What the pour itself comes to on its own mesh, where the study calls it otherwise; else empty. */
  readonly onOwnMesh: string;
  /** All of it is computed. */
  readonly isDone: boolean;
  /** Its pour or its ranges have been changed since. */
  readonly isOld: boolean;
}

/** What a study found: a map with its sentence and margins, or a curve with its figures. `id` is free in the page. */
export function studyPart(kept: KeptStudy, id: string, units: PageUnits): string {
  const { axes, results } = kept;
  const found = mapAnswer(axes, results);
  if (!found) return paragraph(NOTHING_POURED, units);
  return [
    warning(kept, units),
    answer(sentenceOf(kept, found, units), units),
    axes.length === 2 ? studyMap({ axes, answer: found, id }, units) : curve(kept, units),
    ranges(kept, units),
    count(kept, units),
  ].join('\n');
}

/** Said in place of a study that has no results. */
export const NOTHING_POURED = 'Nothing of this study had been poured when the page was saved.';

function warning({ isOld, isDone }: KeptStudy, units: PageUnits): string {
  if (isOld)
    return paragraph(
      'Out of date: the pour or the ranges have been changed since this study was poured.',
      units,
    );
  return isDone
    ? ''
    : paragraph('Not finished: this is what had been poured when the page was saved.', units);
}

function count({ study, results }: KeptStudy, units: PageUnits): string {
  const { count: all } = gridOf(study);
  const rest = all > results.size && study.axes.length > 1 ? '; between them the nearest one counts' : '';
  return paragraph(
    `${results.size} of ${all} points computed on ${study.meshCells} mesh cells${rest}.`,
    units,
  );
}

function sentenceOf(kept: KeptStudy, found: MapAnswer, units: PageUnits): Sentence {
  const { axes, results, setResult, margins, tried, setRegion, isDone, spreads, onOwnMesh } = kept;
  const parts = {
    axes,
    answer: found,
    setRegion,
    margins,
    tried,
    isDone,
    spreads,
    firstLook: firstLookOf(found),
    feeders: feedersOf(results, setResult),
  };
  return [...answerSentence(parts, units), plain(onOwnMesh)];
}

/** Margins of the set point, or which changes were tried. */
function ranges({ axes, margins, tried, plan }: KeptStudy, units: PageUnits): string {
  const lines = [
    ...(margins ?? []).map((margin) => marginWords(axes, margin, units)),
    ...(tried ?? []).map((change) =>
      triedWords(axes, changeWords(plan, change.setting, change.value, units), change, units),
    ),
  ];
  const head = margins ? 'Margins of the set point' : 'Changes tried';
  return lines.length === 0 ? '' : `<h3>${head}</h3>${list(lines.map((line) => said(line, units)))}`;
}

function curve({ axes, study, results, plan, isDone, pours }: KeptStudy, units: PageUnits): string {
  const axis = axes[0]!;
  const found = curveOf(axis, study.figure, results, units, isDone);
  const { unit, toShown } = shownQuantity(axis.quantity, units);
  const limit = study.figure === 'peakFrontSpeed' ? criticalBand(plan.liquid.criticalSpeed, units) : null;
  const highest = [...found.y, ...pours.map(({ y }) => y)].filter(Number.isFinite);
  const most = Math.max(limit ? limit.value * 1.4 : 0, ...highest) * 1.05 || 1;
  const name = unit === '' ? axis.name : `${axis.name}, ${unit}`;
  const title = `${found.name}, ${found.unit}`;
  const chart = lineChart({
    title,
    sentence: found.sentence,
    lines: [{ name: found.name, look: 1, x: found.x, y: found.y }],
    x: { label: name, domain: [toShown(axis.from), toShown(axis.to)], mark: plainMark },
    y: { label: title, domain: [0, most], mark: plainMark },
    limits: limit ? [limit] : [],
    marks: [
      ...found.points.map((point, index) => ({
        x: found.x[index]!,
        y: Number.isFinite(found.y[index]!) ? found.y[index]! : 0,
        picture: markPicture(pointMark(results.get(point)!)),
        name: '',
      })),
      ...pours.map(({ x, y, name: pour, isVaried }) => ({
        x,
        y,
        picture: cross(isVaried),
        name: pour,
        isBelow: !isVaried,
      })),
    ],
  });
  const settings = evenFigures(
    found.x,
    found.points.map((point) => shownNumber(axisValue(axis, point), axis.quantity, units)),
  );
  const figures = evenFigures(
    found.y,
    found.y.map((figure) => (Number.isFinite(figure) ? significant(figure) : 'no such figure')),
  );
  const table = plainTable({
    caption: `${title} by ${axis.name}`,
    columns: [name, title, 'the pour', 'feeder'],
    rows: found.points.map((point, index) => [
      settings[index]!,
      figures[index]!,
      regionWords(regionOf(results.get(point)!)),
      feederCell(results.get(point)!),
    ]),
  });
  return `${paragraph(found.sentence, units)}\n${chart}\n${markKey(results.values(), pours)}\n${table}`;
}

const markPicture = (kind: MarkKind): string =>
  `<svg class="point" viewBox="0 0 30 30" aria-hidden="true"><circle class="under" cx="15" cy="15" r="15"/>${verdictShape(
    kind,
  )
    .map(({ d, isFull }) => `<path class="verdict-part${isFull ? ' full' : ''}" d="${d}"/>`)
    .join('')}</svg>`;

const cross = (isVaried: boolean): string =>
  `<svg class="point" viewBox="0 0 30 30" aria-hidden="true"><path class="verdict-part" d="M-6 15H36M15 -6V36${isVaried ? 'M1 15a14 14 0 1 0 28 0a14 14 0 1 0 -28 0' : ''}"/></svg>`;

function markKey(results: Iterable<PointResult>, pours: readonly KeptPour[]): string {
  const items = markMeanings(results).map(({ mark, words }) => `${markPicture(mark)}${escaped(words)}`);
  for (const { name, isVaried, meshCells } of pours)
    items.push(
      `${cross(isVaried)}${escaped(`“${name}”, ${isVaried ? 'the pour that is varied' : 'a pour of the book'}, on ${meshCells} mesh cells`)}`,
    );
  return `<div class="chart"><ul class="key">${items.map((item) => `<li>${item}</li>`).join('')}</ul></div>`;
}

/** As many figures as a tick of an axis needs. */
const plainMark = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '\u2212');
