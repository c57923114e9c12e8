import { describe, expect, it } from 'vitest';
import { flushBasin } from '$src/core/section/shapes';
import { fromMillimetres, toMillimetres } from '$src/core/units';
import { type Placing, wallOf } from '$src/fromDrawing/placing';
import { readSvg } from '$src/fromDrawing/readSvg';
import { sectionFrom } from '$src/fromDrawing/sectionFrom';
import { drawn, SVG } from './drawn';

const millimetre: Placing = { metresPerUnit: fromMillimetres(1), quarterTurns: 0, isMirrored: false };

describe('a section from a drawing', () => {
  const before = flushBasin();
  const { lines } = drawn(readSvg(SVG));
  const choice = { floor: lines[0]!, roof: lines[1]!, placing: millimetre, mouth: 0.155, openTo: 0.103 };

  it('is the one that was drawn', () => {
    const { section, issues } = sectionFrom(choice, before);
    expect(issues).toEqual([]);
    expect(section!.floor).toEqual([
      { x: 0, y: 0 },
      { x: 0.355, y: 0 },
    ]);
    expect(section!.roof).toEqual([
      { x: 0, y: 0.1 },
      { x: 0.103, y: 0.1 },
      { x: 0.103, y: 0.03 },
      { x: 0.355, y: 0.03 },
    ]);
    expect(section!.openings).toEqual([{ wall: 'roof', from: 0, to: 1 }]);
    expect(section!.regions.map(({ end }) => end)).toEqual([0.155, 0.355]);
    expect(section!.regions[1]!.width).toBe(before.regions.at(-1)!.width);
  });

  it('keeps vents as far from the die end as they were, and within the die', () => {
    const vents = [0.345, 0.1].map((place) => ({ place, area: 1e-5, blocked: 0 }));
    const placing = { ...millimetre, metresPerUnit: fromMillimetres(2) };
    const longer = sectionFrom({ ...choice, placing, mouth: 0.31, openTo: 0.206 }, { ...before, vents });
    expect(longer.issues).toEqual([]);
    expect(longer.section!.vents.map(({ place }) => place)).toEqual([0.7, 0.455]);
    const shorter = sectionFrom(choice, { ...before, vents });
    expect(shorter.section!.vents.map(({ place }) => place)).toEqual([0.345, 0.155]);
  });

  it('is scaled, turned and mirrored into place', () => {
    const turnedText = SVG.replace('translate(10 20)', 'translate(100 0) rotate(90) scale(0.5)');
    const turned = drawn(readSvg(turnedText)).lines;
    const placing: Placing = { metresPerUnit: fromMillimetres(2), quarterTurns: 1, isMirrored: false };
    const { section, issues } = sectionFrom(
      { ...choice, floor: turned[0]!, roof: turned[1]!, placing },
      before,
    );
    expect(issues).toEqual([]);
    expect(section!.roof.map(({ x }) => Math.round(toMillimetres(x)))).toEqual([0, 103, 103, 355]);
    const mirroredText = SVG.replace('translate(10 20)', 'scale(-1 1)');
    const mirrored = drawn(readSvg(mirroredText)).lines;
    const back = sectionFrom(
      { ...choice, floor: mirrored[0]!, roof: mirrored[1]!, placing: { ...millimetre, isMirrored: true } },
      before,
    );
    expect(back.section!.roof).toEqual(sectionFrom(choice, before).section!.roof);
  });

  it('comes from one closed outline too: its lower side is the floor, its upper the roof', () => {
    const outline = drawn(readSvg('<svg><path d="M0 100H355V70H103V0H0Z"/></svg>')).lines[0]!;
    const { section, issues } = sectionFrom({ ...choice, floor: outline, roof: outline }, before);
    expect(issues).toEqual([]);
    expect(section!.roof).toEqual(sectionFrom(choice, before).section!.roof);
    const otherWay = drawn(readSvg('<svg><path d="M103 70V0H0V100H355V70Z"/></svg>')).lines[0]!;
    expect(sectionFrom({ ...choice, floor: otherWay, roof: otherWay }, before).section!.floor).toEqual(
      section!.floor,
    );
  });

  it('reaches to the end wall of an outline that has a fillet there', () => {
    const path = 'M0 100H355V78A8 8 0 0 0 347 70H103V0H0Z';
    const outline = drawn(readSvg(`<svg><path d="${path}"/></svg>`)).lines[0]!;
    const { section, issues, stray } = sectionFrom({ ...choice, floor: outline, roof: outline }, before);
    expect(issues).toEqual([]);
    expect(section!.floor.at(-1)).toEqual({ x: 0.355, y: 0 });
    expect(section!.roof.at(-1)).toEqual({ x: 0.355, y: 0.022 });
    expect(section!.roof.find(({ x }) => x === 0.347)).toEqual({ x: 0.347, y: 0.03 });
    expect(stray).toBe(1e-4);
  });

  it('thins what is drawn with more points than it needs', () => {
    const fine = Array.from(
      { length: 2001 },
      (_, index) => `${index * 0.1775},${100 + Math.sin(index / 300)}`,
    ).join(' ');
    const floor = drawn(readSvg(`<svg><polyline points="${fine}"/></svg>`)).lines[0]!;
    const { section } = sectionFrom(
      {
        ...choice,
        floor,
        roof: { ...lines[1]!, points: lines[1]!.points.map(({ x, y }) => ({ x: x - 10, y: y + 20 })) },
      },
      before,
    );
    expect(section!.floor.length).toBeGreaterThan(4);
    expect(section!.floor.length).toBeLessThanOrEqual(120);
  });

  it('explains a line that runs back on itself, with its place', () => {
    const overhang = drawn(readSvg('<svg><path id="hook" d="M0 0H200L150 20H355"/></svg>')).lines[0]!;
    const wall = wallOf(overhang, 'floor', millimetre);
    if (!('issues' in wall)) throw new Error('It was taken.');
    expect(wall.issues[0]!.message).toBe('“hook” runs back on itself 150 mm along, \u221220 mm up.');
    expect(wall.issues[0]!.at!.x).toBeCloseTo(0.15, 9);
    expect(wall.issues[0]!.remedy).toContain('without the overhang');
  });

  it('explains a floor and roof that do not lie over each other, or are swapped', () => {
    const short = { ...lines[1]!, points: lines[1]!.points.slice(0, 2) };
    expect(sectionFrom({ ...choice, roof: short }, before).issues[0]!.message).toContain(
      'do not lie over each other',
    );
    const swapped = sectionFrom({ ...choice, floor: lines[1]!, roof: lines[0]! }, before);
    expect(swapped.issues.length).toBeGreaterThan(0);
    expect(swapped.issues[0]!.remedy).not.toBe('');
  });

  it('cuts off what stands over at the ends, and says how much', () => {
    const long = {
      ...lines[0]!,
      points: lines[0]!.points.map(({ x, y }) => ({ x: x > 100 ? x + 12 : x, y })),
    };
    const { section, cutOff, issues } = sectionFrom({ ...choice, floor: long }, before);
    expect(issues).toEqual([]);
    expect(cutOff).toBeCloseTo(0.012, 9);
    expect(section!.floor.at(-1)!.x).toBeCloseTo(0.355, 9);
  });

  it('explains an upright line', () => {
    const upright = drawn(readSvg('<svg><path d="M5 0V100"/></svg>')).lines[0]!;
    expect(sectionFrom({ ...choice, floor: upright }, before).issues[0]!.message).toContain(
      'no length along the die',
    );
  });
});
