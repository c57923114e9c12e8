import { expect, test } from 'vitest';
import type { FoldKind } from '$src/core/pour/record';
import { aroundHeldGas } from '$src/core/watch/aroundHeldGas';
import { inventedFold } from '../../report/inventedRecord';

const at = (time: number, kind: FoldKind) => ({ ...inventedFold, time, kind, isClear: true });

test('what folds after gas was shut in for good is borderline; before it, and that gas itself, is not', () => {
  const folds = [at(1, 'tongue'), at(2, 'gas sealed in'), at(3, 'breaking bore'), at(4, 'lap')];
  expect(aroundHeldGas(folds).map(({ isClear }) => isClear)).toEqual([true, true, false, false]);
});

test('where no gas was seen to be shut in nothing changes', () => {
  const folds = [at(1, 'tongue'), at(3, 'breaking bore')];
  expect(aroundHeldGas(folds)).toEqual(folds);
});
