import { fromDegrees } from '$src/core/units';
import type { Sourced } from './metal';

/**
 * Assumed for every metal: oxide-skinned metal on a rough dry coat is close to non-wetting (180°), clean metal
 * stands nearer 90°. The stand height changes little between them; first flow is given as a band.
 */
export const ASSUMED_CONTACT_ANGLE: Sourced = {
  value: fromDegrees(150),
  source: 'Chosen between clean (about 90°) and non-wetting (180°); no source of its own',
  confidence: 'assumed',
};
