import { exponential } from '$src/core/elementary/exponential';
import { errorFunction } from './errorFunction';

/**
 * One-phase freezing against a wall held at a temperature: skin X = 2 λ √(α t), with √π λ exp(λ²) erf(λ) = St and
 * St = c (T_m − T_wall)/L. The fastest a skin can grow, with no coat at all.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids (from memory).
 * @throws RangeError when the Stefan number is not positive
 */
export function stefanLambda(stefanNumber: number): number {
  if (!(stefanNumber > 0 && Number.isFinite(stefanNumber)))
    throw new RangeError(`Stefan number: got ${stefanNumber}, expected a positive number`);
  let low = 0;
  let high = Math.sqrt(stefanNumber / 2);
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (stefanOf(middle) < stefanNumber) low = middle;
    else high = middle;
  }
}

/** Skin after a time [m]; diffusivity [m²/s], time [s]. */
export function stefanThickness(stefanNumber: number, diffusivity: number, time: number): number {
  return 2 * stefanLambda(stefanNumber) * Math.sqrt(diffusivity * time);
}

function stefanOf(lambda: number): number {
  return Math.sqrt(Math.PI) * lambda * exponential(lambda * lambda) * errorFunction(lambda);
}
