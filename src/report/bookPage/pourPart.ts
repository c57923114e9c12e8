import type { PourRecord } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';
import { fromDegrees, METRIC, type PageUnits } from '$src/core/units';
import { afterFill, OPENING_CAUTION } from '../afterFill';
import { pathOf } from '../drawing/paper';
import { type Steel, steelAround } from '../drawing/steel';
import { filmMoments } from '../filmMoments';
import { BORDERLINE, foldSizeText } from '../foldSizeText';
import { figureIn, inUnits } from '../inUnits';
import { keyFigures } from '../keyFigures';
import { numberedFolds } from '../numberedFolds';
import { unusualHeat } from '../unusualHeat';
import { verdict } from '../verdict';
import { angleText, placeText, secondsText } from '../wording';
import { type Place, type Replay, replayOf } from './replay';
import { speedChart } from './speedChart';
import { plainTable } from './table';
import { answer, reasonList, sentenceOf } from './words';

/** Longest reach of the drawing from the pivot [px]. */
const REACH = 300;

/**
 * A pour of the page: verdict, replay, figures, what comes after the fill, and folds. `id` is free in the page.
 * @param provenDwell time the die stayed closed on good castings [s]; null = none
 */
export function pourPart(
  record: PourRecord,
  id: string,
  units: PageUnits = METRIC,
  provenDwell: number | null = null,
): string {
  const { section } = record.plan;
  const steel = steelAround(section);
  const reach = Math.max(
    ...steel.corners.map(({ x, y }) => Math.hypot(x - section.pivot.x, y - section.pivot.y)),
  );
  const scale = REACH / reach;
  const place: Place = ({ x, y }) => ({ x: (x - section.pivot.x) * scale, y: (section.pivot.y - y) * scale });
  const { sentence, reasons } = verdict(record);
  const speeds = speedChart(record, units);
  const replay = replayOf(record, place, units, speeds?.markAt);
  return [
    answer(sentence, units),
    reasonList(reasons, units),
    figure(replay, {
      id,
      steel,
      place,
      box: boxOf(replay, steel, place),
      opensAt: filmMoments(record)[1] ?? 0,
      chart: speeds?.markup ?? '',
    }),
    figures(record, units),
    filled(record, units, provenDwell),
    folds(record, units),
  ].join('\n');
}

interface Drawn {
  readonly id: string;
  readonly steel: Steel;
  readonly place: Place;
  readonly box: string;
  /** [s] */
  readonly opensAt: number;
  /** Chart of front speeds as markup; its marker goes with the replay. */
  readonly chart: string;
}

function figure(replay: Replay, { id, steel, place, box, opensAt, chart }: Drawn): string {
  const block = (points: readonly Point[]) =>
    `<path class="steel" fill="url(#${id}-hatch)" d="${pathOf(points.map(place), true)}"/>`;
  // No end of script can stand in the data: every < in it is written as its number.
  const data = JSON.stringify(replay).replaceAll('<', '\\u003c');
  return `<figure data-replay>
<svg viewBox="${box}" role="img" aria-label="The section as it turns, with its metal">
<defs><pattern id="${id}-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M1 0V7"/></pattern></defs>
<g data-part="body">${[steel.shell, steel.floorBlock, ...steel.roofBlocks].map(block).join('')}
<path class="metal" data-part="metal"/><path class="skin" data-part="skin"/><path class="front" data-part="front" visibility="hidden" d="M0 2v16m-5 -11l5 -7l5 7"/></g></svg>
<div class="hand"><button type="button" data-part="play">Play</button><input type="range" data-part="time" aria-label="Time of the pour" min="0" max="${replay.duration}" step="0.01" value="${opensAt}"><output data-part="words"></output></div>
${chart}
<script type="application/json">${data}</script>
</figure>`;
}

/** A box that holds the body at every inclination it passes. */
function boxOf({ pictures }: Replay, { corners }: Steel, place: Place): string {
  const spots = corners.map(place);
  const turned = pictures.flatMap(({ turn }) => {
    const [cos, sin] = [Math.cos(fromDegrees(turn)), Math.sin(fromDegrees(turn))];
    return spots.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
  });
  const [left, top] = [Math.min(...turned.map(({ x }) => x)), Math.min(...turned.map(({ y }) => y))];
  const [right, foot] = [Math.max(...turned.map(({ x }) => x)), Math.max(...turned.map(({ y }) => y))];
  return [left - 8, top - 8, right - left + 16, foot - top + 16].map((value) => value.toFixed(0)).join(' ');
}

function figures(record: PourRecord, units: PageUnits): string {
  const rows = keyFigures(record)
    .map((figure) => figureIn(figure, units))
    .map(({ label, text, unit, value, note }) => [
      label,
      value !== null && unit !== '°' ? `${text} ${unit}`.trim() : text,
      inUnits(note, units),
    ]);
  return plainTable({ caption: 'Figures', columns: ['figure', 'value', 'note'], rows, narrow: 'note' });
}

function filled(record: PourRecord, units: PageUnits, provenDwell: number | null): string {
  const unusual = unusualHeat(record.plan, units)
    .map(({ line }) => `<p>${line}</p>\n`)
    .join('');
  const after = afterFill(record, provenDwell);
  if (!after) return unusual;
  const rows = after.figures.map(({ label, text, note }) => [label, text, inUnits(note, units)]);
  const table = plainTable({
    caption: 'After the fill',
    columns: ['figure', 'value', 'note'],
    rows,
    narrow: 'note',
  });
  return `${unusual}${table}\n<p>${sentenceOf(OPENING_CAUTION, units)}</p>`;
}

function folds(record: PourRecord, units: PageUnits): string {
  const rows = numberedFolds(record).map((fold) => [
    String(fold.number),
    fold.kind,
    foldSizeText(fold),
    secondsText(fold.time),
    angleText(fold.inclination),
    inUnits(placeText(fold.place), units),
    inUnits(`${fold.cause} ${fold.cure}`, units),
  ]);
  if (rows.length === 0) return '<p>No surface folding event was found.</p>';
  const columns = ['no.', 'fold', 'size', 'time', 'inclination', 'place', 'cause, and the usual cure'];
  const table = plainTable({ caption: 'Surface folding events', columns, rows, narrow: 'run' });
  return record.folds.every(({ isClear }) => isClear) ? table : `${table}<p>${BORDERLINE}</p>`;
}
