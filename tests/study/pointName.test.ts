import { expect, test } from 'vitest';
import type { StudyCell } from '$src/cells/kinds';
import { namedByKind } from '$src/cells/studyName';
import { fromDegrees } from '$src/core/units';
import { curveOf } from '$src/report/study/curve';
import type { PointFigures } from '$src/report/study/pointFigures';
import { pointName } from '$src/report/study/pointName';
import type { NamedAxis } from '$src/report/study/studyFile';
import { sampleBook } from '../book/sample';

const axis = (setting: string, name: string, quantity: NamedAxis['quantity']): NamedAxis => ({
  setting,
  name,
  quantity,
  from: 0,
  to: 1,
  points: 2,
  setPoint: null,
});

test('a pour of a point is called after what differs there', () => {
  const level = axis('charge.level', 'fill level', 'level');
  expect(pointName([level], { 'charge.level': -0.011 })).toBe('11 mm under');
  expect(pointName([level], { 'charge.level': 0.002 })).toBe('2 mm over');
  expect(pointName([level], { 'charge.level': 0 })).toBe('at the lip');
  const axes = [axis('charge.mass', 'charge', 'mass'), axis('tilt.rate', 'rate', 'rate')];
  expect(pointName(axes, { 'charge.mass': 1.4, 'tilt.rate': fromDegrees(5) })).toBe('1.4 kg, 5 °/s');
});

test('a study that nobody named is called after how many settings it varies', () => {
  const book = sampleBook();
  const study = { axes: [{ setting: 'tilt.time', from: 2, to: 30, points: 8 }] };
  const cell = { kind: 'study', name: 'Pour window 2', study } as unknown as StudyCell;
  expect(namedByKind(book, cell).name).toBe('Curve');
  expect(namedByKind(book, { ...cell, name: 'How slow may it be' }).name).toBe('How slow may it be');
  const two = { ...cell, name: 'Curve', study: { ...cell.study, axes: [study.axes[0]!, study.axes[0]!] } };
  expect(namedByKind({ ...book, cells: [] }, two).name).toBe('Pour window');
});

test('first flow is a figure of a curve, before level and after it', () => {
  const flows = [fromDegrees(12), fromDegrees(-3)];
  const results = new Map(
    flows.map((firstFlow, point) => [point, { figures: { firstFlow } as unknown as PointFigures }]),
  );
  const curve = curveOf(axis('charge.mass', 'charge', 'mass'), 'firstFlow', results);
  expect(curve.y.map((flow) => Math.round(flow))).toEqual([12, -3]);
  expect(curve.sentence).toBe('From \u22123.0° at charge 1 kg to +12.0° at 0 kg.');
});
