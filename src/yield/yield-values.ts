import type { Ladder } from './ladder.js'
import type { YieldUncertainty } from './uncertainty/index.js'

/** Results of the energy estimate; names and units are part of the JSON format. */
export interface AnnualYield {
  readonly ac_kwh: number
  readonly dc_kwh: number
  /** Irradiation on the unshaded plane. */
  readonly poa_kwh_m2: number
  readonly ghi_kwh_m2: number
  readonly clipped_kwh: number
  readonly kwh_per_kw: number
  /** IEC 61724-1: final yield over reference yield. */
  readonly performance_ratio: number
  readonly p90_kwh: number
}

export interface MonthlyYield {
  readonly month: number
  readonly poa_kwh_m2: number
  readonly dc_kwh: number
  readonly clipped_kwh: number
  readonly ac_kwh: number
  readonly kwh_per_kw: number
}

export interface ModuleYield {
  readonly id: string
  readonly ac_kwh: number
  /** Light that arrives, share of the unshaded plane's. */
  readonly light_pct: number
}

/** One module of the system, with what shade costs it. */
export interface SystemModule {
  readonly id: string
  readonly array: string
  readonly ac_kwh: number
  /** Light that shade takes, of that on the free plane. */
  readonly light_loss_pct: number
  /** What shadows on some of its sections, or on other modules of its string, take of what its light is worth. */
  readonly mismatch_loss_pct: number
}

export interface ArrayYield {
  readonly rated_kw: number
  readonly modules: number
  readonly tilt_deg: number
  readonly azimuth_deg: number
  readonly annual: Omit<AnnualYield, 'p90_kwh'>
  readonly monthly: readonly MonthlyYield[]
  readonly by_module: readonly ModuleYield[]
}

/** What `estimate-yield` tells of a project. */
export interface YieldValues {
  readonly rated_kw: number
  readonly annual: AnnualYield
  readonly monthly: readonly MonthlyYield[]
  readonly arrays: Readonly<Record<string, ArrayYield>>
  readonly modules: readonly SystemModule[]
  readonly climate: ClimateValues
  readonly ladder: Ladder
  readonly uncertainty: YieldUncertainty['uncertainty']
  readonly exceedance: YieldUncertainty['exceedance']
  readonly lifetime: YieldUncertainty['lifetime']
}

export interface ClimateValues {
  readonly kind: 'monthly' | 'hourly'
  readonly name: string
  readonly elevation_m: number
  readonly utc_offset_h: number
  readonly spread_pct: number
  readonly sites: readonly {
    readonly wmo: string
    readonly name: string
    readonly distance_km: number
    readonly weight: number
  }[]
}
