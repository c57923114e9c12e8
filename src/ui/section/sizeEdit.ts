import type { Issue } from '$src/core/issue';
import { checkSection } from '$src/core/section/checkSection';
import { millimetres as mm } from '$src/core/section/millimetres';
import type { Section } from '$src/core/section/section';
import { SIZES } from '$src/core/section/sizes';

/** What a number typed for a size of the section comes to: the section, or why it stays as it is. */
export type SizeEdit = { readonly section: Section } | { readonly issue: Issue };

export const refused = (path: string, message: string, remedy: string): SizeEdit => ({
  issue: { path, message, remedy },
});

export function wrongAlready(section: Section, path: string): SizeEdit | null {
  if (checkSection(section).length === 0) return null;
  return refused(path, 'The outline is wrong as it stands.', 'Put right what is marked in it first.');
}

/** So long [m] that die and basin would be longer together than a section may be; `most` is what still goes. */
export const tooLong = (path: string, length: number, most: number, kept: string): SizeEdit =>
  refused(
    path,
    `At ${mm(length)} mm die and basin would be longer than ${mm(SIZES.most)} mm; ${kept}`,
    `Type ${mm(most)} mm or less.`,
  );

/** The section where nothing is wrong with it; else its first fault, and what is kept. */
export function sound(section: Section, path: string, kept: string): SizeEdit {
  const [first] = checkSection(section);
  if (!first) return { section };
  return refused(path, `${first.message.replace(/\.$/, '')}; ${kept}`, 'Type another length.');
}

/** Without the dust of floating point. */
export function tidied(section: Section): Section {
  const round = (value: number): number => Number(value.toFixed(9));
  const at = <T extends { readonly x: number; readonly y: number }>(point: T): T => ({
    ...point,
    x: round(point.x),
    y: round(point.y),
  });
  return {
    ...section,
    floor: section.floor.map(at),
    roof: section.roof.map(at),
    regions: section.regions.map((region) => ({ ...region, end: round(region.end) })),
    mouth: round(section.mouth),
    pivot: at(section.pivot),
    vents: section.vents.map((vent) => ({ ...vent, place: round(vent.place) })),
  };
}
