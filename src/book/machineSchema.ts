import * as v from 'valibot';
import { GRADES } from '$src/core/tilt/machine/oil';

/** The tilting machine in a book: shapes and sizes only. */

const number = v.pipe(v.number(), v.finite());
const place = v.strictObject({ x: number, y: number });
const MOST_PARTS = 50;
const LONGEST_NAME = 300;
const name = v.pipe(v.string(), v.maxLength(LONGEST_NAME));

const part = v.strictObject({ name, mass: number, at: place, gyration: number });
const weight = v.strictObject({ mass: number, radius: number, angle: number });
const valve = v.variant('by', [
  v.strictObject({
    by: v.literal('turns'),
    open: number,
    turns: number,
    diameter: number,
    leak: number,
    length: number,
    coefficient: number,
  }),
  v.strictObject({ by: v.literal('Kv'), kv: number }),
]);

export const machineSchema = v.strictObject({
  parts: v.pipe(v.array(part), v.maxLength(MOST_PARTS)),
  weights: v.pipe(v.array(weight), v.maxLength(MOST_PARTS)),
  cylinder: v.strictObject({
    bore: number,
    rod: number,
    shortest: number,
    longest: number,
    attachment: place,
    anchor: place,
  }),
  valve,
  line: v.strictObject({ diameter: number, length: number }),
  oil: v.strictObject({
    grade: v.picklist(GRADES.map(({ name }) => name)),
    temperature: number,
    thinning: v.nullable(v.strictObject({ massShare: number, density: number, at40: number, at100: number })),
  }),
  reservoir: number,
  oilVolume: number,
  bearing: v.strictObject({ radius: number, friction: number }),
  cushion: v.strictObject({ over: number, damping: number }),
  oneWayReturn: v.boolean(),
  returnTorque: v.exactOptional(number),
  highestPressure: number,
});
