import type { FirstFlow } from '$src/core/level/firstFlow';
import { angleText } from '$src/report/wording';
import type { StrokeReadings } from './levelReadings';

/** First flow as a figure, and what it means, with the band the contact angle leaves. */
export function firstFlowWords({ bare, value, latest }: StrokeReadings['firstFlow']): {
  figure: string;
  meaning: string;
} {
  if (value.kind === 'already in the die')
    return { figure: 'at once', meaning: 'metal is in the die while ladling' };
  if (value.kind === 'never')
    return { figure: 'never', meaning: `in this stroke; without stand of the skin ${flowText(bare)}` };
  const manner = value.inclination > 0 ? 'uphill: it rolls in' : 'downhill: it runs';
  return {
    figure: angleText(value.inclination),
    meaning: `${manner}; band ${flowText(bare)} to ${flowText(latest)}`,
  };
}

function flowText(flow: FirstFlow): string {
  if (flow.kind === 'angle') return angleText(flow.inclination);
  return flow.kind === 'never' ? 'never' : 'at once';
}
