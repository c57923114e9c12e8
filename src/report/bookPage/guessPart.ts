import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { LENGTH, type PageUnits, SPEED } from '$src/core/units';
import { criticalBand, lengthMark, placeDomain, speedAbove, speedMark, speedTitle } from '../chartWords';
import { escaped } from '../drawing/paper';
import type { GuessAsk } from '../guess/ask';
import { type AskedPour, answerOf, choicesOf } from '../guess/choices';
import { drawnPlaces, drawnWords } from '../guess/frontSpeedGuess';
import { outcomeOf } from '../guess/outcome';
import { curveIn, inUnits, speedsIn } from '../inUnits';
import { bold, plain } from '../sentence';
import { frontSpeedCurve } from '../series';
import { placeText, speedText } from '../wording';
import { type ChartLine, lineChart } from './lineChart';
import { plainTable } from './table';
import { answer, list, paragraph, said } from './words';

/** A guess as the page tells it. */
export interface Guessed {
  readonly question: string;
  readonly ask: GuessAsk;
  readonly pours: readonly AskedPour[];
  /** Front speed as drawn [m/s]; empty before anything is drawn. */
  readonly drawn: readonly number[];
  readonly picked: string | null;
  readonly given: boolean;
  /** The first pour as it is set; null while that is not in order. */
  readonly plan: PourPlan | null;
  /** Of its pours as they are set now; fewer than the pours while some are not computed. Only told once the guess is given. */
  readonly records: readonly PourRecord[];
}

/** The question, the guess, and what came of it once it is given: before that nothing that was computed is told. */
export function guessPart(guess: Guessed, units: PageUnits): string {
  const question = guess.question.trim();
  return [
    question === '' ? '' : `<p class="words question">${escaped(question)}</p>`,
    guess.ask === 'front speed' ? '' : choiceList(guess),
    guess.given ? outcome(guess, units) : asDrafted(guess, units),
  ].join('\n');
}

function choiceList({ ask, pours, picked, given }: Guessed): string {
  const note = given ? 'guessed' : 'chosen so far';
  return list(
    choicesOf(ask, pours).map(({ key, label }) =>
      key === picked ? `<b>${escaped(label)}</b>, ${note}` : escaped(label),
    ),
  );
}

function asDrafted(guess: Guessed, units: PageUnits): string {
  const drawn = guess.ask === 'front speed' && guess.drawn.length > 0 ? drawing(guess, null, units) : '';
  return `${drawn}${paragraph('This guess had not been given when the page was saved.', units)}`;
}

function outcome(guess: Guessed, units: PageUnits): string {
  const { ask, pours, records, drawn, picked } = guess;
  const record = records[0];
  if (!record || records.length < pours.length) {
    const drawnOnly = ask === 'front speed' ? drawing(guess, null, units) : '';
    return `${drawnOnly}${paragraph('The guess is given; the result had not been computed when the page was saved.', units)}`;
  }
  if (ask === 'front speed')
    return `${list(drawnWords(record, drawn).map((line) => said(line, units)))}\n${drawing(guess, record, units)}`;
  const computed = answerOf(ask, pours, records);
  if (!computed)
    return paragraph('The pour gives no answer to this question: no front ran in the die.', units);
  const { isRight, sentence } = outcomeOf(picked, computed, choicesOf(ask, pours));
  const told = [bold(isRight ? 'As computed.' : 'Not as computed.'), plain(` ${sentence}`)];
  return `${answer(told, units)}\n${paragraph(computed.because, units)}`;
}

/** The drawn speeds as curve and figures, with the computed ones where they may be seen. */
function drawing({ drawn, plan }: Guessed, record: PourRecord | null, units: PageUnits): string {
  if (!plan) return '';
  const { floor, mouth } = plan.section;
  const length = floor.at(-1)!.x - mouth;
  const [place, speed] = [LENGTH[units.length], SPEED[units.length]];
  const places = drawnPlaces(length, drawn.length);
  const own = { name: 'guessed', look: 0, x: places.map(place.toShown), y: drawn.map(speed.toShown) };
  const lines: ChartLine[] = record
    ? [
        own,
        {
          name: 'computed',
          look: 1,
          ...curveIn(speedsIn(frontSpeedCurve(record, 'place'), units), 'x', units),
        },
      ]
    : [own];
  const { value, label } = criticalBand(plan.liquid.criticalSpeed, units);
  const most = Math.max(1.4 * value, ...lines.flatMap(({ y }) => y.filter(Number.isFinite)));
  const chart = lineChart({
    title: speedTitle(units),
    sentence: record
      ? inUnits(drawnWords(record, drawn).join(' '), units)
      : 'The front speed as guessed; its figures are below.',
    lines,
    x: { label: `${place.unit} from the mouth`, domain: placeDomain(length, units), mark: lengthMark(units) },
    y: { label: speedTitle(units), domain: [0, speedAbove(most, units)], mark: speedMark(units) },
    limits: [{ value, label }],
  });
  const table = plainTable({
    caption: 'The front speed as guessed',
    columns: ['from the mouth', ...places.map((at) => inUnits(placeText(at), units))],
    words: 1,
    rows: [['guessed', ...drawn.map((one) => inUnits(speedText(one), units))]],
  });
  return `${chart}\n${table}`;
}
