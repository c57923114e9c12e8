import { PLACE_STEP, type Sample } from '$src/core/watch/sample';

/** Metal at a place along the floor path [m]: depth [m], speed [m/s], and whether it fills the opening. */
export type Metal = (place: number) => { depth: number; speed: number; roofed?: boolean };

/** A look at a die 200 mm long whose front has arrived, level, with metal as told. */
export function lookAt(time: number, metal: Metal): Sample {
  const places = 41;
  const here = Array.from({ length: places }, (_, k) => metal(k * PLACE_STEP));
  const profile = {
    places,
    spacing: PLACE_STEP,
    depth: Float64Array.from(here, ({ depth }) => depth),
    speed: Float64Array.from(here, ({ speed }) => speed),
    opening: new Float64Array(places).fill(24e-3),
    roofed: Uint8Array.from(here, ({ roofed }) => (roofed ? 1 : 0)),
  };
  const dieLength = (places - 1) * PLACE_STEP;
  return { time, elapsed: 2e-3, inclination: 0, front: dieLength, dieLength, profile } as unknown as Sample;
}

/**
 * A bore that runs back from the die end at 0.2 m/s over a stream of 5 mm at 0.9 m/s and fills the opening of 24 mm
 * behind it, its rise spread over a length [m]; then 0.3 s of looks.
 */
export function returningBore(rise: number): Sample[] {
  return Array.from({ length: 300 }, (_, k) => {
    const time = (k + 1) * 2e-3;
    const toe = 0.19 - 0.2 * time;
    return lookAt(time, (place) => {
      const share = Math.min(1, Math.max(0, (place - toe) / rise));
      return { depth: 5e-3 + 19e-3 * share, speed: 0.9 * (1 - share), roofed: share > 0.99 };
    });
  });
}
