/** Cores of this machine, as far as the browser tells; one where there is no browser. */
const cores = (): number => (typeof navigator === 'undefined' ? 1 : (navigator.hardwareConcurrency ?? 1));

const MOST_POURS = 4;
const MOST_OF_A_STUDY = 8;

/**
 * Pours of a book at once. One core is left to the page, which draws while they run; with two cores the first pour is
 * then there sooner, and the last no later, since one worker alone has the solver compiled only once.
 */
export const poursAtOnce = (): number => Math.max(1, Math.min(MOST_POURS, cores() - 1));

/** Pours of a study at once: it was asked for, and is waited for. */
export const studyPoursAtOnce = (): number => Math.max(1, Math.min(MOST_OF_A_STUDY, cores()));
