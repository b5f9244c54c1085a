import type { SourceStanding } from '../../worksheet/index.js'
import type { ConductorSize } from './conductor-sizes.js'
import type { Edition } from './editions.js'

/** Wiring methods by the name that a project file uses. */
export type WiringMethod =
  | 'EMT'
  | 'PVC 40'
  | 'PVC 80'
  | 'LFNC'
  | 'LFMC'
  | 'FMC'
  | 'IMC'
  | 'RMC'
  | 'NM'
  | 'UF'
  | 'SE'
  | 'MC'
  | 'AC'
  | 'none'

/** Whether a place is allowed: `marked` only when the product is marked or listed for it. */
export type Permission = 'yes' | 'marked' | 'no'

/** Lower column in contact with thermal insulation. */
export interface InsulationLimit {
  readonly columnC: 60
  /** Last size that it holds for; undefined for all. */
  readonly toSize: ConductorSize | undefined
  /** Editions in which it holds for all sizes. */
  readonly allSizesIn: readonly Edition[]
}

/** One wiring method: where it may lie, and what the code adds to the ampacity tables. */
export interface WiringMethodRow {
  readonly method: WiringMethod
  readonly name: string
  readonly article: string
  readonly form: 'raceway' | 'cable' | 'open'
  /** Whether steel or armour lies round the conductors. */
  readonly metal: boolean
  readonly wet: Permission
  readonly sun: Permission
  readonly buried: Permission
  /** As exposed wiring within the array. */
  readonly array: Permission
  /** Column that correction and adjustment start from where the insulation is not stated, deg C. */
  readonly factorC: 60 | 75 | 90
  /** Column that the final ampacity may not exceed, deg C. */
  readonly limitC: 60 | undefined
  /** Column of the final ampacity in contact with thermal insulation, deg C, and the last size that it holds for. */
  readonly limitInInsulation: InsulationLimit | undefined
  /** Whether the conductors are chosen: not in a cable that is made with its own. */
  readonly conductorsChosen: boolean
  /** Largest copper size that it is made in, where it was read. */
  readonly maxSize: ConductorSize | undefined
  /** Largest distance between supports, ft, and to the first one, in; undefined where trade size decides. */
  readonly support: { readonly spacingFt: number; readonly fromBoxIn: number; readonly section: string } | undefined
  readonly ground: string
  /** What the code asks besides and this program does not check; '' where there is nothing. */
  readonly unchecked: string
  /** Whether PV DC circuits may run in it inside a building. */
  readonly pvDcInside: boolean
  readonly standing: SourceStanding
}

const raceway = {
  form: 'raceway',
  wet: 'yes',
  sun: 'yes',
  buried: 'yes',
  array: 'yes',
  factorC: 90,
  limitC: undefined,
  limitInInsulation: undefined,
  conductorsChosen: true,
  maxSize: undefined,
  support: undefined,
  ground: 'the raceway, and here always a wire in it',
  unchecked: '',
  standing: 'read',
} as const

const cable = {
  form: 'cable',
  metal: false,
  buried: 'no',
  array: 'no',
  limitC: undefined,
  limitInInsulation: undefined,
  conductorsChosen: false,
  maxSize: undefined,
  support: { spacingFt: 4.5, fromBoxIn: 12, section: '334.30' },
  ground: 'wire in the cable',
  unchecked: '',
  pvDcInside: false,
  standing: 'read',
} as const

/**
 * Wiring methods. Burial of metal-clad cable and flexible conduit is from memory, the rest read.
 *
 * @source NEC chapter 3, articles as named (2023, and 2017 where it agrees); 690.31 for DC in buildings.
 */
export const wiringMethodRows: readonly WiringMethodRow[] = [
  { ...raceway, method: 'EMT', name: 'electrical metallic tubing', article: '358', metal: true, pvDcInside: true },
  { ...raceway, method: 'PVC 40', name: 'PVC conduit schedule 40', article: '352', metal: false, pvDcInside: false },
  { ...raceway, method: 'PVC 80', name: 'PVC conduit schedule 80', article: '352', metal: false, pvDcInside: false },
  {
    ...raceway,
    method: 'LFNC',
    name: 'liquidtight flexible nonmetallic conduit',
    article: '356',
    metal: false,
    wet: 'marked',
    sun: 'marked',
    buried: 'marked',
    support: { spacingFt: 3, fromBoxIn: 12, section: '356.30(1)' },
    ground: 'wire always',
    pvDcInside: false,
    unchecked: 'longer than 6 ft only as a type permitted for it',
  },
  {
    ...raceway,
    method: 'LFMC',
    name: 'liquidtight flexible metal conduit',
    article: '350',
    metal: true,
    sun: 'marked',
    buried: 'marked',
    support: { spacingFt: 4.5, fromBoxIn: 12, section: '350.30' },
    ground:
      'the conduit alone up to 6 ft, 20 A (3/8 and 1/2) or 60 A (3/4 to 1-1/4), without flexing; here always a wire in it',
    pvDcInside: true,
    unchecked: 'no stainless core as ground; trade sizes over its listing',
  },
  {
    ...raceway,
    method: 'FMC',
    name: 'flexible metal conduit',
    article: '348',
    metal: true,
    wet: 'no',
    sun: 'no',
    buried: 'no',
    support: { spacingFt: 4.5, fromBoxIn: 12, section: '348.30' },
    ground: 'the conduit alone up to 6 ft, 20 A and 1-1/4, without flexing; here always a wire in it',
    pvDcInside: true,
    unchecked: 'DC in FMC smaller than 3/4 across joists needs guard strips',
  },
  {
    ...raceway,
    method: 'IMC',
    name: 'intermediate metal conduit',
    article: '342',
    metal: true,
    support: { spacingFt: 10, fromBoxIn: 36, section: '342.30' },
    pvDcInside: true,
  },
  { ...raceway, method: 'RMC', name: 'rigid metal conduit', article: '344', metal: true, pvDcInside: true },
  {
    ...cable,
    method: 'NM',
    name: 'NM-B cable',
    article: '334',
    wet: 'no',
    sun: 'no',
    factorC: 90,
    limitC: 60,
    maxSize: '2',
    unchecked:
      'dwellings and their garages only, not in rooms with storage batteries, not embedded; bends of 5 diameters; guard strips near the hatch of an attic',
  },
  {
    ...cable,
    method: 'UF',
    name: 'UF-B cable',
    article: '340',
    wet: 'yes',
    sun: 'marked',
    buried: 'yes',
    factorC: 60,
    limitC: 60,
    support: { spacingFt: 4.5, fromBoxIn: 12, section: '340.10(4), 334.30' },
    unchecked: 'bends and burial depth',
  },
  {
    ...cable,
    method: 'SE',
    name: 'SE-R cable',
    article: '338',
    wet: 'yes',
    sun: 'marked',
    factorC: 75,
    limitInInsulation: { columnC: 60, toSize: '10', allSizesIn: ['NEC 2011'] },
    conductorsChosen: true,
    support: { spacingFt: 4.5, fromBoxIn: 12, section: '338.10(B)(4), 334.30' },
    unchecked: 'as a feeder it has an insulated neutral and a ground',
  },
  {
    ...cable,
    method: 'MC',
    name: 'MC cable',
    article: '330',
    metal: true,
    wet: 'marked',
    sun: 'marked',
    buried: 'marked',
    array: 'marked',
    factorC: 75,
    conductorsChosen: true,
    support: { spacingFt: 6, fromBoxIn: 12, section: '330.30' },
    ground: 'wire in the cable; the sheath alone only by 250.118(A)(10)',
    pvDcInside: true,
    unchecked:
      'bends of 7 diameters (interlocked or corrugated); DC only in a type of 250.118(A)(10); across joists under 1 in guard strips',
  },
  {
    ...cable,
    method: 'AC',
    name: 'AC cable',
    article: '320',
    metal: true,
    wet: 'no',
    sun: 'no',
    factorC: 90,
    limitInInsulation: { columnC: 60, toSize: undefined, allSizesIn: [] },
    support: { spacingFt: 4.5, fromBoxIn: 12, section: '320.30' },
    ground: 'armour listed',
    unchecked: 'bends',
  },
  {
    ...cable,
    method: 'none',
    name: 'exposed wire within the array',
    article: '690.31(C)',
    form: 'open',
    wet: 'yes',
    sun: 'yes',
    array: 'yes',
    factorC: 90,
    conductorsChosen: true,
    support: { spacingFt: 2, fromBoxIn: 12, section: '690.31(C)(1)' },
    ground: 'separate',
  },
]

/** Longest piece of NM cable between its entry into a box and the nearest support, in. @source NEC 334.30 (2020, 2023) */
export const CABLE_ENTRY_LENGTH_IN = 18

/** Cables that may lie in thermal insulation or a sealed opening before they count together. @source NEC 334.80 */
export const CABLES_WITHOUT_ADJUSTMENT = 2
