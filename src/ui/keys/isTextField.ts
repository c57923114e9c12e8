/** Text fields keep their own keys. */
export function isTextField(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && ['text', 'search', 'number'].includes(target.type);
}
