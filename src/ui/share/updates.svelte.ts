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
    this.#registration = registration;
    if (registration.waiting && navigator.serviceWorker.controller) this.#take(registration.waiting);
    registration.addEventListener('updatefound', () => this.#follow(registration.installing));
  }

  /** Keeps the book, then loads the newer version. */
  async takeNow(): Promise<void> {
    await desk.keepNow();
    const waiting = this.#registration?.waiting;
    if (waiting) this.#take(waiting);
    else location.reload();
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
