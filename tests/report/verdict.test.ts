import { describe, expect, it } from 'vitest';
import type { Fold, PourRecord } from '$src/core/pour/record';
import { fromDegrees } from '$src/core/units';
import { plainText } from '$src/report/sentence';
import { peakRange, speedCall } from '$src/report/speedCall';
import { verdict } from '$src/report/verdict';
import { inventedFigures, inventedFold, inventedRecord } from './inventedRecord';

/** A pour whose band is narrow about one peak, so that only mesh and surface tension count. */
function peaking(peakFrontSpeed: number, change: Partial<PourRecord> = {}): PourRecord {
  const end = { firstFlow: inventedFigures.firstFlow, peakFrontSpeed, arrivalTime: 3 };
  return inventedRecord({
    figures: { ...inventedFigures, peakFrontSpeed, shareAboveCritical: peakFrontSpeed > 0.5 ? 0.4 : 0 },
    band: { gateOff: end, nonWetting: end, meshCells: 100 },
    folds: [],
    ...change,
  });
}

const fold = (size: Fold['size'], kind: Fold['kind'] = 'end impact'): Fold => ({
  ...inventedFold,
  size,
  kind,
});

describe('speed against critical, both with their bands', () => {
  // Mesh spread 8 %, critical speed 0.50 m/s ± 6 %: under needs peak × 1.08 < 0.47, over needs peak × 0.92 > 0.53.
  it.each([
    [0.43, 'under'],
    [0.44, 'too close to call'],
    [0.5, 'too close to call'],
    [0.57, 'too close to call'],
    [0.58, 'over'],
  ])('%d m/s is %s', (peak, call) => expect(speedCall(peaking(peak))).toBe(call));

  it('takes the capillary band in', () => {
    const record = inventedRecord();
    expect(peakRange(record)!.to).toBeCloseTo(0.17 * 1.08, 12);
    expect(peakRange(record)!.from).toBeCloseTo(0.15 * 0.92, 12);
    const wide = { ...record.band!, gateOff: { ...record.band!.gateOff, peakFrontSpeed: 0.6 } };
    expect(speedCall({ ...record, band: wide })).toBe('too close to call');
  });
});

describe('verdict', () => {
  it('is sound when the front is slow and the die fills', () => {
    const { kind, sentence } = verdict(inventedRecord());
    expect(kind).toBe('sound');
    expect(plainText(sentence)).toBe(
      'Sound. Metal rolls in uphill from +23.3°, at no more than 0.15 m/s; the die is full 6.50 s after first flow.',
    );
    expect(sentence[0]).toEqual({ text: 'Sound.', bold: true });
  });

  it('folds film over critical, and says where, how far and how late', () => {
    const late = { kind: 'angle', inclination: fromDegrees(-12.1), time: 0.8 } as const;
    const record = peaking(0.81);
    const { kind, sentence, reasons } = verdict({
      ...record,
      figures: { ...record.figures, firstFlow: late },
    });
    expect(kind).toBe('folds film');
    expect(plainText(sentence)).toContain('leaves the basin at −12.1°, with the die already downhill');
    expect(plainText(sentence)).toContain('0.81 m/s, 1.6 times critical');
    expect(reasons.map(({ name }) => name)).toEqual(['over critical speed', 'first flow downhill']);
    expect(reasons[0]!.line).toContain('Above 0.50 m/s on 40 % of the die');
  });

  it('folds film under critical when a heavy fold of another kind happened', () => {
    expect(verdict(peaking(0.2, { folds: [fold('heavy')] })).kind).toBe('folds film');
    expect(verdict(peaking(0.2, { folds: [fold('marked')] })).kind).toBe('near the limit');
    expect(verdict(peaking(0.2, { folds: [fold('slight')] })).kind).toBe('sound');
  });

  it('never calls an unfilled or stopped pour sound', () => {
    const short = inventedRecord({
      figures: { ...inventedFigures, filledTime: null, fillTime: null, finalShare: 0.62 },
    });
    expect(verdict(short).kind).toBe('not filled');
    expect(plainText(verdict(short).sentence)).toContain('ends 62 % full');
    const stopped = { ...short, outcome: { kind: 'stopped', reason: 'Depth is not finite.' } } as const;
    expect(verdict(stopped).kind).toBe('stopped');
    expect(verdict(stopped).reasons[0]).toEqual({
      name: 'computation stopped',
      line: 'Depth is not finite.',
    });
  });

  it('has three states of first flow', () => {
    const flow = (firstFlow: PourRecord['figures']['firstFlow']) =>
      plainText(verdict(inventedRecord({ figures: { ...inventedFigures, firstFlow } })).sentence);
    expect(flow({ kind: 'already in the die' })).toContain('stands in the die before the tilt begins');
    expect(flow({ kind: 'never' })).toContain('No metal passes the mouth');
    expect(flow({ kind: 'angle', inclination: 0, time: 1 })).toContain('as the die passes level');
  });

  it('gives three reasons at most', () => {
    const folds = (['front over critical', 'end impact', 'return wave', 'skin contraction'] as const).map(
      (kind) => fold('heavy', kind),
    );
    const { reasons } = verdict(peaking(0.9, { folds }));
    expect(reasons).toHaveLength(3);
    expect(reasons.map(({ name }) => name)).not.toContain('front over critical');
  });
});
