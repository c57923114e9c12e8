import { describe, expect, it } from 'vitest';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import type { Fold, PourRecord } from '$src/core/pour/record';
import { cavityVolume } from '$src/core/section/cavity';
import { fromDegrees } from '$src/core/units';
import { feederShortage } from '$src/report/feederShortage';
import { nearlyShutReason } from '$src/report/nearlyShut';
import { plainText } from '$src/report/sentence';
import { peakRange, speedCall } from '$src/report/speedCall';
import { verdict } from '$src/report/verdict';
import { inventedFigures, inventedFold, inventedPlan, inventedRecord } from './inventedRecord';

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
      'Sound. Metal rolls in uphill from +23.3°, at no more than 0.15 m/s, under critical; the die is full 6.50 s after first flow.',
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
    const heavy = verdict(peaking(0.2, { folds: [fold('heavy')] }));
    expect(heavy.kind).toBe('folds film');
    expect(plainText(heavy.sentence)).toContain(
      `0.20 m/s, under critical, but its skin folds by ${fold('heavy').kind}`,
    );
    const close = verdict(peaking(0.49, { folds: [fold('heavy')] }));
    expect(close.kind).toBe('folds film');
    expect(plainText(close.sentence)).toContain(`to call, and its skin folds by ${fold('heavy').kind}`);
    expect(verdict(peaking(0.2, { folds: [fold('marked')] })).kind).toBe('near the limit');
    expect(verdict(peaking(0.2, { folds: [fold('slight')] })).kind).toBe('sound');
  });

  it('tells how little time was left where it was little', () => {
    const left = (margin: number) => {
      const { figures } = inventedRecord();
      const record = inventedRecord({ figures: { ...figures, lap: { kind: 'none', margin } } });
      return verdict(record).reasons.map(({ name }) => name);
    };
    expect(left(0.3)).toContain('close to freezing');
    expect(left(0.6)).not.toContain('close to freezing');
  });

  it('calls a pour with so little time left near the limit, never sound', () => {
    const called = (margin: number) => {
      const { figures } = inventedRecord();
      return verdict(inventedRecord({ figures: { ...figures, lap: { kind: 'none', margin } }, folds: [] }))
        .kind;
    };
    expect(called(0.6)).toBe('sound');
    expect(called(0.4)).toBe('near the limit');
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
    expect(flow({ kind: 'already in the die' })).toContain('(how the ladle let it in is not computed)');
    const ladledIn = {
      ...inventedFigures,
      firstFlow: { kind: 'already in the die' },
      peakFrontSpeed: null,
    } as const;
    const quiet = verdict(inventedRecord({ folds: [], figures: ladledIn }));
    expect(quiet.kind).toBe('sound');
    expect(plainText(quiet.sentence)).toMatch(/^Sound from the tilt on\./);
    const poured = inventedRecord({ folds: [], figures: ladledIn });
    const half = {
      ...poured,
      series: { ...poured.series, filledShare: poured.series.filledShare.with(0, 0.62) },
    };
    const unjudged = verdict(half);
    expect(unjudged.kind).toBe('not judged');
    expect(plainText(unjudged.sentence)).toMatch(
      /^Not judged\. Metal stands in 62 % of the die before the tilt begins/,
    );
    expect(plainText(unjudged.sentence)).not.toContain('first flow');
    expect(flow({ kind: 'never' })).toContain('No metal passes the mouth');
    expect(flow({ kind: 'angle', inclination: 0, time: 1 })).toContain('as the die passes level');
  });

  it('says first of a charge smaller than the cavity that no tilt can fill it', () => {
    const whole = inventedRecord();
    const plan = { ...whole.plan, volume: 0.5 * cavityVolume(whole.plan.section) };
    const figures = {
      ...inventedFigures,
      peakFrontSpeed: null,
      filledTime: null,
      fillTime: null,
      finalShare: 0.5,
      lap: { kind: 'misrun', margin: -1 },
    } as const;
    const { kind, reasons } = verdict({ ...inventedRecord({ folds: [], figures }), plan });
    expect(kind).toBe('not filled');
    expect(reasons[0]?.name).toBe('too little metal');
    expect(reasons[0]?.line).toMatch(/no tilt can fill it/);
    // The invented cavities hold 360 cm³.
    const record = { ...inventedRecord({ folds: [], figures }), plan };
    expect(verdict(record).sentence[0]!.text).toBe('Too little metal: 180 cm³ short of the cavity.');
    expect(reasons.map(({ name }) => name)).not.toContain('misrun');
    const held = { ...record, figures: { ...figures, gasHeld: true } };
    expect(verdict(held).sentence[0]!.text).toMatch(/^Too little metal/);
    const quick = { ...record, figures: { ...figures, peakFrontSpeed: 0.9 }, band: null };
    expect(verdict(quick).kind).toBe('folds film');
    expect(verdict(quick).sentence[0]!.text).toBe(
      'Too little metal: 180 cm³ short of the cavity, and folds film.',
    );
  });

  it('names metal that spilled, with its caution, and calls no such pour sound', () => {
    const spilling = (spilled: number) =>
      verdict(inventedRecord({ folds: [], figures: { ...inventedFigures, spilled } }));
    const { kind, sentence, reasons } = spilling(67e-6);
    expect(kind).toBe('spills');
    expect(plainText(sentence)).toMatch(/^Spills metal over a rim\. /);
    expect(plainText(sentence)).toMatch(/67 cm³ of metal spilled over a rim on the way\.$/);
    expect(reasons[0]!.name).toBe('metal spilled');
    expect(reasons[0]!.line).toMatch(/explodes on anything wet/);
    const folding = inventedRecord({
      folds: [fold('heavy')],
      figures: { ...inventedFigures, spilled: 67e-6 },
    });
    expect(verdict(folding).kind).toBe('folds film');
    expect(verdict(folding).sentence[0]!.text).toBe('Spills metal over a rim. Folds film.');
    // A drop that a mesh leaves at a rim.
    expect(plainText(spilling(0.1e-6).sentence)).toMatch(/^Sound\. /);
  });

  const cold = (kind: 'laps' | 'misrun', margin: number, change: Partial<PourRecord['figures']> = {}) =>
    verdict(inventedRecord({ folds: [], figures: { ...inventedFigures, lap: { kind, margin }, ...change } }));

  it('laps when fronts meet cold, which alone folds no film', () => {
    const lap = { ...fold('heavy', 'lap'), cause: 'Two fronts meet cold.' };
    const figures = { ...inventedFigures, lap: { kind: 'laps', margin: 0.4 } } as const;
    const { kind, sentence, reasons } = verdict(inventedRecord({ figures, folds: [lap] }));
    expect(kind).toBe('laps');
    expect(sentence[0]).toEqual({ text: 'Laps.', bold: true });
    expect(reasons[0]).toEqual({ name: 'laps', line: 'Two fronts meet cold.' });
    expect(reasons.filter(({ name }) => name.startsWith('lap'))).toHaveLength(1);
  });

  it('says by how much the slowest place is too late', () => {
    expect(cold('laps', -0.35).reasons[0]!.line).toBe(
      'The slowest place fills 0.35 s after its metal goes stiff.',
    );
  });

  it('misruns when the metal goes stiff short of the end', () => {
    const { kind, sentence, reasons } = cold('misrun', -1, {
      filledTime: null,
      fillTime: null,
      finalShare: 0.62,
    });
    expect(kind).toBe('misrun');
    expect(sentence[0]!.text).toBe('Misrun.');
    expect(reasons.map(({ name }) => name)).toEqual(['misrun', 'under critical speed']);
    expect(reasons[0]!.line).toContain('62 % full');
  });

  it('folds film first when a pour both folds and laps', () => {
    const lap = fold('heavy', 'lap');
    const record = peaking(0.9, { folds: [lap] });
    const figures = { ...record.figures, lap: { kind: 'laps', margin: -0.1 } } as const;
    const { kind, sentence, reasons } = verdict({ ...record, figures });
    expect(kind).toBe('folds film');
    expect(sentence[0]!.text).toBe('Folds film and laps.');
    expect(reasons.map(({ name }) => name)).toEqual(['over critical speed', 'laps']);
    const stiff = { ...figures, lap: { kind: 'misrun', margin: -0.1 } } as const;
    expect(verdict({ ...record, figures: stiff }).sentence[0]!.text).toBe('Folds film and misruns.');
  });

  it('says that gas is held, and the vent that would let it out', () => {
    // 12 mm² for both cavities together.
    const gas: Fold = { ...fold('heavy', 'gas sealed in'), details: { vent_area_for_100_Pa_m2: 12e-6 } };
    const figures = {
      ...inventedFigures,
      filledTime: null,
      fillTime: null,
      finalShare: 0.8,
      gasHeld: true,
    };
    const { kind, sentence, reasons } = verdict(inventedRecord({ folds: [gas], figures }));
    expect(kind).toBe('gas held');
    expect(plainText(sentence)).toContain('Not filled: gas held.');
    expect(plainText(sentence)).toContain('ends 80 % full, held up by gas');
    expect(reasons[0]).toMatchObject({ name: 'gas held' });
    expect(reasons[0]!.line).toContain('about 6.0 mm² of free vent where it is shut in, in each cavity.');
    // Whoever has a vent is not told to have none.
    expect(reasons[0]!.line).toMatch(/^Metal shuts gas in where no vent reaches it/);
    // Its vent lies 195 mm from the mouth, and the invented metal is 30 mm deep there at the end.
    expect(reasons[0]!.line).toMatch(/the vent at 195 mm is covered by metal from [\d.]+ s on\./);
    const plan = { ...inventedPlan, section: { ...inventedPlan.section, vents: [] } };
    const unvented = verdict(inventedRecord({ folds: [gas], figures, plan }));
    expect(unvented.reasons[0]!.line).toMatch(/^Metal shuts gas in that has no open vent/);
    expect(reasons.map(({ name }) => name)).not.toContain('gas sealed in');
    // Once the die is full, gas that was pressed on the way is a fold like any other.
    const filled = inventedRecord({ folds: [gas], figures: { ...inventedFigures, gasHeld: true } });
    expect(verdict(filled).kind).toBe('folds film');
  });

  describe('of gas held', () => {
    const gas: Fold = {
      ...fold('heavy', 'gas sealed in'),
      time: 2,
      details: { vent_area_for_100_Pa_m2: 12e-6 },
    };
    const figures = {
      ...inventedFigures,
      arrivalTime: null,
      filledTime: null,
      fillTime: null,
      finalShare: 0.8,
      gasHeld: true,
    };
    const base = inventedRecord({ folds: [gas], figures });

    /** The die full at the end but for a stretch [m from the mouth]. */
    function withPocket(from: number, to: number): PourRecord['frames'] {
      const { depth } = base.frames;
      const data = depth.data.slice();
      const last = (depth.shape[0] - 1) * depth.stride[0];
      const { x } = base.outline;
      for (let cell = 0; cell < depth.shape[1]; cell++) {
        const middle = (x[cell]! + x[cell + 1]!) / 2 - inventedPlan.section.mouth;
        data[last + cell] = middle > from && middle < to ? 0.01 : 0.03;
      }
      return { ...base.frames, depth: { ...depth, data } };
    }
    const gasLine = (record: PourRecord) =>
      verdict(record).reasons.find(({ name }) => name === 'gas held')!.line;

    it('says where the pocket lies, and that a vent elsewhere does not reach it', () => {
      const line = gasLine({ ...base, frames: withPocket(0.1, 0.15) });
      const [, from, to] =
        /between (\d+) and (\d+) mm from the mouth \(x \d+ to \d+ mm in the table of vents\) where no vent reaches it/.exec(
          line,
        )!;
      // Mesh cells are 5 mm.
      expect(Math.abs(Number(from) - 100)).toBeLessThanOrEqual(5);
      expect(Math.abs(Number(to) - 150)).toBeLessThanOrEqual(5);
      expect(line).toContain('the vent at 195 mm is covered by metal from ');
    });

    it('is what to cure first where it held out what ran over a rim', () => {
      const figures = { ...base.figures, spilled: 20e-6 };
      const { reasons } = verdict({ ...base, figures, frames: withPocket(0.1, 0.15) });
      const line = reasons.find(({ name }) => name === 'metal spilled')!.line;
      expect(line).toContain('cure the gas first');
      expect(line).not.toContain('Ladle less');
    });

    it('does not call a vent covered that opens into the pocket', () => {
      const line = gasLine({ ...base, frames: withPocket(0.15, 0.3) });
      expect(line).toContain('the vent at 195 mm opens into it but lets too little out');
    });

    it('tells which came first where the metal goes stiff besides', () => {
      const stiff = { ...base, figures: { ...figures, lap: { kind: 'misrun', margin: 0 } as const } };
      // The invented front comes to rest at 3.5 s; gas was shut in at 2 s.
      expect(gasLine(stiff)).toMatch(
        /Gas came first: it was shut in at 2\.00 s, before the front came to rest at 3\.4/,
      );
      const late = { ...stiff, folds: [{ ...gas, time: 5 }] };
      expect(gasLine(late)).toMatch(
        /The front came to rest first, at 3\.4\d s, and gas was shut in at 5\.00 s/,
      );
      expect(gasLine(base)).not.toContain('came to rest');
    });
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

describe('gas that gets out only just', () => {
  const way = { share: 0.05, height: 0.8e-3, place: 0.08, time: 2.49, inclination: fromDegrees(-1) };
  const withWay = (share: number) =>
    inventedRecord({ figures: { ...inventedFigures, narrowestGasWay: { ...way, share } } });

  it('is near a limit, and says where and how near', () => {
    const { kind, reasons } = verdict(withWay(0.05));
    expect(kind).toBe('near the limit');
    expect(reasons[0]!.name).toBe('gas nearly shut in');
    expect(reasons[0]!.line).toContain('within 0.80 mm of the roof 80 mm from the mouth');
  });

  const ventedAt = (...places: readonly number[]) => {
    const { section } = inventedPlan;
    const vents = places.map((place) => ({ place: section.mouth + place, area: 2e-5, blocked: 0 }));
    const figures = { ...inventedFigures, narrowestGasWay: { ...way, share: 0.05 } };
    return nearlyShutReason({ figures, plan: { ...inventedPlan, section: { ...section, vents } } })!.line;
  };

  it('asks for a vent past that place, where the die has none there', () => {
    for (const line of [ventedAt(), ventedAt(0.04)])
      expect(line).toContain(': vent the die beyond that place, past x 235 mm in the table of vents.');
  });

  it('says of vents that stand beyond it that they did not serve, and where they are', () => {
    expect(ventedAt(0.04, 0.195)).toContain(
      ': the vent beyond, at x 350 mm, did not serve it by then; put it where metal comes last, or turn more slowly.',
    );
    expect(ventedAt(0.1, 0.195)).toContain(
      ': the vents beyond, at x 255 mm and x 350 mm, did not serve it by then; put them where metal comes last,',
    );
  });

  it('with a wide way is nothing to tell', () => {
    const { kind, reasons } = verdict(withWay(0.1));
    expect(kind).toBe('sound');
    expect(reasons.map(({ name }) => name)).not.toContain('gas nearly shut in');
  });
});

describe('a feeder that cannot feed', () => {
  const heat = heatPlanOf(metalNamed('A356')!, inventedPlan.section)!;
  const filled = (volume: number, change: Partial<PourRecord> = {}) =>
    inventedRecord({ plan: { ...inventedPlan, heat, volume }, folds: [], ...change });
  const cavity = cavityVolume(inventedPlan.section);

  it('lets no pour be called sound without that said', () => {
    const { kind, sentence, reasons } = verdict(filled(1.1 * cavity));
    expect(kind).toBe('sound');
    expect(plainText(sentence)).toMatch(/^Fills quietly; the feeder is short of metal/);
    expect(reasons[0]!.name).toBe('feeder short of metal');
    expect(reasons[0]!.line).toMatch(
      /it can give [\d.]+ cm³, die and feeder draw [\d.]+ cm³ as they cool and freeze, [\d.]+ cm³ of it the feeder itself/,
    );
  });

  it('says that none is there, where no metal is left over the mouth', () => {
    const { sentence } = verdict(filled(cavity));
    expect(plainText(sentence)).toMatch(/^Fills quietly; no metal is left to feed it\./);
  });

  it('stands second beside a limit of the filling, and is not told of what folds', () => {
    const near = verdict(filled(1.1 * cavity, { folds: [fold('marked')] }));
    expect(near.kind).toBe('near the limit');
    expect(near.reasons[1]!.name).toBe('feeder short of metal');
    const folding = verdict(filled(1.1 * cavity, { folds: [fold('heavy')] }));
    expect(plainText(folding.sentence)).toMatch(/^Folds film\./);
  });

  it('is not told where it can feed, or where heat is not known', () => {
    expect(feederShortage(inventedRecord())).toBeNull();
    // A wide feeder under a long roof, over a thin die: the same metal, set otherwise.
    const roof = [
      { x: 0, y: 0.12 },
      { x: 0.02, y: 0.12 },
      { x: 0.155, y: 0.12 },
      { x: 0.155, y: 0.006 },
      { x: 0.355, y: 0.006 },
    ];
    const section = { ...inventedPlan.section, roof };
    const thick = { ...inventedPlan, section, heat: heatPlanOf(metalNamed('A356')!, section), volume: 8e-4 };
    const record = inventedRecord({ plan: thick, folds: [] });
    expect(feederShortage(record)).toBeNull();
    expect(plainText(verdict(record).sentence)).toMatch(/^Sound\./);
  });
});
