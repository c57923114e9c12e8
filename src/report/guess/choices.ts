import type { PourRecord } from '$src/core/pour/record';
import { toDegrees } from '$src/core/units';
import { MESH_SPREAD, speedCall } from '../speedCall';
import { angleText, percentText, secondsText, speedText } from '../wording';
import type { GuessAsk } from './ask';
import { type TeachersAnswers, teachersAnswer, teachersChoices } from './teachersAnswers';

export interface Choice {
  readonly key: string;
  readonly label: string;
}

/** A pour that is guessed about. */
export interface AskedPour {
  readonly id: string;
  readonly name: string;
}

/** What is right, as one of the choices, and what it rests on: figures, or the teacher's reason. */
export interface Answer {
  readonly key: string;
  readonly because: string;
  /** Whose word it is; absent = the model's. */
  readonly by?: 'teacher';
}

const CHOICES = {
  'speed call': [
    { key: 'under', label: 'stays under critical speed' },
    { key: 'too close to call', label: 'too close to critical to call' },
    { key: 'over', label: 'runs over critical speed' },
  ],
  'first flow': [
    { key: 'uphill', label: 'climbs in, the die still uphill' },
    { key: 'level', label: 'comes in as the die passes level' },
    { key: 'downhill', label: 'runs in, the die already downhill' },
    { key: 'already in the die', label: 'is in the die before the tilt' },
    { key: 'never', label: 'never comes in' },
  ],
  filling: [
    { key: 'warm', label: 'fills while it is warm enough' },
    { key: 'laps', label: 'fills, but laps somewhere' },
    { key: 'not filled', label: 'does not fill' },
  ],
} as const;

export const CLOSE = 'too close';

/** The choices there are; none where the answer is drawn. `own`: the teacher's, where those are asked for. */
export function choicesOf(
  ask: GuessAsk,
  pours: readonly AskedPour[],
  own: TeachersAnswers | null = null,
): readonly Choice[] {
  if (ask === 'front speed') return [];
  if (ask === 'own answers') return own ? teachersChoices(own) : [];
  if (ask !== 'quickest') return CHOICES[ask];
  return [
    ...pours.map(({ id, name }) => ({ key: id, label: name })),
    { key: CLOSE, label: 'the fastest two are alike' },
  ];
}

/**
 * The answer to a question of choices: the teacher's where it is asked for, else the computed one about the first pour or
 * all of them; null when there is none.
 */
export function answerOf(
  ask: GuessAsk,
  pours: readonly AskedPour[],
  records: readonly PourRecord[],
  own: TeachersAnswers | null = null,
): Answer | null {
  if (ask === 'own answers') return own && teachersAnswer(own);
  const [record] = records;
  if (!record) return null;
  switch (ask) {
    case 'front speed':
      return null;
    case 'speed call':
      return speedAnswer(record);
    case 'first flow':
      return flowAnswer(record);
    case 'filling':
      return fillingAnswer(record);
    case 'quickest':
      return quickestAnswer(pours, records);
  }
}

function speedAnswer(record: PourRecord): Answer | null {
  const key = speedCall(record);
  const { peakFrontSpeed } = record.figures;
  if (key === null || peakFrontSpeed === null) return null;
  const critical = speedText(record.plan.liquid.criticalSpeed);
  return {
    key,
    because: `The front reaches ${speedText(peakFrontSpeed)}; critical is ${critical}, and both have a band.`,
  };
}

/** Degrees either side of level that are called level. */
const LEVEL = 0.5;

function flowAnswer({ figures: { firstFlow } }: PourRecord): Answer {
  if (firstFlow.kind !== 'angle') return { key: firstFlow.kind, because: flowWords(firstFlow.kind) };
  const degrees = toDegrees(firstFlow.inclination);
  const key = degrees > LEVEL ? 'uphill' : degrees < -LEVEL ? 'downhill' : 'level';
  return {
    key,
    because: `Metal first passes the mouth with the die axis at ${angleText(firstFlow.inclination)}.`,
  };
}

const flowWords = (kind: 'already in the die' | 'never'): string =>
  kind === 'never' ? 'No metal passes the mouth.' : 'Metal stands in the die before the tilt begins.';

function fillingAnswer({ figures }: PourRecord): Answer {
  const { lap, filledTime, fillTime, finalShare } = figures;
  if (filledTime === null)
    return { key: 'not filled', because: `The die ends ${percentText(finalShare)} full.` };
  const time = `It is full ${secondsText(fillTime ?? filledTime)} after first flow`;
  if (lap && lap.kind !== 'none')
    return { key: 'laps', because: `${time}, but its coldest place had gone stiff before.` };
  const margin =
    lap && Number.isFinite(lap.margin)
      ? `, with ${secondsText(lap.margin)} to spare at the coldest place`
      : '';
  return { key: 'warm', because: `${time}${margin}.` };
}

function quickestAnswer(pours: readonly AskedPour[], records: readonly PourRecord[]): Answer | null {
  const peaks = records.map(({ figures }) => figures.peakFrontSpeed);
  if (records.length < pours.length || peaks.some((peak) => peak === null)) return null;
  const ranked = pours
    .map((pour, index) => ({ ...pour, peak: peaks[index]! }))
    .sort((a, b) => b.peak - a.peak);
  const because = `${ranked.map(({ name, peak }) => `${name}: ${speedText(peak)}`).join('; ')}.`;
  const [first, second] = ranked;
  if (!first) return null;
  const isClose = second !== undefined && first.peak * (1 - MESH_SPREAD) <= second.peak;
  return { key: isClose ? CLOSE : first.id, because };
}
