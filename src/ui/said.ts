import { inUnits } from '$src/report/inUnits';
import { bench } from './bench.svelte';

/** A text of the core or of a report, in the units of the open book. */
export const said = (text: string): string => inUnits(text, bench.units);
