import { endOf } from '$src/core/tilt/endOf';
import { knotMotion } from '$src/core/tilt/knotMotion';
import type { Tilt } from '$src/core/tilt/tilt';
import { stagesOf } from '$src/core/tilt/turns';
import { toDegrees } from '$src/core/units';
import { angleText, fixed, secondsText } from './wording';

const LOOKS = 400;

/** A tilt that is offered in place of another, told shortly but whole: "+20.0° to −90.0° at 15.0 °/s". */
export function nearestTiltText(offered: Tilt): string {
  const { start } = offered;
  const ends = `${angleText(start)} to ${angleText(endOf(offered))}`;
  switch (offered.kind) {
    case 'machine':
      return `let go from a stop at ${angleText(start)}, to a stop at ${angleText(offered.end)}`;
    case 'front-led': {
      const home =
        offered.homeWithin === null ? '' : `, at the die end within ${secondsText(offered.homeWithin)}`;
      return `${ends}, front at ${fixed(offered.share * 100, 0)} % of critical${home}`;
    }
    case 'drawn':
    case 'measured': {
      const { duration, rateAt } = knotMotion(offered);
      const rates = Array.from({ length: LOOKS }, (_, i) => Math.abs(rateAt((duration * i) / LOOKS)));
      const most = fixed(toDegrees(Math.max(...rates)), 1);
      return `${offered.kind}, ${ends} in ${secondsText(duration)}, at most ${most} °/s`;
    }
    default: {
      const turns = stagesOf(offered).map((stage) =>
        'rate' in stage
          ? `to ${angleText(stage.to)} at ${fixed(toDegrees(stage.rate), 1)} °/s`
          : `to ${angleText(stage.to)} in ${secondsText(stage.time)}`,
      );
      return `${angleText(start)} ${turns.join(', ')}`;
    }
  }
}
