import { base } from '$app/paths';

/** An example book on the server. */
export interface Example {
  readonly file: string;
  readonly title: string;
  /** Heading it is listed under; absent = none. */
  readonly group?: string;
}

/** The list of the example books; none where the server has no list. */
export async function fetchExamples(): Promise<readonly Example[]> {
  try {
    return JSON.parse(await fetchText('books.json')) as Example[];
  } catch {
    return [];
  }
}

/** The one example that may be on its way before it is asked for. */
let ahead: { readonly file: string; readonly text: Promise<string> } | null = null;

export function fetchAhead(file: string): void {
  const text = fetchText(file);
  // Whoever waits for it is told.
  text.catch(() => undefined);
  ahead = { file, text };
}

/** The text of an example. @throws Error when the server does not give it */
export async function exampleText(file: string): Promise<string> {
  const text = ahead?.file === file ? ahead.text : fetchText(file);
  ahead = null;
  return text;
}

async function fetchText(path: string): Promise<string> {
  const answer = await fetch(`${base}/${path}`);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer.text();
}
