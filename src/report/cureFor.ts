import type { Fold, FoldKind } from '$src/core/pour/record';
import { isLevelAtMost, usableLimits } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';

/** Less room than this over the start angle is none, chosen [rad]. */
const LEAST_ROOM = fromDegrees(1);

type Cures = Readonly<Partial<Record<FoldKind, string>>>;

/**
 * For a machine that can only start level: what is left is the basin and the rate. A pool that stands as full as its
 * skin holds, and a slower turn, lower the front's peak most; see the test of level starts in tests/books.
 */
const LEVEL_CURES: Cures = {
  'front over critical':
    'The machine starts level at most: fill the basin to the brink, or make it shorter for the same weight, so that metal passes the mouth earlier; turn more slowly until the front is home; lower the sill so that less of it falls.',
  tongue:
    'The machine starts level at most: fill the basin to the brink, lower the sill, and turn slowly while metal passes the mouth so that the section stands full behind the front.',
  'lip jet':
    'The machine starts level at most: round the lip, lower the fall below it, and turn slowly while metal passes it.',
  'return wave':
    'The machine starts level at most: have the front arrive slowly and full height by a fuller basin, a lower sill and a slower tilt until the end is reached.',
  'end impact':
    'The machine starts level at most: slow the tilt before the front arrives, and let less metal fall by a fuller basin and a lower sill.',
};

/**
 * The same, of a basin that is full to the brink. A lower sill would leave it less metal, and as much metal in a longer
 * basin behind a lower sill runs quicker; more metal in a somewhat longer one comes over the lip earlier and folds less,
 * though its front hardly runs slower. All measured: see the test of cures in tests/books.
 */
const BRIMFUL_LEVEL_CURES: Cures = {
  'front over critical':
    'The machine starts level at most and the basin is full to the brink: turn more slowly until the front is home. A somewhat longer basin with more metal, as far as no rim spills, folds less, though its front hardly runs slower.',
  tongue:
    'The machine starts level at most and the basin is full to the brink: turn slowly while metal passes the mouth so that the section stands full behind the front, and try a somewhat longer basin with more metal, as far as no rim spills.',
  'return wave':
    'The machine starts level at most and the basin is full to the brink: have the front arrive slowly and full height by a slower tilt until the end is reached.',
  'end impact':
    'The machine starts level at most and the basin is full to the brink: slow the tilt before the front arrives.',
};

/** For a pour that already starts as high as its machine can. */
const HIGHEST_CURES: Cures = {
  'front over critical':
    'It starts as high as the machine can: let the metal enter while the die still runs uphill by a fuller basin, a shorter one for the same weight or a lower sill, and a slower tilt through level.',
  tongue:
    'It starts as high as the machine can: fill the basin to the brink, lower the sill, and pass level slowly so that the section stands full behind the front.',
};

const BRIMFUL_HIGHEST_CURES: Cures = {
  'front over critical':
    'It starts as high as the machine can, from a basin full to the brink: pass level slowly, and try a longer basin with more metal, which comes over the lip earlier.',
  tongue:
    'It starts as high as the machine can, from a basin full to the brink: pass level slowly so that the section stands full behind the front.',
};

/** The usual cure of a fold, as far as its basin and the machine of this tilt can take it. */
export function cureFor(
  { kind, cure }: Pick<Fold, 'kind' | 'cure'>,
  { start, limits }: Tilt,
  isFull: boolean,
): string {
  // A measured tilt was turned as it is, whatever limits stand beside it.
  const highestStart = Math.max(usableLimits(limits).highestStart, start);
  const isLevel = isLevelAtMost(highestStart);
  if (!isLevel && highestStart - start >= LEAST_ROOM) return cure;
  const [cures, full] = isLevel ? [LEVEL_CURES, BRIMFUL_LEVEL_CURES] : [HIGHEST_CURES, BRIMFUL_HIGHEST_CURES];
  return (isFull ? full[kind] : undefined) ?? cures[kind] ?? cure;
}
