import { fromMillimetres } from '$src/core/units';
import type { Point, Section } from './section';

/**
 * Starting shapes: sections to begin from and change. All lengths [m]. Ours, invented; no drawing behind them.
 * x runs from the basin's back wall, y = 0 is the die's floor at the mouth.
 */

interface DieSize {
  /** Width into the page of the basin, and of one cavity [m]. */
  readonly basinWidth: number;
  readonly cavityWidth: number;
  readonly cavities: number;
}

/** A basin on one floor with the die. */
interface BasinSize extends DieSize {
  readonly basinLength: number;
  readonly basinDepth: number;
  /** How far the die's roof reaches back over the basin, so that it holds its metal as the feeder at the end. */
  readonly roofReach: number;
  /** Height of that roof over the floor; without one it goes on as high as the die. */
  readonly roofHeight?: number;
}

export interface FlushBasin extends BasinSize {
  readonly dieLength: number;
  readonly dieHeight: number;
}

export interface PitBehindSill extends DieSize {
  readonly basinLength: number;
  readonly pitDepth: number;
  /** Height of the basin's rims over the die's floor. */
  readonly rimHeight: number;
  /** Flat top of the sill in front of the mouth; 0 for a plain step at the mouth. */
  readonly sillLength: number;
  readonly dieLength: number;
  readonly dieHeight: number;
}

export interface HingeArm extends BasinSize {
  /** The feeder end of the casting next to the mouth, then the arm, tapering, then the boss at the die end. */
  readonly feederLength: number;
  readonly feederHeight: number;
  readonly armLength: number;
  readonly armHeightAtFeeder: number;
  readonly armHeightAtBoss: number;
  readonly bossLength: number;
  readonly bossHeight: number;
  readonly armWidth: number;
}

export interface ThinWall extends BasinSize {
  readonly gateLength: number;
  readonly gateHeight: number;
  readonly wallLength: number;
  readonly wallHeight: number;
}

export interface TaperedLever extends BasinSize {
  readonly leverLength: number;
  /** Height and width of the cavity narrow evenly from the mouth to the die end; `cavityWidth` is the one at the mouth. */
  readonly heightAtMouth: number;
  readonly heightAtEnd: number;
  readonly widthAtEnd: number;
}

const mm = fromMillimetres;

export const FLUSH_BASIN: FlushBasin = {
  basinLength: mm(155),
  basinDepth: mm(95),
  roofReach: mm(52),
  dieLength: mm(200),
  dieHeight: mm(30),
  basinWidth: mm(60),
  cavityWidth: mm(60),
  cavities: 1,
};

export const PIT_BEHIND_SILL: PitBehindSill = {
  basinLength: mm(120),
  pitDepth: mm(25),
  rimHeight: mm(60),
  sillLength: 0,
  dieLength: mm(200),
  dieHeight: mm(30),
  basinWidth: mm(80),
  cavityWidth: mm(60),
  cavities: 1,
};

export const HINGE_ARM: HingeArm = {
  basinLength: mm(130),
  basinDepth: mm(90),
  roofReach: mm(45),
  feederLength: mm(50),
  feederHeight: mm(32),
  armLength: mm(140),
  armHeightAtFeeder: mm(14),
  armHeightAtBoss: mm(10),
  bossLength: mm(40),
  bossHeight: mm(28),
  armWidth: mm(28),
  basinWidth: mm(70),
  cavityWidth: mm(40),
  cavities: 2,
};

export const THIN_WALL: ThinWall = {
  basinLength: mm(120),
  basinDepth: mm(80),
  roofReach: mm(40),
  gateLength: mm(20),
  gateHeight: mm(12),
  wallLength: mm(180),
  wallHeight: mm(5),
  basinWidth: mm(110),
  cavityWidth: mm(110),
  cavities: 1,
};

export const TAPERED_LEVER: TaperedLever = {
  basinLength: mm(140),
  basinDepth: mm(95),
  roofReach: mm(48),
  leverLength: mm(180),
  heightAtMouth: mm(34),
  heightAtEnd: mm(14),
  basinWidth: mm(60),
  cavityWidth: mm(60),
  widthAtEnd: mm(36),
  cavities: 1,
};

/** A straight die with its floor running flush from a deep, partly roofed basin. */
export function flushBasin(size: FlushBasin = FLUSH_BASIN): Section {
  const { basinLength, dieLength, dieHeight } = size;
  const end = basinLength + dieLength;
  return sectionOf(size, {
    floor: [at(0, 0), at(end, 0)],
    roof: [...basinRoof(size, dieHeight), at(end, dieHeight)],
    mouth: basinLength,
    dieRegions: [{ name: 'Die', end, width: size.cavityWidth }],
  });
}

/** A pit in front of the die that keeps its metal behind a sill. */
export function pitBehindSill(size: PitBehindSill = PIT_BEHIND_SILL): Section {
  const { basinLength, pitDepth, rimHeight, sillLength, dieLength, dieHeight } = size;
  const end = basinLength + dieLength;
  const sill = sillLength > 0 ? [at(basinLength - sillLength, 0)] : [at(basinLength, 0)];
  return sectionOf(size, {
    floor: [at(0, -pitDepth), at(basinLength - sillLength, -pitDepth), ...sill, at(end, 0)],
    roof: [at(0, rimHeight), at(basinLength, rimHeight), at(basinLength, dieHeight), at(end, dieHeight)],
    mouth: basinLength,
    dieRegions: [{ name: 'Die', end, width: size.cavityWidth }],
  });
}

/** A hinge arm for a greenhouse vent: feeder end, tapering thin arm, boss. */
export function hingeArm(size: HingeArm = HINGE_ARM): Section {
  const feederEnd = size.basinLength + size.feederLength;
  const armEnd = feederEnd + size.armLength;
  const end = armEnd + size.bossLength;
  return sectionOf(size, {
    floor: [at(0, 0), at(end, 0)],
    roof: [
      ...basinRoof(size, size.feederHeight),
      at(feederEnd, size.feederHeight),
      at(feederEnd, size.armHeightAtFeeder),
      at(armEnd, size.armHeightAtBoss),
      at(armEnd, size.bossHeight),
      at(end, size.bossHeight),
    ],
    mouth: size.basinLength,
    dieRegions: [
      { name: 'Feeder end', end: feederEnd, width: size.cavityWidth },
      { name: 'Arm', end: armEnd, width: size.armWidth },
      { name: 'Boss', end, width: size.cavityWidth },
    ],
  });
}

/** A wide thin wall behind a short gate. */
export function thinWall(size: ThinWall = THIN_WALL): Section {
  const gateEnd = size.basinLength + size.gateLength;
  const end = gateEnd + size.wallLength;
  return sectionOf(size, {
    floor: [at(0, 0), at(end, 0)],
    roof: [
      ...basinRoof(size, size.gateHeight),
      at(gateEnd, size.gateHeight),
      at(gateEnd, size.wallHeight),
      at(end, size.wallHeight),
    ],
    mouth: size.basinLength,
    dieRegions: [
      { name: 'Gate', end: gateEnd, width: size.cavityWidth },
      { name: 'Wall', end, width: size.cavityWidth },
    ],
  });
}

/** The lever that works a vent: one even taper from the mouth to the die end, in height and in width. */
export function taperedLever(size: TaperedLever = TAPERED_LEVER): Section {
  const end = size.basinLength + size.leverLength;
  return sectionOf(size, {
    floor: [at(0, 0), at(end, 0)],
    roof: [
      ...basinRoof(size, size.heightAtMouth),
      ...(size.roofHeight === undefined ? [at(size.basinLength, size.heightAtMouth)] : []),
      at(end, size.heightAtEnd),
    ],
    mouth: size.basinLength,
    dieRegions: [{ name: 'Lever', end, width: size.cavityWidth, widthAtEnd: size.widthAtEnd }],
  });
}

interface Drawing {
  readonly floor: readonly Point[];
  /** Starts with the two rims of the basin's opening. */
  readonly roof: readonly Point[];
  readonly mouth: number;
  readonly dieRegions: Section['regions'];
}

const at = (x: number, y: number): Point => ({ x, y });

/** Back wall, rims, and the roof as far back as it reaches over the basin; down to the die at the mouth where it is higher. */
function basinRoof({ basinLength, basinDepth, roofReach, roofHeight }: BasinSize, throat: number): Point[] {
  const rim = basinLength - roofReach;
  const rims = [at(0, basinDepth), at(rim, basinDepth)];
  if (roofHeight === undefined) return [...rims, at(rim, throat)];
  return [...rims, at(rim, roofHeight), at(basinLength, roofHeight), at(basinLength, throat)];
}

function sectionOf(size: DieSize, { floor, roof, mouth, dieRegions }: Drawing): Section {
  return {
    floor,
    roof,
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [{ name: 'Basin', end: mouth, width: size.basinWidth }, ...dieRegions],
    mouth,
    cavities: size.cavities,
    pivot: at(mouth, 0),
    vents: [{ place: floor.at(-1)!.x, area: size.cavityWidth * VENT_GAP, blocked: 0 }],
  };
}

/** Free gap of a scratch vent at the die end [m], common practice, no source. */
const VENT_GAP = mm(0.15);
