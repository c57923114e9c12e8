// Runs before the first paint, so that a dark page never flashes light. The choice itself is made in src/ui/theme.svelte.ts.
(() => {
  let choice = 'machine';
  try {
    choice = localStorage.getItem('quietpour.theme') ?? 'machine';
  } catch {
    // Storage may be refused; the machine's scheme is then used.
  }
  const dark = choice === 'dark' || (choice !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
})();
