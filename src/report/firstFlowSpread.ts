import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';

/**
 * Most that first flows of one pour lay apart on five meshes of about 100 cells, either way: 3.0°, and 2.4° on about
 * 400. Thirty pours of five starting shapes, 4 to 20 °/s from +30°. Where metal creeps to the mouth over a floor without
 * a step, the cells before it decide when the skin lets go: one cell more in the basin of a longer die, and it is another
 * angle, while the level fill has the same. A difference inside it is not a finding.
 */
export const FIRST_FLOW_SPREAD = fromDegrees(3);

const SAME_PLACE = 1e-9;

/** How far the mesh moves the first flow into a section [rad]: nought where metal stands against a step at the mouth, under 0.05° there. */
export const firstFlowSpread = (section: Section): number => (hasStep(section) ? 0 : FIRST_FLOW_SPREAD);

/** The floor steps up where the die begins. */
function hasStep({ floor, mouth }: Section): boolean {
  return floor.some((point, index) => {
    const next = floor[index + 1];
    const isAtMouth = Math.abs(point.x - mouth) < SAME_PLACE;
    return isAtMouth && next !== undefined && Math.abs(next.x - mouth) < SAME_PLACE && next.y > point.y;
  });
}
