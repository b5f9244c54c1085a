import type { Climate } from '../../climate/index.js'
import { METHOD_ERROR, METHOD_SOURCE, UNCERTAINTY } from '../../tables/losses/index.js'
import type { Degrees, KilowattHours } from '../../values/index.js'
import type { Source } from '../../worksheet/index.js'

/** Name of the term that changes from year to year; all others last. */
export const YEARLY_TERM = 'year to year'

/** Name of the term of how fast the output falls with age, which no single year has. */
export const AGE_TERM = 'loss with age'

/** What one array tells of how sure its energy is. */
export interface UncertainArray {
  readonly id: string
  readonly kwh: KilowattHours
  readonly tiltDeg: Degrees
  readonly azimuthDeg: Degrees
  /** Shares of the light that shade, dirt and snow take. */
  readonly shadeLoss: number
  readonly dirtLoss: number
  readonly snowLoss: number
}

/** What the uncertainty of a yearly yield rests on. */
export interface UncertaintyBasis {
  readonly climate: Climate
  readonly arrays: readonly UncertainArray[]
  /** Half the relative difference between the two published ways to find the cell temperature. */
  readonly temperatureSpread: number
  /** Share of the rated power on racks whose rows have no places, 0 to 1. */
  readonly rowShade: number
  /** Share of the time out of order. */
  readonly availabilityLoss: number
  /** Loss of output per year of age, and the path that states it. */
  readonly ageing: { readonly pctPerYear: number; readonly path: string }
  /** Years that the system is in use, and the path that states them. */
  readonly life: { readonly years: number; readonly path: string }
}

/** A cause of doubt. */
export interface Term {
  readonly name: string
  /** Relative standard deviation of each array's energy. */
  readonly relative: readonly number[]
  /** Loss that is doubted, by array: it cannot be less than nothing. Undefined for what may go either way. */
  readonly loss?: readonly number[]
  /** Whether the arrays share it: one draw for all, or one for each. */
  readonly isShared: boolean
  readonly why: string
  readonly source: Source
}

/** Every cause of doubt about a year's energy that lasts or changes from year to year. */
export function termsOf(basis: UncertaintyBasis): Term[] {
  const { climate, arrays, temperatureSpread, rowShade, availabilityLoss } = basis
  const all = (relative: number): number[] => arrays.map(() => relative)
  const each = (of: (array: UncertainArray) => number): number[] => arrays.map(of)
  const shared = (name: string, relative: number, { why, source }: { why: string; source: Source }): Term => ({
    name,
    relative: all(relative),
    isShared: true,
    why,
    source,
  })
  const terms: Term[] = [
    placeTerm(climate, all),
    ...(climate.kind === 'monthly' ? [methodTerm(climate.latitudeDeg, arrays)] : decompositionTerms(climate, arrays)),
    {
      name: 'sky model',
      relative: each(({ tiltDeg }) => (UNCERTAINTY.transposition.relative * Math.min(tiltDeg, 34)) / 34),
      isShared: true,
      why: `${UNCERTAINTY.transposition.why}; from 0 when level to ${100 * UNCERTAINTY.transposition.relative} % at 34 degrees and more`,
      source: UNCERTAINTY.transposition.source,
    },
    {
      name: 'shade',
      relative: each(({ shadeLoss }) => UNCERTAINTY.shade.relative * shadeLoss),
      loss: each(({ shadeLoss }) => shadeLoss),
      isShared: false,
      why: UNCERTAINTY.shade.why,
      source: UNCERTAINTY.shade.source,
    },
    shared('shade of row on row', rowShade * UNCERTAINTY.rowShade.relative, UNCERTAINTY.rowShade),
    {
      ...shared('snow', 0, UNCERTAINTY.snow),
      relative: each(({ snowLoss }) => UNCERTAINTY.snow.relative * snowLoss),
      loss: each(({ snowLoss }) => snowLoss),
    },
    {
      ...shared('dirt', 0, UNCERTAINTY.dirt),
      relative: each(({ dirtLoss }) => UNCERTAINTY.dirt.relative * dirtLoss),
      loss: each(({ dirtLoss }) => dirtLoss),
    },
    shared('rating of the modules', UNCERTAINTY.rating.relative, UNCERTAINTY.rating),
    shared('cell temperature method', temperatureSpread, {
      why: 'half the difference between coefficients by mounting and installed NOCT at this standoff',
      source: { document: 'difference of two published methods, worked out for this system', standing: 'project file' },
    }),
    {
      ...shared('time out of order', UNCERTAINTY.availability.relative, UNCERTAINTY.availability),
      loss: all(availabilityLoss),
    },
    shared(YEARLY_TERM, UNCERTAINTY.yearToYear.relative, UNCERTAINTY.yearToYear),
  ]
  return terms.filter((term) => term.relative.some((relative) => relative > 0))
}

function placeTerm(climate: Climate, all: (relative: number) => number[]): Term {
  if (climate.kind === 'hourly') {
    const { relative, why, source } = UNCERTAINTY.typicalYear
    return { name: 'weather file', relative: all(relative), isShared: true, why, source }
  }
  return {
    name: 'siting',
    relative: all(climate.spreadRel),
    isShared: true,
    why: 'the house is not a station: by region and distance',
    source: UNCERTAINTY.typicalYear.source,
  }
}

function methodTerm(latitudeDeg: Degrees, arrays: readonly UncertainArray[]): Term {
  return {
    name: 'monthly method',
    relative: arrays.map(({ tiltDeg, azimuthDeg }) => methodError(latitudeDeg, tiltDeg, azimuthDeg)),
    isShared: false,
    why: 'mean days of a month instead of its hours, by direction and tilt',
    source: METHOD_SOURCE,
  }
}

/** Error of the monthly method on a plane, relative; see METHOD_ERROR. */
export function methodError(latitudeDeg: Degrees, tiltDeg: Degrees, azimuthDeg: Degrees): number {
  const equator = latitudeDeg < 0 ? 0 : 180
  const turned = Math.abs(azimuthDeg - equator) % 360
  const away = Math.min(turned, 360 - turned)
  const row = METHOD_ERROR.find((each) => away <= each.awayDeg && tiltDeg <= each.tiltDeg)
  return (row ?? METHOD_ERROR.at(-1))?.relative ?? 0
}

/** A weather file whose diffuse light was made from its global light. */
function decompositionTerms(_climate: Climate, _arrays: readonly UncertainArray[]): Term[] {
  return []
}
