/**
 * Conditions at the two ends of the section and the law of friction. A die is closed and rubs as metal does;
 * the other kinds exist so that known channel solutions can be computed by the very same step.
 */
export type End =
  | { readonly kind: 'closed' }
  /** Metal entering at this end [m³/s]. */
  | { readonly kind: 'inflow'; readonly discharge: number }
  /** Lab elevation held in the last cell [m]. With `whileSubcritical` it lets go once the flow there outruns its waves. */
  | { readonly kind: 'level'; readonly level: number; readonly whileSubcritical?: boolean };

export type FrictionLaw =
  /** Laminar film or slot plus a turbulent drag, from the liquid's viscosity. */
  | { readonly kind: 'metal' }
  | { readonly kind: 'none' }
  /** Rate g n² |u| / h^(4/3). */
  | { readonly kind: 'Manning'; readonly n: number }
  /** Rate g |u| / (C² h). */
  | { readonly kind: 'Chezy'; readonly c: number }
  /** Rate f |u| / (8 h). */
  | { readonly kind: 'Darcy-Weisbach'; readonly f: number }
  /** Constant rate τ [1/s]. */
  | { readonly kind: 'linear'; readonly rate: number };

export interface Conditions {
  readonly friction: FrictionLaw;
  readonly start: End;
  readonly end: End;
}

export const DIE_CONDITIONS: Conditions = {
  friction: { kind: 'metal' },
  start: { kind: 'closed' },
  end: { kind: 'closed' },
};

/** Friction as a decay rate of the speed [1/s] for a height square to the floor [m]. */
export function frictionRate(law: FrictionLaw, gravity: number, height: number, speed: number): number {
  const u = Math.abs(speed);
  switch (law.kind) {
    case 'Manning':
      return (gravity * law.n * law.n * u) / (height * Math.cbrt(height));
    case 'Chezy':
      return (gravity * u) / (law.c * law.c * height);
    case 'Darcy-Weisbach':
      return (law.f * u) / (8 * height);
    case 'linear':
      return law.rate;
    default:
      return 0;
  }
}
