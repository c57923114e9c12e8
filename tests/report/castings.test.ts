import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCastings } from '$src/cells/checkCastings';
import type { Cell } from '$src/cells/kinds';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { runOtherwise } from '$src/report/castings/asRun';
import { type CastingRow, castingsIn, countedBad, EMPTY_ROW, NO_FAULTS } from '$src/report/castings/casting';
import { castingsCsv, readCastings } from '$src/report/castings/castingsFile';
import { leftOut, type PredictedPour, scrapGroups } from '$src/report/castings/scrap';
import { scrapSentence, timesAsMany } from '$src/report/castings/scrapSentence';
import { scrapTable } from '$src/report/castings/scrapTable';
import { overlap, wilson } from '$src/report/castings/wilson';
import { plainText } from '$src/report/sentence';
import { inventedPlan } from './inventedRecord';

describe('Wilson score interval', () => {
  // R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statist. Med. 17 (1998) 857, table I,
  // method 3 (score, no continuity correction); values from memory.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i lies between %f and %f', (count, total, from, to) => {
    const range = wilson(count, total);
    expect(range.from).toBeCloseTo(from, 4);
    expect(range.to).toBeCloseTo(to, 4);
  });

  it('has ends at which the observed rate is 1.96 standard errors away (Wilson 1927, his defining equation)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (total, share) => {
          const count = Math.round(share * total);
          const { rate, from, to } = wilson(count, total);
          for (const p of [count > 0 ? from : null, count < total ? to : null]) {
            if (p === null) continue;
            expect(((rate - p) ** 2 * total) / (p * (1 - p))).toBeCloseTo(1.959963985 ** 2, 6);
          }
          expect(from).toBeLessThanOrEqual(rate);
          expect(to).toBeGreaterThanOrEqual(rate);
        },
      ),
    );
  });

  it('is the same seen from the good side', () => {
    const [bad, good] = [wilson(7, 50), wilson(43, 50)];
    expect(bad.from).toBeCloseTo(1 - good.to, 12);
    expect(bad.to).toBeCloseTo(1 - good.from, 12);
  });

  it('refuses what is no rate', () => {
    expect(() => wilson(3, 0)).toThrow('expected');
    expect(() => wilson(4, 3)).toThrow('expected');
  });
});

const row = (pour: string | null, good: number, fold: number, lap = 0): CastingRow => ({
  ...EMPTY_ROW,
  pour,
  good,
  bad: { ...NO_FAULTS, fold, lap },
});
const slow: PredictedPour = { id: 'a', name: 'Slow', frontSpeed: 0.6, lapMargin: 0.2 };
const quick: PredictedPour = { id: 'b', name: 'Quick', frontSpeed: 1.5, lapMargin: 1.5 };

describe('castings against the prediction', () => {
  const said = (castings: readonly CastingRow[], predicted = [quick, slow]) =>
    plainText(scrapSentence(scrapGroups(castings, 'fold', 'front speed', predicted), 'fold', 'front speed'));

  it('adds up the rows of a pour, least at risk first', () => {
    const castings = [row('b', 10, 5), row('a', 20, 1), row('a', 18, 1, 3), row(null, 5, 5)];
    const groups = scrapGroups(castings, 'fold', 'front speed', [quick, slow]);
    expect(groups.map(({ name, bad, total }) => [name, bad, total])).toEqual([
      ['Slow', 2, 43],
      ['Quick', 5, 15],
    ]);
    expect(scrapGroups(castings, 'lap', 'lap margin', [slow, quick]).map(({ name }) => name)).toEqual([
      'Quick',
      'Slow',
    ]);
    expect(leftOut(castings, groups)).toBe(10);
    expect(castingsIn(castings[2]!)).toBe(22);
    expect(countedBad(castings[2]!, 'any')).toBe(4);
  });

  it('claims nothing from too few, and says how many it would take', () => {
    const few = [row('a', 4, 0), row('b', 2, 2)];
    expect(said(few)).toMatch(/^Cannot be told apart\./);
    const [first, second] = scrapGroups(few, 'fold', 'front speed', [slow, quick]) as [never, never];
    const times = timesAsMany(first, second)!;
    const many = (factor: number) => overlap(wilson(0, 4 * factor), wilson(2 * factor, 4 * factor));
    expect(many(times)).toBe(false);
    expect(many(times - 1)).toBe(true);
    expect(said(few)).toContain(`about ${4 * times} castings of each`);
  });

  it('says when scrap goes with the prediction, and when against it', () => {
    expect(said([row('a', 58, 2), row('b', 30, 30)])).toMatch(/^Scrap goes with the prediction\./);
    expect(said([row('a', 30, 30), row('b', 58, 2)])).toMatch(/^Scrap goes against the prediction\./);
  });

  it('makes nothing of predictions that the mesh alone could make differ', () => {
    const alike = [slow, { ...quick, frontSpeed: 0.63 }];
    expect(said([row('a', 58, 2), row('b', 30, 30)], alike)).toMatch(
      /^The predictions do not differ enough\./,
    );
  });

  it('takes lap margins as alike that coat and die could make differ, and those far from any lap', () => {
    const lapsSaid = (margins: readonly [number, number], castings: readonly CastingRow[]): string => {
      const of = [slow, quick].map((pour, index) => ({ ...pour, lapMargin: margins[index]! }));
      return plainText(scrapSentence(scrapGroups(castings, 'lap', 'lap margin', of), 'lap', 'lap margin'));
    };
    const differing = [row('a', 58, 0, 2), row('b', 30, 0, 30)];
    const far = lapsSaid([7.32, 7.08], differing);
    expect(far).toMatch(/^The predictions do not differ enough\..*Both are far from any lap/);
    expect(far).not.toContain('cast a pour');
    expect(lapsSaid([12, 4], differing)).toContain('Both are far from any lap');
    expect(lapsSaid([0.6, 0.2], differing)).toMatch(/^The predictions do not differ enough\./);
    expect(lapsSaid([0.6, 0.2], differing)).not.toContain('far from any lap');
    expect(lapsSaid([7, -0.4], differing)).toMatch(
      /^Scrap goes with the prediction\..*predicted at about 0\.80 s of lap margin next\.$/,
    );
  });

  it('counts nothing of a row without castings', () => {
    const pours = new Map<string, Cell>();
    expect(checkCastings([{ ...EMPTY_ROW, date: 'today' }], pours)).toEqual([]);
    expect(said([row('a', 0, 0)])).toMatch(/^Nothing to set side by side yet\./);
    expect(said([row('a', 58, 2), row('b', 0, 0)])).toMatch(/^One pour is no comparison\./);
  });

  it('lists what was cast and nothing between', () => {
    const groups = scrapGroups([row('a', 18, 2), row('b', 5, 15)], 'fold', 'front speed', [quick, slow]);
    const { heads, rows } = scrapTable(groups, 'fold', 'front speed');
    // Wilson score intervals of 2 and 15 in 20 worked by hand from the formula.
    expect(rows).toEqual([
      ['Slow', '0.60 times critical', '2 of 20', '10 %', '3 to 30 %'],
      ['Quick', '1.50 times critical', '15 of 20', '75 %', '53 to 89 %'],
    ]);
    expect(heads).toHaveLength(rows[0]!.length);
  });

  it('says that two ends leave the limit between them open, and what to cast next', () => {
    const open =
      /Nothing was cast between .* cannot say where between them a limit lies: cast a pour predicted at about 1\.05 times critical next\./;
    const ends = [row('a', 58, 2), row('b', 30, 30)];
    expect(said(ends)).toMatch(open);
    expect(said([row('a', 4, 0), row('b', 2, 2)])).toMatch(open);
    const middle = { id: 'c', name: 'Middle', frontSpeed: 1.05, lapMargin: 1 };
    expect(said([...ends, row('c', 20, 4)], [quick, slow, middle])).not.toContain('Nothing was cast between');
  });

  it('makes nothing of one pour, or of none', () => {
    expect(said([row('a', 58, 2)])).toMatch(/^One pour is no comparison\./);
    expect(said([row(null, 58, 2)])).toMatch(/^Nothing to set side by side yet\./);
  });
});

describe('settings as run', () => {
  it('are told where they stray from the pour', () => {
    const planned: CastingRow = { ...EMPTY_ROW, startAngle: inventedPlan.tilt.start };
    expect(runOtherwise(planned, inventedPlan)).toBe('');
    const mass = inventedPlan.volume * inventedPlan.liquid.density;
    const strayed = { ...EMPTY_ROW, startAngle: fromDegrees(25), mass: mass * 1.1 };
    expect(runOtherwise(strayed, inventedPlan)).toBe(
      'start +25.0° in place of +30.0° and charge 1.09 kg in place of 0.99 kg',
    );
    // 1.09296 and 0.9936 kg are 2.4096 and 2.1905 lb; by way of 1.09 and 0.99 kg they would read 2.40 and 2.18.
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    expect(runOtherwise(strayed, inventedPlan, units)).toContain('charge 2.41 lb in place of 2.19 lb');
  });
});

describe('castings as CSV', () => {
  const pours = [
    { id: 'a', name: 'Slow, staged' },
    { id: 'b', name: 'The “quick” one; again' },
  ];
  const rows: CastingRow[] = [
    {
      date: '12 March',
      pour: 'a',
      startAngle: fromDegrees(28.5),
      tiltTime: 7.2,
      mass: 1.24,
      metalTemperature: fromCelsius(715),
      dieTemperature: fromCelsius(340),
      good: 17,
      bad: { fold: 1, lap: 2, gas: 3, shrinkage: 4, other: 5 },
      remark: 'coat renewed, "boss" end\nafter the break',
    },
    { ...EMPTY_ROW, pour: 'b', good: 1 },
  ];

  it('come back as they were', () => {
    const { castings, issues } = readCastings(castingsCsv(rows, pours), { pours });
    expect(issues).toEqual([]);
    expect(castings).toHaveLength(2);
    castings.forEach((read, index) => {
      const wrote = rows[index]!;
      for (const field of ['startAngle', 'tiltTime', 'mass', 'metalTemperature', 'dieTemperature'] as const) {
        if (wrote[field] === null) expect(read[field]).toBeNull();
        else expect(read[field]).toBeCloseTo(wrote[field], 9);
      }
      expect({ ...read, startAngle: 0, metalTemperature: 0, dieTemperature: 0 }).toEqual({
        ...wrote,
        startAngle: 0,
        metalTemperature: 0,
        dieTemperature: 0,
      });
    });
    expect(castingsCsv(castings, pours)).toBe(castingsCsv(rows, pours));
  });

  it('name the rows that are wrong and keep the others', () => {
    const text =
      'date,pour,good,fold,colour\n1,"Slow, staged",12,1,red\n2,Nobody,3,0,\n3,"Slow, staged",2.5,0,\n\n4,"Slow, staged",0,0,\n5,"Slow, staged",x,-1,\n';
    const { castings, issues } = readCastings(text, { pours });
    expect(castings.map(({ date, pour }) => [date, pour])).toEqual([
      ['1', 'a'],
      ['2', null],
    ]);
    expect(issues.map(({ path }) => path)).toEqual(['column', 'row 3', 'row 4', 'row 6', 'row 7', 'row 7']);
    expect(issues[1]!.message).toContain('no pour is called “Nobody”');
    expect(issues[2]!.message).toContain('“2.5” in good');
  });

  it('are read with semicolons and decimal commas', () => {
    const { castings, issues } = readCastings('date;good;charge_kg\r\n1;5;1,25\r\n', { pours });
    expect(issues).toEqual([]);
    expect(castings[0]).toMatchObject({ good: 5, mass: 1.25 });
  });

  it('are read by the headings of the page, in either units', () => {
    const headings = [
      ['date', 'pour', 'start angle, °', 'tilt time, s', 'charge, kg', 'metal, °C', 'die, °C'],
      ['good', 'fold or oxide', 'lap or misrun', 'gas', 'shrink\u00adage', 'other', 'all', 'remark'],
    ].flat();
    const line = (cells: readonly string[]): string => cells.map((cell) => `"${cell}"`).join(',');
    const text = [
      line(headings),
      line([
        '1',
        'Slow, staged',
        '28.5',
        '7.2',
        '1.24',
        '715',
        '340',
        '17',
        '1',
        '2',
        '3',
        '4',
        '5',
        '32',
        'so',
      ]),
      line(['2', '', '', '', '', '', '', '0', '6', '0', '0', '0', '0', '6', '']),
    ].join('\n');
    const { castings, issues, asks } = readCastings(text, { pours });
    expect([issues, asks]).toEqual([[], []]);
    expect(castings.map(({ good, bad }) => [good, ...Object.values(bad)])).toEqual([
      [17, 1, 2, 3, 4, 5],
      [0, 6, 0, 0, 0, 0],
    ]);
    expect(castings[0]).toMatchObject({ pour: 'a', tiltTime: 7.2, mass: 1.24, remark: 'so' });
    expect(castings[0]!.metalTemperature).toBeCloseTo(fromCelsius(715), 9);
    expect(castings[0]!.startAngle).toBeCloseTo(fromDegrees(28.5), 9);
    const pounds = readCastings('good,"charge, lb","metal, °F",Folds,Misruns\n1,2,1300,3,4\n', { pours });
    expect(pounds.castings[0]!.mass).toBeCloseTo(0.90718474, 9);
    expect(pounds.castings[0]!.metalTemperature).toBeCloseTo(fromCelsius(1268 / 1.8), 9);
    expect(pounds.castings[0]!.bad).toMatchObject({ fold: 3, lap: 4 });
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    expect(readCastings('good,charge\n1,2\n', { pours, units }).castings[0]!.mass).toBeCloseTo(0.90718474, 9);
  });

  it('are asked about before rows are taken, when a column may count castings and is not known', () => {
    const text = 'pour,good,cracks,colour,tears\n,1,0,red,0\n,0,4,,1\n';
    const first = readCastings(text, { pours });
    expect(first.asks).toEqual(['cracks', 'tears']);
    const answers = new Map([
      ['cracks', 'other'],
      ['tears', 'other'],
    ] as const);
    const read = readCastings(text, { pours, answers });
    expect(read.asks).toEqual([]);
    expect(read.issues.map(({ path }) => path)).toEqual(['column']);
    expect(read.castings.map(({ good, bad }) => [good, bad.other])).toEqual([
      [1, 0],
      [0, 5],
    ]);
    const without = readCastings(text, {
      pours,
      answers: new Map([
        ['cracks', null],
        ['tears', 'other'],
      ]),
    });
    expect(without.castings.map(castingsIn)).toEqual([1, 1]);
    expect(without.issues[0]!.message).toContain('“cracks” is not known and was left out');
  });

  it('name a row whose columns do not make what it says in all', () => {
    const { castings, issues } = readCastings('good,fold,all\n5,1,6\n5,1,8\n', { pours });
    expect(castings).toHaveLength(1);
    expect(issues[0]!.message).toContain('it says 8 in all, but its columns make 6');
  });

  it('say which columns are wanted when there are none', () => {
    const { castings, issues } = readCastings('1,2,3\n4,5,6', { pours });
    expect(castings).toEqual([]);
    expect(issues[0]!.remedy).toContain('start_angle_deg');
  });
});

it('a heading that every object has a property of is a column like any that is not known', () => {
  const { castings, issues, asks } = readCastings('good,constructor,toString\n12,3,a\n', { pours: [] });
  expect(asks).toEqual(['constructor']);
  expect(issues.map(({ message }) => message)).toEqual(['Column “toString” is not known and was left out.']);
  expect(castings).toEqual([{ ...EMPTY_ROW, good: 12 }]);
});
