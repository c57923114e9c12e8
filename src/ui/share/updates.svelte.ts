import { dev } from '$app/environment';
import { base } from '$app/paths';
import { desk } from '../desk.svelte';

/** Said to a service worker that waits, so that it takes over. */
const TAKE_OVER = 'take over';

/** Newer versions of the program: told when they arrive, taken when the page is loaded, never in the middle of work. */
class Updates {
  isWaiting: boolean = $state(false);
  #registration: ServiceWorkerRegistration | null = null;

  /** Call once, before any work begins: a version that already waits is taken at once. */
  async start(): Promise<void> {
    if (!('serviceWorker' in navigator)) return;
    const registration = await navigator.serviceWorker.getRegistration().catch(() => undefined);
    if (!registration) return;
    if (registration.waiting && navigator.serviceWorker.controller) this.#take(registration.waiting);
    this.#watch(registration);
  }

  /** Puts this version by for later visits, and asks for a newer one. It fetches every file, so the page comes first. */
  async register(): Promise<void> {
    if (dev || !('serviceWorker' in navigator)) return;
    // Refused in some private windows; the page then works only with its server.
    const registration = await navigator.serviceWorker
      .register(`${base}/service-worker.js`)
      .catch(() => undefined);
    if (registration && !this.#registration) this.#watch(registration);
  }

  /** Keeps the book, then loads the newer version. */
  async takeNow(): Promise<void> {
    await desk.keepNow();
    const waiting = this.#registration?.waiting;
    if (waiting) this.#take(waiting);
    else location.reload();
  }

  #watch(registration: ServiceWorkerRegistration): void {
    this.#registration = registration;
    registration.addEventListener('updatefound', () => this.#follow(registration.installing));
  }

  #follow(worker: ServiceWorker | null): void {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && navigator.serviceWorker.controller) this.isWaiting = true;
    });
  }

  #take(worker: ServiceWorker): void {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    worker.postMessage(TAKE_OVER);
  }
}

export const updates = new Updates();
