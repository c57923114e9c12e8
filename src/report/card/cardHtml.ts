import type { PourRecord } from '$src/core/pour/record';
import type { PageUnits } from '$src/core/units';
import { escaped } from '../drawing/paper';
import { feederShortage } from '../feederShortage';
import { inUnits } from '../inUnits';
import { verdict } from '../verdict';
import type { Reason } from '../verdictReasons';
import { cardCurve } from './cardCurve';
import { cardPictures } from './cardPictures';
import { cardRows } from './cardRows';
import { cardSketch } from './cardSketch';
import type { CardLine, CardSetting, CardSource, CardTable, CardWatch, ShopCard } from './shopCard';

/** Stands at every figure that was computed and not set. */
const MODEL = '<i class="model" title="computed by the model">◇</i>';

const field = ({ label, text, isModel }: CardLine): string =>
  `<div><span>${escaped(label)}${isModel ? MODEL : ''}</span><b>${escaped(text)}</b></div>`;

const setting = ({ label, number, unit, note, isModel }: CardSetting): string =>
  `<tr><th scope="row">${escaped(label)}${isModel ? MODEL : ''}</th><td class="big">${escaped(number)}</td><td class="unit">${escaped(unit)}</td><td class="note">${escaped(note)}</td></tr>`;

/** A value knows the name of its column: where there is no room for a head, it stands beside it. */
const cell = (text: string, column: string): string =>
  `<td data-column="${escaped(column)}">${escaped(text)}</td>`;

function table({ columns, rows, note }: CardTable, name: string): string {
  const head = columns.map((column) => `<th scope="col">${escaped(column)}</th>`).join('');
  const body = rows
    .map((row) => `<tr>${row.map((text, index) => cell(text, columns[index] ?? '')).join('')}</tr>`)
    .join('');
  const more = note === '' ? '' : `<p class="note">${escaped(note)}</p>`;
  return `<table class="${name}"><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table>${more}`;
}

const line = ({ label, text, isModel }: CardLine): string =>
  `<tr><th scope="row">${escaped(label)}${isModel ? MODEL : ''}</th><td>${escaped(text)}</td></tr>`;

const lines = (all: readonly CardLine[], name: string): string =>
  all.length === 0 ? '' : `<table class="${name}"><tbody>${all.map(line).join('')}</tbody></table>`;

const watch = ({ angle, time, text }: CardWatch): string =>
  `<tr><td class="angle">${escaped(angle)}</td><td class="time">${escaped(time)}</td><td>${escaped(text)}</td></tr>`;

const ticks = (texts: readonly string[]): string =>
  `<ul class="ticks">${texts.map((text) => `<li>${escaped(text)}</li>`).join('')}</ul>`;

/** Which limit a pour is near, so that nobody has to go back to the page for it. */
function nearness(record: PourRecord, reason: Reason | undefined, units: PageUnits): string {
  if (reason === undefined) return '';
  const shortage = feederShortage(record);
  const feeds = shortage && shortage.reason.name !== reason.name ? ` Besides, ${shortage.inShort}.` : '';
  return `<p class="warning"><b>Near a limit ◇: ${escaped(reason.name)}.</b> ${escaped(inUnits(reason.line + feeds, units))}</p>`;
}

/** A die that fills quietly over a feeder that cannot feed it. */
function feeding(record: PourRecord, units: PageUnits): string {
  const reason = feederShortage(record)?.reason;
  return reason
    ? `<p class="warning"><b>Feeding ◇: ${escaped(reason.name)}.</b> ${escaped(inUnits(reason.line, units))}</p>`
    : '';
}

/** What the model holds against a pour that is up to date: the card can be printed, but says so at its head. */
function advice({ record, units }: CardSource): string {
  const { kind, sentence, reasons } = verdict(record);
  if (kind === 'sound') return feeding(record, units);
  if (kind === 'near the limit') return nearness(record, reasons[0], units);
  const said = sentence.map(({ text }) => text).join('');
  const head =
    kind === 'not judged' ? 'The model cannot judge this pour' : 'The model speaks against this pour';
  return `<p class="warning"><b>${head} ◇.</b> ${escaped(inUnits(said, units))}</p>`;
}

const head = ({ title }: ShopCard, lines: readonly CardLine[]): string =>
  `<header><div class="title"><span>shop card</span><h2>${escaped(title)}</h2></div>${lines.map(field).join('')}</header>
`;

const warningOf = ({ warning }: ShopCard): string =>
  warning === null ? '' : `<p class="warning"><b>Do not pour by this card.</b> ${escaped(warning)}</p>`;

const NO_FIGURES =
  'It has no figures before that is put right: those of the last run belong to other inputs than the book now holds.';

function upper(card: ShopCard, source: CardSource, id: string): string {
  return `${head(card, card.head)}${warningOf(card) || advice(source)}<div class="card-drawing" role="group" aria-label="Drawing" tabindex="0">${cardSketch(source.record.plan, source.units, `${id}-sketch`)}</div>`;
}

function middle(card: ShopCard, source: CardSource): string {
  return `<div class="pair"><section><h3>Set</h3><table class="settings"><tbody>${card.settings.map(setting).join('')}</tbody></table>
${table(card.coats, 'coats')}</section>
<section><h3>Tilt</h3>${table(card.tilt, 'tilt')}${lines(card.damper, 'damper')}${cardCurve(source.record)}</section></div>`;
}

function lower(card: ShopCard, source: CardSource, id: string): string {
  return `<section class="film-part"><h3>The metal should look like this ${MODEL}</h3>${cardPictures(source.record, `${id}-film`)}</section>
<div class="pair"><section><h3>Watch for ${MODEL} <small>places from the mouth</small></h3><table class="watch"><tbody>${card.watch.map(watch).join('')}</tbody></table></section>
<section><h3>Expect</h3>${lines(card.expected, 'expected')}</section><p class="note whole">${MODEL} computed by the model: good for comparing pours, no promise until matched with castings of your own.</p></div>
<section class="before"><h3>Before every pour</h3>${ticks(card.cautions)}<p class="deferral">${escaped(card.deferral)}</p></section>`;
}

/** Settings and coats that leave no room to spare: such a card is printed a little smaller. */
const MANY_ROWS = 9;

/** A shop card in parts: the article that holds them, and the markup of each from the top down, made when it is asked for. */
export interface CardParts {
  /** Names of the article's looks, in the style sheets beside this file. */
  readonly looks: string;
  readonly label: string;
  readonly parts: readonly (() => string)[];
}

/** For one page, A4 or in inches US letter. `id` is free in the page. */
export function cardParts(source: CardSource, id: string): CardParts {
  const card = cardRows(source);
  const remark = card.remark === '' ? '' : `<p class="remark"><b>Remark</b> ${escaped(card.remark)}</p>`;
  const paper = source.units.length === 'in' ? ' letter' : '';
  const foot = (lines: readonly CardLine[]): string => `<footer>${lines.map(field).join('')}</footer>`;
  if (source.isHindered) {
    // Figures of before beside names and settings of now would be a card of no pour at all.
    const named = card.head.filter(({ isModel }) => !isModel);
    const dated = card.foot.filter(({ label }) => label === 'book' || label === 'date');
    return {
      looks: `shop-card${paper}`,
      label: `Shop card: ${card.title}`,
      parts: [
        () => `${head(card, named)}${warningOf(card)}<p class="note">${NO_FIGURES}</p>`,
        () => remark + foot(dated),
      ],
    };
  }
  const rows = card.settings.length + card.coats.rows.length;
  return {
    looks: `shop-card${paper}${rows >= MANY_ROWS ? ' dense' : ''}${card.warning === null ? '' : ' not-valid'}`,
    label: `Shop card: ${card.title}`,
    parts: [
      () => upper(card, source, id),
      () => middle(card, source),
      () => lower(card, source, id),
      () => remark + foot(card.foot),
    ],
  };
}

/** A shop card as markup in one piece. */
export function cardHtml(source: CardSource, id: string): string {
  const { looks, label, parts } = cardParts(source, id);
  return `<article class="${looks}" aria-label="${escaped(label)}">
${parts.map((part) => part()).join('\n')}
</article>`;
}
