/** What every caution ends with. The lab helps to plan and to teach; it is no safety case. */
export const DEFER =
  'Follow local law, the machine maker, the data sheets of alloy and coat, and a competent person.';

/** Holds for every metal: water, coats not dry, splash, early opening. */
export const GENERAL_CAUTION =
  'Water or damp explodes under molten metal: dry and preheat ladle, tools, ingots, basin and die, and reheat a die ' +
  'that was coated or dipped. Keep everybody else away and nobody in line with the swing. A die opened before the ' +
  `feeder is solid lets liquid out: never shorten a dwell on a computed time alone. ${DEFER}`;

const ALUMINIUM =
  'Melt splash: face, body and feet protected against molten aluminium, no synthetics underneath. Fluxes give off ' +
  'fluorides. Do not bring rusty tools into the melt.';

/** By `Metal.base`. */
const CAUTIONS: Readonly<Record<string, string>> = {
  A356: `${ALUMINIUM} ${DEFER}`,
  AlSi12: `${ALUMINIUM} ${DEFER}`,
  'aluminium bronze':
    'Much hotter than aluminium: splash clothing, ladle and coat must be meant for copper alloys. Fume of copper and, ' +
    `with some melts, of zinc: extract it. Dies heat up and crack sooner. ${DEFER}`,
  brass:
    'Zinc boils out of brass: white zinc oxide fume causes metal fume fever, so extract it at the furnace and at the die. ' +
    'Leaded brasses give off lead: exposure, hygiene and health checks are ruled by law, and so is lead in drinking-water ' +
    `parts. Cool, dipped dies must be dry before metal comes. ${DEFER}`,
  'ZA-12':
    'Overheated zinc alloys give off zinc oxide fume: keep under the stated temperature and extract. Do not let lead, tin ' +
    `or cadmium into the melt. ${DEFER}`,
  AZ91:
    'Magnesium burns: it needs a cover gas over the melt and dry class D powder at hand. Never water, foam or carbon ' +
    'dioxide on burning magnesium; no rust-scaled tools, no damp sand; chips and dust burn too. Do not pour it in a shop ' +
    `that is not set up for it. ${DEFER}`,
};

/** Said as well of a metal with freezing data of its user's own. */
export const otherAlloy = (base: string): string =>
  `This is said of ${base}, from which you started: another alloy may hold other dangers, such as zinc, lead or beryllium. Read its safety data sheet.`;

/** What to beware of with a metal of that `Metal.base`, shown whenever it is chosen; undefined when nothing is known of it. */
export const cautionOf = (base: string): string | undefined => CAUTIONS[base];
