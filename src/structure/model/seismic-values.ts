/** What an earthquake does to the array and to the house; null where it was not worked out. */
export interface SeismicValues {
  readonly status: 'exempt' | 'checked' | 'not checked'
  /** Why it is so. */
  readonly reason: string
  /** Design spectral acceleration SDS. */
  readonly sds_g: number | null
  /** Horizontal force over weight, strength level, and on the whole array. */
  readonly fp_per_weight: number | null
  readonly fp_lb: number | null
  /** 0.7 of the horizontal force on the mount that gets most of it. */
  readonly per_mount_lb: number | null
  /** Growth of the sideways load of the house, and whether it is within a tenth. */
  readonly lateral_change_pct: number | null
  readonly lateral_passes: boolean | null
}
