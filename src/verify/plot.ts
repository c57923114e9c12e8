import type { Curve, Plot } from './check';

const WIDTH = 640;
const HEIGHT = 320;
const LEFT = 76;
const RIGHT = 16;
const TOP = 54;
const BOTTOM = 50;

/** Colours that people with any colour sight tell apart; the exact answer is a line, what was computed are marks. */
const LINE_COLOURS = ['#8a8578', '#1d4e6b', '#b3541e'];
const MARK_COLOUR = '#b3541e';
/** Marks drawn of a curve; more would be a smear. */
const MOST_MARKS = 90;

interface Scale {
  (value: number): number;
  readonly ticks: readonly number[];
}

/** A plot as the text of an SVG file. The same plot gives the same bytes. */
export function plotSvg(plot: Plot): string {
  const x = scaleOf(
    plot.curves.flatMap((curve) => curve.x),
    LEFT,
    WIDTH - RIGHT,
  );
  const y = scaleOf(
    plot.curves.flatMap((curve) => curve.y),
    HEIGHT - BOTTOM,
    TOP,
  );
  const lines = plot.curves.filter((curve) => curve.look === 'line');
  const drawn = plot.curves.map((curve) =>
    curve.look === 'line'
      ? drawLine(curve, x, y, LINE_COLOURS[lines.indexOf(curve) % LINE_COLOURS.length]!, lines.indexOf(curve))
      : drawMarks(curve, x, y),
  );
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="system-ui, sans-serif" font-size="12" role="img">`,
    `<title>${escaped(plot.title)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fdfcf8"/>`,
    `<text x="${LEFT}" y="20" font-size="14" fill="#23211c">${escaped(plot.title)}</text>`,
    ...axis(x, y, plot),
    ...drawn,
    ...legend(plot.curves, lines),
    '</svg>',
  ].join('\n')}\n`;
}

function scaleOf(values: readonly number[], from: number, to: number): Scale {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = high > low ? 0.04 * (high - low) : 1;
  const start = low - room;
  const end = high + room;
  const scale = (value: number) => from + ((to - from) * (value - start)) / (end - start);
  return Object.assign(scale, { ticks: ticksBetween(start, end) });
}

function ticksBetween(low: number, high: number): number[] {
  const rough = (high - low) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10);
  const ticks: number[] = [];
  for (let k = Math.ceil(low / step); k * step <= high; k++) ticks.push(k * step);
  return ticks;
}

function axis(x: Scale, y: Scale, plot: Plot): string[] {
  const floor = HEIGHT - BOTTOM;
  const label = (value: number) => String(Number(value.toPrecision(6)));
  return [
    ...y.ticks.map(
      (tick) =>
        `<path d="M${LEFT} ${place(y(tick))}H${WIDTH - RIGHT}" stroke="#e4dfd2"/><text x="${LEFT - 6}" y="${place(y(tick) + 4)}" text-anchor="end" fill="#5d584c">${label(tick)}</text>`,
    ),
    ...x.ticks.map(
      (tick) =>
        `<path d="M${place(x(tick))} ${floor}v5" stroke="#5d584c"/><text x="${place(x(tick))}" y="${floor + 18}" text-anchor="middle" fill="#5d584c">${label(tick)}</text>`,
    ),
    `<path d="M${LEFT} ${floor}H${WIDTH - RIGHT}" stroke="#5d584c"/>`,
    `<text x="${(LEFT + WIDTH - RIGHT) / 2}" y="${HEIGHT - 12}" text-anchor="middle" fill="#23211c">${escaped(plot.xLabel)}</text>`,
    `<text transform="translate(16 ${(TOP + floor) / 2}) rotate(-90)" text-anchor="middle" fill="#23211c">${escaped(plot.yLabel)}</text>`,
  ];
}

function drawLine(curve: Curve, x: Scale, y: Scale, colour: string, index: number): string {
  const points = curve.x.map(
    (value, k) => `${k === 0 ? 'M' : 'L'}${place(x(value))} ${place(y(curve.y[k]!))}`,
  );
  const dash = index === 0 ? '' : ` stroke-dasharray="${index * 5} 3"`;
  return `<path d="${points.join('')}" fill="none" stroke="${colour}" stroke-width="1.8"${dash}/>`;
}

function drawMarks(curve: Curve, x: Scale, y: Scale): string {
  const every = Math.max(1, Math.ceil(curve.x.length / MOST_MARKS));
  const marks = curve.x.flatMap((value, k) =>
    k % every === 0 ? [`<circle cx="${place(x(value))}" cy="${place(y(curve.y[k]!))}" r="2.2"/>`] : [],
  );
  return `<g fill="none" stroke="${MARK_COLOUR}">${marks.join('')}</g>`;
}

/** One row under the title: a sample and a name for each curve. */
function legend(curves: readonly Curve[], lines: readonly Curve[]): string[] {
  let x = LEFT;
  return curves.map((curve) => {
    const from = x;
    x += 46 + 6.4 * curve.name.length;
    const index = lines.indexOf(curve);
    const dash = index > 0 ? ` stroke-dasharray="${index * 5} 3"` : '';
    const sample =
      curve.look === 'marks'
        ? `<circle cx="${from + 12}" cy="36" r="2.6" fill="none" stroke="${MARK_COLOUR}"/>`
        : `<path d="M${place(from)} 36h24" stroke="${LINE_COLOURS[index % LINE_COLOURS.length]}" stroke-width="1.8"${dash}/>`;
    return `${sample}<text x="${place(from + 30)}" y="40" fill="#5d584c">${escaped(curve.name)}</text>`;
  });
}

const place = (value: number): string => String(Number(value.toFixed(1)));

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
