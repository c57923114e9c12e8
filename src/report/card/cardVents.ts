import type { Section, Vent } from '$src/core/section/section';
import { AREA, type PageUnits } from '$src/core/units';
import { shownLength, withUnit } from '../measureText';
import { listText } from '../wording';
import type { CardSetting } from './shopCard';

/** So many vents stand on the card; a die with more has them in the book. */
const MOST_VENTS = 3;

/** Where gas leaves, for whoever makes sure that it can: free area and place of each vent, of one cavity. */
export function cardVents({ vents, mouth, cavities }: Section, units: PageUnits): CardSetting {
  const open = vents.filter(({ blocked }) => blocked < 1).toSorted((a, b) => a.place - b.place);
  const each = open.slice(0, MOST_VENTS).map((vent) => ventText(vent, mouth, units));
  const left = open.length - each.length;
  const more = left > 0 ? `; ${left} more: see the book` : '';
  return {
    label: cavities > 1 ? 'open vents, each cavity' : 'open vents',
    number: String(open.length),
    unit: '',
    note:
      open.length === 0
        ? 'gas leaves by the basin only'
        : `${listText(each)}${open.some(({ place }) => place >= mouth) ? ' from the mouth' : ''}${more}`,
    isModel: false,
  };
}

function ventText({ place, area, blocked }: Vent, mouth: number, units: PageUnits): string {
  const { toShown, unit } = AREA[units.length];
  const shown = toShown(area * (1 - blocked));
  // As fine as a vent is typed: one of 4.5 mm² is not one of 4.
  const free = String(Number(shown.toFixed(units.length === 'mm' ? 2 : 4)));
  return place < mouth
    ? `${free} ${unit} over the basin`
    : `${free} ${unit} at ${withUnit(shownLength(place - mouth, units))}`;
}
