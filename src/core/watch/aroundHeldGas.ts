import type { Fold, FoldKind } from '$src/core/pour/record';

/** What comes and goes around shut-in gas from mesh to mesh; other folds keep to their meshes there as elsewhere. */
const UNSETTLED: readonly FoldKind[] = ['breaking bore', 'undular bore', 'fronts meet', 'lap'];

/**
 * Folds with those made borderline that metal made around gas which was shut in and never left: which place closes
 * first hangs on the least change, and with it whether a jump, a meeting of fronts or a lap is seen (docs/verification.md).
 */
export function aroundHeldGas(folds: readonly Fold[]): readonly Fold[] {
  const shut = folds.filter(({ kind }) => kind === 'gas sealed in');
  const since = Math.min(...shut.map(({ time }) => time));
  return folds.map((fold) =>
    fold.time >= since && UNSETTLED.includes(fold.kind) ? { ...fold, isClear: false } : fold,
  );
}
