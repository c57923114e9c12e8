import { secondsText } from '../wording';
import type { Lap } from './pointFigures';

/** How near one pour of a study came to freezing, and why it laps where time alone was left. */
export function coldWords({ kind, margin }: Lap): string {
  const isLapped = kind === 'laps' && (margin === null || margin >= 0);
  const why = isLapped ? 'A front stood still, or two met, too cold to join. ' : '';
  if (margin === null) return why.trim();
  const left =
    margin < 0
      ? `Freezes ${secondsText(-margin)} too soon.`
      : `${secondsText(margin)} left before ${isLapped ? 'its slowest place' : 'it'} freezes.`;
  return `${why}${left}`;
}
