/** Every buffer under the typed arrays of a plain value, each once: handed over to another thread instead of copied. */
export function buffersOf(value: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  collect(value, found);
  return [...found];
}

function collect(value: unknown, found: Set<ArrayBuffer>): void {
  if (typeof value !== 'object' || value === null) return;
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
    return;
  }
  for (const part of Object.values(value)) collect(part, found);
}
