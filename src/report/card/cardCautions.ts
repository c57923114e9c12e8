import { CAUTIONS, DEFER } from '$src/core/heat/cautions';

/** Before every pour, in the order it is done; short enough to be ticked off. */
const BEFORE = [
  'Ladle, skimmer, tools, ingots, basin and die are dry and hot: damp explodes under metal.',
  'A die that was coated or dipped has been dried and heated again; vents are clear.',
  'Face, body, hands, legs and feet are protected for this metal; nothing synthetic underneath.',
  'Nobody in line with the swing, in the arc or under the spill; floor dry, sand bed or tray in place.',
  'Latch, stop, damper and hoses are sound: oil mist burns on hot metal, a failed damper lets the die run away.',
  'Drive isolated and locked before anyone reaches in; weights shift as metal runs.',
  'A new setting starts with a dry run without metal, then a slow pour that is watched.',
  'Opened no earlier than proven: liquid metal runs from a feeder that is not solid. Parts stay hot for long.',
] as const;

/** Who decides; this card does not. */
export const DEFERRAL =
  'Local codes, the machine’s maker, the data sheets of alloy and coat, and licensed, competent persons decide. This card plans a pour; it is no safety case and replaces none of them.';

/** The cautions of a card: those of every pour, then the metal's own. */
export function cardCautions(base: string): string[] {
  const own: string | undefined = (CAUTIONS as Readonly<Record<string, string>>)[base];
  return [...BEFORE, ...(own ? [own.replace(DEFER, '').trim()] : [])];
}
