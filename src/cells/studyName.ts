import type { Book, StudyCell } from './kinds';
import { freeName } from './names';
import { STUDY_NAMES } from './newCell';

/** A name that nobody gave: "Pour window", "Curve 2". */
const GIVEN = new RegExp(`^(${Object.values(STUDY_NAMES).join('|')})( \\d+)?$`);

/** The study, called after how many settings it now varies, unless its user has named it. */
export function namedByKind(book: Book, cell: StudyCell): StudyCell {
  const wanted = cell.study.axes.length > 1 ? STUDY_NAMES.two : STUDY_NAMES.one;
  const told = GIVEN.exec(cell.name)?.[1];
  return told === undefined || told === wanted ? cell : { ...cell, name: freeName(book, wanted) };
}
