import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { PourPlan } from './plan';

/**
 * Names a plan: the SHA-256 of its canonical text, 64 hexadecimal digits. Two plans have the same hash when they
 * hold the same values, in whatever order their keys were written. Throws when the plan holds a number that is none.
 */
export function planHash(plan: PourPlan): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalText(plan))));
}

/** JSON with the keys of every object in order and numbers in their shortest exact form. */
function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, part]) => part !== undefined);
    const ordered = entries.sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${ordered.map(([key, part]) => `${JSON.stringify(key)}:${canonicalText(part)}`).join(',')}}`;
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`A plan holds ${value}, expected a number.`);
  return JSON.stringify(value);
}
