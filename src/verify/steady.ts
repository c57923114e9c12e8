import type { Effort, Family, Outcome } from './check';
import { boreLimits, stopped } from './steady/bores';
import { BUMP_STRETCH, fastBump, jumpBump, slowBump } from './steady/bumps';
import { BENCH_STRETCH, benchFast, benchSlow, longChannel } from './steady/channels';
import { evenFlow } from './steady/evenFlow';
import { chokedThroat, slowThroat } from './steady/throats';
import { weir } from './steady/weir';

const GOUTAL = 'Goutal & Maurel 1997; Delestre et al. 2013, section 3.1';
const GENTLE_BUMP = `25 m, bump 0.2 m high, lengths stretched ${BUMP_STRETCH} times (a steady depth depends on the height of the bed alone)`;
const MACDONALD = 'MacDonald et al. 1997, J. Hydraul. Eng. 123';
const runFor = (run: () => Outcome) => (_: Effort) => run();

export const steadyStreams: Family = {
  name: 'Steady streams, bores and jumps',
  about:
    'Streams that settle to a depth known in closed form. They start on it and must stay: a scheme with another steady state drifts away. Inflow and held levels exist for these checks only.',
  checks: [
    {
      id: 'A08a',
      title: 'Slow stream over a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 4.42 m²/s`,
      run: runFor(slowBump),
    },
    {
      id: 'A08b',
      title: 'Stream turning fast over a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 1.53 m²/s, free outlet`,
      run: runFor(fastBump),
    },
    {
      id: 'A08c',
      title: 'Hydraulic jump behind a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 0.18 m²/s`,
      run: runFor(jumpBump),
    },
    {
      id: 'A09a',
      title: 'Long channel, Manning friction',
      source: MACDONALD,
      setting: '1 km, 2 m²/s, n 0.033',
      run: runFor(longChannel),
    },
    {
      id: 'A09b',
      title: 'Bench-scale channel, slow',
      source: `constructed by the method of ${MACDONALD}`,
      setting: `0.4 m stretched ${BENCH_STRETCH} times, Darcy-Weisbach 0.03 lessened as much`,
      run: runFor(benchSlow),
    },
    {
      id: 'A09c',
      title: 'Bench-scale channel, fast',
      source: `constructed by the method of ${MACDONALD}`,
      setting: `0.4 m stretched ${BENCH_STRETCH} times, behind an approach of the same length; bars at the meshes of the fast half`,
      run: benchFast,
    },
    {
      id: 'A10a',
      title: 'Slow stream through a contraction',
      source: 'energy conservation (Henderson 1966, from memory)',
      setting: '1 m, width 100 to 70 mm, an even taper from mesh face to mesh face, 1.2 l/s',
      run: runFor(slowThroat),
    },
    {
      id: 'A10b',
      title: 'Stream choked by a contraction',
      source: 'energy conservation (Henderson 1966, from memory)',
      setting: 'the same at the greatest discharge, free outlet',
      run: runFor(chokedThroat),
    },
    {
      id: 'A11',
      title: 'Stream stopped by a wall',
      source: 'Bélanger 1841; Chow 1959, chapter 3',
      setting: '1 m, 200 mesh cells',
      run: runFor(stopped),
    },
    {
      id: 'weir',
      title: 'Metal over a vertical step',
      source: 'critical flow over a broad crest (Chow 1959; Henderson 1966, from memory)',
      setting: 'step 50 mm high, 2 m, 20 s, 200 mesh cells',
      run: runFor(weir),
    },
    {
      id: 'A12',
      title: 'Depth of even flow',
      source: 'Manning; Chow 1959 (from memory)',
      setting: 'wide channel 400 m long on a slope, from 1.2 times the depth, 50 mesh cells',
      run: runFor(evenFlow),
    },
    {
      id: 'C03',
      title: 'Strength and Froude number of bores',
      source: 'Bélanger; Favre 1935 after Kalisch et al. 2020; Chanson 2010',
      setting: 'closed form',
      run: runFor(boreLimits),
    },
  ],
};
