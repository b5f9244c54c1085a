import type { Climate } from '../../climate/index.js'
import { DECOMPOSITION, SITING_SOURCE } from '../../tables/climate/index.js'
import { METHOD_ERROR, METHOD_SOURCE, UNCERTAINTY } from '../../tables/losses/index.js'
import type { Degrees, KilowattHours } from '../../values/index.js'
import type { Source } from '../../worksheet/index.js'

/** Name of the term that changes from year to year; all others last. */
export const YEARLY_TERM = 'year to year'

/** Name of the term of how fast the output falls with age, which no single year has. */
export const AGE_TERM = 'loss with age'

/**
 * Names of the terms of what the weather of the estimate is worth: they say nothing of days that are modelled with their own weather, and
 * such days say nothing of them.
 */
export const WEATHER_TERMS: ReadonlySet<string> = new Set([
  'siting',
  'weather file',
  'monthly method',
  'diffuse light from global',
])

/** Name of the term of what snow takes: only days of snowy months tell of it. */
export const SNOW_TERM = 'snow'

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
  /** Most that the energy of each array can become, relative: a loss cannot be less than nothing. Without: no bound. */
  readonly most?: readonly number[]
  /** Whether the arrays share it: one draw for all, or one for each. */
  readonly isShared: boolean
  readonly why: string
  readonly source: Source
}

/** Every cause of doubt about a year's energy that lasts or changes from year to year; those without effect are 0. */
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
  return [
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
      ...doubtedLoss(
        each(({ shadeLoss }) => shadeLoss),
        (loss) => UNCERTAINTY.shade.relative * loss,
      ),
      isShared: false,
      why: UNCERTAINTY.shade.why,
      source: UNCERTAINTY.shade.source,
    },
    shared('shade of row on row', rowShade * UNCERTAINTY.rowShade.relative, UNCERTAINTY.rowShade),
    {
      ...shared(SNOW_TERM, 0, UNCERTAINTY.snow),
      ...doubtedLoss(
        each(({ snowLoss }) => snowLoss),
        (loss) => UNCERTAINTY.snow.relative * loss,
      ),
    },
    {
      ...shared('dirt', 0, UNCERTAINTY.dirt),
      ...doubtedLoss(
        each(({ dirtLoss }) => dirtLoss),
        (loss) => UNCERTAINTY.dirt.relative * loss,
      ),
    },
    shared('rating of the modules', UNCERTAINTY.rating.relative, UNCERTAINTY.rating),
    shared('cell temperature method', temperatureSpread, {
      why: 'half the difference between coefficients by mounting and installed NOCT at this standoff',
      source: { document: 'difference of two published methods, worked out for this system', standing: 'project file' },
    }),
    {
      ...shared('time out of order', 0, UNCERTAINTY.availability),
      ...doubtedLoss(all(availabilityLoss), () => UNCERTAINTY.availability.relative),
    },
    shared(YEARLY_TERM, UNCERTAINTY.yearToYear.relative, UNCERTAINTY.yearToYear),
  ]
}

/**
 * What doubt about a loss is for the energy that the loss leaves. Where nothing is left, nothing is in doubt.
 *
 * @param losses By array, 0 to 1.
 * @param spreadOf Standard deviation of a loss, in the same share as the loss.
 */
function doubtedLoss(losses: readonly number[], spreadOf: (loss: number) => number): Pick<Term, 'relative' | 'most'> {
  return {
    relative: losses.map((loss) => (loss < 1 ? spreadOf(loss) / (1 - loss) : 0)),
    most: losses.map((loss) => (loss < 1 ? 1 / (1 - loss) : 1)),
  }
}

function placeTerm(climate: Climate, all: (relative: number) => number[]): Term {
  if (climate.kind === 'hourly') {
    const { relative, why, source } = UNCERTAINTY.typicalYear
    return { name: 'weather file', relative: all(relative), isShared: true, why, source }
  }
  return {
    name: 'siting',
    relative: all(climate.sitingErrorRel),
    isShared: true,
    why: 'the house is not a station: error of the year where others stand for it, by region and distance',
    source: SITING_SOURCE,
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
  const away = awayFromEquatorDeg(latitudeDeg, azimuthDeg)
  const row = METHOD_ERROR.find((each) => away <= each.awayDeg && tiltDeg <= each.tiltDeg)
  return (row ?? METHOD_ERROR.at(-1))?.relative ?? 0
}

/** How far a direction turns away from that of the equator, degrees. */
function awayFromEquatorDeg(latitudeDeg: Degrees, azimuthDeg: Degrees): Degrees {
  const equator = latitudeDeg < 0 ? 0 : 180
  const turned = Math.abs(azimuthDeg - equator) % 360
  return Math.min(turned, 360 - turned)
}

/** A weather file whose diffuse light was made from its global light. */
function decompositionTerms(climate: Climate, arrays: readonly UncertainArray[]): Term[] {
  const made = climate.kind === 'hourly' ? climate.decompositionRel : undefined
  if (made === undefined) return []
  return [
    {
      name: 'diffuse light from global',
      relative: arrays.map(({ tiltDeg, azimuthDeg }) =>
        isTowardsEquator(climate.latitudeDeg, tiltDeg, azimuthDeg) ? made.southRel : made.otherRel,
      ),
      isShared: true,
      why: 'the file has global radiation only; less on planes towards the equator of 34 degrees at most than on others',
      source: DECOMPOSITION.source,
    },
  ]
}

function isTowardsEquator(latitudeDeg: Degrees, tiltDeg: Degrees, azimuthDeg: Degrees): boolean {
  return tiltDeg < 3 || (tiltDeg <= 34 && awayFromEquatorDeg(latitudeDeg, azimuthDeg) <= 67.5)
}
