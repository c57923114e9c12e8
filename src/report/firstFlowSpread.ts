import { fromDegrees } from '$src/core/units';

/**
 * Most that first flows of one pour lay apart on five meshes within 6 % of 100 cells, rounded up: 0.16°, and 0.08° within
 * 3 % of 400. Thirty pours of five starting shapes, 4 to 20 °/s from +30° [rad]. A difference inside it is not a finding.
 */
export const FIRST_FLOW_SPREAD = fromDegrees(0.2);
