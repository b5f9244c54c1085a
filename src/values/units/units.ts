/**
 * A number that says its unit to the compiler and nothing at run time: it goes where a bare number goes, and a bare number
 * (a product, a quotient) goes where it goes, but not one unit where another is wanted.
 */
type Unit<Name extends string> = number & { readonly unit?: Name }

/** Length, ft. */
export type Feet = Unit<'ft'>
/** Length, in. */
export type Inches = Unit<'in'>
/** Area, ft2. */
export type SquareFeet = Unit<'ft2'>
/** Area, in2. */
export type SquareInches = Unit<'in2'>
/** Angle, degrees. */
export type Degrees = Unit<'deg'>
/** Angle, radians. */
export type Radians = Unit<'rad'>
/** Temperature on a scale, deg C. */
export type Celsius = Unit<'deg C'>
/** Difference of two temperatures, K. */
export type Kelvins = Unit<'K'>
/** Temperature on a scale or a difference of two, deg F. */
export type Fahrenheit = Unit<'deg F'>
/** Force, lb. */
export type Pounds = Unit<'lb'>
/** Force on an area, lb/ft2. */
export type PoundsPerSquareFoot = Unit<'lb/ft2'>
/** Stress, lb/in2. */
export type PoundsPerSquareInch = Unit<'lb/in2'>
/** Force on a length, lb/ft. */
export type PoundsPerFoot = Unit<'lb/ft'>
/** Force on a length, lb/in. */
export type PoundsPerInch = Unit<'lb/in'>
/** Moment or torque, lb-ft. */
export type PoundFeet = Unit<'lb-ft'>
/** Moment or torque, lb-in. */
export type PoundInches = Unit<'lb-in'>
/** Speed, mi/h. */
export type MilesPerHour = Unit<'mi/h'>
/** Current, A. */
export type Amperes = Unit<'A'>
/** Potential, V. */
export type Volts = Unit<'V'>
/** Power, W. */
export type Watts = Unit<'W'>
/** Power, kW. */
export type Kilowatts = Unit<'kW'>
/** Energy, Wh. */
export type WattHours = Unit<'Wh'>
/** Energy, kWh. */
export type KilowattHours = Unit<'kWh'>
/** Money, USD. */
export type Dollars = Unit<'USD'>
/** A part of a hundred, %. */
export type Percent = Unit<'%'>
/** Time, ms. */
export type Milliseconds = Unit<'ms'>
/** Time, s. */
export type Seconds = Unit<'s'>
