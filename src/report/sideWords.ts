/** On which side of a limit a value lies, in words; "just" where the two read the same once they are rounded. */
export function sideWords(value: number, limit: number, text: (value: number) => string): string {
  const side = value > limit ? 'over' : 'within';
  return value !== limit && text(value) === text(limit) ? `just ${side}` : side;
}
