import { tick } from 'svelte';

/** Puts the focus on an element once the page has been redrawn: after moving, adding or deleting a cell. */
export async function focusLater(id: string): Promise<void> {
  await tick();
  document.getElementById(id)?.focus();
}

/** As `focusLater`, with all words of the field selected: the next that is typed takes their place. */
export async function selectLater(id: string): Promise<void> {
  await focusLater(id);
  (document.getElementById(id) as HTMLInputElement | HTMLTextAreaElement | null)?.select();
}
