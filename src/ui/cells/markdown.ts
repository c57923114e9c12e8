import MarkdownIt from 'markdown-it';

/** A figure and its unit stay on one line. */
const UNIT_AFTER_NUMBER = /(\d) ((?:mm|cm³|kg|g|s|m\/s|%|°C|°\/s)(?![\w°/]))/g;

/** Raw HTML stays text, and links with scripts in them are refused. */
const renderer = new MarkdownIt({ html: false, typographer: true, linkify: false });

export function renderMarkdown(text: string): string {
  return renderer.render(text).replace(UNIT_AFTER_NUMBER, '$1\u00a0$2');
}
