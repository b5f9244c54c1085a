import type { Source } from '../../worksheet/index.js'

/** King, Boyson & Kratochvil 2004, SAND2004-3535: Tm = Ta + E exp(a + b v), Tc = Tm + E/1000 dT. */
export const MOUNTING_SOURCE: Source = {
  document: 'King, Boyson & Kratochvil, SAND2004-3535',
  edition: '2004',
  place: 'coefficients a, b as restated by the laboratory; temperature difference from memory',
  standing: 'secondary',
}

export interface MountingCoefficients {
  readonly a: number
  /** s/m */
  readonly b: number
  /** Cell above back of module at 1000 W/m2, K (from memory, unverified). */
  readonly deltaC: number
  /** Whether the source has this very pair; a stand-in from the nearest pair is said as an assumption. */
  readonly own: boolean
}

type Construction = 'polymer_back' | 'glass_back' | 'steel_back'
type Mounting = 'free_rack' | 'near_roof' | 'laid_on_roof'

const GLASS_RACK = { a: -3.47, b: -0.0594, deltaC: 3 }
const GLASS_ROOF = { a: -2.98, b: -0.0471, deltaC: 1 }
const POLYMER_RACK = { a: -3.56, b: -0.075, deltaC: 3 }
const POLYMER_INSULATED = { a: -2.81, b: -0.0455, deltaC: 0 }
const STEEL_RACK = { a: -3.58, b: -0.113, deltaC: 3 }

export const MOUNTING_COEFFICIENTS: Readonly<Record<Construction, Readonly<Record<Mounting, MountingCoefficients>>>> = {
  polymer_back: {
    free_rack: { ...POLYMER_RACK, own: true },
    near_roof: { ...GLASS_ROOF, own: false },
    laid_on_roof: { ...POLYMER_INSULATED, own: true },
  },
  glass_back: {
    free_rack: { ...GLASS_RACK, own: true },
    near_roof: { ...GLASS_ROOF, own: true },
    laid_on_roof: { ...POLYMER_INSULATED, own: false },
  },
  steel_back: {
    free_rack: { ...STEEL_RACK, own: true },
    near_roof: { ...GLASS_ROOF, own: false },
    laid_on_roof: { ...POLYMER_INSULATED, own: false },
  },
}

/** Installed less nominal operating cell temperature by clear standoff, K. */
export const INSTALLED_NOCT = {
  rackK: -3,
  /** Standoff 0 is laid on the roof. */
  byStandoff: [
    { standoffIn: 0, aboveK: 18 },
    { standoffIn: 1, aboveK: 11 },
    { standoffIn: 3, aboveK: 2 },
    { standoffIn: 6, aboveK: -1 },
  ],
  source: {
    document: 'Fuentes, SAND85-0330',
    edition: '1987',
    place: 'installed NOCT by mounting and standoff',
    standing: 'from memory',
  } satisfies Source,
} as const

/** Mean of seven module types, glass front and polymer back. */
export const FAIMAN = {
  /** W/(m2 K) */
  u0: 25,
  /** W s/(m3 K) */
  u1: 6.84,
  source: {
    document: 'Faiman, Prog. Photovolt. 16:307',
    edition: '2008',
    place: 'heat-loss factors, mean of seven module types',
    standing: 'secondary',
  } satisfies Source,
} as const
