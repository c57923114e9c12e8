import * as v from 'valibot';
import { FAULTS } from '$src/report/castings/casting';

/** The castings log in a book: shapes and sizes only. */

const MOST_ROWS = 2000;
const LONGEST = 300;
const number = v.pipe(v.number(), v.finite());
const reading = v.nullable(number);
const text = v.pipe(v.string(), v.maxLength(LONGEST));
const faults = FAULTS.map(({ fault }) => fault);

const row = v.strictObject({
  date: text,
  pour: v.nullable(v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST))),
  startAngle: reading,
  tiltTime: reading,
  mass: reading,
  metalTemperature: reading,
  dieTemperature: reading,
  good: number,
  bad: v.strictObject({ fold: number, lap: number, gas: number, shrinkage: number, other: number }),
  remark: text,
});

export const castingsFields = {
  castings: v.pipe(v.array(row), v.maxLength(MOST_ROWS)),
  counted: v.picklist([...faults, 'any']),
  against: v.picklist(['front speed', 'lap margin']),
};
