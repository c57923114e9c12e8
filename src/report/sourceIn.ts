import { DENSITY, type PageUnits } from '$src/core/units';
import { inUnits } from './inUnits';

/** A source says no more than it knows: of a density its figures but for closing noughts, and never fewer than two. */
function figuresOf(text: string): number {
  return Math.max(2, text.replace(/\D/g, '').replace(/^0+|0+$/g, '').length);
}

/** Where something comes from, in the page's units; densities with as many figures as the source has. */
export function sourceIn(text: string, units: PageUnits): string {
  const { unit, toShown } = DENSITY[units.mass];
  const own = DENSITY.kg.unit;
  const turned =
    unit === own
      ? text
      : text.replace(
          new RegExp(`(?<![\\d.])(\\d+)(?:( and | to )(\\d+))? ${own}`, 'g'),
          (_, first, between, last) =>
            [first, last]
              .filter((number) => number !== undefined)
              .map((number) => String(Number(toShown(Number(number)).toPrecision(figuresOf(number)))))
              .join(between)
              .concat(` ${unit}`),
        );
  return inUnits(turned, units);
}
