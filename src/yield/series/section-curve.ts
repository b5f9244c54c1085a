import type { PvModule } from '../../project/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'

/**
 * Current against voltage of one bypass section, both relative to those of the module's best point at standard test
 * conditions: v(i) = a ln((s short - i) / dark) - i r, with s the light.
 */
export interface SectionCurve {
  /** Short-circuit current and open-circuit voltage. */
  readonly short: number
  readonly open: number
  readonly a: number
  readonly r: number
  /** Dark current. */
  readonly dark: number
  /** Drop over the bypass diode of a section that is passed by. */
  readonly diode: number
}

const SINGLE_DIODE: Source = {
  document: 'De Soto, Klein & Beckman, Solar Energy 80:78-88: single-diode curve, here without a shunt',
  edition: '2006',
  standing: 'from memory',
}

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

/** Usual for modules of silicon where a data sheet's points are not stated. */
const USUAL = { voltage: 0.83, current: 0.94, vmpV: 31, sections: 3 } as const
/** Within these the form is a curve with one top. */
const LIMITS = { voltage: [0.55, 0.97], current: [0.6, 0.995] } as const
/** Drop over a bypass diode, V. */
const DIODE_V = 0.5

/**
 * The curve through the three points of the data sheet, with its top at the rated one: from I(0) = Isc, I(Voc) = 0,
 * I(Vmp) = Imp and dP/dV = 0 there follow a, r and the dark current without iteration.
 *
 * @param path Path of the module, for what is assumed.
 */
export function sectionCurve(module: PvModule, path: string, worksheet: Worksheet): SectionCurve {
  const { voc_v: vocV, isc_a: iscA, vmp_v: vmpV, imp_a: impA } = module
  const isKnown =
    vocV !== undefined &&
    iscA !== undefined &&
    vmpV !== undefined &&
    impA !== undefined &&
    isWithin(vmpV / vocV, LIMITS.voltage) &&
    isWithin(impA / iscA, LIMITS.current)
  const voltage = isKnown ? vmpV / vocV : USUAL.voltage
  const current = isKnown ? impA / iscA : USUAL.current
  if (!isKnown) {
    worksheet.assume({
      path: `${path}.vmp_v`,
      value: USUAL.voltage,
      unit: 'of voc_v',
      why: 'for the power of partly shaded modules: voc_v, isc_a, vmp_v and imp_a are not all stated, or do not fit together; current 0.94 of isc_a',
      source: PRACTICE,
    })
  }
  const diode = DIODE_V / ((vmpV ?? USUAL.vmpV) / (module.bypass_sections ?? USUAL.sections))
  return fitted(voltage, current, diode)
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value > low && value < high
}

/** Source of the form of the curve. */
export const CURVE_SOURCE = SINGLE_DIODE

/**
 * @param voltage Vmp over Voc, above 0.5 and below 1.
 * @param current Imp over Isc, below 1.
 */
export function fitted(voltage: number, current: number, diode: number): SectionCurve {
  const short = 1 / current
  const open = 1 / voltage
  const log = Math.log(1 - current)
  const a = (2 - open) / (1 / (short - 1) + log)
  const r = a * log + open - 1
  return { short, open, a, r, dark: short * Math.exp(-open / a), diode }
}

/** Voltage at a current under a light, with the bypass diode where the section cannot carry it. */
export function voltageAt({ short, a, r, dark, diode }: SectionCurve, current: number, light: number): number {
  const left = light * short - current
  if (left <= 0) return -diode
  const voltage = a * Math.log(left / dark) - current * r
  return voltage < -diode ? -diode : voltage
}
