/** Pours drawn in pictures and charts: with more, neither curves nor sections can be told apart. */
export const MOST_DRAWN = 8;

/** The pours that are drawn: the first ones chosen. */
export const drawnOf = <P>(pours: readonly P[]): readonly P[] => pours.slice(0, MOST_DRAWN);

/** What is said when not all are drawn; null when they are. */
export const drawnText = (count: number): string | null =>
  count <= MOST_DRAWN
    ? null
    : `Pictures and charts show the first ${MOST_DRAWN} of ${count} pours; the tables above have all. To see another one drawn, measure against it.`;
