import { ROOF_LIVE_LOAD, ROOF_LIVE_STEPS } from '../../tables/irc/index.js'
import type { LoadEdition } from '../../tables/asce7/index.js'
import { radiansOf, type Degrees, type Inches, type PoundsPerSquareFoot } from '../../values/index.js'

/** The codes that say how much roof live load there is and where. */
export interface LiveLoadCodes {
  readonly loads: LoadEdition
  /** Edition of the residential or fire code, when stated. */
  readonly residential: string | undefined
}

/**
 * Roof live load by slope on a rafter, psf of horizontal area; a rafter carries less than 200 ft2, so that no area reduces it.
 *
 * @returns Lr = 20 R2 of the load standard; the step of the residential code where that one is named and higher.
 * @source ASCE 7 4.8.2 (secondary); IRC table R301.6 (secondary)
 */
export function roofLiveLoadPsf(tiltDeg: Degrees, codes: LiveLoadCodes): PoundsPerSquareFoot {
  const risePerFoot = 12 * Math.tan(radiansOf(tiltDeg))
  const { greatestPsf, fullToRise, lessPerInch, leastFrom } = ROOF_LIVE_LOAD
  const slope =
    risePerFoot <= fullToRise ? 1 : Math.max(leastFrom, 1 + lessPerInch * fullToRise - lessPerInch * risePerFoot)
  const standard = greatestPsf * slope
  if (codes.residential?.startsWith('IRC') !== true) return standard
  const step = ROOF_LIVE_STEPS.find(({ belowRise }) => risePerFoot < belowRise - 1e-9)
  return Math.max(standard, step?.psf ?? 0)
}

/** Clear height under modules up to which nobody can stand there, in. @source IBC 1607, panel systems (secondary) */
const MOST_CLEAR_IN = 24

/**
 * Whether roof live load may be left out under modules: a clause that came with the 2015 codes and ASCE 7-16.
 *
 * @param clearIn Clear height between roof and modules, in.
 * @source IBC 2015 1607.12.5.1, 2018 1607.13.5.1, 2021 1607.14.4.1; ASCE 7-22 4.16.1 (secondary)
 */
export function liveLoadLeftOut(codes: LiveLoadCodes, clearIn: Inches): boolean {
  if (clearIn > MOST_CLEAR_IN) return false
  if (codes.residential !== undefined) return !codes.residential.endsWith('2012')
  return codes.loads !== 'ASCE 7-10'
}
