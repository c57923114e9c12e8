import { scaleLinear } from 'd3';
import { escaped, short } from '../drawing/paper';
import { type Curve, thin } from '../series';
import { type LineEnd, lineEnds } from './lineEnds';

/** A line of a chart. Looks 0 to 7 differ in colour and dash. */
export interface ChartLine extends Curve {
  readonly name: string;
  readonly look: number;
}

export interface ChartAxis {
  readonly label: string;
  readonly domain: readonly [number, number];
  readonly mark: (value: number) => string;
}

/** A mark at a point, in the units of the axes: a picture, and words beside it or none. */
export interface ChartMark {
  readonly x: number;
  readonly y: number;
  readonly picture: string;
  readonly name: string;
  /** Its words stand below it. */
  readonly isBelow?: boolean;
}

export interface ChartParts {
  readonly title: string;
  /** The chart in words. */
  readonly sentence: string;
  readonly lines: readonly ChartLine[];
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  /** Limits across the chart, in units of y. */
  readonly limits: readonly { readonly value: number; readonly label: string }[];
  readonly marks?: readonly ChartMark[];
  /** A marker that the page's script moves; out of sight until then. */
  readonly hasMarker?: boolean;
}

export const MOST_LOOKS = 8;
/** The field of the curves; it is stretched to the room there is, its lines and words are not. */
const FIELD = { width: 1000, height: 500 };
const MOST_POINTS = 160;
/** A line across the field at the time, with the point on the curve. */
const MARKER = '<span class="now" data-part="now" hidden><i data-part="spot"></i></span>';
const TICKS = { x: 5, y: 5 };

/** Curves as a picture without script: the field stretches with the page, and the words beside it keep their size. */
export function lineChart(parts: ChartParts): string {
  const { title, sentence, lines, x, y, limits, marks = [], hasMarker } = parts;
  const across = scaleLinear(x.domain, [0, FIELD.width]);
  const up = scaleLinear(y.domain, [FIELD.height, 0]);
  const rules = y.domain[1] > y.domain[0] ? up.ticks(TICKS.y) : [];
  const curves = lines.map(
    (line) => `<path class="line look-${line.look % MOST_LOOKS}" d="${curvePath(line, across, up)}"/>`,
  );
  const points = marks.map((mark) => pointMark(mark, across(mark.x), up(mark.y)));
  const ended = lines.length > 1 ? lineEnds(endsOf(lines, across, up), FIELD.width, FIELD.height) : null;
  const inside = limits.filter(({ value }) => value <= y.domain[1]);
  return `<figure class="chart"><p class="chart-title">${escaped(title)}</p>
<div class="field${ended ? ' ended' : ''}" role="img" aria-label="${escaped(sentence)}"><svg viewBox="0 0 ${FIELD.width} ${FIELD.height}" preserveAspectRatio="none" aria-hidden="true">${rules.map((tick) => `<path class="rule" d="M0 ${short(up(tick))}H${FIELD.width}"/>`).join('')}${inside.map(({ value }) => `<path class="limit" d="M0 ${short(up(value))}H${FIELD.width}"/>`).join('')}${curves.join('')}${ended?.within ?? ''}</svg>${ended?.beside ?? ''}
${rules.map((tick) => `<span class="up" style="top:${share(up(tick), FIELD.height)}">${escaped(y.mark(tick))}</span>`).join('')}${across
  .ticks(TICKS.x)
  .map(
    (tick) =>
      `<span class="across" style="left:${share(across(tick), FIELD.width)}">${escaped(x.mark(tick))}</span>`,
  )
  .join(
    '',
  )}${inside.map(({ value, label }, index) => `<span class="limit-name${index < inside.length - 1 ? ' below' : ''}${isClearerLeft(lines, value, x.domain) ? ' left' : ''}" style="top:${share(up(value), FIELD.height)}">${escaped(label)}</span>`).join('')}${points.join('')}${hasMarker ? MARKER : ''}</div>
<p class="axis-name">${escaped(x.label)}</p>
${lines.length > 1 ? lineKey(lines) : ''}</figure>`;
}

const share = (px: number, whole: number): string => `${short((px / whole) * 100)}%`;

/** Its words turn towards the middle of the field, where there is room. */
function pointMark({ picture, name, isBelow }: ChartMark, x: number, y: number): string {
  const looks = `mark${x > FIELD.width / 2 ? ' turned' : ''}${isBelow ? ' under-it' : ''}`;
  const words = name === '' ? '' : `<b>${escaped(name)}</b>`;
  return `<span class="${looks}" style="left:${share(x, FIELD.width)};top:${share(y, FIELD.height)}">${picture}${words}</span>`;
}

function lineKey(lines: readonly ChartLine[]): string {
  const entries = lines.map(
    ({ name, look }, index) =>
      `<li><svg viewBox="0 0 36 8" aria-hidden="true"><path class="line look-${look % MOST_LOOKS}" d="M0 4H36"/></svg><b>${index + 1}</b> ${escaped(name)}</li>`,
  );
  return `<ul class="key">${entries.join('')}</ul>`;
}

type Scale = (value: number) => number;

/** The last point of each line; one without a point has no label. */
function endsOf(lines: readonly ChartLine[], across: Scale, up: Scale): LineEnd[] {
  return lines.map(({ name, x, y }) => {
    const last = y.findLastIndex(Number.isFinite);
    return { name, x: across(x[last] ?? 0), y: up(y[last] ?? 0) };
  });
}

/** A value that is not there breaks the line. */
function curvePath(curve: Curve, across: (value: number) => number, up: (value: number) => number): string {
  let isBroken = true;
  const { x, y } = curve.y.every(Number.isFinite) ? thin(curve, MOST_POINTS) : curve;
  return x
    .map((value, index) => {
      if (!Number.isFinite(y[index]!)) {
        isBroken = true;
        return '';
      }
      const step = isBroken ? 'M' : 'L';
      isBroken = false;
      return `${step}${short(across(value))} ${short(up(y[index]!))}`;
    })
    .join('');
}

/** Room that the name of a limit takes, as a share of the field. */
const NAME = 0.35;

/** Whether the name of a limit is further from every curve at the left end of the limit than at its right end. */
function isClearerLeft(lines: readonly ChartLine[], value: number, [from, to]: ChartAxis['domain']): boolean {
  const room = (to - from) * NAME;
  const clearance = (isInside: (x: number) => boolean): number =>
    Math.min(
      ...lines.flatMap(({ x, y }) =>
        x.flatMap((at, index) => (isInside(at) ? [Math.abs(y[index]! - value)] : [])),
      ),
    );
  return clearance((x) => x < from + room) > clearance((x) => x > to - room);
}
