import { bench } from './bench.svelte';

/** What was saved is said for so long [ms]. */
const SAID_FOR = 12_000;

/** What was saved last as a file, for as long as it is said. */
class SavedFile {
  /** Its name; null when nothing is to be said. */
  name: string | null = $state(null);
  /** What is to be known of it; empty = nothing. */
  note: string = $state('');

  #timer: ReturnType<typeof setTimeout> | undefined;

  say(name: string, note = ''): void {
    this.name = name;
    this.note = note;
    bench.announcement = `Saved as ${name}. ${note}`.trim();
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.forget(), SAID_FOR);
  }

  forget(): void {
    this.name = null;
  }
}

export const savedFile = new SavedFile();
