import adapter from '@sveltejs/adapter-static';

/** @type {import('@sveltejs/kit').Config} */
export default {
  kit: {
    adapter: adapter({ strict: true }),
    alias: { $src: 'src' },
    typescript: {
      // This library ships its TypeScript sources, which do not pass our stricter check; our declaration stands for them.
      config: (config) => {
        config.compilerOptions.paths['odex'] = ['../tests/core/heat/odex.d.ts'];
      },
    },
    paths: { relative: true },
    // Small files held the first view up; the rules of all that comes first stand within the page.
    inlineStyleThreshold: 50_000,
    // The page registers it itself, once the book is drawn.
    serviceWorker: { register: false },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        'style-src': ['self'],
        // Kit's route announcer sets one inline style.
        'style-src-attr': ['unsafe-inline'],
        'img-src': ['self', 'data:', 'blob:'],
        'worker-src': ['self'],
        'connect-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['self'],
      },
    },
  },
};
