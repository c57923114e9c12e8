import { expect, test } from 'vitest';
import { beginHistory, recordStep, redoStep, settle, undoStep } from '$src/ui/history';

test('a drag is one step, and taking it back gives what was before it', () => {
  let history = recordStep(beginHistory(1), 'set', 2, null);
  for (const value of [3, 4, 5]) history = recordStep(history, 'dragged', value, 'corner');
  expect(history.past.map((step) => step.label)).toEqual(['set', 'dragged']);
  const back = undoStep(history);
  expect(back.now).toBe(2);
  expect(redoStep(back).now).toBe(5);
});

test('a settled drag is not joined by the next one at the same corner', () => {
  let history = recordStep(beginHistory(0), 'dragged', 1, 'corner');
  history = recordStep(settle(history), 'dragged', 2, 'corner');
  expect(history.past).toHaveLength(2);
  expect(undoStep(history).now).toBe(1);
});

test('different keys do not merge, and a change after undo drops what could be redone', () => {
  let history = recordStep(beginHistory(0), 'mass', 1, 'mass');
  history = recordStep(history, 'head', 2, 'head');
  history = recordStep(undoStep(history), 'mass', 7, 'mass again');
  expect(history.future).toEqual([]);
  expect(redoStep(history)).toBe(history);
  expect(undoStep(undoStep(history)).now).toBe(0);
});

test('undo and redo at the ends change nothing', () => {
  const history = beginHistory('a');
  expect(undoStep(history)).toBe(history);
  expect(redoStep(history)).toBe(history);
});

test('long histories drop their oldest steps and keep the newest', () => {
  let history = beginHistory(0);
  for (let value = 1; value <= 500; value++) history = recordStep(history, `${value}`, value, null);
  expect(history.past.length).toBe(200);
  expect(history.past.at(-1)?.label).toBe('500');
});
