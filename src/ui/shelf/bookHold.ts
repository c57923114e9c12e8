/** Name of the place in this tab's own store that says which book lies open. */
const OPEN = 'quietpour.open';

/** The book this tab had open before it was loaded again, or the one any tab had open last. */
export function lastOpen(): string | null {
  try {
    return sessionStorage.getItem(OPEN) ?? localStorage.getItem(OPEN);
  } catch {
    return null;
  }
}

export function noteOpen(id: string): void {
  try {
    sessionStorage.setItem(OPEN, id);
    localStorage.setItem(OPEN, id);
  } catch {
    // Without these stores the first example opens at the next visit; the book itself is still listed.
  }
}

const lockOf = (id: string): string => `quietpour book ${id}`;

let letGo: (() => void) | null = null;

/**
 * Holds a book for this tab, until another is held or the tab is closed; false when another tab holds it. A browser
 * without locks lets every tab have it.
 */
export function holdBook(id: string): Promise<boolean> {
  letGo?.();
  letGo = null;
  if (typeof navigator === 'undefined' || !navigator.locks) return Promise.resolve(true);
  return new Promise((resolve) => {
    const whenHeld = (lock: Lock | null): Promise<void> | undefined => {
      resolve(lock !== null);
      if (!lock) return undefined;
      return new Promise((release) => {
        letGo = release;
      });
    };
    navigator.locks.request(lockOf(id), { ifAvailable: true }, whenHeld).catch(() => resolve(true));
  });
}

/**
 * Does something to a kept book that lies open nowhere, and keeps other tabs from opening it meanwhile; false, with nothing
 * done, when another tab holds it: what that tab keeps next would undo it.
 */
export async function whileUnopened(id: string, work: () => Promise<void>): Promise<boolean> {
  if (typeof navigator === 'undefined' || !navigator.locks) {
    await work();
    return true;
  }
  return navigator.locks.request(lockOf(id), { ifAvailable: true }, async (lock) => {
    if (lock) await work();
    return lock !== null;
  });
}
