import { createSubscriber } from 'svelte/reactivity';

const follow = createSubscriber((update) => {
  const observer = new MutationObserver(update);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
});

/** Whether the sheet is dark now; what is painted on a canvas cannot follow the tokens by itself. */
export function isPaperDark(): boolean {
  follow();
  return document.documentElement.dataset['theme'] === 'dark';
}
