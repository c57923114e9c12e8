import { describe, expect, it } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { answerOf, CLOSE, choicesOf } from '$src/report/guess/choices';
import { drawnDifference, drawnPlaces, drawnWords, frontSpeedAt } from '$src/report/guess/frontSpeedGuess';
import { outcomeOf } from '$src/report/guess/outcome';
import { checkTeachersAnswers, type TeachersAnswers } from '$src/report/guess/teachersAnswers';
import { dieLength } from '$src/report/series';
import { inventedRecord } from './inventedRecord';

const record = inventedRecord();
const length = dieLength(record);

describe('a drawn front speed', () => {
  it('is read off the record between its places, and held at its ends', () => {
    const { place, speed } = record.frontSpeeds;
    const middle = (place[3]! + place[4]!) / 2;
    expect(frontSpeedAt(record, middle)).toBeCloseTo((speed[3]! + speed[4]!) / 2, 12);
    expect(frontSpeedAt(record, -1)).toBe(speed[0]);
    expect(frontSpeedAt(record, 9)).toBe(speed[speed.length - 1]);
  });

  it('that lies on the computed curve differs by nothing', () => {
    const drawn = drawnPlaces(length).map((place) => frontSpeedAt(record, place)!);
    expect(drawnDifference(record, drawn)!.distance).toBeCloseTo(0, 12);
  });

  it('that lies a fixed speed above leans by that speed, in words too', () => {
    const drawn = drawnPlaces(length).map((place) => frontSpeedAt(record, place)! + 0.3);
    const found = drawnDifference(record, drawn)!;
    expect(found.lean).toBeCloseTo(0.3, 12);
    expect(drawnWords(record, drawn).at(-1)).toBe(
      'Along the die the two are 0.30 m/s apart on average; yours lies above.',
    );
  });

  it('on the wrong side of critical is told so', () => {
    const peak = record.figures.peakFrontSpeed!;
    const { criticalSpeed } = record.plan.liquid;
    const over = peak > criticalSpeed;
    const drawn = drawnPlaces(length).map(() => criticalSpeed * (over ? 0.5 : 1.5));
    expect(drawnWords(record, drawn)[1]).toContain(over ? 'You put the peak under' : 'You put the peak over');
  });
});

const pours = [
  { id: 'a', name: 'A' },
  { id: 'b', name: 'B' },
];
const withFigures = (figures: Partial<typeof record.figures>) => ({
  ...record,
  band: null,
  figures: { ...record.figures, ...figures },
});

describe("answers of the teacher's own", () => {
  const own: TeachersAnswers = { answers: ['The skin', 'The coat'], right: 1, reason: ' It insulates. ' };
  const issues = (part: Partial<TeachersAnswers>) =>
    checkTeachersAnswers({ ...own, ...part }).map(({ path }) => path);

  it('need no pour, and are told as the teacher and not as the model', () => {
    const choices = choicesOf('own answers', [], own);
    expect(choices.map(({ label }) => label)).toEqual(own.answers);
    const answer = answerOf('own answers', [], [], own)!;
    expect(answer).toEqual({ key: choices[1]!.key, because: 'It insulates.', by: 'teacher' });
    const wrong = outcomeOf(choices[0]!.key, answer, choices);
    expect(wrong.head).toBe('Not as the teacher says.');
    expect(wrong.sentence).toBe("You chose “The skin”; the teacher's answer is “The coat”.");
    expect(wrong.whose).toBe("The teacher's answer, not computed.");
    expect(outcomeOf(answer.key, answer, choices)).toMatchObject({
      isRight: true,
      head: 'As the teacher says.',
    });
    expect(outcomeOf('under', { key: 'under', because: '' }, []).whose).toBe("The model's answer.");
  });

  it('are two to five, none empty, none twice, one of them right', () => {
    expect(issues({})).toEqual([]);
    expect(checkTeachersAnswers(null).map(({ path }) => path)).toEqual(['own']);
    expect(issues({ answers: ['One'], right: 0 })).toEqual(['own.answers']);
    expect(issues({ answers: ['a', 'b', 'c', 'd', 'e', 'f'] })).toEqual(['own.answers']);
    expect(issues({ answers: ['a', ' '] })).toEqual(['own.answers.1']);
    expect(issues({ answers: ['a', 'b', 'a '] })).toEqual(['own.answers.2']);
    for (const right of [null, 2, -1, 0.5]) expect(issues({ right })).toEqual(['own.right']);
    for (const { message, remedy } of checkTeachersAnswers({ answers: [''], right: null, reason: '' })) {
      expect(message).toMatch(/\.$/);
      expect(remedy).toMatch(/\.$/);
    }
  });
});

describe('a guess from choices', () => {
  it.each([
    [0.2, 'under'],
    [0.51, 'too close to call'],
    [0.9, 'over'],
  ])('about %f m/s where 0.5 is critical: %s', (peakFrontSpeed, key) => {
    expect(answerOf('speed call', pours, [withFigures({ peakFrontSpeed })])?.key).toBe(key);
  });

  it.each([
    [12, 'uphill'],
    [0.2, 'level'],
    [-4, 'downhill'],
  ])('about first flow at %f°: %s', (degrees, key) => {
    const firstFlow = { kind: 'angle', inclination: fromDegrees(degrees), time: 1 } as const;
    expect(answerOf('first flow', pours, [withFigures({ firstFlow })])?.key).toBe(key);
  });

  it('about filling reads laps and what stays empty', () => {
    const answer = (figures: Partial<typeof record.figures>) =>
      answerOf('filling', pours, [withFigures(figures)])?.key;
    expect(answer({ filledTime: null })).toBe('not filled');
    expect(answer({ filledTime: 3, lap: { kind: 'laps', margin: -0.2 } })).toBe('laps');
    expect(answer({ filledTime: 3, lap: { kind: 'none', margin: 2 } })).toBe('warm');
  });

  it('about the quickest of several names it, unless the mesh could turn them round', () => {
    const [one, other] = [withFigures({ peakFrontSpeed: 0.5 }), withFigures({ peakFrontSpeed: 0.8 })];
    expect(answerOf('quickest', pours, [one, other])?.key).toBe('b');
    expect(answerOf('quickest', pours, [one, withFigures({ peakFrontSpeed: 0.51 })])?.key).toBe(CLOSE);
    expect(answerOf('quickest', pours, [one])).toBeNull();
  });

  it('every computed answer is one of the choices', () => {
    for (const ask of ['speed call', 'first flow', 'filling', 'quickest'] as const) {
      const key = answerOf(ask, pours, [record, record])?.key;
      expect(choicesOf(ask, pours).map((choice) => choice.key)).toContain(key);
    }
  });

  it('comes out right or wrong in words', () => {
    const choices = choicesOf('speed call', pours);
    expect(outcomeOf('under', { key: 'under', because: '' }, choices).isRight).toBe(true);
    const wrong = outcomeOf('under', { key: 'over', because: '' }, choices);
    expect(wrong.sentence).toBe(
      'You chose “stays under critical speed”; computed is “runs over critical speed”.',
    );
  });
});
