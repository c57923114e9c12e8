import { millimetres as mm } from '$src/core/section/millimetres';
import type { Section } from '$src/core/section/section';
import { SIZES } from '$src/core/section/sizes';
import { type DiePart, givingWay, heightsOver, lengthOf, raised, stretched } from './dieSize';
import { refused, type SizeEdit, sound, tidied, tooLong, wrongAlready } from './sizeEdit';

/** What gives way keeps this length, and a die this height [m]. */
const LEAST = 0.001;

/** That part of the die so long [m]; all past it moves along. Where nothing would be left of what gives way, it stays. */
export function dieLengthTo(section: Section, part: DiePart, length: number): SizeEdit {
  const wrong = wrongAlready(section, 'die.length');
  if (wrong) return wrong;
  const now = lengthOf(part);
  const kept = `${mm(now)} mm is kept.`;
  const gives = givingWay(section, part);
  const least = now - lengthOf(gives) + Math.min(LEAST, lengthOf(gives));
  if (length < least - 1e-9)
    return refused(
      'die.length',
      part.region === null
        ? `At ${mm(length)} mm nothing would be left between ${mm(gives.from)} and ${mm(gives.to)} mm, where the die gives way; ${kept}`
        : `At ${mm(length)} mm nothing would be left of ${part.name}; ${kept}`,
      `Type ${mm(least)} mm or more${part.region === null ? ', or move corners one by one' : ''}.`,
    );
  const most = SIZES.most - (section.floor.at(-1)!.x - section.floor[0]!.x - now);
  if (length > most) return tooLong('die.length', length, most, kept);
  return sound(tidied(stretched(section, gives, length - now)), 'die.length', kept);
}

/** That part of the die so high where it is highest [m]: its roof goes up or down as it is, its floor stays. */
export function dieHeightTo(section: Section, part: DiePart, height: number): SizeEdit {
  const wrong = wrongAlready(section, 'die.height');
  if (wrong) return wrong;
  const { least, greatest } = heightsOver(section, part);
  const kept = `${mm(greatest)} mm is kept.`;
  const lowest = greatest - Math.max(0, least - LEAST);
  if (height < lowest - 1e-9)
    return refused(
      'die.height',
      `At ${mm(height)} mm the roof would come down to the floor where it is ${mm(least)} mm high now; ${kept}`,
      `Type ${mm(lowest)} mm or more${part.region === null ? ', or choose a region that is to be lower' : ''}.`,
    );
  return sound(tidied(raised(section, part, height - greatest)), 'die.height', kept);
}
