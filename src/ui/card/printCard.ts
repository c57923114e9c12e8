import './printCard.css';

/** Set on the page while nothing but a card is to be printed. */
const ONLY = 'only-card';

/**
 * Prints a card alone, on a sheet of its own: a copy of it is all that print shows. It stands first in the page, where
 * its hatches are found by their names before those of the card itself, which is hidden and would give none.
 */
export function printCard(card: HTMLElement): void {
  const page = document.documentElement;
  const sheet = document.createElement('div');
  sheet.className = 'printed-card';
  sheet.append(card.cloneNode(true));
  document.body.prepend(sheet);
  page.classList.add(ONLY);
  const clear = (): void => {
    page.classList.remove(ONLY);
    sheet.remove();
  };
  window.addEventListener('afterprint', clear, { once: true });
  window.print();
}
