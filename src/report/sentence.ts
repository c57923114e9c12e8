/** A sentence in runs of plain and bold words, so that page, table and file can each set it their own way. */
export interface Words {
  readonly text: string;
  readonly bold: boolean;
  /** A name somebody gave, e.g. “5 mm wall”: its measures are never turned into other units. */
  readonly isName?: boolean;
}
export type Sentence = readonly Words[];

export const plain = (text: string): Words => ({ text, bold: false });
export const bold = (text: string): Words => ({ text, bold: true });
export const named = (text: string): Words => ({ text, bold: true, isName: true });

export const plainText = (sentence: Sentence): string => sentence.map((words) => words.text).join('');
