import { cautionOf, DEFER } from '$src/core/heat/cautions';

/** Before every pour, in the order it is done; short enough to be ticked off. */
const BEFORE = [
  'Ladle, tools, ingots, basin and die dry and hot: damp explodes under metal.',
  'Coated or dipped die dried and heated again; vents clear.',
  'Face, body, hands and feet protected for this metal; nothing synthetic underneath.',
  'Nobody in the swing, the arc or under the spill; dry floor, sand bed in place.',
  'Latch, stop, damper, hoses sound: oil mist burns, a failed damper lets the die run away.',
  'Drive locked off before anyone reaches in: weights shift as metal runs.',
  'New setting: dry run without metal first, then a slow pour under watch.',
  'Opened no earlier than proven: an unset feeder runs out. Parts stay hot.',
] as const;

/** Who decides; this card does not. */
export const DEFERRAL =
  'Local codes, the machine’s maker, the data sheets of alloy and coat, and licensed, competent persons decide. This card plans a pour; it is no safety case and replaces none of them.';

/** Of a metal with freezing data of its user's own. */
const OTHER_ALLOY = 'Another alloy may hold other dangers: read its data sheet.';

/** The cautions of a card: those of every pour, then the metal's own. */
export function cardCautions(base: string, isOwn = false): string[] {
  const own: string | undefined = cautionOf(base);
  return [...BEFORE, ...(own ? [`${own.replace(DEFER, '').trim()}${isOwn ? ` ${OTHER_ALLOY}` : ''}`] : [])];
}
