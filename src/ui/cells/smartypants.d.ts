/** The part of the library that is used; it comes without types. */
declare module 'smartypants' {
  /** Text with curly quotes, dashes and dots; `2` makes -- an en dash and --- an em dash. */
  export function smartypantsu(text: string, rules: '2'): string;
}
