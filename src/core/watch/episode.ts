/** Where and when something was seen, and how strong. */
export interface Sighting {
  readonly time: number;
  readonly place: number;
  readonly inclination: number;
  readonly strength: number;
}

/** Something that lasted: from its first sighting, with its strongest one. */
export interface Episode {
  readonly first: Sighting;
  strongest: Sighting;
  last: number;
}

/** Follows one thing over the looks; it counts once it was seen in `seen` of `looks` looks in a row. */
export interface Tracker {
  note(time: number, sighting: Sighting | null): void;
  episodes(): readonly Episode[];
}

/**
 * The last looks are the bits of one number, the newest lowest.
 * @param looks, seen persistence: a flicker is not an event; at most 30 looks
 * @param gap sightings closer than this in time belong to one episode [s]
 */
export function trackEpisodes(looks: number, seen: number, gap: number): Tracker {
  const window = (1 << looks) - 1;
  let recent = 0;
  let looked = 0;
  const confirmed: Episode[] = [];
  let pending: Episode | null = null;

  function note(time: number, sighting: Sighting | null): void {
    recent = ((recent << 1) | (sighting === null ? 0 : 1)) & window;
    if (looked < looks) looked++;
    if (sighting === null) {
      if (recent === 0) pending = null;
      return;
    }
    const current = confirmed.at(-1);
    if (current && time - current.last <= gap) {
      extend(current, sighting);
      return;
    }
    if (pending) extend(pending, sighting);
    else pending = { first: sighting, strongest: sighting, last: time };
    if (looked === looks && bitsSet(recent) >= seen) {
      confirmed.push(pending);
      pending = null;
    }
  }

  return { note, episodes: () => confirmed };
}

function bitsSet(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function extend(episode: Episode, sighting: Sighting): void {
  episode.last = sighting.time;
  if (sighting.strength > episode.strongest.strength) episode.strongest = sighting;
}
