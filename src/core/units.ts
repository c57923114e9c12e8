/**
 * The only place where units are converted. Inside, everything is SI and radians:
 * metres, seconds, kilograms, kelvins. The page, the command line and files for people
 * convert here, at the border.
 */

const DEGREES_PER_RADIAN = 180 / Math.PI;
const MILLIMETRES_PER_METRE = 1000;
/** International inch, exact by definition (1959 agreement). */
const METRES_PER_INCH = 0.0254;
/** Avoirdupois pound, exact by definition (1959 agreement). */
const KILOGRAMS_PER_POUND = 0.45359237;
const CELSIUS_ZERO = 273.15;

export const toDegrees = (radians: number): number => radians * DEGREES_PER_RADIAN;
export const fromDegrees = (degrees: number): number => degrees / DEGREES_PER_RADIAN;
export const toMillimetres = (metres: number): number => metres * MILLIMETRES_PER_METRE;
export const fromMillimetres = (millimetres: number): number => millimetres / MILLIMETRES_PER_METRE;
export const toInches = (metres: number): number => metres / METRES_PER_INCH;
export const fromInches = (inches: number): number => inches * METRES_PER_INCH;
export const toPounds = (kilograms: number): number => kilograms / KILOGRAMS_PER_POUND;
export const fromPounds = (pounds: number): number => pounds * KILOGRAMS_PER_POUND;
export const toCelsius = (kelvins: number): number => kelvins - CELSIUS_ZERO;
export const fromCelsius = (celsius: number): number => celsius + CELSIUS_ZERO;
export const toFahrenheit = (kelvins: number): number => (toCelsius(kelvins) * 9) / 5 + 32;
export const fromFahrenheit = (fahrenheit: number): number => fromCelsius(((fahrenheit - 32) * 5) / 9);
/** Cubic metres to cubic centimetres. */
export const toCubicCentimetres = (cubicMetres: number): number =>
  (cubicMetres * MILLIMETRES_PER_METRE ** 3) / 1000;
/** Square metres to square millimetres. */
export const toSquareMillimetres = (squareMetres: number): number =>
  squareMetres * MILLIMETRES_PER_METRE ** 2;
export const fromSquareMillimetres = (squareMillimetres: number): number =>
  squareMillimetres / MILLIMETRES_PER_METRE ** 2;
/** Viscosity, pascal seconds to millipascal seconds. */
export const toMillipascalSeconds = (pascalSeconds: number): number => pascalSeconds * 1000;
export const toKilojoules = (joules: number): number => joules / 1000;
export const fromKilojoules = (kilojoules: number): number => kilojoules * 1000;
export const fromMilliseconds = (milliseconds: number): number => milliseconds / 1000;
export const toMilliseconds = (seconds: number): number => seconds * 1000;
/** Kinematic viscosity: square metres a second to centistokes (mm²/s). */
export const toCentistokes = (squareMetresPerSecond: number): number =>
  squareMetresPerSecond * MILLIMETRES_PER_METRE ** 2;
export const fromCentistokes = (centistokes: number): number => centistokes / MILLIMETRES_PER_METRE ** 2;
const PASCALS_PER_BAR = 1e5;
export const toBar = (pascals: number): number => pascals / PASCALS_PER_BAR;
export const fromBar = (bar: number): number => bar * PASCALS_PER_BAR;
const LITRES_PER_CUBIC_METRE = 1000;
export const toLitres = (cubicMetres: number): number => cubicMetres * LITRES_PER_CUBIC_METRE;
export const fromLitres = (litres: number): number => litres / LITRES_PER_CUBIC_METRE;
const SECONDS_PER_HOUR = 3600;
/** How often an hour something comes that takes this long [s]. */
export const timesAnHour = (period: number): number => SECONDS_PER_HOUR / period;
export const toCubicMetresPerHour = (cubicMetresPerSecond: number): number =>
  cubicMetresPerSecond * SECONDS_PER_HOUR;
export const fromCubicMetresPerHour = (cubicMetresPerHour: number): number =>
  cubicMetresPerHour / SECONDS_PER_HOUR;
/** US gallon and standard gravity, exact by definition. */
const CUBIC_METRES_PER_GALLON = 231 * METRES_PER_INCH ** 3;
const STANDARD_GRAVITY = 9.80665;
const PASCALS_PER_PSI = (KILOGRAMS_PER_POUND * STANDARD_GRAVITY) / METRES_PER_INCH ** 2;
/** Valve coefficient Cv [US gallons a minute at 1 psi] as Kv [m³/h at 1 bar]. */
export const kvFromCv = (cv: number): number =>
  cv * toCubicMetresPerHour(CUBIC_METRES_PER_GALLON / 60) * Math.sqrt(PASCALS_PER_BAR / PASCALS_PER_PSI);

/** Square and cubic inches, exact by definition of the inch. */
export const toSquareInches = (squareMetres: number): number => squareMetres / METRES_PER_INCH ** 2;
export const fromSquareInches = (squareInches: number): number => squareInches * METRES_PER_INCH ** 2;
export const toCubicInches = (cubicMetres: number): number => cubicMetres / METRES_PER_INCH ** 3;
export const fromCubicInches = (cubicInches: number): number => cubicInches * METRES_PER_INCH ** 3;
export const fromCubicCentimetres = (cubicCentimetres: number): number =>
  (cubicCentimetres * 1000) / MILLIMETRES_PER_METRE ** 3;

/** A step of temperature [K] in degrees Fahrenheit. */
const toFahrenheitStep = (kelvins: number): number => (kelvins * 9) / 5;
const fromFahrenheitStep = (degrees: number): number => (degrees * 5) / 9;

/** What people read and type lengths, masses and temperatures in. Speeds go with lengths, densities with masses; pressures are bar for all. */
export interface PageUnits {
  readonly length: 'mm' | 'in';
  readonly mass: 'kg' | 'lb';
  readonly temperature: 'degC' | 'degF';
}

export const METRIC: PageUnits = { length: 'mm', mass: 'kg', temperature: 'degC' };

/** A unit with its way from and to SI. */
export interface Measure {
  readonly unit: string;
  /** The unit as part of a name in a file, e.g. `front_mm`. */
  readonly key: string;
  readonly toShown: (si: number) => number;
  readonly fromShown: (shown: number) => number;
}

const asIs = (value: number): number => value;

export const LENGTH: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'mm', key: 'mm', toShown: toMillimetres, fromShown: fromMillimetres },
  in: { unit: 'in', key: 'in', toShown: toInches, fromShown: fromInches },
};
export const AREA: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'mm²', key: 'mm2', toShown: toSquareMillimetres, fromShown: fromSquareMillimetres },
  in: { unit: 'in²', key: 'in2', toShown: toSquareInches, fromShown: fromSquareInches },
};
export const VOLUME: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'cm³', key: 'cm3', toShown: toCubicCentimetres, fromShown: fromCubicCentimetres },
  in: { unit: 'in³', key: 'in3', toShown: toCubicInches, fromShown: fromCubicInches },
};
export const SPEED: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'm/s', key: 'm_per_s', toShown: asIs, fromShown: asIs },
  in: { unit: 'in/s', key: 'in_per_s', toShown: toInches, fromShown: fromInches },
};
export const DENSITY: Readonly<Record<PageUnits['mass'], Measure>> = {
  kg: { unit: 'kg/m³', key: 'kg_per_m3', toShown: asIs, fromShown: asIs },
  lb: {
    unit: 'lb/in³',
    key: 'lb_per_in3',
    toShown: (density) => toPounds(density) * METRES_PER_INCH ** 3,
    fromShown: (density) => fromPounds(density) / METRES_PER_INCH ** 3,
  },
};
export const MASS: Readonly<Record<PageUnits['mass'], Measure>> = {
  kg: { unit: 'kg', key: 'kg', toShown: asIs, fromShown: asIs },
  lb: { unit: 'lb', key: 'lb', toShown: toPounds, fromShown: fromPounds },
};
export const TEMPERATURE: Readonly<Record<PageUnits['temperature'], Measure>> = {
  degC: { unit: '°C', key: 'C', toShown: toCelsius, fromShown: fromCelsius },
  degF: { unit: '°F', key: 'F', toShown: toFahrenheit, fromShown: fromFahrenheit },
};
export const TEMPERATURE_DIFFERENCE: Readonly<Record<PageUnits['temperature'], Measure>> = {
  degC: { unit: '°C', key: 'K', toShown: asIs, fromShown: asIs },
  degF: { unit: '°F', key: 'F', toShown: toFahrenheitStep, fromShown: fromFahrenheitStep },
};

/** British thermal unit of the International Table, exact by definition of the calorie: 1055.05585262 J. */
const JOULES_PER_BTU = 1055.05585262;
/** 1 Btu/(h ft² °F) in W/(m² K), about 5.678. */
const TRANSFER_PER_BTU =
  JOULES_PER_BTU / (SECONDS_PER_HOUR * (12 * METRES_PER_INCH) ** 2 * fromFahrenheitStep(1));
/** dyn/cm, which is mN/m. */
const DYNES_PER_CENTIMETRE = 1000;

/** Heat transfer goes with lengths: coat makers who write inches write Btu/(h ft² °F). */
export const HEAT_TRANSFER: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'W/m²K', key: 'W_per_m2K', toShown: asIs, fromShown: asIs },
  in: {
    unit: 'Btu/h ft²°F',
    key: 'Btu_per_h_ft2_F',
    toShown: (transfer) => transfer / TRANSFER_PER_BTU,
    fromShown: (shown) => shown * TRANSFER_PER_BTU,
  },
};
/** Surface tension goes with lengths too: handbooks for inch shops tabulate it in dyn/cm, and hardly any in lbf/ft. */
export const SURFACE_TENSION: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'N/m', key: 'N_per_m', toShown: asIs, fromShown: asIs },
  in: {
    unit: 'dyn/cm',
    key: 'dyn_per_cm',
    toShown: (tension) => tension * DYNES_PER_CENTIMETRE,
    fromShown: (shown) => shown / DYNES_PER_CENTIMETRE,
  },
};

/** 1 Btu/lb in J/kg, exact by the same definition, and 1 Btu/(lb °F) in J/(kg K). */
const HEAT_PER_BTU = JOULES_PER_BTU / KILOGRAMS_PER_POUND;
const SPECIFIC_PER_BTU = HEAT_PER_BTU / fromFahrenheitStep(1);
/** 1 Btu/(h ft °F) in W/(m K), about 1.731. */
const CONDUCTIVITY_PER_BTU = TRANSFER_PER_BTU * 12 * METRES_PER_INCH;

/** Heat by mass goes with masses, as does specific heat. */
export const LATENT_HEAT: Readonly<Record<PageUnits['mass'], Measure>> = {
  kg: { unit: 'kJ/kg', key: 'kJ_per_kg', toShown: toKilojoules, fromShown: fromKilojoules },
  lb: {
    unit: 'Btu/lb',
    key: 'Btu_per_lb',
    toShown: (heat) => heat / HEAT_PER_BTU,
    fromShown: (shown) => shown * HEAT_PER_BTU,
  },
};
export const SPECIFIC_HEAT: Readonly<Record<PageUnits['mass'], Measure>> = {
  kg: { unit: 'J/kgK', key: 'J_per_kgK', toShown: asIs, fromShown: asIs },
  lb: {
    unit: 'Btu/lb°F',
    key: 'Btu_per_lbF',
    toShown: (heat) => heat / SPECIFIC_PER_BTU,
    fromShown: (shown) => shown * SPECIFIC_PER_BTU,
  },
};
/** Conductivity goes with heat transfer. */
export const CONDUCTIVITY: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'W/mK', key: 'W_per_mK', toShown: asIs, fromShown: asIs },
  in: {
    unit: 'Btu/h ft°F',
    key: 'Btu_per_h_ft_F',
    toShown: (conductivity) => conductivity / CONDUCTIVITY_PER_BTU,
    fromShown: (shown) => shown * CONDUCTIVITY_PER_BTU,
  },
};
/** Handbooks for inch shops tabulate viscosity in centipoises, which are mPa s. */
const CENTIPOISE: Measure = {
  unit: 'cP',
  key: 'cP',
  toShown: toMillipascalSeconds,
  fromShown: (shown) => shown / 1000,
};
export const VISCOSITY: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { unit: 'Pa s', key: 'Pa_s', toShown: asIs, fromShown: asIs },
  in: CENTIPOISE,
};
/** The same for texts, which say mPa s. */
export const VISCOSITY_IN_WORDS: Readonly<Record<PageUnits['length'], Measure>> = {
  mm: { ...CENTIPOISE, unit: 'mPa s', key: 'mPa_s' },
  in: CENTIPOISE,
};

/** A unit that may be typed. */
export type TypedUnit = Pick<Measure, 'unit' | 'fromShown'>;

const typed = (units: Readonly<Record<string, number>>): readonly TypedUnit[] =>
  Object.entries(units).map(([unit, inSi]) => ({ unit, fromShown: (number) => number * inSi }));

/** Units that may be typed besides those shown, in SI; they are never shown. Temperatures in kelvins. */
export const TYPED_UNITS = {
  length: typed({ cm: 0.01, m: 1, ft: 12 * METRES_PER_INCH }),
  area: typed({ 'cm²': 1e-4 }),
  speed: typed({ 'mm/s': 1e-3, 'cm/s': 0.01 }),
  mass: typed({ g: 1e-3, oz: KILOGRAMS_PER_POUND / 16 }),
  temperature: typed({ K: 1 }),
  time: typed({ min: 60, h: SECONDS_PER_HOUR, ms: 1e-3 }),
  pressure: typed({ psi: PASCALS_PER_PSI, MPa: 1e6, kPa: 1e3 }),
  volume: typed({ ml: 1e-6, 'cm³': 1e-6 }),
  latentHeat: typed({ 'J/g': 1000, 'cal/g': 4186.8, 'BTU/lb': HEAT_PER_BTU }),
  specificHeat: typed({ 'kJ/kgK': 1000, 'J/gK': 1000 }),
  viscosity: typed({ 'mPa s': 1e-3, mPa·s: 1e-3 }),
};
