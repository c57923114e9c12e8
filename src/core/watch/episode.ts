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
 * @param looks, seen persistence: a flicker is not an event
 * @param gap sightings closer than this in time belong to one episode [s]
 */
export function trackEpisodes(looks: number, seen: number, gap: number): Tracker {
  const recent: boolean[] = [];
  const confirmed: Episode[] = [];
  let pending: Episode | null = null;

  function note(time: number, sighting: Sighting | null): void {
    recent.push(sighting !== null);
    if (recent.length > looks) recent.shift();
    if (sighting === null) {
      if (!recent.includes(true)) pending = null;
      return;
    }
    const current = confirmed.at(-1);
    if (current && time - current.last <= gap) {
      extend(current, sighting);
      return;
    }
    if (pending) extend(pending, sighting);
    else pending = { first: sighting, strongest: sighting, last: time };
    if (recent.length === looks && recent.filter(Boolean).length >= seen) {
      confirmed.push(pending);
      pending = null;
    }
  }

  return { note, episodes: () => confirmed };
}

function extend(episode: Episode, sighting: Sighting): void {
  episode.last = sighting.time;
  if (sighting.strength > episode.strongest.strength) episode.strongest = sighting;
}
