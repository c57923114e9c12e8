import { describe, expect, it } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { momentAt } from '$src/report/moment';
import { columnsCsv, pourJson, seriesCsv } from '$src/report/pourFile';
import {
  dieLength,
  frontPlaceCurve,
  frontSpeedCurve,
  levelFrontCurve,
  rateCurve,
  thin,
  valueAt,
} from '$src/report/series';
import { stepRange, stepValue, timeInStep } from '$src/report/step';
import { inventedRecord } from './inventedRecord';

const record = inventedRecord();

describe('curves', () => {
  it('are in shown units', () => {
    const byPlace = frontSpeedCurve(record, 'place');
    expect(byPlace.x[0]).toBeCloseTo(10, 9);
    expect(byPlace.y[0]).toBe(record.frontSpeeds.speed[0]);
    expect(frontSpeedCurve(record, 'inclination').x[0]).toBeLessThan(30);
    expect(dieLength(record)).toBeCloseTo(0.2, 12);
  });

  it('follow the front from the mouth to the end and no further', () => {
    const { x, y } = frontPlaceCurve(record, 'time');
    expect(x[0]).toBeCloseTo(0.5, 2);
    expect(x.at(-1)).toBeCloseTo(3.5, 2);
    expect(Math.min(...y)).toBe(0);
    expect(Math.max(...y)).toBeCloseTo(200, 9);
  });

  it('keep the level fill inside the die and end it on arrival', () => {
    const level = { inclination: [0.5, 0.4, 0.3, 0.2], front: [-0.01, 0.1, 0.2, 0.2] };
    expect(levelFrontCurve(level, 0.2).y).toEqual([0, 100, 200]);
  });

  it('give the tilt rate positive while tipping', () => {
    const { y } = rateCurve(record);
    expect(y[300]).toBeCloseTo(120 / 9, 6);
  });

  it('keep every peak when thinned', () => {
    const x = Array.from({ length: 5000 }, (_, index) => index);
    const y = x.map((at) => (at === 3217 ? 9 : Math.sin(at / 90)));
    const few = thin({ x, y }, 300);
    expect(few.x.length).toBeLessThanOrEqual(300);
    expect(Math.max(...few.y)).toBe(9);
    expect([few.x[0], few.x.at(-1)]).toEqual([0, 4999]);
  });

  it('are read between points whichever way x runs', () => {
    expect(valueAt({ x: [0, 2], y: [0, 10] }, 1)).toBe(5);
    expect(valueAt({ x: [30, 10], y: [0, 10] }, 15)).toBe(7.5);
    expect(valueAt({ x: [0, 2], y: [0, 10] }, 3)).toBeNaN();
  });
});

describe('moment', () => {
  it('lies between samples and holds at the ends', () => {
    expect(momentAt(record, 2.005).front).toBeCloseTo(((2.005 - 0.5) / 3) * 0.2, 9);
    expect(momentAt(record, 99).time).toBe(9);
    expect(momentAt(record, -1).inclination).toBeCloseTo(fromDegrees(30), 12);
    expect(momentAt(record, 0.1).frontSpeed).toBeNull();
    expect(momentAt(record, 2).frontSpeed).toBeGreaterThan(0);
  });
});

describe('in step', () => {
  it('finds the same inclination and share in every pour', () => {
    const time = timeInStep(record, 'inclination', fromDegrees(-10));
    expect(momentAt(record, time).inclination).toBeCloseTo(fromDegrees(-10), 9);
    const share = timeInStep(record, 'filled share', 0.21);
    expect(momentAt(record, share).filledShare).toBeCloseTo(0.21, 9);
  });

  it('comes back to the value it went out from', () => {
    for (const by of ['time', 'inclination', 'filled share'] as const) {
      const value = stepValue(record, by, 3);
      expect(timeInStep(record, by, value)).toBeCloseTo(3, 9);
    }
  });

  it('holds a pour at its end when it does not get there', () => {
    const short = inventedRecord({
      series: { ...record.series, filledShare: record.series.filledShare.map((s) => s / 2) },
    });
    expect(timeInStep(short, 'filled share', 0.9)).toBe(9);
    expect(stepRange([record, short], 'filled share')).toEqual({ from: 0, to: 1 });
    expect(stepRange([record], 'inclination').from).toBeCloseTo(fromDegrees(30), 12);
  });
});

describe('files', () => {
  it('writes one heading and a row for each sample', () => {
    const lines = seriesCsv(record).trimEnd().split('\n');
    expect(lines).toHaveLength(902);
    expect(lines[0]).toBe('time_s,inclination_deg,front_mm,filled_share,spilled_cm3,skin_folded_mm');
    expect(lines[1]!.split(',').map(Number)[1]).toBeCloseTo(30, 9);
  });

  it('quotes names and leaves short columns empty', () => {
    expect(columnsCsv({ 'a, b': [1, 2], c: [3] })).toBe('"a, b",c\n1,3\n2,\n');
  });

  it('gives a pour as JSON that survives the journey', () => {
    const json = JSON.parse(JSON.stringify(pourJson('Uphill start', record)));
    expect(json.figures.peak_front_speed_m_per_s).toBe(0.15);
    expect(json.folds[0].place_mm).toBeCloseTo(120, 9);
    expect(json.series.time_s).toHaveLength(901);
  });
});
