import type { PageUnits } from '$src/core/units';
import { escaped } from '../drawing/paper';
import { inUnits } from '../inUnits';
import type { Sentence, Words } from '../sentence';
import type { Reason } from '../verdictReasons';

/** A text of a report as markup of the page, in the book's units. */
export const said = (text: string, units: PageUnits): string => escaped(inUnits(text, units));

export const paragraph = (text: string, units: PageUnits): string => `<p>${said(text, units)}</p>`;

/** The sentence a cell comes to. */
export const answer = (sentence: Sentence, units: PageUnits): string =>
  `<p class="verdict">${sentenceOf(sentence, units)}</p>`;

/** Plain and bold words of a sentence as markup. */
export const sentenceOf = (sentence: Sentence, units: PageUnits): string =>
  sentence.map((words) => run(words, units)).join('');

function run({ text, bold, isName }: Words, units: PageUnits): string {
  const markup = isName ? escaped(text) : said(text, units);
  return bold ? `<b>${markup}</b>` : markup;
}

export const reasonList = (reasons: readonly Reason[], units: PageUnits): string =>
  list(reasons.map(({ name, line }) => `<b>${escaped(name)}</b> ${said(line, units)}`));

/** Items are markup. */
export const list = (items: readonly string[]): string =>
  items.length === 0 ? '' : `<ul>${items.map((item) => `<li>${item}</li>`).join('')}</ul>`;
