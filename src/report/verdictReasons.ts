import type { Fold, FoldSize, PourRecord } from '$src/core/pour/record';
import { toCubicCentimetres, toDegrees } from '$src/core/units';
import { coldOf } from './coldOf';
import { coldReason } from './coldReason';
import { firstFlowText } from './figures';
import { gasHeld } from './gasHeld';
import { gasReason } from './gasReason';
import { machineReason } from './machineFall';
import { nearlyShutReason } from './nearlyShut';
import { shortOfCavity } from './shortCharge';
import { criticalRange, peakRange, type SpeedCall } from './speedCall';
import { spilledReason } from './spilledReason';
import {
  angleText,
  capital,
  countText,
  fixed,
  peakPlaceText,
  percentText,
  secondsText,
  significant,
  speedInRange,
  speedText,
} from './wording';

/** One cause in a few words, and one line on it. */
export interface Reason {
  readonly name: string;
  readonly line: string;
}

const WEIGHT: Readonly<Record<FoldSize, number>> = { heavy: 3, marked: 2, slight: 1 };

function ending(record: PourRecord): Reason | null {
  const { outcome, figures, plan } = record;
  if (outcome.kind === 'stopped') return { name: 'computation stopped', line: outcome.reason };
  if (outcome.kind === 'stopped by the user')
    return {
      name: 'stopped by you',
      line: 'Figures below hold up to the moment of the stop and no further.',
    };
  const isShort = shortOfCavity(plan.section, plan.volume) > 0;
  const isTold = gasHeld({ figures }) || coldOf(record) === 'misrun' || isShort;
  if (figures.filledTime !== null || isTold) return null;
  const poured = significant(toCubicCentimetres(plan.volume));
  const share = percentText(figures.finalShare);
  return { name: 'not filled', line: `The cavity ends ${share} full from a charge of ${poured} cm³.` };
}

/** Said before all else that keeps the die from filling: no tilt and no coat can mend it. */
function shortReason({ plan }: PourRecord): Reason | null {
  const short = shortOfCavity(plan.section, plan.volume);
  if (short === 0) return null;
  const [poured, lacking] = [plan.volume, short].map((volume) => significant(toCubicCentimetres(volume)));
  return {
    name: 'too little metal',
    line: `The charge is ${poured} cm³, and the cavity takes ${lacking} cm³ more: no tilt can fill it.`,
  };
}

function rangeText(record: PourRecord): string {
  const range = peakRange(record);
  if (!range) return '';
  const span = `${fixed(range.from, 2)} to ${fixed(range.to, 2)} m/s`;
  return record.band
    ? `${span} over mesh and capillary stand`
    : `${span} over the mesh; the band of the capillary stand is worked out on finer meshes only`;
}

/** Critical speed with what surface tension leaves open. */
function criticalRangeText({ plan }: PourRecord): string {
  const { criticalSpeed } = plan.liquid;
  return speedInRange(criticalSpeed, criticalRange(criticalSpeed));
}

function speedReason(record: PourRecord, speed: SpeedCall | null): Reason | null {
  const { peakFrontSpeed, peakFrontSpeedPlace, shareAboveCritical } = record.figures;
  if (speed === null || peakFrontSpeed === null) return null;
  const critical = speedText(record.plan.liquid.criticalSpeed);
  const range = rangeText(record);
  if (speed === 'under') return { name: 'under critical speed', line: `${range}; critical is ${critical}.` };
  const at = peakPlaceText(peakFrontSpeedPlace);
  if (speed === 'too close to call')
    return { name: 'close to critical', line: `${range}, against ${criticalRangeText(record)}${at}.` };
  const share = shareAboveCritical ? ` on ${percentText(shareAboveCritical)} of the die` : '';
  return { name: 'over critical speed', line: `Above ${critical}${share}, quickest${at}; ${range}.` };
}

function bandOfFirstFlow({ band }: PourRecord): string {
  if (!band) return '';
  const [off, full] = [firstFlowText(band.gateOff.firstFlow), firstFlowText(band.nonWetting.firstFlow)];
  return ` (${off} without the capillary stand, ${full} at a contact angle of 180°)`;
}

function firstFlowReason(record: PourRecord): Reason | null {
  const { firstFlow } = record.figures;
  if (firstFlow.kind === 'never')
    return { name: 'never in the die', line: 'The charge stays behind the mouth through the whole stroke.' };
  if (firstFlow.kind === 'already in the die')
    return {
      name: 'in the die at ladling',
      line: 'The first metal enters at the speed of the ladle, which is not computed.',
    };
  if (toDegrees(firstFlow.inclination) >= -0.5) return null;
  return {
    name: 'first flow downhill',
    line: `First past the mouth at ${angleText(firstFlow.inclination)}${bandOfFirstFlow(record)}: it runs instead of rolling in.`,
  };
}

const sizeWord = ({ size }: Fold): string => capital(size);

const heavierFirst = (a: Fold, b: Fold): number => WEIGHT[b.size] - WEIGHT[a.size] || a.time - b.time;

function foldReasons(record: PourRecord): Reason[] {
  const told = ['front over critical', 'lap', ...(gasHeld(record) ? ['gas sealed in'] : [])];
  const others = record.folds.filter((fold) => !told.includes(fold.kind)).toSorted(heavierFirst);
  const kinds = [...new Set(others.map((fold) => fold.kind))];
  return kinds.map((kind) => {
    const ofKind = others.filter((fold) => fold.kind === kind);
    const count =
      ofKind.length > 1
        ? `, ${countText(ofKind.length, 'time')}, first at ${secondsText(ofKind[0]!.time)}`
        : '';
    return { name: kind, line: `${sizeWord(ofKind[0]!)}${count}. ${ofKind[0]!.cause}` };
  });
}

/** All that speaks for the verdict, the weightiest first. */
export function verdictReasons(record: PourRecord, speed: SpeedCall | null): Reason[] {
  const bySpeed = speedReason(record, speed);
  const isQuick = speed === 'over' || speed === 'too close to call';
  const ordered = [
    machineReason(record),
    shortReason(record),
    spilledReason(record),
    ending(record),
    gasReason(record),
    nearlyShutReason(record),
    speed === 'over' ? null : coldReason(record),
    isQuick ? bySpeed : null,
    speed === 'over' ? coldReason(record) : null,
    firstFlowReason(record),
    ...foldReasons(record),
    isQuick ? null : bySpeed,
  ];
  return ordered.filter((reason): reason is Reason => reason !== null);
}
