import type { Point } from '$src/core/section/section';
import { toDegrees } from '$src/core/units';
import type { MetalShape } from './metalShape';
import { type Paper, pathOf, short } from './paper';
import type { Steel } from './steel';

/** Hatches of cut steel, one set for each picture, since they turn with the die. */
function hatches(id: string, inclination: number, step: number): string {
  const turn = -toDegrees(inclination);
  const hatch = (name: string, spacing: number, angle: number) =>
    `<pattern id="${id}-${name}" width="${spacing}" height="${spacing}" patternUnits="userSpaceOnUse" patternTransform="rotate(${short(angle + turn)})"><path class="hatch" d="M1 0V${spacing}"/></pattern>`;
  return `<defs>${hatch('floor', step, 45)}${hatch('roof', step, -45)}${hatch('basin', step * 0.6, 45)}</defs>`;
}

/** Die, basin and metal in ink: hatched steel, solid metal, its skin a line. `id` is free in the page. */
export function sectionMarks(
  paper: Paper,
  steel: Steel,
  metal: MetalShape | null,
  { id, step }: { readonly id: string; readonly step: number },
): string {
  const path = (points: readonly Point[], isClosed = true) => pathOf(points.map(paper.place), isClosed);
  const block = (points: readonly Point[], hatch: string) =>
    `<path class="steel" fill="url(#${id}-${hatch})" d="${path(points)}"/>`;
  return [
    hatches(id, paper.inclination, step),
    block(steel.shell, 'basin'),
    block(steel.floorBlock, 'floor'),
    ...steel.roofBlocks.map((points) => block(points, 'roof')),
    ...(metal?.bodies ?? []).map((points) => `<path class="metal" d="${path(points)}"/>`),
    ...(metal?.skins ?? []).map((points) => `<path class="skin" d="${path(points, false)}"/>`),
  ].join('');
}
