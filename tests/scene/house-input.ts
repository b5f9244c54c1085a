// The keys of a project that the ray caster reads, as a person writes them.
type Twelve = number | readonly number[]

export interface PlanPoint {
  readonly x_ft: number
  readonly y_ft: number
}

export interface OutlineInput {
  readonly shape: 'rectangle' | 'hip' | 'triangle' | 'l_shape' | 'polygon'
  readonly width_ft?: number
  readonly depth_ft?: number
  readonly ridge_ft?: number
  readonly ridge_offset_ft?: number
  readonly notch_width_ft?: number
  readonly notch_depth_ft?: number
  readonly notch_at?: 'lower_left' | 'lower_right' | 'upper_left' | 'upper_right'
  readonly corners?: readonly PlanPoint[]
}

export interface BoxInput extends PlanPoint {
  readonly width_ft: number
  readonly length_ft: number
  readonly height_ft: number
  readonly kind?: string
}

export interface PlaneInput {
  readonly azimuth_deg: number
  readonly tilt_deg: number
  readonly outline?: OutlineInput
  readonly eave_height_ft?: number
  readonly eave_left?: PlanPoint
  readonly obstructions?: Readonly<Record<string, BoxInput>>
}

export interface ObstacleInput {
  readonly bearing_deg?: number
  readonly distance_ft?: number
  readonly at?: PlanPoint
  readonly corners?: readonly PlanPoint[]
  readonly width_ft?: number
  readonly length_ft?: number
  readonly faces_deg?: number
  readonly height_ft: number
  readonly base_height_ft?: number
  readonly ground_ft?: number
  readonly transmittance?: Twelve
  readonly arrays?: readonly string[]
}

export interface BlockInput extends PlanPoint {
  readonly orientation: 'portrait' | 'landscape'
  readonly rows: number
  readonly columns: number
  readonly gap_in: number
  readonly row_gap_in: number
}

export interface ArrayInput {
  readonly roof_plane: string
  readonly standoff_in: number
  readonly module_tilt_deg?: number
  readonly module_azimuth_deg?: number
  readonly arrangement?: { readonly blocks: Readonly<Record<string, BlockInput>> }
}

export interface HouseInput {
  readonly site: {
    readonly latitude_deg: number
    readonly longitude_deg: number
    readonly albedo?: Twelve
    readonly horizon?: readonly { readonly azimuth_deg: number; readonly elevation_deg: number }[]
    readonly obstacles?: Readonly<Record<string, ObstacleInput>>
  }
  readonly site_plan?: {
    readonly up_azimuth_deg?: number
    readonly roof_planes?: Readonly<Record<string, { readonly eave_left: PlanPoint }>>
    readonly buildings?: Readonly<
      Record<string, { readonly corners: readonly PlanPoint[]; readonly height_ft?: number }>
    >
  }
  readonly roof_planes: Readonly<Record<string, PlaneInput>>
  readonly arrays: Readonly<Record<string, ArrayInput>>
  readonly equipment?: {
    readonly modules: Readonly<Record<string, { readonly length_in: number; readonly width_in: number }>>
  }
}

/** Where a module lies on its plane: what the program lays out, or what a test says. */
export interface PlacedModule {
  readonly id: string
  readonly array: string
  readonly xFt: number
  readonly yFt: number
  readonly widthFt: number
  readonly heightFt: number
}
