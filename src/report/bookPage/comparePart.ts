import type { PageUnits } from '$src/core/units';
import {
  fittedSpeedDomain,
  lengthMark,
  placeDomain,
  speedMark,
  speedPlaceLabel,
  speedTitle,
} from '../chartWords';
import { type Compared, compare } from '../compare';
import { criticalLines } from '../criticalLines';
import { figureWithUnit } from '../figures';
import { inUnits } from '../inUnits';
import { plainText } from '../sentence';
import { dieLength, frontSpeedCurve } from '../series';
import { curveIn, speedsIn } from '../seriesIn';
import { lineChart, MOST_LOOKS } from './lineChart';
import { plainTable } from './table';
import { answer, paragraph, reasonList } from './words';

/** Pours side by side: the sentence, what differs, the figures, and the front speeds. Two pours or more. */
export function comparePart(pours: readonly Compared[], units: PageUnits): string {
  const { sentence, reasons, differs, same, figures, verdicts } = compare(pours, units);
  const names = pours.map(({ name }) => name);
  const isPair = pours.length === 2;
  return [
    answer(sentence, units),
    reasonList(reasons, units),
    differs.length === 0
      ? ''
      : plainTable({
          caption: 'What differs in the inputs',
          columns: ['input', ...names],
          rows: differs.map(({ name, texts }) => [name, ...texts]),
        }),
    paragraph(same, units),
    plainTable({
      caption: isPair ? 'Figures' : `Figures, and below each what it differs by from “${names[0]}”`,
      columns: ['figure', ...names, ...(isPair ? ['difference'] : [])],
      words: 1,
      rows: [
        ['verdict', ...verdicts, ...(isPair ? [''] : [])],
        ...figures.map((row) => [
          row.label,
          ...row.figures.map((figure, index) => {
            const difference = row.differences[index]!;
            return isPair || difference === ''
              ? figureWithUnit(figure)
              : `${figureWithUnit(figure)}\n${difference}`;
          }),
          ...(isPair ? [row.differences[1]!] : []),
        ]),
      ],
    }),
    speeds(pours.slice(0, MOST_LOOKS), units, plainText(sentence)),
    pours.length > MOST_LOOKS
      ? paragraph(
          `The chart shows the first ${MOST_LOOKS} of ${pours.length} pours; the tables have all.`,
          units,
        )
      : '',
  ].join('\n');
}

function speeds(pours: readonly Compared[], units: PageUnits, sentence: string): string {
  const records = pours.map(({ record }) => record);
  const longest = Math.max(...records.map(dieLength));
  return lineChart({
    title: speedTitle(units),
    sentence: `Front speed along the die. ${inUnits(sentence, units)}`,
    lines: pours.map(({ name, record }, look) => ({
      name,
      look,
      ...curveIn(speedsIn(frontSpeedCurve(record, 'place'), units), 'x', units),
    })),
    x: {
      label: speedPlaceLabel(records, units),
      domain: placeDomain(longest, units),
      mark: lengthMark(units),
    },
    y: { label: speedTitle(units), domain: fittedSpeedDomain(records, units), mark: speedMark(units) },
    limits: criticalLines(pours, units),
  });
}
