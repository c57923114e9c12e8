import { expect, test } from 'vitest';
import { differenceText } from '$src/report/difference';
import type { FigureRow } from '$src/report/figures';

const row = (key: string, value: number | null, text: string, unit = ''): FigureRow => ({
  key,
  label: key,
  value,
  unit,
  text,
});

test('a difference is that of the figures beside it, however they were rounded', () => {
  const warmth = (value: number) => row('arriving_temperature_C', value, value.toFixed(0), '°C');
  expect(differenceText(warmth(630.4), warmth(628.6))).toBe('1 °C colder');
  const flow = (value: number) => row('first_flow_deg', value, `+${value.toFixed(1)}°`, '°');
  expect(differenceText(flow(11.86), flow(11.14))).toBe('0.8° later');
  const skin = (value: number) => row('skin_folded_mm', value, value.toFixed(0), 'mm');
  expect(differenceText(skin(75.6), skin(88.4))).toBe('12 mm more');
  expect(differenceText(skin(6), skin(88.4))).toBe('15 times as much');
  const speed = (value: number) => row('peak_front_speed_m_per_s', value, value.toFixed(2), 'm/s');
  expect(differenceText(speed(0.2049), speed(0.2251))).toBe('10 % faster');
  // Which way is decided unrounded: inside the mesh spread nothing is claimed.
  expect(differenceText(speed(0.104), speed(0.106))).toBe('too close to call');
});

test('figures of unlike fineness differ as finely as the coarser, or as it takes', () => {
  const fill = (value: number, text: string) => row('fill_time_s', value, text, 's');
  expect(differenceText(fill(9.5, '9.50'), fill(12.3, '12.3'))).toBe('2.8 s longer');
  expect(differenceText(fill(9.97, '9.97'), fill(10, '10.0'))).toBe('0.03 s longer');
  expect(differenceText(fill(9.996, '10.0'), fill(10, '10.00'))).toBe('the same');
});

test('below nought and words have their differences too', () => {
  const at = (value: number, text: string) => row('peak_front_speed_inclination_deg', value, text, '°');
  expect(differenceText(at(-3.2, '−3.2°'), at(1.1, '+1.1°'))).toBe('4.3° more uphill');
  const share = (value: number, text: string) => row('share_above_critical_percent', value, text, '%');
  expect(differenceText(share(0.3, 'under 1'), share(12, '12'))).toBe('12 points more');
  expect(differenceText(row('fill_time_s', null, 'not filled'), row('fill_time_s', 2, '2.00'))).toBe('');
});

test('less is told as a part, and one point is one', () => {
  const speed = (value: number) => row('peak_front_speed_m_per_s', value, value.toFixed(2), 'm/s');
  expect(differenceText(speed(0.6), speed(0.3))).toBe('half as fast');
  expect(differenceText(speed(0.3), speed(0.9))).toBe('3.0 times as fast');
  expect(differenceText(speed(1), speed(0.4))).toBe('40 % as fast');
  const skin = (value: number) => row('skin_folded_mm', value, value.toFixed(0), 'mm');
  expect(differenceText(skin(93), skin(30))).toBe('a third as much');
  const share = (value: number) => row('share_above_critical_percent', value, value.toFixed(0), '%');
  expect(differenceText(share(11), share(12))).toBe('1 point more');
});
