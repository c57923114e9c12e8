import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { criticalBand } from '../chartWords';
import { escaped } from '../drawing/paper';
import {
  answerSentence,
  firstLookOf,
  type MapAnswer,
  mapAnswer,
  marginWords,
  triedWords,
} from '../study/answer';
import { changeWords } from '../study/changeWords';
import { curveOf } from '../study/curve';
import { feedersOf } from '../study/feeders';
import { axisValue, gridOf } from '../study/grid';
import type { Margin } from '../study/margins';
import type { TriedChange } from '../study/openings';
import { shownNumber, shownQuantity } from '../study/quantities';
import type { PointResult, Region } from '../study/region';
import type { Study } from '../study/study';
import type { NamedAxis, StudyResults } from '../study/studyFile';
import { significant } from '../wording';
import { lineChart } from './lineChart';
import { studyMap } from './studyMap';
import { plainTable } from './table';
import { answer, list, paragraph, said } from './words';

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
  /** All of it is computed. */
  readonly isDone: boolean;
  /** Its pour or its ranges have been changed since. */
  readonly isOld: boolean;
}

/** What a study found: a map with its sentence and margins, or a curve with its figures. `id` is free in the page. */
export function studyPart(kept: KeptStudy, id: string, units: PageUnits): string {
  const { axes, results } = kept;
  const found = axes.length === 2 ? mapAnswer(axes, results) : null;
  if (results.size === 0 || (axes.length === 2 && !found)) return paragraph(NOTHING_POURED, units);
  return [
    warning(kept, units),
    found ? mapOf(kept, found, id, units) : curve(kept, units),
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

function mapOf(kept: KeptStudy, found: MapAnswer, id: string, units: PageUnits): string {
  const { axes, results, setResult, margins, tried, setRegion, isDone, plan, spreads } = kept;
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
  const lines = [
    ...(margins ?? []).map((margin) => marginWords(axes, margin, units)),
    ...(tried ?? []).map((change) =>
      triedWords(axes, changeWords(plan, change.setting, change.value, units), change, units),
    ),
  ];
  const head = margins ? 'Margins of the set point' : 'Changes tried';
  return [
    answer(answerSentence(parts, units), units),
    studyMap({ axes, answer: found, id }, units),
    lines.length === 0 ? '' : `<h3>${head}</h3>${list(lines.map((line) => said(line, units)))}`,
  ].join('\n');
}

function curve({ axes, study, results, plan, isDone }: KeptStudy, units: PageUnits): string {
  const axis = axes[0]!;
  const found = curveOf(axis, study.figure, results, units, isDone);
  const { unit, toShown } = shownQuantity(axis.quantity, units);
  const limit = study.figure === 'peakFrontSpeed' ? criticalBand(plan.liquid.criticalSpeed, units) : null;
  const most = Math.max(limit ? limit.value * 1.4 : 0, ...found.y.filter(Number.isFinite)) * 1.05 || 1;
  const name = unit === '' ? axis.name : `${axis.name}, ${unit}`;
  const title = `${found.name}, ${found.unit}`;
  const chart = lineChart({
    title,
    sentence: found.sentence,
    lines: [{ name: found.name, look: 1, x: found.x, y: found.y }],
    x: { label: name, domain: [toShown(axis.from), toShown(axis.to)], mark: plainMark },
    y: { label: title, domain: [0, most], mark: plainMark },
    limits: limit ? [limit] : [],
  });
  const table = plainTable({
    caption: `${title} by ${axis.name}`,
    columns: [name, title],
    words: 1,
    rows: found.points.map((point, index) => [
      shownNumber(axisValue(axis, point), axis.quantity, units),
      Number.isFinite(found.y[index]!) ? significant(found.y[index]!) : 'no such figure',
    ]),
  });
  return `<p class="verdict">${escaped(found.sentence)}</p>\n${chart}\n${table}`;
}

/** As many figures as a tick of an axis needs. */
const plainMark = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '\u2212');
