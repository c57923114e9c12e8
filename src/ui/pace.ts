/** Time of a pour grows with its mesh cells and with its steps, which are as many as mesh cells allow. */
const work = (meshCells: number): number => meshCells ** 2;

/** How long pours took, so as to tell about how long others will. */
export class Pace {
  #seconds = 0;
  #work = 0;

  /** A pour on that mesh took so long [s]. */
  note(seconds: number, meshCells: number): void {
    this.#seconds += seconds;
    this.#work += work(meshCells);
  }

  /** About how long one pour on that mesh takes [s]; null while none is known. */
  each(meshCells: number): number | null {
    return this.#work === 0 ? null : (this.#seconds / this.#work) * work(meshCells);
  }
}
