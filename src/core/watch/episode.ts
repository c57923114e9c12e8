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

/** What makes sightings one thing, and things one episode. */
export interface Persistence {
  /** It counts once it was seen in `seen` of the last `looks` looks: a flicker is not an event. At most 30 looks. */
  readonly looks: number;
  readonly seen: number;
  /** Two looks' sightings further apart than this are two things [m]: persistence is that of one. */
  readonly within: number;
  /** Things that come within this time after each other belong to one episode [s]. */
  readonly gap: number;
}

/** Follows things over the looks. */
export interface Tracker {
  note(time: number, sightings: readonly Sighting[]): void;
  episodes(): readonly Episode[];
}

/** One thing on its way. The last looks are the bits of one number, the newest lowest. */
interface Track {
  recent: number;
  place: number;
  episode: Episode;
  isConfirmed: boolean;
}

export function trackEpisodes({ looks, seen, within, gap }: Persistence): Tracker {
  const window = (1 << looks) - 1;
  const confirmed: Episode[] = [];
  let tracks: Track[] = [];

  function note(time: number, sightings: readonly Sighting[]): void {
    if (sightings.length === 0 && tracks.length === 0) return;
    for (const track of tracks) track.recent = (track.recent << 1) & window;
    for (const sighting of sightings) follow(trackOf(tracks, sighting.place, within), sighting);
    for (const track of tracks) if (!track.isConfirmed && bitsSet(track.recent) >= seen) confirm(track, time);
    tracks = tracks.filter((track) => track.recent !== 0);
  }

  function follow(track: Track | null, sighting: Sighting): void {
    if (track === null) {
      const episode = { first: sighting, strongest: sighting, last: sighting.time };
      tracks.push({ recent: 1, place: sighting.place, episode, isConfirmed: false });
      return;
    }
    track.recent |= 1;
    track.place = sighting.place;
    extend(track.episode, sighting.time, sighting);
  }

  function confirm(track: Track, time: number): void {
    track.isConfirmed = true;
    const before = confirmed.at(-1);
    if (before && track.episode.first.time - before.last <= gap) {
      extend(before, time, track.episode.strongest);
      track.episode = before;
    } else confirmed.push(track.episode);
  }

  return { note, episodes: () => confirmed };
}

/** The track that goes on nearest to a place and has not been seen in this look yet. */
function trackOf(tracks: readonly Track[], place: number, within: number): Track | null {
  let nearest: Track | null = null;
  for (const track of tracks) {
    const distance = Math.abs(track.place - place);
    if (distance > within || track.recent & 1) continue;
    if (nearest === null || distance < Math.abs(nearest.place - place)) nearest = track;
  }
  return nearest;
}

function bitsSet(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function extend(episode: Episode, time: number, sighting: Sighting): void {
  episode.last = time;
  if (sighting.strength > episode.strongest.strength) episode.strongest = sighting;
}
