import { describe, expect, it } from 'vitest';
import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import { planHash } from '$src/core/pour/planHash';
import { checkSection } from '$src/core/section/checkSection';
import { motionOf } from '$src/core/tilt/motionOf';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { basinDepth, basinLength, withBasinDepth } from '$src/report/study/basin';
import { planAt } from '$src/report/study/planAt';
import { settingsOf } from '$src/report/study/settings';
import { samplePlan } from './samplePlan';

const base = samplePlan();

function planned(values: Record<string, number>) {
  const at = planAt(base, values);
  if ('refused' in at) throw new Error(at.refused.reason);
  return at.plan;
}

describe('a plan with settings changed', () => {
  it('is the same plan, to the hash, when a setting is put to what it is', () => {
    for (const setting of settingsOf(base)) {
      const now = setting.read(base);
      if (now === null) continue;
      const [back] = [setting.read(planned({ [setting.id]: now }))];
      expect(back, setting.id).toBeCloseTo(now, 9);
    }
    expect(planHash(planned({ 'tilt.start': base.tilt.start }))).toBe(planHash(base));
  });

  it('turns the whole stroke in the time asked for, from whatever start', () => {
    for (const start of [0, 20, 45]) {
      const { tilt } = planned({ 'tilt.time': 7, 'tilt.start': fromDegrees(start) });
      expect(motionOf(tilt).duration).toBeCloseTo(7, 9);
      expect(tilt.start).toBeCloseTo(fromDegrees(start), 12);
    }
  });

  it('keeps the volume of the charge when the tilt or the basin changes', () => {
    expect(planned({ 'tilt.start': 0 }).volume).toBe(base.volume);
    expect(planned({ 'basin.length': fromMillimetres(180) }).volume).toBe(base.volume);
  });

  it('reads a fill level at the start that is asked for with it', () => {
    const plan = planned({ 'charge.fromLip': fromMillimetres(-5), 'tilt.start': fromDegrees(20) });
    expect(fillLevelFromVolume(plan.section, fromDegrees(20), plan.volume)).toBeCloseTo(
      fromMillimetres(-5),
      6,
    );
  });

  it('moves the back wall and nothing past it', () => {
    const { section } = planned({ 'basin.length': fromMillimetres(200) });
    expect(basinLength(section)).toBeCloseTo(fromMillimetres(200), 12);
    expect(checkSection(section)).toEqual([]);
    const fromMouth = ({ roof, mouth }: typeof section) => roof.slice(2).map(({ x, y }) => [x - mouth, y]);
    fromMouth(section).forEach(([x, y], index) => {
      const [before, height] = fromMouth(base.section)[index]!;
      expect(x).toBeCloseTo(before!, 12);
      expect(y).toBe(height);
    });
  });

  it('sinks a flush floor to a pit and brings it back', () => {
    const { section } = planned({ 'basin.depth': fromMillimetres(20) });
    expect(basinDepth(section)).toBeCloseTo(fromMillimetres(20), 12);
    expect(checkSection(section)).toEqual([]);
    expect(withBasinDepth(section, 0).floor).toEqual(base.section.floor);
  });
});

describe('widths', () => {
  const [basin, die] = base.section.regions;
  const section = { ...base.section, regions: [basin!, { ...die!, widthAtEnd: 0.08 }] };

  it('of a region that tapers are two settings, of another one', () => {
    const ids = settingsOf({ ...base, section }).flatMap(({ id }) => (id.includes('.width') ? [id] : []));
    expect(ids).toEqual(['0.width', '1.width', '1.widthAtEnd'].map((end) => `section.regions.${end}`));
  });

  it('change by themselves', () => {
    const at = planAt({ ...base, section }, { 'section.regions.1.widthAtEnd': 0.06 });
    expect('plan' in at && at.plan.section.regions).toEqual([basin, { ...die, widthAtEnd: 0.06 }]);
  });
});

describe('what cannot be poured is refused with its reason', () => {
  it.each([
    ['machine', { 'tilt.start': fromDegrees(80) }],
    ['machine', { 'tilt.time': 0.01 }],
    ['section', { 'basin.length': fromMillimetres(20) }],
    ['charge', { 'charge.fromLip': 0.4 }],
  ] as const)('by the %s: %j', (by, values) => {
    const at = planAt(base, values);
    expect(at).toMatchObject({ refused: { by } });
    if ('refused' in at) expect(at.refused.reason.length).toBeGreaterThan(20);
  });

  it('says of a basin too short to ladle into that it is', () => {
    const at = planAt(base, { 'basin.length': fromMillimetres(60) });
    expect('refused' in at && at.refused.reason).toMatch(/too little of the basin open to ladle into/);
  });

  it('throws at a setting no pour has', () => {
    expect(() => planAt(base, { 'oven.door': 1 })).toThrow(RangeError);
  });
});
