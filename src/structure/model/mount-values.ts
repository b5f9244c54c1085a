import type { SeismicValues } from './seismic-values.js'
import type { SnowValues } from './snow-values.js'

/** Values of the stage, with the names that the JSON has. */
export interface MountValues {
  readonly edition: string
  readonly loads: {
    /** Worst net ASD loads at right angles to the roof by zone, over all planes, at the largest spacing that passes. */
    readonly zones: Readonly<Record<string, ZoneLoads>>
    readonly planes: Readonly<Record<string, PlaneLoadsValues>>
  }
  readonly max_span_in: Readonly<Record<string, number>>
  /** Check that stops the next longer span. */
  readonly max_span_governs: Readonly<Record<string, string>>
  readonly mounts: readonly MountValue[]
  readonly rails: readonly RailValue[]
  readonly modules: readonly { readonly id: string; readonly x_in: number; readonly y_in: number }[]
  readonly added_dead_load_psf: number
  readonly array_weight_lb: number
  readonly counts: {
    readonly modules: number
    readonly mounts: number
    readonly lag_screws: number
    readonly rails: number
    readonly rail_pieces: number
    readonly splices: number
  }
  readonly checks: readonly CheckValue[]
  readonly weakest_link: {
    readonly name: string
    readonly where: string
    readonly ratio: number
    readonly limit_is: CheckValue['limit_is']
  }
  /** Of the lag screws; null where mounts have none. */
  readonly lag: LagValues | null
  readonly cautions: readonly string[]
  readonly snow: SnowValues
  readonly seismic: SeismicValues
  /** Each check of each rafter with a mount on it; none under trusses or of unknown wood. */
  readonly rafters: readonly RafterValue[]
  /** What the rule for existing buildings says of the rafter whose bending grows most; an answer apart from strength. */
  readonly rafters_code_path: RafterCodePath | null
  /** What would spare failing rafters, computed; each needs an engineer's eye. */
  readonly rafter_proposals: readonly RafterProposalValue[]
  /** How the mounts hold. */
  readonly mount_kind: 'rafter_screw' | 'standing_seam_clamp' | 'tile_hook' | 'deck'
  /** What fixes each mount. */
  readonly fastener: FastenerValue
  /** Joints between pieces of rail. */
  readonly splices: readonly SpliceValue[]
}

export interface RafterProposalValue {
  readonly plane: string
  readonly rafter: number
  readonly what: string
  /** Highest ratio that it reaches. */
  readonly ratio: number
  readonly needs_engineer: true
}

/** One check of one rafter by the wood standard, under the combination that governs it. */
export interface RafterValue {
  readonly plane: string
  /** Counted from the left end of the eave, 1 first. */
  readonly rafter: number
  readonly check: 'bending' | 'shear' | 'bearing' | 'deflection'
  readonly load_combination: string
  /** psi, deflection in. */
  readonly demand: number
  readonly capacity: number
  readonly unit: 'psi' | 'in'
  readonly ratio: number
  /** Horizontal distance from the lower support, ft; negative on the overhang. */
  readonly at_ft: number
  /** How it was found. */
  readonly method: string
}

export interface RafterCodePath {
  readonly rule: string
  readonly plane: string
  readonly rafter: number
  /** Of the bending moment under dead load and the larger of live load and snow, percent. */
  readonly change_pct: number
  /** Of that under dead load alone, percent. */
  readonly dead_change_pct: number
  readonly combinations: readonly { readonly name: string; readonly change_pct: number }[]
  readonly passes: boolean
}

export interface LagValues {
  readonly thread_in_rafter_in: number
  readonly lead_hole_least_in: number
  readonly lead_hole_most_in: number
  /** How far from the middle of the rafter the screw may be. */
  readonly centring_tolerance_in: number
}

export interface FastenerValue {
  /** Plain name in the singular: lag screw 5/16 x 5 in. */
  readonly name: string
  /** What it goes into. */
  readonly into: 'rafter' | 'seam' | 'sheathing'
  readonly each: number
  readonly count: number
}

/** A joint between two pieces of a rail, with the largest forces over all combinations, up and down. */
export interface SpliceValue {
  readonly rail: string
  readonly x_in: number
  readonly moment_lb_in: number
  readonly shear_lb: number
  /** Null for a hinge, which takes no moment. */
  readonly moment_capacity_lb_in: number | null
  /** Null when the sheet does not state it. */
  readonly shear_capacity_lb: number | null
  /** Null when there is nothing to hold it against. */
  readonly ratio: number | null
  readonly method: 'moment splice' | 'hinge'
}

export interface ZoneLoads {
  readonly uplift_psf: number
  readonly down_psf: number
}

export interface PlaneLoadsValues {
  readonly slope_deg: number
  /** With the directionality factor, strength level. */
  readonly velocity_pressure_psf: number
  readonly edge_strip_ft: number
  /** Worst case on the modules, on the horizontal. */
  readonly snow_psf: number
  readonly array_dead_psf: number
  readonly zones: Readonly<Record<string, ZoneLoads & { readonly area_ft2: number; readonly edge_factor: number }>>
}

export interface MountValue {
  readonly id: string
  readonly plane: string
  readonly rail: string
  /** Counted from the left, 1 first; the nearest one where mounts stand on seams or sheathing. */
  readonly rafter: number
  readonly x_in: number
  readonly y_in: number
  readonly zone: string
  readonly edge_factor: number
  readonly area_ft2: number
  readonly uplift_lb: number
  readonly down_lb: number
  readonly along_lb: number
  /** Of the check that governs. */
  readonly capacity_lb: number
  readonly ratio: number
  readonly governs: string
  /** Before they are combined: dead load of the array and the worst snow, vertical; wind at strength level, at right angles. */
  readonly dead_lb: number
  readonly snow_lb: number
  readonly wind_down_lb: number
  readonly wind_up_lb: number
}

export interface RailValue {
  readonly id: string
  readonly plane: string
  readonly x_in: number
  readonly y_in: number
  readonly length_in: number
  readonly pieces_in: readonly number[]
  readonly splices_in: readonly number[]
  /** The longer free end. */
  readonly overhang_in: number
  readonly overhang_left_in: number
  readonly overhang_right_in: number
}

export interface CheckValue {
  readonly name: string
  readonly demand: number
  /** The limit that the demand is held against; `limit_is` says what it is. */
  readonly capacity: number
  readonly unit: string
  /** A strength; or what may grow compared with before; or a limit of the code that is no strength. */
  readonly limit_is: 'capacity' | 'allowed increase' | 'code limit'
  readonly ratio: number
  /** Whether it is the weakest link. */
  readonly governs: boolean
  /** Mount, rail, module or plane with the highest ratio. */
  readonly where: string
}
