import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { runPour } from '$src/core/pour/runPour';
import { METRIC } from '$src/core/units';
import { afterFill } from '$src/report/afterFill';
import { bookPage } from '$src/report/bookPage/bookPage';
import { pourPart } from '$src/report/bookPage/pourPart';
import { REPLAY_SCRIPT } from '$src/report/bookPage/replayScript';
import { sampleBook } from '../../book/sample';
import { inventedPlan, inventedRecord } from '../inventedRecord';

function record() {
  const [plan] = [...evaluateBook(sampleBook()).values()].flatMap((one) =>
    one.state === 'needs a run' ? [one.plan] : [],
  );
  const run = runPour({ ...plan!, heat: null, computation: { ...plan!.computation, meshCells: 40 } });
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

const parts = (body: string, title = 'Trial') => ({
  title,
  casting: 'Hinge arm',
  parts: [{ id: 'cell-1', name: 'Pour <1>', kind: 'pour', body }],
  bookText: '{"a": "</script>"}',
  bookFileName: 'trial.pourbook.json',
  scriptHash: createHash('sha256').update(REPLAY_SCRIPT).digest('base64'),
});

test('a replay goes from the start to the end of the pour, with its metal in every picture', () => {
  const pour = record();
  const page = bookPage(parts(pourPart(pour, 'p0')));
  const data = /<script type="application\/json">(.*?)<\/script>/s.exec(page)![1]!;
  const { duration, pictures } = JSON.parse(data) as {
    duration: number;
    pictures: { time: number; turn: number; metal: string; front: number[] | null }[];
  };
  expect(duration).toBe(pour.series.time.at(-1));
  expect(pictures[0]!.time).toBe(0);
  expect(pictures.at(-1)!.turn).toBeCloseTo(90, 0);
  expect(pictures.every(({ metal }) => metal.startsWith('M'))).toBe(true);
  expect(pictures.some(({ front }) => front !== null)).toBe(true);
  expect(page.length).toBeLessThan(1_000_000);
});

test('beside a replay stands its front speed over time, with the critical speed and a marker that goes with the pictures', () => {
  const pour = record();
  const part = pourPart(pour, 'p0');
  const chart = part.split('<figure class="chart">')[1]!.split('</figure>')[0]!;
  const peak = pour.figures.peakFrontSpeed!.toFixed(2);
  expect(chart).toContain(`aria-label="Front speed peaks at ${peak} m/s`);
  expect(chart).toContain(`critical ${pour.plan.liquid.criticalSpeed.toFixed(2)} m/s`);
  expect(chart).toContain('data-part="now" hidden');

  const { pictures } = JSON.parse(/<script type="application\/json">(.*?)<\/script>/s.exec(part)![1]!) as {
    pictures: { time: number; mark?: [left: number, top: number] }[];
  };
  const { time: times, speed } = pour.frontSpeeds;
  const [first, last] = [times[0]!, times.at(-1)!];
  const most = Math.max(1, Math.ceil(Math.max(...speed) * 5) / 5);
  const marked = pictures.filter(({ mark }) => mark);
  expect(marked).toEqual(pictures.filter(({ time }) => time >= first && time <= last));
  expect(marked.length).toBeGreaterThan(5);
  for (const { time, mark } of marked) {
    const after = Math.max(
      1,
      times.findIndex((one) => one >= time),
    );
    const share = (time - times[after - 1]!) / (times[after]! - times[after - 1]!);
    const here = speed[after - 1]! + (speed[after]! - speed[after - 1]!) * share;
    expect(mark![0]).toBeCloseTo((100 * (time - first)) / (last - first), 0);
    expect(mark![1]).toBeCloseTo(100 * (1 - here / most), 0);
  }
});

test('a pour without a front in its die has a replay and no chart of front speeds', () => {
  const pour = inventedRecord();
  const none = new Float64Array();
  const frontSpeeds = { ...pour.frontSpeeds, time: none, speed: none, place: none, inclination: none };
  const part = pourPart({ ...pour, frontSpeeds }, 'p0');
  expect(part).toContain('data-replay');
  expect(part).not.toContain('class="chart"');
});

test('nothing of a book becomes markup or script of the page, and only its own script may run', () => {
  const page = bookPage(parts('<p>words</p>', '<img src=x onerror=alert(1)>'));
  expect(page).not.toContain('<img');
  expect(page).toContain('Pour &lt;1&gt;');
  expect(page.match(/<script/g)).toHaveLength(1);
  const hash = createHash('sha256')
    .update(/<script>(.*?)<\/script>/s.exec(page)![1]!)
    .digest('base64');
  expect(page).toContain(`script-src 'sha256-${hash}'`);
  expect(page).not.toMatch(/(?:src|href)="https?:/);
});

test('a pour that fills tells what comes after, in the figures of the page, and keeps to a proven dwell', () => {
  const heat = heatPlanOf(metalNamed('A356')!, inventedPlan.section)!;
  const pour = inventedRecord({ plan: { ...inventedPlan, heat } });
  for (const dwell of [null, 300]) {
    const part = pourPart(pour, 'p0', METRIC, dwell);
    const told = part.split('<caption>After the fill')[1]!.split('</table>')[0]!;
    for (const { label, text, note } of afterFill(pour, dwell)!.figures)
      expect(told).toContain(`${label}</th><td>${text}</td><td>${note}</td>`);
    expect(told.includes('300 s at least')).toBe(dwell !== null);
    expect(part).toContain('<b>Never open a die on a simulated time alone:</b>');
  }
  expect(pourPart(inventedRecord(), 'p0')).not.toContain('After the fill');
});
