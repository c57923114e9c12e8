import { describe, expect, test } from 'vitest';
import { checkSection } from '$src/core/section/checkSection';
import { hingeArm } from '$src/core/section/shapes';
import { METRIC, type PageUnits } from '$src/core/units';
import { figureRows } from '$src/report/figures';
import { inputWords } from '$src/report/inputWords';
import { figureIn, inUnits } from '$src/report/inUnits';
import { keyFigures } from '$src/report/keyFigures';
import { seriesCsv } from '$src/report/pourFile';
import { columnsIn, curveIn, speedsIn } from '$src/report/seriesIn';
import { sourceIn } from '$src/report/sourceIn';
import { shownDistance, shownValue } from '$src/report/study/quantities';
import { verdict } from '$src/report/verdict';
import { inventedRecord } from './inventedRecord';

const US: PageUnits = { length: 'in', mass: 'lb', temperature: 'degF' };
const IN_METRIC = /\d\)? (?:mm|cm|kg|°C|m\/s)/;

describe('texts in the units of the page', () => {
  test.each([
    ['it can give 11 cm³, the die draws 20 cm³', 'it can give 0.7 in³, the die draws 1.2 in³'],
    ['Peak at 142 mm from the mouth.', 'Peak at 5.59 in from the mouth.'],
    ['Type a width from 1 to 2000 mm.', 'Type a width from 0.04 to 78.74 in.'],
    ['Type a number from -2000 to 2000 mm.', 'Type a number from \u221278.74 to 78.74 in.'],
    ['between 260 and 275.8 mm', 'between 10.24 and 10.858 in'],
    ['200 \u00d7 30 mm', '7.87 \u00d7 1.18 in'],
    ['at 10, 20 and 30 mm', 'at 0.39, 0.79 and 1.18 in'],
    ['Give 0 to 5000 kg.', 'Give 0 to 11023 lb.'],
    ['700\u2013730 °C', '1292\u20131346 °F'],
    ['Give \u221220 to 100 °C.', 'Give \u22124 to 212 °F.'],
    ['from a charge of 1100 cm³', 'from a charge of 67.1 in³'],
    ['about 12 mm² of free vent', 'about 0.019 in² of free vent'],
    ['more than 0 mm', 'more than 0 in'],
    ['1.20 m/s at 2400 kg/m³ and 46 mm²/s', '47 in/s at 0.0867 lb/in³ and 46 mm²/s'],
    ['0.49 (0.46 to 0.52) m/s', '19 (18 to 20) in/s'],
    ['Between 2370 and 2420 kg/m³', 'Between 0.0856 and 0.0874 lb/in³'],
    ['R4 and 389 kJ/kg', 'R4 and 167 Btu/lb'],
    ['Give 50 to 5000 J/kgK.', 'Give 0.012 to 1.194 Btu/lb°F.'],
    ['160 W/mK', '92 Btu/h ft°F'],
    ['Between 1.0 and 1.3 mPa s', 'Between 1.0 and 1.3 cP'],
    ['0.0012 Pa s', '1.2 cP'],
    ['Waits for “wall 5 mm” at 5 mm.', 'Waits for “wall 5 mm” at 0.20 in.'],
    ['Give 20 to 1,000 W/m²K.', 'Give 4 to 176 Btu/h ft²°F.'],
    ['0.87 N/m and 40 N·m', '870 dyn/cm and 40 N·m'],
  ])('%s', (text, shown) => {
    expect(inUnits(text, US)).toBe(shown);
    expect(inUnits(text, METRIC)).toBe(text);
  });

  test.each([
    [
      'It lacks 1 cm³ of metal: it can give 29 cm³, die and feeder draw 30 cm³.',
      'It lacks 0.06 in³ of metal: it can give 1.77 in³, die and feeder draw 1.83 in³.',
    ],
    ['it can give 29 cm³ of 29 cm³', 'it can give 1.8 in³ of 1.8 in³'],
    ['0.49 (0.48 to 0.50) m/s', '19.3 (18.9 to 19.7) in/s'],
    // Apart in two sentences nobody compares them.
    ['The first gives 29 cm³. The other gives 30 cm³.', 'The first gives 1.8 in³. The other gives 1.8 in³.'],
    [
      'More than “No. 2. At 29 cm³”, 29 cm³ and not 30 cm³.',
      'More than “No. 2. At 29 cm³”, 1.77 in³ and not 1.83 in³.',
    ],
  ])('two amounts that differ do not read the same where they are compared: %s', (text, shown) => {
    expect(inUnits(text, US)).toBe(shown);
  });

  test('units mix as the shop has them', () => {
    const mixed: PageUnits = { length: 'mm', mass: 'lb', temperature: 'degC' };
    expect(inUnits('1 kg, 10 mm, 700 °C', mixed)).toBe('2 lb, 10 mm, 700 °C');
  });

  test('no complaint about a section keeps a metric length', () => {
    const good = hingeArm();
    const wrong = [
      { ...good, mouth: 2 },
      { ...good, pivot: { x: 9, y: 0 } },
      { ...good, roof: good.roof.map(({ x, y }, i) => (i === 3 ? { x, y: y - 0.2 } : { x, y })) },
      { ...good, floor: good.floor.map(({ x, y }, i) => (i === 1 ? { x: x + 1, y } : { x, y })) },
      { ...good, regions: good.regions.map((region) => ({ ...region, width: -1, end: region.end + 0.1 })) },
      { ...good, regions: good.regions.map((region) => ({ ...region, widthAtEnd: 9 })) },
      { ...good, roof: good.roof.map(({ x, y }) => ({ x: x - 0.02, y })) },
    ];
    const issues = wrong.flatMap(checkSection);
    expect(issues.length).toBeGreaterThan(5);
    for (const { message, remedy } of issues) {
      expect(inUnits(message, US)).not.toMatch(IN_METRIC);
      expect(inUnits(remedy, US)).not.toMatch(IN_METRIC);
      // A length without its unit could not be turned, nor understood.
      expect(remedy).not.toMatch(/(?:more than|less than|Set [xy] of \S+ to) [-\d.]+(?! mm| to)[,. ]/);
    }
  });
});

describe('figures in the units of the page', () => {
  const record = inventedRecord();

  test('value and text are turned together, from the unrounded value', () => {
    const row = { key: 'skin_folded_mm', label: '', unit: 'mm', value: 25.4, text: '25' };
    expect(figureIn(row, US)).toEqual({ ...row, unit: 'in', value: 1, text: '1.00' });
    expect(figureIn(row, METRIC)).toBe(row);
    expect(figureIn({ ...row, value: null, text: 'not filled' }, US).text).toBe('not filled');
  });

  test('no figure, note, reason or input stays metric', () => {
    for (const figure of figureRows(record)) {
      expect(figureIn(figure, US).unit).not.toMatch(/^(?:mm|cm³|kg|°C|m\/s)$/);
    }
    for (const { note } of keyFigures(record)) expect(inUnits(note, US)).not.toMatch(IN_METRIC);
    const { sentence, reasons } = verdict(record);
    const lines = [...sentence.map(({ text }) => text), ...reasons.map(({ line }) => line)];
    for (const line of lines) expect(inUnits(line, US)).not.toMatch(IN_METRIC);
    for (const { text } of inputWords(record.plan, US)) expect(text).not.toMatch(IN_METRIC);
  });

  test('heat let through a coat and surface tension are told as inch shops read them', () => {
    const told = new Map(inputWords(record.plan, US).map(({ name, text }) => [name, text]));
    expect(told.get('surface tension')).toMatch(/^\d{3,4} dyn\/cm$/);
    expect(told.get('coats, heat let through')).toMatch(/^\w.* \d+ Btu\/h ft²°F$/);
    const metric = new Map(inputWords(record.plan, METRIC).map(({ name, text }) => [name, text]));
    expect(metric.get('coats, heat let through')).toMatch(/ W\/m²K$/);
  });

  test('a region that tapers is told by both its widths, and decides with both', () => {
    const { plan } = record;
    const [basin, ...others] = plan.section.regions;
    const widthsOf = (widthAtEnd: number) => {
      const regions = [{ ...basin!, width: 0.0508, widthAtEnd }, ...others];
      return inputWords({ ...plan, section: { ...plan.section, regions } }, US).find(
        ({ name }) => name === 'widths',
      )!;
    };
    expect(widthsOf(0.0254).text).toMatch(new RegExp(`^${basin!.name} 2(\\.0+)? to 1(\\.0+)?[, ]`));
    expect(widthsOf(0.0508).text).toMatch(new RegExp(`^${basin!.name} 2(\\.0+)?[, ](?!to)`));
    expect(widthsOf(0.0254).decides).not.toEqual(widthsOf(0.0508).decides);
  });

  test('columns and curves: names and numbers go together', () => {
    const metric = { front_mm: [25.4], spilled_cm3: [16.387064], speed_m_per_s: [0.0254], time_s: [1] };
    expect(columnsIn(metric, US)).toEqual({
      speed_in_per_s: [expect.closeTo(1, 12)],
      front_in: [expect.closeTo(1, 12)],
      spilled_in3: [expect.closeTo(1, 12)],
      time_s: [1],
    });
    expect(seriesCsv(record, US).split('\n')[0]).toContain('front_in');
    expect(seriesCsv(record).split('\n')[0]).toContain('front_mm');
    expect(curveIn({ x: [254], y: [1] }, 'x', US)).toEqual({ x: [expect.closeTo(10, 12)], y: [1] });
    expect(speedsIn({ x: [1], y: [0.508] }, US)).toEqual({ x: [1], y: [expect.closeTo(20, 12)] });
  });

  test('settings of a study', () => {
    expect(shownValue(0.0254, 'length', US)).toBe('1 in');
    expect(shownValue(0.0254, 'level')).toBe('+25.4 mm');
    expect(shownValue(273.15, 'temperature', US)).toBe('32 °F');
    expect(shownDistance(10, 'temperature', US)).toBe('18 °F');
  });
});

test('a source in other units has as many figures as it has', () => {
  const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
  expect(
    sourceIn('Between 6400 and 7000 kg/m³ at 1120 to 1180 °C, from memory; solid 7640 kg/m³', units),
  ).toBe('Between 0.23 and 0.25 lb/in³ at 2048 to 2156 °F, from memory; solid 0.276 lb/in³');
  expect(sourceIn('Between 2370 and 2420 kg/m³', units)).toBe('Between 0.0856 and 0.0874 lb/in³');
  expect(sourceIn('Between 6400 and 7000 kg/m³', METRIC)).toBe('Between 6400 and 7000 kg/m³');
});
