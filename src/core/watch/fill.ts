import type { Sample } from './sample';
import type { Watcher } from './watcher';

/** When the cavity was half, nine tenths and as good as full. */
const SHARES = [0.5, 0.9, 0.995] as const;

export interface FillWatch extends Watcher {
  /** Share of the cavity's volume that holds metal now. */
  share(): number;
  /** When each of the three shares was first reached [s]. */
  times(): readonly (number | null)[];
}

export function watchFill(): FillWatch {
  const times: (number | null)[] = [null, null, null];
  let share = 0;

  function look(sample: Sample): void {
    share = cavityShare(sample);
    for (let k = 0; k < SHARES.length; k++)
      if (times[k] === null && share >= SHARES[k]!) times[k] = sample.time;
  }

  return { name: 'fill', look, folds: () => [], share: () => share, times: () => times };
}

function cavityShare({ flow, mesh }: Sample): number {
  const { volume } = flow;
  const { open, volume: most, mouthFace, cells } = mesh;
  let metal = 0;
  let room = 0;
  for (let i = mouthFace; i < cells; i++) {
    if (open[i]) continue;
    metal += volume[i]!;
    room += most[i]!;
  }
  return room > 0 ? metal / room : 0;
}
