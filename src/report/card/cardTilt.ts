import type { PourRecord } from '$src/core/pour/record';
import { endOf } from '$src/core/tilt/endOf';
import type { MachineTilt, ProgrammedTilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { type PageUnits, toDegrees } from '$src/core/units';
import { shownTemperature, withUnit } from '../measureText';
import { angleText, countText, secondsNumber, significant } from '../wording';
import type { CardLine, CardTable } from './shopCard';

/** Rows that leave the card on one page. */
const MOST_ROWS = 6;
/** Steps of a stroke that has no stages, or too many. */
const STEPS = 6;

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
      `${significant(toDegrees(turn.rate))} °/s`,
      `${secondsNumber(from)} to ${secondsNumber(time)} s`,
    ];
  });
  return { columns: ['stage', 'from', 'to', 'rate', 'time'], rows, note: '' };
}

/** Even steps of the stroke with the time each is passed, as the pour ran: two rows, so that many steps fit. */
function timesTable({ series, plan }: PourRecord, note: string): CardTable {
  const [start, end] = [plan.tilt.start, endOf(plan.tilt)];
  const steps = Array.from({ length: STEPS + 1 }, (_, step) => start + ((end - start) * step) / STEPS);
  const times = steps.map((inclination) => {
    const at = passedAt(series.inclination, inclination);
    return at === null ? '–' : secondsNumber(series.time[at]!);
  });
  const columns = ['die axis', ...steps.map((inclination) => angleText(inclination, 0))];
  return { columns, rows: [['after, s', ...times]], note };
}

/** First sample at or below this inclination [rad]. */
function passedAt(inclinations: Float64Array, inclination: number): number | null {
  const index = inclinations.findIndex((each) => each <= inclination + 1e-6);
  return index < 0 ? null : index;
}

/** What is set on a machine that falls against its damper; nothing for other tilts. */
export function cardDamper({ plan }: PourRecord, units: PageUnits): CardLine[] {
  return plan.tilt.kind === 'machine' ? damperLines(plan.tilt, units) : [];
}

function damperLines({ machine: { valve, oil } }: MachineTilt, units: PageUnits): CardLine[] {
  const setting =
    valve.by === 'Kv' ? `Kv ${significant(valve.kv)} m³/h` : `${significant(valve.open)} turns open`;
  const temperature = withUnit(shownTemperature(oil.temperature, units));
  return [
    { label: 'damper valve', text: setting, isModel: false },
    { label: 'oil', text: `${oil.grade} at ${temperature}`, isModel: false },
  ];
}
