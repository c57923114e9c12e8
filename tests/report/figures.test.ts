import { describe, expect, it } from 'vitest';
import { fromCelsius } from '$src/core/units';
import { figureRows, figureWithUnit } from '$src/report/figures';
import { keyFigures } from '$src/report/keyFigures';
import { inventedFigures, inventedRecord } from './inventedRecord';

const pick = (record: ReturnType<typeof inventedRecord>, key: string) => {
  const row = figureRows(record).find((each) => each.key === key);
  if (!row) throw new Error(`no figure ${key}`);
  return row;
};

describe('figure rows', () => {
  it('keeps the value in the unit its key names', () => {
    const record = inventedRecord();
    expect(pick(record, 'peak_front_speed_place_mm').value).toBeCloseTo(180, 9);
    expect(pick(record, 'first_flow_deg').value).toBeCloseTo(30 - (120 * 0.5) / 9, 9);
    expect(pick(record, 'skin_folded_mm').value).toBeCloseTo(58, 9);
    expect(pick(record, 'mouth_to_end_s').value).toBeCloseTo(3, 9);
  });

  it('writes inclination signed, with a true minus and never a negative nought', () => {
    const at = (inclination: number) =>
      pick(
        inventedRecord({
          figures: { ...inventedFigures, firstFlow: { kind: 'angle', inclination, time: 1 } },
        }),
        'first_flow_deg',
      ).text;
    expect(at(0.4)).toBe('+22.9°');
    expect(at(-0.2112)).toBe('−12.1°');
    expect(at(-1e-6)).toBe('0.0°');
  });

  it('says of a little skin that counts as no fold that it is too little, and of none that there is none', () => {
    const noteOf = (skinFolded: number): string =>
      keyFigures(inventedRecord({ folds: [], figures: { ...inventedFigures, skinFolded } })).find(
        ({ key }) => key === 'skin_folded_mm',
      )!.note;
    expect(noteOf(0.008)).toBe('too little at any place to count as a fold');
    expect(noteOf(0)).toBe('no fold');
  });

  it('says in words what did not happen', () => {
    const never = inventedRecord({
      figures: {
        ...inventedFigures,
        firstFlow: { kind: 'never' },
        peakFrontSpeed: null,
        filledTime: null,
        arrivalTime: null,
      },
    });
    expect(pick(never, 'first_flow_deg')).toMatchObject({ value: null, text: 'never' });
    expect(pick(never, 'peak_front_speed_m_per_s').text).toBe('never in the die');
    expect(pick(never, 'filled_time_s').text).toBe('not filled');
    expect(pick(never, 'mouth_to_end_s').text).toBe('end not reached');
    const ladled = inventedRecord({
      figures: { ...inventedFigures, firstFlow: { kind: 'already in the die' } },
    });
    expect(pick(ladled, 'first_flow_deg').text).toBe('already in the die while ladling');
    expect(pick(ladled, 'mouth_to_end_s').value).toBeNull();
    expect(pick(ladled, 'mouth_to_end_s').text).toBe('not computed: while ladling');
  });

  it('says that gas is held where nothing fills', () => {
    const figures = { ...inventedFigures, filledTime: null, fillTime: null, gasHeld: true };
    expect(pick(inventedRecord({ figures }), 'fill_time_s').text).toBe('not reached: gas held');
  });

  it('gives the temperature of the front and the time left before freezing', () => {
    const figures = {
      ...inventedFigures,
      arrivingTemperature: fromCelsius(655),
      lap: { kind: 'none', margin: 1.5 },
    } as const;
    const record = inventedRecord({ figures });
    expect(pick(record, 'arriving_temperature_C')).toMatchObject({ text: '655', unit: '°C' });
    expect(pick(record, 'lap_margin_s').value).toBe(1.5);
    expect(keyFigures(record).map(({ key }) => key)).toContain('lap_margin_s');
    expect(keyFigures(inventedRecord()).map(({ key }) => key)).not.toContain('lap_margin_s');
  });

  it('has the same keys whatever happened', () => {
    const keys = (record: ReturnType<typeof inventedRecord>) => figureRows(record).map((each) => each.key);
    expect(keys(inventedRecord({ band: null, folds: [] }))).toEqual(keys(inventedRecord()));
    expect(new Set(keys(inventedRecord())).size).toBe(keys(inventedRecord()).length);
  });

  it('adds the unit for sentences, not to words', () => {
    expect(figureWithUnit(pick(inventedRecord(), 'peak_front_speed_m_per_s'))).toBe('0.15 m/s');
    expect(figureWithUnit(pick(inventedRecord({ band: null }), 'peak_front_speed_non_wetting_m_per_s'))).toBe(
      'not computed',
    );
  });
});
