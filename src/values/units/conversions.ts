import type { Degrees, Feet, Inches, PoundFeet, PoundInches, Radians } from './units.js'

/** Radians in one degree: for loops that have no time for a call. */
export const RADIANS_PER_DEGREE = Math.PI / 180
/** Inches in a foot. */
export const INCHES_PER_FOOT = 12
export const FEET_PER_MILE = 5280
/** Millimetres in an inch, exact by definition. */
export const MM_PER_INCH = 25.4
/** Points in an inch of paper. */
export const POINTS_PER_INCH = 72
/** Kilograms in a pound, exact by definition. */
export const KG_PER_POUND = 0.45359237
/** Newtons in a pound of force: the pound times standard gravity, 9.80665 m/s2, both exact by definition. */
export const NEWTONS_PER_POUND = KG_PER_POUND * 9.80665
/** Degrees Fahrenheit in one kelvin. */
export const FAHRENHEIT_PER_KELVIN = 1.8
export const MS_PER_SECOND = 1000
export const MS_PER_MINUTE = 60_000
export const MS_PER_HOUR = 3_600_000
export const MS_PER_DAY = 86_400_000
export const SECONDS_PER_HOUR = 3600

/** @returns the angle, radians */
export const radiansOf = (angleDeg: Degrees): Radians => (angleDeg * Math.PI) / 180

/** @returns the angle, degrees */
export const degreesOf = (angleRad: Radians): Degrees => (angleRad * 180) / Math.PI

/** @returns the length, in */
export const inchesOf = (lengthFt: Feet): Inches => lengthFt * INCHES_PER_FOOT

/** @returns the length, ft */
export const feetOf = (lengthIn: Inches): Feet => lengthIn / INCHES_PER_FOOT

/** @returns the moment, lb-ft */
export const poundFeetOf = (momentLbIn: PoundInches): PoundFeet => momentLbIn / INCHES_PER_FOOT

/** @returns rise of a roof on a run of 12 in, in */
export const pitchIn12Of = (tiltDeg: Degrees): Inches => INCHES_PER_FOOT * Math.tan(radiansOf(tiltDeg))
