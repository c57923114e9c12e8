import type { Sourced } from '$src/core/metal/metal';
import { type Quantity, quantityText } from '../inputs/quantity';

/** Where a value comes from that was typed in. */
export const TYPED = { source: 'Typed in by you', confidence: 'yours' } as const;

/** A value that was typed in, with where it comes from: one that reads as the book's own does keeps value and source of that. */
export function sourcedAs(original: Sourced | undefined, value: number, quantity: Quantity): Sourced {
  if (original && quantityText(value, quantity) === quantityText(original.value, quantity)) return original;
  return { value, ...TYPED };
}
