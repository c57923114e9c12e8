import { firstFlowBand } from '$src/core/level/firstFlowBand';
import type { PourRecord } from '$src/core/pour/record';
import { lineAt } from '$src/core/section/lineAt';
import type { Section } from '$src/core/section/section';
import { endOf } from '$src/core/tilt/endOf';
import type { PageUnits } from '$src/core/units';
import { afterFill } from '../afterFill';
import { COAT_CHOICES, coatNameOf, dieTemperaturesOf, transferOf, transferText } from '../coatChoice';
import { lengthFigure } from '../drawing/lengthFigure';
import { firstFlowText } from '../figures';
import { inUnits } from '../inUnits';
import { type Shown, shownMass, shownTemperature, withUnit } from '../measureText';
import { plainText } from '../sentence';
import { criticalRange, peakRange, speedCall } from '../speedCall';
import { closeWords, rangeWords, type SoundRange } from '../study/soundRanges';
import { type Unusual, unusualHeat } from '../unusualHeat';
import { verdict } from '../verdict';
import {
  angleText,
  fixed,
  listText,
  secondsNumber,
  secondsText,
  significant,
  speedInRange,
} from '../wording';
import { cardCautions, DEFERRAL } from './cardCautions';
import { cardDamper, cardTilt } from './cardTilt';
import { cardVents } from './cardVents';
import { cardWatch } from './cardWatch';
import { fillWords } from './fillMark';
import type { CardLine, CardSetting, CardSource, CardTable, ShopCard } from './shopCard';

const LONGEST_NAME = 42;
const LONGEST_PART = 36;
const LONGEST_REMARK = 110;
const MOST_COATS = 3;
/** Names of regions: two lines when there is one row of them, one line otherwise. */
const ONE_COAT_NAMES = 62;
const COAT_NAMES = 30;
/** Two lines below the table of coats. */
const LONGEST_NOTE = 150;

/** A name cut to what fits, so that the card stays one page. */
export function shortened(text: string, most: number = LONGEST_NAME): string {
  const trimmed = text.trim();
  return trimmed.length <= most ? trimmed : `${trimmed.slice(0, most - 1).trimEnd()}…`;
}

const known = (label: string, text: string): CardLine => ({ label, text, isModel: false });
const model = (label: string, text: string): CardLine => ({ label, text, isModel: true });
const set = (label: string, { number, unit }: Shown, note: string, isModel = false): CardSetting => ({
  label,
  number,
  unit,
  note,
  isModel,
});

/** The card of one pour in words and numbers. */
export function cardRows(source: CardSource): ShopCard {
  const { book, card, pour, metal, record, units } = source;
  return {
    title: shortened(book.casting || book.title),
    warning: source.warning,
    head: [
      known('alloy', shortened(metal.name, LONGEST_PART)),
      known('die', shortened(pour.section, LONGEST_PART)),
      known('pour', shortened(pour.name, LONGEST_PART)),
      model('the model says', plainText(verdict(record).sentence.slice(0, 1)).replace(/\.$/, '')),
    ],
    settings: settings(source),
    coats: coats(source),
    tilt: cardTilt(record),
    damper: cardDamper(record, units),
    expected: expected(source),
    watch: cardWatch(source),
    cautions: cardCautions(metal.base, metal.isOwn),
    deferral: DEFERRAL,
    remark: shortened(card.remark, LONGEST_REMARK),
    foot: [
      known('book', shortened(book.title)),
      known('plan', record.planHash.slice(0, 12)),
      known('solver', record.solver),
      known('date', shortened(card.date, 24)),
      known('cast by', ''),
      known('good of', ''),
    ],
  };
}

function settings(source: CardSource): CardSetting[] {
  const { plan } = source.record;
  const { tilt, section } = plan;
  const cavities = section.cavities > 1 ? `, ${section.cavities} cavities` : '';
  return [
    set(`charge${cavities}`, shownMass(source.mass, source.units), fillWords(plan, source.units)),
    ...temperatures(source),
    set('start angle', degrees(tilt.start), `${lieOf(tilt.start)}; ends at ${angleText(endOf(tilt))}`),
    cardVents(section, source.units),
    dwell(source),
  ];
}

const lieOf = (inclination: number): string =>
  inclination > 0 ? 'die uphill' : inclination < 0 ? 'die downhill' : 'die level';

const degrees = (inclination: number): Shown => ({
  number: angleText(inclination).replace('°', ''),
  unit: '°',
});

function temperatures({ record: { plan }, units, ladleTemperature }: CardSource): CardSetting[] {
  if (!plan.heat) return [];
  const { regions, mouth } = plan.section;
  const dies = dieTemperaturesOf(plan).filter((_, k) => regions[k]!.end > mouth);
  const [low, high] = [Math.min(...dies), Math.max(...dies)].map((kelvins) =>
    shownTemperature(kelvins, units),
  );
  const die = low!.number === high!.number ? low! : { ...low!, number: `${low!.number}–${high!.number}` };
  const [ladle, atTilt] = [ladleTemperature, plan.heat.startTemperature].map((kelvins) =>
    shownTemperature(kelvins, units),
  );
  const isCooler = ladle!.number !== atTilt!.number;
  const usual = (what: Unusual['what']) => unusualHeat(plan, units).find((one) => one.what === what)?.usual;
  const byRegion = low === high || low!.number === high!.number ? 'measure it' : 'by region, below';
  return [
    ...(isCooler ? [set('metal in the ladle', ladle!, 'measure it')] : []),
    set(
      'metal at the tilt',
      atTilt!,
      usual('metal') ?? (isCooler ? 'after the wait in the basin' : 'measure it'),
      isCooler,
    ),
    set('die surface', die, usual('die') ?? byRegion),
  ];
}

/** Never shorter than the dwell proven on real castings. */
function dwell({ record, pour }: CardSource): CardSetting {
  const proven = pour.provenDwell && pour.provenDwell > 0 ? pour.provenDwell : null;
  const earliest = afterFill(record, proven)?.ejection.earliest ?? proven;
  const provenNote = proven === null ? 'no dwell proven yet' : `proven: ${significant(proven)} s`;
  if (earliest === null || !Number.isFinite(earliest))
    return set('keep closed', { number: '—', unit: 's' }, `not computed; ${provenNote}`, true);
  const number = fixed(Math.ceil(earliest), 0);
  return set(
    'keep closed',
    { number: `≥ ${number}`, unit: 's' },
    provenNote,
    proven === null || earliest > proven,
  );
}

/** Coat and die temperature, regions that share both in one row. */
function coats({ record: { plan }, units }: CardSource): CardTable {
  const groups = new Map<string, string[]>();
  const dies = dieTemperaturesOf(plan);
  for (const [k, region] of plan.section.regions.entries()) {
    const name = coatNameOf(transferOf(region));
    const isListed = COAT_CHOICES.some((coat) => coat.name === name);
    const coat = isListed ? name : transferText(transferOf(region), units);
    const key = JSON.stringify([coat, withUnit(shownTemperature(dies[k]!, units))]);
    groups.set(key, [...(groups.get(key) ?? []), region.name]);
  }
  const rows = [...groups].map(([key, names]) => [
    shortened(listText(names), groups.size === 1 ? ONE_COAT_NAMES : COAT_NAMES),
    ...(JSON.parse(key) as string[]),
  ]);
  const left = rows.length - MOST_COATS;
  const more = left > 0 ? `and ${left} more with coats of their own: see the book.` : '';
  // Where the coats take the room, the widths stand in the book alone: the card stays one page.
  const hasRoom = rows.length < MOST_COATS;
  return {
    columns: ['region', 'coat', 'die'],
    rows: rows.slice(0, MOST_COATS),
    note: hasRoom ? shortened(sizes(plan.section, units), LONGEST_NOTE) : more,
  };
}

/** Widths across the drawing, regions of one width or taper together, and how deep the basin lies under the mouth. */
function sizes(section: Section, { length }: PageUnits): string {
  const long = (value: number): string => `${lengthFigure(value, length)} ${length}`;
  const groups = new Map<string, string[]>();
  for (const { name, width, widthAtEnd = width } of section.regions) {
    const wide = widthAtEnd === width ? long(width) : `${lengthFigure(width, length)} to ${long(widthAtEnd)}`;
    groups.set(wide, [...(groups.get(wide) ?? []), name]);
  }
  const [only] = groups.keys();
  const widths =
    groups.size === 1
      ? `${only} throughout`
      : [...groups].map(([width, names]) => `${listText(names)} ${width}`).join('; ');
  const sill = sillDepth(section);
  return `Wide: ${widths}.${sill > 0 ? ` Sill: ${long(sill)} over the basin floor.` : ''}`;
}

/** How far the floor at the mouth stands over the lowest of the basin [m]. */
function sillDepth({ floor, mouth }: Section): number {
  const lowest = Math.min(...floor.filter(({ x }) => x <= mouth).map(({ y }) => y));
  return Math.max(0, lineAt(floor, mouth, 'right') - lowest);
}

const CALLS = {
  under: 'front under',
  'too close to call': 'too close',
  over: 'front OVER',
} as const;

/**
 * The first flows that the assumed contact angle leaves open, first and last. How far they lie from the pour's own comes
 * from the level fill, which has no mesh: the pour's band is run on a coarser one and may lie beside the pour altogether.
 */
function flowRange({ figures, plan, band }: PourRecord): string {
  const own = figures.firstFlow;
  if (own.kind !== 'angle' || !band) return '';
  const { section, liquid, volume, tilt, computation } = plan;
  const level = firstFlowBand(section, liquid, volume, tilt.start, endOf(tilt));
  const set = computation.capillaryGate ? level.value : level.from;
  if (set.kind !== 'angle' || level.from.kind !== 'angle' || level.to.kind !== 'angle') return '';
  const beside = ({ inclination }: { readonly inclination: number }): string =>
    angleText(own.inclination + inclination - set.inclination);
  return ` (${beside(level.from)} to ${beside(level.to)})`;
}

/** What the model expects, each with its band where it has one. */
function expected({ record, units, sound }: CardSource): CardLine[] {
  const { figures, plan } = record;
  const limit = plan.liquid.criticalSpeed;
  const range = peakRange(record);
  const critical = criticalRange(limit);
  const call = speedCall(record);
  const speed =
    figures.peakFrontSpeed === null || !range
      ? 'no front in the die'
      : inUnits(speedInRange(figures.peakFrontSpeed, range), units);
  return [
    model('front speed, peak', speed),
    model(
      'limit, critical',
      `${inUnits(speedInRange(limit, critical), units)}${call ? `, ${CALLS[call]}` : ''}`,
    ),
    model('first flow', firstFlowText(figures.firstFlow) + flowRange(record)),
    model('fill time', figures.fillTime === null ? 'not filled' : secondsText(figures.fillTime)),
    ...(figures.lap && Number.isFinite(figures.lap.margin)
      ? [model('left before freezing', `${secondsNumber(figures.lap.margin)} s at the coldest`)]
      : []),
    ...sound.ranges
      .slice(0, MOST_RANGES)
      .map((range) => model(`sound, ${range.name}`, rangeText(range, units))),
    ...(sound.without === '' ? [] : [known('how far it may stray', sound.without)]),
  ];
}

/** A study varies two settings. */
const MOST_RANGES = 2;

function rangeText(range: SoundRange, units: PageUnits): string {
  const close = range.close ? `; ${closeWords(range.close, range.quantity, units)}` : '';
  return rangeWords(range, units) + close;
}
