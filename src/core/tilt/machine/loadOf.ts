import { cosine, sine } from '$src/core/elementary/sine';
import type { MetalLoad } from './body';

/** Adds a piece of metal: its mass [kg] and where it is on the body from the pivot [m]. */
export type AddMetal = (mass: number, x: number, y: number) => void;

/** Sums pieces of metal to what the body feels at this inclination [rad]. */
export function loadOf(inclination: number, pieces: (add: AddMetal) => void): MetalLoad {
  const sin = sine(inclination);
  const cos = cosine(inclination);
  let mass = 0;
  let moment = 0;
  let inertia = 0;
  pieces((pieceMass, x, y) => {
    mass += pieceMass;
    moment += pieceMass * (x * cos - y * sin);
    inertia += pieceMass * (x * x + y * y);
  });
  return { mass, moment, inertia };
}
