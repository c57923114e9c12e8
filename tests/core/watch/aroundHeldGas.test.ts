import { expect, test } from 'vitest';
import type { FoldKind } from '$src/core/pour/record';
import { aroundHeldGas } from '$src/core/watch/aroundHeldGas';
import { inventedFold } from '../../report/inventedRecord';

const at = (time: number, kind: FoldKind) => ({ ...inventedFold, time, kind, isClear: true });

test('jumps, meetings and laps after gas was shut in for good are borderline; the rest is not', () => {
  const folds = [at(1, 'lap'), at(2, 'gas sealed in'), at(3, 'breaking bore'), at(4, 'tongue'), at(5, 'lap')];
  expect(aroundHeldGas(folds).map(({ isClear }) => isClear)).toEqual([true, true, false, true, false]);
});

test('where no gas was seen to be shut in nothing changes', () => {
  const folds = [at(1, 'lap'), at(3, 'breaking bore')];
  expect(aroundHeldGas(folds)).toEqual(folds);
});
