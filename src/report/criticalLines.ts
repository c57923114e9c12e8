import type { PageUnits } from '$src/core/units';
import { criticalBand } from './chartWords';
import type { Compared } from './compare';
import { listText } from './wording';

export interface CriticalLine {
  /** In the page's unit. */
  readonly value: number;
  /** Where doubt begins, below `value`. */
  readonly from: number;
  readonly label: string;
}

/**
 * The critical speeds that pours are held to, the lowest first: one line for each metal that has its own, named by the
 * metal, or by its pours where that is not known. Pours of one limit share a line without a name.
 */
export function criticalLines(pours: readonly Compared[], units: PageUnits): readonly CriticalLine[] {
  const bands = new Map<string, { value: number; from: number; names: Set<string> }>();
  for (const { name, record, metal } of pours) {
    const { value, from, label } = criticalBand(record.plan.liquid.criticalSpeed, units);
    const band = bands.get(label) ?? { value, from, names: new Set<string>() };
    band.names.add(metal ?? name);
    bands.set(label, band);
  }
  const isOne = bands.size === 1;
  return [...bands]
    .toSorted(([, a], [, b]) => a.value - b.value)
    .map(([label, { value, from, names }]) => ({
      value,
      from,
      label: isOne ? label : `${label}, ${listText([...names])}`,
    }));
}
