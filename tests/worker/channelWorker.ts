import { expose } from 'comlink';
import type { PourApi } from '$src/worker/protocol';

/** Stands in for a browser's worker: the same messages over a channel, in one thread, and it can be made to die. */
export class ChannelWorker extends EventTarget {
  isTerminated = false;
  readonly #outside: MessagePort;
  readonly #inside: MessagePort;
  readonly #api: PourApi | null;

  constructor(api: PourApi | null) {
    super();
    this.#api = api;
    const { port1, port2 } = new MessageChannel();
    this.#outside = port1;
    this.#inside = port2;
    port1.onmessage = (event) => this.dispatchEvent(new MessageEvent('message', { data: event.data }));
    if (api) expose(api, port2);
  }

  postMessage(message: unknown, transferred: Transferable[] = []): void {
    if (!this.isTerminated) this.#outside.postMessage(message, transferred);
  }

  /** A browser ends the worker's thread with its pour; here the pour shares the thread of all tests and must be stopped. */
  terminate(): void {
    this.isTerminated = true;
    this.#api?.stop();
    this.#outside.close();
    this.#inside.close();
  }

  /** What the page sees when the file is missing or the worker's script fails. */
  die(message = ''): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message }));
  }
}

export const asWorker = (worker: ChannelWorker): Worker => worker as unknown as Worker;
