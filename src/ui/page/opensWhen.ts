import type { Attachment } from 'svelte/attachments';

/**
 * For a panel that is tucked away unless something in it is to be chosen or put right: it opens by itself then, and
 * closes only under the hand of the user. The attribute `open` would be set anew with every change near it, and so close
 * the panel over a number that is being typed.
 */
export const opensWhen =
  (isWanted: boolean): Attachment<HTMLDetailsElement> =>
  (panel) => {
    if (isWanted) panel.open = true;
  };
