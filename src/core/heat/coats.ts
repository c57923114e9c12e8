import type { Confidence } from '$src/core/metal/metal';
import { AIR_LAYERS, type Coat } from './coat';

/** A coat to start from, with how sure we are. Measure your own: thickness gauge, and fluidity of a trial pour. */
export interface CoatPreset extends Coat {
  readonly name: string;
  readonly source: string;
  readonly confidence: Confidence;
}

const RANGES =
  'Thickness 50 to 300 µm and conductivity 0.3 to 0.6 W/mK (insulating), 1 to 3 W/mK (graphite), from memory';

/** Transfers they come to with the metal in contact: about 4800, 1850, 1000, 450 and 10 000 W/m²K. */
export const COATS: readonly CoatPreset[] = [
  {
    name: 'Thin insulating',
    thickness: 50e-6,
    conductivity: 0.4,
    airLayer: AIR_LAYERS.smooth,
    gap: 0,
    source: RANGES,
    confidence: 'low',
  },
  {
    name: 'Normal insulating',
    thickness: 150e-6,
    conductivity: 0.4,
    airLayer: AIR_LAYERS.medium,
    gap: 0,
    source: RANGES,
    confidence: 'low',
  },
  {
    name: 'Thick insulating',
    thickness: 300e-6,
    conductivity: 0.4,
    airLayer: AIR_LAYERS.rough,
    gap: 0,
    source: RANGES,
    confidence: 'low',
  },
  {
    name: 'Feeder coat',
    thickness: 800e-6,
    conductivity: 0.4,
    airLayer: AIR_LAYERS.rough,
    gap: 0,
    source: 'Laid on 0.5 to 1 mm thick over feeders, 200 to 600 W/m²K, from memory',
    confidence: 'low',
  },
  {
    name: 'Thin graphite',
    thickness: 30e-6,
    conductivity: 2,
    airLayer: AIR_LAYERS.smooth,
    gap: 0,
    source: `${RANGES}; an upper bound, other resistances take over`,
    confidence: 'low',
  },
];

/** Gap taken once a casting has drawn away from the die [m]: 0.1 mm, which brings a normal coat down to 450 W/m²K. From memory, low confidence. */
export const OPENED_GAP = 100e-6;
