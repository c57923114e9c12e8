import type { Section } from '$src/core/section/section';
import { type FirstFlow, isInTheDie } from './firstFlow';
import { levelPath } from './levelPath';
import { type Stand, type StandingLiquid, standOf } from './stand';

/** First flow, with the band the assumed contact angle leaves: from no stand at all to metal that wets nothing. */
export interface FirstFlowBand {
  readonly value: FirstFlow;
  readonly from: FirstFlow;
  readonly to: FirstFlow;
}

export function firstFlow(
  section: Section,
  volume: number,
  start: number,
  end: number,
  stand: Stand | null,
): FirstFlow {
  return levelPath(section, volume, start, end, stand, isInTheDie).firstFlow;
}

export function firstFlowBand(
  section: Section,
  liquid: StandingLiquid,
  volume: number,
  start: number,
  end: number,
): FirstFlowBand {
  return {
    value: firstFlow(section, volume, start, end, standOf(liquid)),
    from: firstFlow(section, volume, start, end, null),
    to: firstFlow(section, volume, start, end, standOf({ ...liquid, contactAngle: Math.PI })),
  };
}
