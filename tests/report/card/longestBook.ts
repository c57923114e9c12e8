import type { Book } from '$src/cells/kinds';
import { metalNamed } from '$src/core/metal/metals';
import { fromDegrees } from '$src/core/units';
import { sampleBook } from '../../book/sample';

const LONG =
  'A very long name that somebody typed to see whether it would break the page of the card, and then some';

/** A book whose card has the longest content there can be: long names, many stages and regions, every row. */
export function longestBook(stages: number, regions: number, base = 'brass'): Book {
  const sample = sampleBook();
  const cells = sample.cells.map((cell) => {
    const named = { ...cell, name: `${cell.kind} ${LONG}` };
    switch (named.kind) {
      case 'section': {
        const { section } = named;
        const end = section.floor.at(-1)!.x;
        const many = Array.from({ length: regions }, (_, i) => ({
          name: `Region ${i + 1} ${LONG}`,
          end: section.mouth + ((end - section.mouth) * (i + 1)) / regions,
          width: 0.02,
          dieTemperature: 560 + 12.3 * i,
          transfer: 1200 + 70 * i,
        }));
        const basin = { ...section.regions[0]!, dieTemperature: 500 };
        return { ...named, section: { ...section, cavities: 2, regions: [basin, ...many] } };
      }
      case 'metal':
        return { ...named, metal: { ...metalNamed(base)!, name: `${base} ${LONG}` } };
      case 'tilt': {
        const start = fromDegrees(30);
        const drop = fromDegrees(120);
        const steps = Array.from({ length: stages }, (_, i) => ({
          to: start - (drop * (i + 1)) / stages,
          rate: fromDegrees(12.5 + (i % 3)),
        }));
        const { limits } = named.tilt;
        return { ...named, tilt: { kind: 'staged' as const, start, stages: steps, smoothing: 0.2, limits } };
      }
      case 'pour':
        return { ...named, provenDwell: 187.5, computation: { ...named.computation, meshCells: 60 } };
      default:
        return named;
    }
  });
  const pour = cells.find(({ kind }) => kind === 'pour')!.id;
  const card = {
    kind: 'shop card' as const,
    id: 'card',
    name: `Card ${LONG}`,
    folded: false,
    pour,
    date: 'Wednesday, 25 November 2026, late shift',
    remark: LONG.repeat(3),
  };
  return { title: `Book ${LONG}`, casting: `Casting ${LONG}`, cells: [...cells, card] };
}
