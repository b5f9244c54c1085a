import { ALUMINIUM_MODULUS_PSI } from '../../tables/aluminium/index.js'
import { feelsRoofSuction, mountChecks } from '../mounts/index.js'
import type { LoadedRail } from './loaded-rail.js'
import type { WindKey } from './rail-patches.js'
import { roofSuctionPsf, windPressurePsf } from '../wind/index.js'
import { feetOf, type Feet, type Inches, type PoundsPerSquareFoot, type SquareFeet } from '../../values/index.js'

/** How far apart mounts may be in one zone, and why not farther. */
export interface SpanLimit {
  /** Multiple of the rafter spacing, in; 0 when not even one passes. */
  readonly spanIn: Inches
  /** Check that the next multiple fails, or 'rail sheet'. */
  readonly governs: string
  /** Net ASD loads at right angles to the roof at that span, psf. */
  readonly upliftPsf: PoundsPerSquareFoot
  readonly downPsf: PoundsPerSquareFoot
  readonly areaFt2: SquareFeet
}

/**
 * Worst coefficients of equal spans: middle reaction and shear of two spans, moment of one or two, deflection of one.
 *
 * @source statics of continuous beams: 1.25 wL, 0.625 wL, wL2 / 8, 5 wL4 / 384 EI
 */
const EQUAL_SPANS = { reaction: 1.25, shear: 0.625, moment: 1 / 8, deflection: 5 / 384 } as const

/** A rail under one wind over its whole length. */
export interface EvenRail extends Omit<LoadedRail, 'line' | 'patches'> {
  readonly key: WindKey
  /** Width of roof that the rail carries, ft. */
  readonly widthFt: Feet
}

/**
 * Largest mount spacing in a zone: the longest multiple of the rafter spacing up to which every check passes.
 *
 * @param longestIn Largest distance that the rail sheet allows, in.
 */
export function spanLimit(rail: EvenRail, rafterSpacingIn: Inches, longestIn: Inches): SpanLimit {
  let held: SpanLimit | undefined
  let governs = 'rail sheet'
  for (let spanIn = rafterSpacingIn; spanIn <= longestIn + 1e-9; spanIn += rafterSpacingIn) {
    const { worst, ...loads } = checkSpan(rail, spanIn)
    if (worst.ratio > 1) {
      governs = worst.name
      held ??= { spanIn: 0, governs, ...loads }
      break
    }
    held = { spanIn, governs, ...loads }
  }
  if (held === undefined) {
    const { worst: _worst, ...loads } = checkSpan(rail, rafterSpacingIn)
    return { spanIn: 0, governs, ...loads }
  }
  return { ...held, governs }
}

function checkSpan(
  rail: EvenRail,
  spanIn: Inches,
): {
  worst: { name: string; ratio: number }
  upliftPsf: PoundsPerSquareFoot
  downPsf: PoundsPerSquareFoot
  areaFt2: SquareFeet
} {
  const { strength, widthFt } = rail
  const { zone, exposed } = rail.key
  const areaFt2 = feetOf(spanIn) * widthFt
  const suction = feelsRoofSuction(rail.mount) ? roofSuctionPsf(rail.wind, zone) : 0
  let worst = { name: 'mount down', ratio: 0 }
  let [upliftPsf, downPsf] = [0, 0]
  const add = (name: string, ratio: number): void => {
    if (ratio > worst.ratio) worst = { name, ratio }
  }
  for (const load of rail.combinations) {
    const wind = load.windFactor * windPressurePsf(rail.wind, zone, areaFt2, exposed, load.direction)
    const psf = load.direction === 'uplift' ? wind - load.normalPsf : -wind - load.normalPsf
    upliftPsf = Math.max(upliftPsf, psf)
    downPsf = Math.max(downPsf, -psf)
    const mountArea = EQUAL_SPANS.reaction * areaFt2
    const [normal, along] = [psf * mountArea, load.alongPsf * mountArea]
    const roofUplift = load.direction === 'uplift' ? load.windFactor * suction : 0
    for (const check of mountChecks(rail.mount, normal, along, load.loadDuration, roofUplift)) {
      add(check.name, check.ratio)
    }
    const lbPerIn = (Math.abs(psf) * widthFt) / 12
    const moment = EQUAL_SPANS.moment * lbPerIn * spanIn ** 2
    add('rail moment', moment / strength.momentXLbIn)
    if (strength.momentYLbIn !== undefined) {
      const along = (EQUAL_SPANS.moment * load.alongPsf * widthFt * spanIn ** 2) / 12
      add('rail moment both ways', moment / strength.momentXLbIn + along / strength.momentYLbIn)
    }
    if (strength.shearLb !== undefined) add('rail shear', (EQUAL_SPANS.shear * lbPerIn * spanIn) / strength.shearLb)
    const deflection =
      (EQUAL_SPANS.deflection * lbPerIn * spanIn ** 4) / (ALUMINIUM_MODULUS_PSI * strength.momentOfInertiaXIn4)
    add('rail deflection', deflection / (spanIn / strength.deflectionLimit))
  }
  return { worst, upliftPsf, downPsf, areaFt2 }
}
