import { describe, expect, test } from 'vitest';
import { cardSource } from '$src/cells/cardSource';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, PourCell } from '$src/cells/kinds';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import { firstFlowBand } from '$src/core/level/firstFlowBand';
import type { PourRecord } from '$src/core/pour/record';
import { simulate } from '$src/core/pour/simulate';
import { cavityVolume } from '$src/core/section/cavity';
import { endOf } from '$src/core/tilt/endOf';
import { fromDegrees, fromMillimetres, METRIC, toDegrees } from '$src/core/units';
import { afterFill } from '$src/report/afterFill';
import { cardCautions } from '$src/report/card/cardCautions';
import { cardHtml } from '$src/report/card/cardHtml';
import { cardRows } from '$src/report/card/cardRows';
import { cardTilt } from '$src/report/card/cardTilt';
import { markDepth } from '$src/report/card/fillMark';
import type { CardSource } from '$src/report/card/shopCard';
import { feederShortage } from '$src/report/feederShortage';
import { type SoundFinding, soundFinding } from '$src/report/study/soundFinding';
import { type SoundRange, soundRanges } from '$src/report/study/soundRanges';
import { verdict } from '$src/report/verdict';
import { rateText } from '$src/report/wording';
import { computed } from '../../books/computed';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { longestBook } from './longestBook';

function recordOf(book: Book, pour: PourCell): PourRecord {
  const evaluation = evaluateBook(book).get(pour.id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${pour.id} is ${evaluation?.state}`);
  const { plan } = evaluation;
  const steps = simulate({ ...plan, computation: { ...plan.computation, meshCells: 60 } });
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

const words = { name: 'Card', date: '3 May', remark: '' };
const pourNamed = (book: Book, id: string): PourCell =>
  book.cells.find((cell): cell is PourCell => cell.kind === 'pour' && cell.id === id)!;

const shop = levelOrUphill;
const uphill = pourNamed(shop, 'uphill-flush');
const record = recordOf(shop, uphill);
const run = { record, warning: null };
const source = cardSource(shop, evaluateBook(shop), uphill, words, run)!;
const withChange = (change: Partial<CardSource>): CardSource => ({ ...source, ...change });

const settingOf = (of: CardSource, label: string) =>
  cardRows(of).settings.find((setting) => setting.label.startsWith(label))!;

describe('what is set', () => {
  test('charge as the charge cell has it, its mark from the lip', () => {
    const charge = settingOf(source, 'charge');
    expect(charge.number).toBe('1.20');
    expect(charge.unit).toBe('kg');
    expect(charge.note).toMatch(/^5\.5 mm below the lip$/);
    expect(charge.isModel).toBe(false);
  });

  test('a charge that stands at the brink is told as that', () => {
    const { plan } = record;
    const volume = volumeFromFillLevel(plan.section, plan.tilt.start, fromMillimetres(-1.5))!;
    const full = withChange({ record: { ...record, plan: { ...plan, volume } } });
    expect(settingOf(full, 'charge').note).toMatch(/^to the brink: 0\.5 mm below the lip$/);
  });

  test('a level is told as finely as a hand keeps it, and a rate as finely as a machine', () => {
    expect([0.42, 0.2, 0.8, 12.29, 7.74].map((depth) => markDepth(fromMillimetres(-depth), METRIC))).toEqual([
      '0.5 mm',
      null,
      '1 mm',
      '12.5 mm',
      '7.5 mm',
    ]);
    expect(markDepth(fromMillimetres(-12.29), { ...METRIC, length: 'in' })).toBe('0.48 in');
    expect([12.29, 60, 0.04, 10.06].map((rate) => rateText(fromDegrees(rate), 1))).toEqual([
      '12.3 °/s',
      '60 °/s',
      '0 °/s',
      '10.1 °/s',
    ]);
    expect([12.29, 60, 100, 7.5].map((rate) => rateText(fromDegrees(rate)))).toEqual([
      '12.29 °/s',
      '60 °/s',
      '100 °/s',
      '7.5 °/s',
    ]);
  });

  test('metal that stands over the lip is to be weighed, and no mark is given for it', () => {
    const { plan } = record;
    const over = { ...record, plan: { ...plan, volume: 1.3 * plan.volume } };
    expect(settingOf(withChange({ record: over }), 'charge').note).toMatch(/weigh it|covers the lip/);
    const html = cardHtml(withChange({ record: over }), 'card');
    expect(html).not.toContain('fill to the mark');
  });

  test('start, end, temperatures and coats', () => {
    expect(settingOf(source, 'start angle')).toMatchObject({
      number: '+30.0',
      note: 'die uphill; ends at −90.0°',
    });
    expect(settingOf(source, 'metal at the tilt').number).toBe('715');
    expect(settingOf(source, 'die surface').number).toBe('350');
    expect(cardRows(source).coats.rows).toEqual([
      ['basin and feeder, root, arm and boss', 'Normal insulating', '350 °C'],
    ]);
    expect(cardRows(source).coats.note).toMatch(/^Wide: .+ \d+(\.\d)? mm/);
  });

  test('a region that tapers stands with both its widths', () => {
    const { plan } = record;
    const [basin, ...others] = plan.section.regions;
    const regions = [{ ...basin!, width: 0.08, widthAtEnd: 0.05 }, ...others];
    const tapered = { ...record, plan: { ...plan, section: { ...plan.section, regions } } };
    expect(cardRows(withChange({ record: tapered })).coats.note).toMatch(/^Wide: basin[^;]* 80 to 50 mm;/);
  });

  test('in inches, pounds and Fahrenheit nothing stays metric', () => {
    const us = withChange({ units: { length: 'in', mass: 'lb', temperature: 'degF' } });
    expect(settingOf(us, 'charge').number).toBe((1.2 / 0.45359237).toFixed(2));
    expect(settingOf(us, 'metal at the tilt').number).toBe('1319');
    expect(cardHtml(us, 'card')).not.toMatch(/\d\)? (?:mm|cm³|kg|°C|m\/s)[<,; ]/);
  });

  test('metal that has waited in the basin is told twice', () => {
    const waited = withChange({ ladleTemperature: source.ladleTemperature + 12 });
    expect(settingOf(waited, 'metal in the ladle').number).toBe('727');
    expect(settingOf(waited, 'metal at the tilt')).toMatchObject({ number: '715', isModel: true });
  });
});

describe('dwell', () => {
  const earliest = afterFill(record, null)!.ejection.earliest;
  const dwellWith = (provenDwell: number | null) =>
    settingOf(withChange({ pour: { ...source.pour, provenDwell } }), 'keep closed');

  test('the estimate where none is proven, marked as the model’s', () => {
    expect(dwellWith(null)).toMatchObject({
      number: `≥ ${Math.ceil(earliest)}`,
      note: 'no dwell proven yet',
      isModel: true,
    });
  });

  test('never shorter than proven', () => {
    const proven = Math.ceil(earliest) + 55;
    expect(dwellWith(proven)).toMatchObject({ number: `≥ ${proven}`, isModel: false });
    expect(dwellWith(3)).toMatchObject({ number: `≥ ${Math.ceil(earliest)}`, isModel: true });
  });
});

describe('tilt', () => {
  test('a few stages are told one by one, with the times they take', () => {
    const few = longestBook(5, 2);
    const { plan } = recordOf(few, pourNamed(few, few.cells.find(({ kind }) => kind === 'pour')!.id));
    const { columns, rows } = cardTilt({ ...record, plan });
    expect(columns).toEqual(['stage', 'from', 'to', 'rate', 'time']);
    expect(rows).toHaveLength(5);
    expect(rows[0]!.slice(0, 3)).toEqual(['1', '+30.0°', '+6.0°']);
    expect(rows.at(-1)![2]).toBe('−90.0°');
  });

  test('more than fit become angle against time, and the card says so', () => {
    const stages = Array.from({ length: 9 }, (_, i) => ({
      to: fromDegrees(30 - (120 * (i + 1)) / 9),
      rate: fromDegrees(15),
    }));
    const { limits } = record.plan.tilt;
    const tilt = { kind: 'staged' as const, start: fromDegrees(30), stages, smoothing: 0.3, limits };
    const table = cardTilt({ ...record, plan: { ...record.plan, tilt } });
    expect(table.columns[0]).toBe('die axis');
    expect(table.rows).toHaveLength(1);
    expect(table.note).toBe('nine stages in all: set them from the book.');
    const times = table.rows[0]!.slice(1).map(Number);
    expect(times.toSorted((a, b) => a - b)).toEqual(times);
    expect(times[0]).toBe(0);
  });
});

describe('what is expected and watched', () => {
  test('front speed stands against its limit, both with a band', () => {
    const { expected } = cardRows(source);
    const text = (label: string) => expected.find((line) => line.label === label)!.text;
    expect(text('front speed, peak')).toMatch(/^0\.\d\d \(0\.\d\d to 0\.\d\d\) m\/s$/);
    expect(text('limit, critical')).toMatch(/^0\.49 \(0\.46 to 0\.52\) m\/s, /);
    const computed = expected.filter(({ label }) => label !== 'how far it may stray');
    expect(computed.every(({ isModel }) => isModel)).toBe(true);
  });

  test('how far a setting may stray is told once a study has found it, open where nothing was met', () => {
    const found = (isOpenAbove: boolean): SoundRange[] =>
      soundRanges(
        [
          {
            setting: 'tilt.valve',
            name: 'valve opening',
            quantity: 'turns',
            from: 0.1,
            to: 1,
            points: 10,
            setPoint: 0.5,
          },
        ],
        [
          { axis: 0, direction: -1, limit: 0.37, distance: 0.13, meets: 'laps' },
          {
            axis: 0,
            direction: 1,
            limit: 0.61,
            distance: isOpenAbove ? null : 0.11,
            meets: isOpenAbove ? null : 'folds film',
          },
        ],
      );
    const line = (ranges: readonly SoundRange[]) =>
      cardRows(withChange({ sound: { ranges, without: '' } })).expected.find(
        ({ label }) => label === 'sound, valve opening',
      )?.text;
    expect(line([])).toBeUndefined();
    expect(line(found(false))).toBe('0.37 turns to 0.61 turns');
    expect(line(found(true))).toBe('0.37 turns to 0.61 turns, as far as was looked');
    expect(soundRanges([], null)).toEqual([]);
  });

  test('where no study has told how far settings may stray, the card says so and why', () => {
    const line = (sound: SoundFinding) =>
      cardRows(withChange({ sound })).expected.find(({ label }) => label === 'how far it may stray');
    expect(line(soundFinding(0, []))).toMatchObject({ text: 'no study of this pour', isModel: false });
    expect(line(soundFinding(1, []))?.text).toBe('its study was not run');
    expect(line(soundFinding(1, [], true))?.text).toBe('its study is out of date');
    expect(line(soundFinding(1, [{ axes: [], margins: null, setRegion: 'near the limit' }]))?.text).toBe(
      'none: near a limit as set',
    );
    expect(cardRows(source).expected.at(-1)!.text).toBe('no study of this pour');
  });

  test('a first flow lies within what is left open, as far from its ends as the level fill has it', () => {
    const angle = (degrees: number) =>
      ({ kind: 'angle', inclination: fromDegrees(degrees), time: 1 }) as const;
    const end = (degrees: number) => ({ firstFlow: angle(degrees), peakFrontSpeed: 0.4, arrivalTime: 2 });
    const figures = { ...record.figures, firstFlow: angle(23) };
    const band = { gateOff: end(27.7), nonWetting: end(24.9), meshCells: 100 };
    const { expected } = cardRows(withChange({ record: { ...record, figures, band } }));
    const flow = expected.find(({ label }) => label === 'first flow')!.text;
    const [, own, first, last] = /^\+([\d.]+)° \(\+([\d.]+)° to \+([\d.]+)°\)$/.exec(flow)!.map(Number);
    expect(own).toBe(23);
    const { section, liquid, volume, tilt } = record.plan;
    const { value, from, to } = firstFlowBand(section, liquid, volume, tilt.start, endOf(tilt));
    if (value.kind !== 'angle' || from.kind !== 'angle' || to.kind !== 'angle') throw new Error('no angle');
    expect(first! - own!).toBeCloseTo(toDegrees(from.inclination - value.inclination), 1);
    expect(own! - last!).toBeCloseTo(toDegrees(value.inclination - to.inclination), 1);
    expect(first!).toBeGreaterThan(own!);
    expect(last!).toBeLessThan(own!);
  });

  test('sights come in order of time and begin with the first metal', () => {
    const { watch } = cardRows(source);
    expect(watch[0]!.text).toMatch(/^first metal passes the mouth, rolling in uphill/);
    const times = watch.map(({ time }) => Number.parseFloat(time));
    expect(times.toSorted((a, b) => a - b)).toEqual(times);
    expect(watch.some(({ text }) => text.includes('die level: '))).toBe(true);
    expect(watch.length).toBeLessThanOrEqual(5);
  });

  test('what happens at once stands in one line, with the time of its first and its last', () => {
    const { arrivalTime } = record.figures;
    const figures = { ...record.figures, peakFrontSpeedTime: arrivalTime! - 0.06 };
    const { watch } = cardRows(withChange({ record: { ...record, figures } }));
    const line = watch.find(({ text }) => text.includes('reaches the die end'))!;
    const [first, last] = line.time.split('–').map((time) => Number.parseFloat(time));
    expect(last! - first!).toBeGreaterThan(0.03);
    expect(last! - first!).toBeLessThan(0.1 + 0.01);
    expect(line.time).toMatch(/^\d[\d.]*–\d[\d.]* s$/);
  });
});

describe('cautions', () => {
  test.each(['A356', 'aluminium bronze', 'brass', 'ZA-12', 'AZ91'])(
    '%s has its own beside the common ones',
    (base) => {
      const common = cardCautions('nobody knows this metal');
      const all = cardCautions(base);
      expect(all).toHaveLength(common.length + 1);
      expect(all.join(' ')).toMatch(/damp explodes/);
      expect(all.join(' ')).toMatch(/dry run without metal/);
    },
  );

  test('the card defers to those who decide', () => {
    expect(cardRows(source).deferral).toMatch(
      /Local codes, the machine’s maker.*licensed, competent persons decide/,
    );
  });
});

describe('the page', () => {
  test('what the user wrote is text, never markup', () => {
    const sly = withChange({ card: { ...words, remark: '<img src=x onerror=alert(1)> & "so on"' } });
    const html = cardHtml(sly, 'card');
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt; &amp; &quot;so on&quot;');
  });

  test('names book, plan and date', () => {
    const html = cardHtml(source, 'card');
    for (const text of [shop.title, record.planHash.slice(0, 12), '3 May']) expect(html).toContain(text);
    expect(html).not.toMatch(/undefined|NaN|\[object/);
  });

  test('says loud when it must not be used', () => {
    const old = withChange({ warning: 'It is out of date.' });
    expect(cardHtml(old, 'card')).toContain('<b>Do not pour by this card.</b> It is out of date.');
    expect(cardHtml(source, 'card')).not.toContain('Do not pour by this card');
    // What strikes its figures through and prints over them.
    expect(cardHtml(old, 'card')).toMatch(/^<article class="shop-card[^"]* not-valid"/);
    expect(cardHtml(source, 'card')).not.toContain('not-valid');
  });

  test('has no figure of the last run when the pour as it now stands cannot be computed', () => {
    const wrong = { ...shop, cells: shop.cells.filter(({ id }) => id !== uphill.charge) };
    const made = cardSource(wrong, evaluateBook(wrong), uphill, words, { record, warning: 'Wrong.' })!;
    const html = cardHtml(made, 'card');
    expect(html).toContain('<b>Do not pour by this card.</b> Wrong.');
    expect(html).toContain(shop.title);
    for (const text of ['the model says', 'metal at the tilt', record.planHash.slice(0, 12), '◇', '<svg'])
      expect(html).not.toContain(text);
    expect(cardHtml(source, 'card')).toContain('the model says');
  });

  test('says which limit a pour is near', () => {
    // A ladle short of the charge that is sound: the metal lies lower, and its front comes later.
    const { plan } = record;
    const near = computed({ ...plan, volume: 0.9 / plan.liquid.density });
    expect(verdict(near).kind).toBe('near the limit');
    const [first] = verdict(near).reasons;
    const told = `<b>Near a limit ◇: ${first!.name}.</b> ${first!.line}`;
    expect(cardHtml(withChange({ record: near }), 'card')).toContain(told);
    // Just enough for the die leaves the feeder nothing to give.
    const short = { ...near, plan: { ...plan, volume: 1.02 * cavityVolume(plan.section) } };
    const [limit] = verdict(short).reasons;
    expect(verdict(short).kind).toBe('near the limit');
    expect(cardHtml(withChange({ record: short }), 'card')).toContain(
      `${limit!.line} Besides, ${feederShortage(short)!.inShort}.`,
    );
  });
});
