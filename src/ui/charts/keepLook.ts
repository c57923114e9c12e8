/** Properties that make a copied picture look as it does on the page, fonts included. */
const KEPT = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'paint-order',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'font-variant-numeric',
  'text-anchor',
] as const;

/** Writes into a copy what the page's rules give the picture it was copied from. */
export function keepLook(from: Element, to: Element): void {
  const look = getComputedStyle(from);
  for (const name of KEPT) {
    const value = look.getPropertyValue(name);
    if (value) to.setAttribute(name, name === 'font-family' ? value.replaceAll('"', "'") : value);
  }
  to.removeAttribute('class');
  for (const [index, child] of [...from.children].entries()) keepLook(child, to.children[index]!);
}
