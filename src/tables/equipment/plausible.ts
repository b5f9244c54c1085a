import type { Source } from '../../worksheet/index.js'

/** What was found on sheets of the trade, with no document behind it. */
const PRACTICE: Source = { document: '', standing: 'common practice, no source' }
const memory = (document: string, place: string): Source => ({ document, place, standing: 'from memory' })

/** A range in which the values of real sheets lie; outside it a slip of the hand is likelier than a rare product. */
export interface PlausibleRange {
  readonly low: number
  readonly high: number
  readonly unit: string
  readonly source: Source
}

const range = (low: number, high: number, unit = '', source = PRACTICE): PlausibleRange => ({ low, high, unit, source })

/** Ranges of module sheets. Thin film is wider than crystalline silicon and is not told apart. */
export const MODULE_RANGES = {
  /** Vmp / Voc. */
  voltageShare: range(0.7, 0.92),
  /** Imp / Isc. */
  currentShare: range(0.84, 0.985),
  /** Percent per deg C. */
  powerCoefficient: range(-0.5, -0.2, '% per deg C'),
  vocCoefficient: range(-0.42, -0.2, '% per deg C'),
  iscCoefficient: range(0, 0.12, '% per deg C'),
  /** Deg C. */
  noct: range(40, 50, 'deg C'),
  /** Efficiency by the outside of the frame, percent. */
  efficiencyPct: range(9, 24.5, '%'),
  /** Pounds per square foot of the outside of the frame: glass and sheet to glass on both sides. */
  weightPsf: range(1.6, 3.6, 'psf'),
  longSideIn: range(30, 100, 'in'),
  frameIn: range(0.8, 2.4, 'in'),
} as const

/** Rated power against Vmp x Imp, percent of the rated power: sheets round the three by themselves, which gives some tenths. */
export const POWER_PRODUCT = { doubtPct: 1, errorPct: 5, source: PRACTICE } as const

/** No single junction of silicon turns more sunlight into power, percent. */
export const MOST_EFFICIENCY_PCT = {
  value: 29.4,
  source: memory('Richter, Hermle & Glunz, IEEE J. Photovolt. 3:1184', 'limit of a crystalline silicon cell, 29.4 %'),
} as const

/** System voltages for which modules are listed, V. */
export const SYSTEM_VOLTAGES_V = { values: [600, 1000, 1500], source: PRACTICE } as const

/** Ranges of inverter sheets. */
export const INVERTER_RANGES = {
  /** Weighted efficiency, percent. */
  efficiencyPct: range(90, 99.2, '%'),
  /** Largest DC power over AC power. */
  dcOverAc: range(1, 2.5),
  /** Watts of AC per pound. */
  powerPerPound: range(25, 500, 'W per lb'),
  /** AC power of one behind a module or a few, W. */
  moduleLevelW: range(150, 2000, 'W'),
  stringW: range(600, 60_000, 'W'),
} as const

/** Rated current against power over voltage, percent: sheets round up, and some state a current at a lower voltage. */
export const CURRENT_PRODUCT = { belowPct: 3, abovePct: 15, source: PRACTICE } as const

/** Nominal AC voltages of services that a small system meets, V. */
export const AC_VOLTAGES_V = { values: [120, 208, 240, 277, 480], source: PRACTICE } as const

/** Ranges of mounting parts. */
export const MOUNTING_RANGES = {
  /** Ix / Sx, the distance of the outermost fibre, in: half the height of a rail. */
  railHalfHeightIn: range(0.4, 3, 'in'),
  /** Largest free end over largest span. */
  overhangShare: range(0, 0.5),
  mountWeightLb: range(0.2, 12, 'lb'),
} as const

/** Weight of a foot of aluminium of one square inch, lb. */
export const ALUMINIUM_LB_PER_FT_IN2 = {
  value: 0.098 * 12,
  source: memory('Aluminum Design Manual', 'density 0.098 lb/in3'),
} as const

const cited = (document: string, place: string): Source => ({ document, place, standing: 'secondary' })

/** Ranges of storage units. What may hurt is never taken from here: a value outside is told, and none is filled in. */
export const STORAGE_RANGES = {
  /** AC to AC. */
  roundTripPct: range(
    60,
    96,
    '%',
    cited('HTW Berlin, storage inspections 2019 to 2025, and KIT 2017', 'as the German trade press reports them'),
  ),
  standbyW: range(0, 150, 'W', memory('HTW Berlin, storage inspections', 'range of standby')),
  usablePct: range(50, 100, '%', memory('data sheets', 'usable of nameplate energy')),
  powerPerEnergy: range(0.1, 1.5, 'kW per kWh', {
    document: 'US laboratory technology baseline 2023 and 2024',
    place: 'home batteries of 5 kW and 12.5 kWh; the limits are wider',
    standing: 'read',
  }),
  warrantyYears: range(5, 25, 'years', memory('warranty terms', 'calendar life')),
  installedUsdPerKwh: range(300, 2500, 'USD per usable kWh', memory('prices of home batteries', 'installed')),
} as const
