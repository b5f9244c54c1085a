/** Snow on the planes, psf on the horizontal, at the level of the stated ground snow; 0 where a case does not arise. */
export interface SnowValues {
  /** allowable, or strength, of which the combinations of 7-22 take 0.7. */
  readonly level: 'allowable' | 'strength'
  readonly ground_psf: number
  /** Thermal factor Ct. */
  readonly thermal_factor: number
  readonly flat_roof_psf: number
  /** Worst over the planes, by kind of case. */
  readonly balanced_psf: number
  readonly minimum_psf: number
  readonly unbalanced_psf: number
  readonly drift_psf: number
  readonly sliding_psf: number
  readonly ice_dam_psf: number
  readonly planes: Readonly<Record<string, PlaneSnowValues>>
}

export interface PlaneSnowValues {
  /** Eave to ridge, horizontal. */
  readonly depth_ft: number
  /** The worst of all cases on the modules, and its name. */
  readonly modules_psf: number
  readonly modules_case: string
  readonly cases: readonly SnowCaseValues[]
}

export interface SnowCaseValues {
  readonly name: string
  readonly kind: string
  readonly most_psf: number
  readonly on_modules_psf: number
  /** From the eave up, horizontal. */
  readonly pieces: readonly {
    readonly from_ft: number
    readonly to_ft: number
    readonly from_psf: number
    readonly to_psf: number
  }[]
}
