import { desk } from './desk.svelte';
import { notFetched } from './notices';

/** A part of the program, fetched when it is wanted. When the server does not give it this is told, and there is none. */
export async function fetchPart<Part>(what: string, from: () => Promise<Part>): Promise<Part | null> {
  try {
    return await from();
  } catch {
    desk.notice = notFetched(what);
    return null;
  }
}
