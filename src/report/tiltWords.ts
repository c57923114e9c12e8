import { endOf } from '$src/core/tilt/endOf';
import { dryRun } from '$src/core/tilt/machine/dryRun';
import type { FrontLedTilt, KnotTilt, MachineTilt, ProgrammedTilt, Tilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { METRIC, type PageUnits, TEMPERATURE, toDegrees } from '$src/core/units';
import type { InputWords } from './inputWord';
import { angleText, countText, rateText, secondsText, significant } from './wording';

/** A tilt in words, with what it takes: "steady 15 °/s, 8.3 s" or "8 °/s to −6°, then 18 °/s, 9.4 s in all". */
export function tiltText(tilt: Tilt, units: PageUnits = METRIC): string {
  switch (tilt.kind) {
    case 'steady':
      return `steady ${rateText(Math.abs(tilt.rate))}, ${timeText(tilt)}`;
    case 'staged':
      return `${stagesPace(tilt)}, ${timeText(tilt)} in all`;
    case 'machine':
      return machineText(tilt, units);
    case 'front-led':
      return frontLedText(tilt);
    default:
      return `${tilt.kind}, ${significant(tilt.knots.at(-1)?.time ?? 0)} s`;
  }
}

/** As the tilt cell says it; a time that makes no sense is a tilt that is wrong elsewhere. */
const timeText = (tilt: ProgrammedTilt): string =>
  secondsText(turnsOf(tilt).reduce((sum, { time }) => sum + time, 0));

/** A tilt by itself in words, without a pour: a machine's with the time of its empty fall. */
export const loneTiltText = (tilt: Tilt, units: PageUnits): string =>
  tilt.kind === 'machine' ? `${tiltText(tilt, units)}, ${fallText(tilt)}` : tiltText(tilt, units);

/** Without metal; a pour tells how it fell under its own. */
function fallText(tilt: MachineTilt): string {
  const { struckAt, motion } = dryRun(tilt);
  return struckAt === null ? 'empty it does not come to its stop' : `${secondsText(motion.duration)} empty`;
}

function stagesPace({ stages }: Extract<ProgrammedTilt, { readonly kind: 'staged' }>): string {
  const last = stages.length - 1;
  return stages
    .map((stage, index) => {
      const pace = 'rate' in stage ? rateText(Math.abs(stage.rate)) : `${significant(stage.time)} s`;
      return index < last ? `${pace} to ${angleText(stage.to, 0)}` : pace;
    })
    .join(', then ');
}

function startText(start: number): string {
  const degrees = toDegrees(start);
  if (Math.abs(degrees) < 0.05) return '0°, level';
  return `${shownAngle(start)}, ${degrees > 0 ? 'uphill' : 'downhill'}`;
}

/** To a tenth of a degree, without a nought that tells nothing. */
const shownAngle = (angle: number): string => angleText(angle).replace('.0°', '°');

/** Every input of a tilt in words. */
export function tiltWords(tilt: Tilt, units: PageUnits): InputWords[] {
  const group = 'tilt';
  const { start } = tilt;
  const end = endOf(tilt);
  return [
    { name: 'start angle', text: startText(start), decides: start, group, isToTenths: true },
    { name: 'end angle', text: shownAngle(end), decides: end, group, isToTenths: true, isOfTilt: true },
    { name: 'tilt', text: tiltText(tilt, units), decides: paceOf(tilt), group, isOfTilt: true },
    ...smoothingWords(tilt),
    ...('knots' in tilt ? [originWords(tilt)] : []),
    limitsWords(tilt),
  ];
}

/** Where knots come from and how repeats of them strayed: told beside a tilt, and no part of it. */
function originWords({ origin, band, readings }: KnotTilt): InputWords {
  const { smoothedOver: _, ...known } = readings ?? {};
  return {
    name: 'origin of the tilt',
    text: band
      ? `${(origin || 'none given').replace(/\.$/, '')}, ${countText(band.count, 'repeat')}`
      : origin || 'none given',
    decides: [origin, band ?? null, known],
    group: 'tilt',
    isAside: true,
  };
}

/** They bound what was set, and decide nothing themselves; but a front-led tilt is worked out within them. */
const limitsWords = ({ kind, limits }: Tilt): InputWords => ({
  name: "machine's limits",
  text: `${angleText(limits.highestStart, 0)} to ${angleText(limits.lowestEnd, 0)}, ${rateText(limits.slowest)} to ${rateText(limits.quickest)}`,
  decides: limits,
  group: 'tilt',
  ...(kind === 'front-led' ? { isOfTilt: true as const } : { isAside: true as const }),
});

/** Corners that a drive rounds, or readings that a line was drawn through: what a tilt is made smooth over, if anything. */
function smoothingWords(tilt: Tilt): InputWords[] {
  const words = (text: string, decides: unknown): InputWords[] => [
    { name: 'smoothing of the tilt', text, decides, group: 'tilt', isOfTilt: true },
  ];
  if ('smoothing' in tilt) return words(`${significant(tilt.smoothing)} s`, tilt.smoothing);
  if (tilt.kind !== 'measured') return [];
  if (!tilt.readings) return words('not known', null);
  const { smoothedOver } = tilt.readings;
  return words(`readings, over ${significant(smoothedOver)} s`, ['readings', smoothedOver]);
}

function paceOf(tilt: Tilt): unknown {
  switch (tilt.kind) {
    case 'steady':
      return [tilt.kind, tilt.rate];
    case 'staged':
      return [tilt.kind, tilt.stages];
    case 'machine':
      return [tilt.kind, tilt.machine];
    case 'front-led':
      return [tilt.kind, tilt.share, tilt.homeWithin];
    default:
      return [tilt.kind, tilt.knots];
  }
}

function frontLedText({ share, homeWithin }: FrontLedTilt): string {
  const time = homeWithin === null ? '' : `, at the die end within ${significant(homeWithin)} s`;
  return `front-led at ${significant(share * 100)} % of critical${time}`;
}

function machineText({ machine: { valve, oil } }: MachineTilt, units: PageUnits): string {
  const setting = valve.by === 'Kv' ? `Kv ${significant(valve.kv)}` : `${significant(valve.open)} turns open`;
  const { unit, toShown } = TEMPERATURE[units.temperature];
  return `machine, valve ${setting}, ${oil.grade} at ${significant(toShown(oil.temperature))} ${unit}`;
}
