import type { PourRecord } from '$src/core/pour/record';
import { isBenchMachine } from '$src/core/tilt/machine/isBenchMachine';
import type { MachineTilt, ProgrammedTilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { fromDegrees, type PageUnits } from '$src/core/units';
import { shownTemperature, withUnit } from '../measureText';
import { angleText, countText, rateText, secondsNumber, significant } from '../wording';
import type { CardLine, CardTable } from './shopCard';

/** Rows that leave the card on one page. */
const MOST_ROWS = 6;
/** Steps of a stroke that has no stages, or too many, and the least bend that is worth one [rad]. */
const STEPS = 6;
/** No machine is set finer than to a tenth of a degree a second. */
const RATE_DECIMALS = 1;
const LEAST_BEND = fromDegrees(0.3);

/** How the die is turned: its stages where it has them, else angle against time as the pour ran. */
export function cardTilt(record: PourRecord): CardTable {
  const { tilt } = record.plan;
  if (tilt.kind !== 'steady' && tilt.kind !== 'staged') return timesTable(record, '');
  const count = tilt.kind === 'staged' ? tilt.stages.length : 1;
  if (count <= MOST_ROWS) return stagesTable(tilt);
  return timesTable(record, `${countText(count, 'stage')} in all: set them from the book.`);
}

function stagesTable(tilt: ProgrammedTilt): CardTable {
  let time = 0;
  const rows = turnsOf(tilt).map((turn, index) => {
    const from = time;
    time += turn.time;
    return [
      String(index + 1),
      angleText(turn.from),
      angleText(turn.to),
      rateText(turn.rate, RATE_DECIMALS),
      `${secondsNumber(from)} to ${secondsNumber(time)} s`,
    ];
  });
  return { columns: ['stage', 'from', 'to', 'rate', 'time'], rows, note: '' };
}

/** Angle against time as the pour ran, where it bends: between two of these the turn is all but even. Two rows. */
function timesTable({ series }: PourRecord, note: string): CardTable {
  const marks = bendsOf(series.time, series.inclination);
  const columns = ['die axis', ...marks.map((at) => angleText(series.inclination[at]!))];
  return { columns, rows: [['after, s', ...marks.map((at) => secondsNumber(series.time[at]!))]], note };
}

/** Samples that straight lines between tell most of the curve: both ends, then again and again the one that strays most. */
function bendsOf(time: Float64Array, inclination: Float64Array): number[] {
  const end = inclination.findIndex((each) => each <= inclination.at(-1)! + 1e-6);
  const marks = [0, end];
  while (marks.length <= STEPS) {
    const strays = marks.slice(1).map((to, k) => mostStraying(time, inclination, marks[k]!, to));
    const worst = strays.reduce((a, b) => (b.by > a.by ? b : a));
    if (worst.by < LEAST_BEND) break;
    marks.push(worst.at);
    marks.sort((a, b) => a - b);
  }
  return marks;
}

function mostStraying(time: Float64Array, inclination: Float64Array, from: number, to: number) {
  const rate = (inclination[to]! - inclination[from]!) / (time[to]! - time[from]!);
  let worst = { at: from, by: 0 };
  for (let at = from + 1; at < to; at++) {
    const by = Math.abs(inclination[at]! - inclination[from]! - rate * (time[at]! - time[from]!));
    if (by > worst.by) worst = { at, by };
  }
  return worst;
}

/** What is set on a machine that falls against its damper; nothing for other tilts. */
export function cardDamper({ plan }: PourRecord, units: PageUnits): CardLine[] {
  return plan.tilt.kind === 'machine' ? damperLines(plan.tilt, units) : [];
}

function damperLines({ machine }: MachineTilt, units: PageUnits): CardLine[] {
  const { valve, oil } = machine;
  const setting =
    valve.by === 'Kv' ? `Kv ${significant(valve.kv)} m³/h` : `${significant(valve.open)} turns open`;
  const temperature = withUnit(shownTemperature(oil.temperature, units));
  return [
    { label: 'damper valve', text: setting, isModel: false },
    { label: 'oil', text: `${oil.grade} at ${temperature}`, isModel: false },
    ...(isBenchMachine(machine)
      ? [{ label: 'machine', text: 'of an invented shop: not measured on yours', isModel: true }]
      : []),
  ];
}
