/** Lets the keyboard scroll a box that is wider than its place, and leaves it out of the tab order when it is not. */
export function scrollable(box: HTMLElement): () => void {
  const size = new ResizeObserver(() => {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute('tabindex');
  });
  size.observe(box);
  return () => size.disconnect();
}
