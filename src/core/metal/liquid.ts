/** What the flow needs to know of the metal. */
export interface Liquid {
  /** [kg/m³] */
  readonly density: number;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity: number;
  /** [N/m] */
  readonly surfaceTension: number;
  /** [rad] */
  readonly contactAngle: number;
  /** Front speed above which the surface folds its film [m/s]. */
  readonly criticalSpeed: number;
}
