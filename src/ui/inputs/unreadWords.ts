import type { Reading } from './readQuantity';

interface Words {
  readonly message: string;
  readonly remedy: string;
}

/**
 * Why what was typed gives no value, and what to do.
 *
 * @param inUse the value that the field goes on with, as shown; null when that was refused as well, or there is none
 */
export function unreadWords(text: string, reading: Reading | null, inUse: string | null): Words {
  const until = inUse === null ? 'nothing is used until then.' : `${inUse} is still used.`;
  if (reading && 'either' in reading) {
    const [thousands, decimals] = reading.either;
    return {
      message: `Is this ${thousands} or ${decimals}?`.replaceAll('-', '\u2212'),
      remedy: `Type it without the comma, or with a different number of decimals; ${until}`,
    };
  }
  if (text.trim() === '') return { message: 'Type a number.', remedy: `The field is empty; ${until}` };
  return { message: 'This is not a number.', remedy: `Type a number such as 12.5; ${until}` };
}
