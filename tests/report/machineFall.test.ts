import { describe, expect, it } from 'vitest';
import type { MachineFall } from '$src/core/pour/record';
import { fromBar, fromDegrees } from '$src/core/units';
import { machineText } from '$src/report/machineFall';
import { pourJson } from '$src/report/pourFile';
import { plainText } from '$src/report/sentence';
import { verdict } from '$src/report/verdict';
import { inventedRecord } from './inventedRecord';

const cavitates = { kind: 'cavitates', message: 'It draws air.', remedy: 'Use a wider line.' } as const;
const strikes = { kind: 'strikes the stop', message: 'It meets the stop.', remedy: 'Cushion it.' } as const;
const fall: MachineFall = {
  driving: 58,
  drivingNow: 20,
  held: 1.5,
  fastest: fromDegrees(77),
  highestPressure: fromBar(12.7),
  deepestSuction: fromBar(0.14),
  struckAt: fromDegrees(4.7),
  reached: fromDegrees(-90),
  duration: 3,
  loaded: true,
  warnings: [],
};
const recordOf = (warnings: MachineFall['warnings']) => inventedRecord({ machine: { ...fall, warnings } });
const saidOf = (warnings: MachineFall['warnings']) => plainText(verdict(recordOf(warnings)).sentence);

describe('what a machine did in a pour', () => {
  it('is no reason when nothing was wrong, and takes nothing off a sound pour', () => {
    expect(saidOf([])).toMatch(/^Sound\. /);
    expect(verdict(recordOf([])).reasons.some(({ name }) => name.includes('machine'))).toBe(false);
  });

  it('leads the reasons, and a pour it cannot turn is not simply sound', () => {
    const { reasons, kind } = verdict(recordOf([cavitates, strikes]));
    expect(kind).toBe('sound');
    expect(reasons[0]).toEqual({
      name: 'machine: cavitates and strikes the stop',
      line: 'It draws air. It meets the stop.',
    });
    expect(saidOf([cavitates, strikes])).toMatch(/^Sound, but for the machine\. /);
    expect(saidOf([strikes])).toMatch(/^Sound\. /);
  });

  it('is told in lines of text and as data, each warning with what to do', () => {
    expect(machineText(inventedRecord())).toBe('');
    expect(machineText(recordOf([cavitates])).split('\n')).toEqual([
      "  Under its metal the machine met its stop after 3.00 s, at 4.7 °/s; its quickest was 77.0 °/s, the damper's highest pressure 12.7 bar.",
      '  Machine cavitates: It draws air. Use a wider line.',
      '',
    ]);
    const hung = inventedRecord({ machine: { ...fall, struckAt: null, reached: fromDegrees(-40) } });
    expect(machineText(hung)).toContain('came to −40.0° in 3.00 s and not to its stop');
    const { machine } = pourJson('Pour', recordOf([cavitates]));
    expect(machine).toMatchObject({ reached_stop: true, warnings: [cavitates] });
    expect(machine!.highest_pressure_bar).toBeCloseTo(12.7, 9);
    expect(pourJson('Pour', inventedRecord()).machine).toBeUndefined();
  });
});
