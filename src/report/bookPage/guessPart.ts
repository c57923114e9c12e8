import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { LENGTH, type PageUnits, SPEED } from '$src/core/units';
import { criticalBand, lengthMark, placeDomain, speedAbove, speedMark, speedTitle } from '../chartWords';
import { escaped } from '../drawing/paper';
import type { GuessAsk } from '../guess/ask';
import { type Answer, type AskedPour, answerOf, type Choice, choicesOf } from '../guess/choices';
import { drawnPlaces, drawnWords } from '../guess/frontSpeedGuess';
import { labelOf, outcomeOf, whoseAnswer } from '../guess/outcome';
import type { TeachersAnswers } from '../guess/teachersAnswers';
import { inUnits } from '../inUnits';
import { bold, plain, type Sentence, type Words } from '../sentence';
import { frontSpeedCurve } from '../series';
import { curveIn, speedsIn } from '../seriesIn';
import { placeText, speedText } from '../wording';
import { behind, whatPoursDid } from './behind';
import { type ChartLine, lineChart } from './lineChart';
import { plainTable } from './table';
import { answer, list, paragraph, said } from './words';

/** A guess as the page tells it. */
export interface Guessed {
  readonly question: string;
  readonly ask: GuessAsk;
  /** The teacher's, where those are asked for. */
  readonly own: TeachersAnswers | null;
  readonly pours: readonly AskedPour[];
  /** Front speed as drawn [m/s]; empty before anything is drawn. */
  readonly drawn: readonly number[];
  readonly picked: string | null;
  readonly given: boolean;
  /** The first pour as it is set; null while that is not in order. */
  readonly plan: PourPlan | null;
  /** Of its pours as they are set now; fewer than the pours while some are not computed. */
  readonly records: readonly PourRecord[];
}

/**
 * The question with its choices, then behind a press what was computed and, where the guess was given, what was guessed:
 * nobody can guess in a saved page, but a teacher can ask first.
 */
export function guessPart(guess: Guessed, units: PageUnits): string {
  const question = guess.question.trim();
  return [
    question === '' ? '' : `<p class="words question">${escaped(question)}</p>`,
    guess.ask === 'front speed'
      ? ''
      : list(choicesOf(guess.ask, guess.pours, guess.own).map(({ label }) => escaped(label))),
    result(guess, units),
  ].join('\n');
}

function result(guess: Guessed, units: PageUnits): string {
  const { pours, records } = guess;
  const first = paragraph('Answer it first, then look.', units);
  if (guess.ask === 'own answers')
    return `${first}\n${behind("Show the teacher's answer", outcome(guess, units))}`;
  const [record] = records;
  if (!record || records.length < pours.length)
    return paragraph('The result had not been computed when the page was saved.', units);
  const told = guess.ask === 'front speed' ? drawing(guess, record, units) : outcome(guess, units);
  return `${first}\n${behind(whatPoursDid(pours.length), told)}`;
}

function outcome({ ask, own, pours, records, picked, given }: Guessed, units: PageUnits): string {
  const right = answerOf(ask, pours, records, own);
  if (!right) return paragraph(NO_ANSWER[ask === 'own answers' ? 'teacher' : 'model'], units);
  const choices = choicesOf(ask, pours, own);
  const told = given ? setAgainst(picked, right, choices) : alone(right, choices);
  // A teacher's words are shown as they were written: their measures are not turned into other units.
  const because = right.by === 'teacher' ? escaped(right.because) : said(right.because, units);
  return `${answer(told, units)}\n<p class="because"><b>${escaped(whoseAnswer(right))}</b> ${because}</p>`;
}

const NO_ANSWER = {
  model: 'The pour gives no answer to this question: no front ran in the die.',
  teacher: 'No answer was marked as right when the page was saved.',
} as const;

function setAgainst(picked: string | null, right: Answer, choices: readonly Choice[]): Sentence {
  const { head, sentence } = outcomeOf(picked, right, choices);
  return [bold(head), asWritten(` ${sentence}`, right)];
}

const alone = (right: Answer, choices: readonly Choice[]): Sentence => [
  bold(right.by === 'teacher' ? 'The teacher says:' : 'Computed:'),
  asWritten(` “${labelOf(right.key, choices)}”.`, right),
];

const asWritten = (text: string, { by }: Answer): Words => ({ ...plain(text), isName: by === 'teacher' });

/** The computed front speed as a curve; where the guess was given, with the drawn one, its figures and the difference in words. */
function drawing({ drawn, given, plan }: Guessed, record: PourRecord, units: PageUnits): string {
  if (!plan) return '';
  const isDrawn = given && drawn.length > 0;
  const words = isDrawn ? drawnWords(record, drawn) : [peakSentence(record)];
  const chart = curves(isDrawn ? drawn : [], plan, record, words.join(' '), units);
  return `${list(words.map((line) => said(line, units)))}\n${chart}${isDrawn ? `\n${drawnTable(drawn, plan, units)}` : ''}`;
}

function peakSentence({ figures: { peakFrontSpeed: peak, peakFrontSpeedPlace: place } }: PourRecord): string {
  if (peak === null || place === null) return 'No front ran in the die, so there is no speed to show.';
  return `The computed front speed is highest at ${placeText(place)} from the mouth: ${speedText(peak)}.`;
}

const lengthOf = ({ section: { floor, mouth } }: PourPlan): number => floor.at(-1)!.x - mouth;

function curves(
  drawn: readonly number[],
  plan: PourPlan,
  record: PourRecord,
  sentence: string,
  units: PageUnits,
): string {
  const length = lengthOf(plan);
  const [place, speed] = [LENGTH[units.length], SPEED[units.length]];
  const places = drawnPlaces(length, drawn.length);
  const own: ChartLine[] =
    drawn.length > 0
      ? [{ name: 'guessed', look: 0, x: places.map(place.toShown), y: drawn.map(speed.toShown) }]
      : [];
  const lines: ChartLine[] = [
    ...own,
    { name: 'computed', look: 1, ...curveIn(speedsIn(frontSpeedCurve(record, 'place'), units), 'x', units) },
  ];
  const { value, label } = criticalBand(plan.liquid.criticalSpeed, units);
  const most = Math.max(1.4 * value, ...lines.flatMap(({ y }) => y.filter(Number.isFinite)));
  return lineChart({
    title: speedTitle(units),
    sentence: inUnits(sentence, units),
    lines,
    x: { label: `${place.unit} from the mouth`, domain: placeDomain(length, units), mark: lengthMark(units) },
    y: { label: speedTitle(units), domain: [0, speedAbove(most, units)], mark: speedMark(units) },
    limits: [{ value, label }],
  });
}

function drawnTable(drawn: readonly number[], plan: PourPlan, units: PageUnits): string {
  const places = drawnPlaces(lengthOf(plan), drawn.length);
  return plainTable({
    caption: 'The front speed as guessed',
    columns: ['from the mouth', ...places.map((at) => inUnits(placeText(at), units))],
    words: 1,
    rows: [['guessed', ...drawn.map((one) => inUnits(speedText(one), units))]],
  });
}
