import type { StartLevel } from '$src/core/level/startLevel';
import type { Section } from '$src/core/section/section';
import type { PageUnits } from '$src/core/units';
import { shownLength, shownMass, withUnit } from '$src/report/measureText';
import { startLevelWords } from '$src/report/startLevelWords';
import { angleText } from '$src/report/wording';
import type { DrawnWith } from './sectionDrawnWith';

const lengthWords = (length: number, units: PageUnits) => withUnit(shownLength(length, units));
const massWords = ({ volume, liquid }: DrawnWith, units: PageUnits) =>
  withUnit(shownMass(volume * liquid.density, units));

/** Said behind the name of the pour that a section is drawn with. */
export const OTHERS = ', with the charge of another section';

/** What the picture of a section shows, for those who do not see it. */
export function pictureWords(name: string, section: Section, drawn: DrawnWith, units: PageUnits): string {
  const end = section.floor[section.floor.length - 1]!.x;
  const basin = lengthWords(section.mouth, units);
  const die = lengthWords(end - section.mouth, units);
  return `Section ${name}: basin ${basin}, die ${die} long, with ${massWords(drawn, units)} of metal level at ${angleText(drawn.start)}. Corners are handles: arrow keys move them.`;
}

/** Where the level of the metal stands at the start, and how much metal that is; nothing while it is not known. */
export function levelWords(drawn: DrawnWith | null, level: StartLevel | null, units: PageUnits): string {
  if (!drawn || !level) return '';
  return `${massWords(drawn, units)}, ${startLevelWords(level, units)}`;
}
