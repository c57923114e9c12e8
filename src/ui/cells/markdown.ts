import MarkdownIt from 'markdown-it';

/** Raw HTML stays text, and links with scripts in them are refused. */
const renderer = new MarkdownIt({ html: false, typographer: true, linkify: false });

export function renderMarkdown(text: string): string {
  return renderer.render(text);
}
