import type { Fold } from '$src/core/pour/record';
import { toCelsius, toMillimetres, toSquareMillimetres } from '$src/core/units';

type Unit = Fold['severity']['unit'];

/** The units the figures beside a fold are told in; what is not named here is told as it is. */
const SHOWN: Readonly<Partial<Record<Unit, readonly [unit: string, toShown: (value: number) => number]>>> = {
  m: ['mm', toMillimetres],
  'm²': ['mm²', toSquareMillimetres],
  K: ['°C', toCelsius],
};

/** How strong a fold is, to three figures: "243 mm skin folded in per width", "600 °C temperature of the colder metal". */
export function foldMeasure({ value, unit, quantity }: Fold['severity']): string {
  const [shownUnit, toShown] = SHOWN[unit] ?? [unit, (one: number) => one];
  return `${Number(toShown(value).toPrecision(3))} ${shownUnit} ${quantity}`;
}
