import type { Fold } from '$src/core/pour/record';

/**
 * Folds with those made borderline that came after gas was shut in which never left. What metal does around it hangs on
 * which place closes first, and settles on no mesh (docs/verification.md); that gas is held does.
 */
export function aroundHeldGas(folds: readonly Fold[]): readonly Fold[] {
  const shut = folds.filter(({ kind }) => kind === 'gas sealed in');
  const since = Math.min(...shut.map(({ time }) => time));
  return folds.map((fold) =>
    fold.kind === 'gas sealed in' || fold.time < since ? fold : { ...fold, isClear: false },
  );
}
