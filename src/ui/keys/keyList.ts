/** The keys of the page, as its sheet lists them. None of them is a browser's own. */
export const KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: 'F2', does: 'find a cell by its name' },
  { keys: 'F4', does: 'this sheet' },
  { keys: 'F8', does: 'hide or show the body of the cell' },
  { keys: 'Alt Shift ↑ ↓', does: 'move the cell up or down' },
  { keys: 'Alt Shift Page ↑ ↓', does: 'go to the cell before or after' },
  { keys: 'Alt Shift Insert', does: 'duplicate the cell' },
  {
    keys: 'Ctrl C, X, V',
    does: 'copy, cut, paste the cell, unless text is chosen; between books and windows too',
  },
  { keys: 'Ctrl Z, Ctrl Y', does: 'undo, redo' },
  { keys: 'Tab', does: 'to every field, handle and button, in the order they stand' },
  { keys: '← → ↑ ↓', does: 'move a handle, a time or a chosen point; with Shift by ten' },
  { keys: 'Delete', does: 'take out the chosen corner' },
  { keys: 'Space', does: 'on the time of a pour: play or pause' },
  { keys: 'Esc', does: 'close what is open' },
];
