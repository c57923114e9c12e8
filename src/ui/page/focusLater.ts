import { tick } from 'svelte';

/** Puts the focus on an element once the page has been redrawn: after moving, adding or deleting a cell. */
export async function focusLater(id: string): Promise<void> {
  await tick();
  document.getElementById(id)?.focus();
}
