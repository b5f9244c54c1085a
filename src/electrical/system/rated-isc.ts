import type { ArrayOfModules, PvModule } from '../../project/index.js'
import { REAR_SHARE } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'

/** The short-circuit current that circuits, fuses and inputs are held against. */
export interface RatedIsc {
  readonly iscA: Amperes
  /** Key under the module that it comes from. */
  readonly key: 'isc_a' | 'isc_bnpi_a' | 'isc_bsi_a'
  /** Share that the rear adds to isc_a where no current is printed for it. */
  readonly rearShare: number
}

/** What of an array tells how much light comes to the rear of its modules. */
type Mounting = Pick<ArrayOfModules, 'mounting' | 'module_tilt_deg' | 'module_azimuth_deg'>

/** Whether racks lift the modules off the roof. */
const isOpen = (array: Mounting | undefined): boolean =>
  array === undefined ||
  array.mounting === 'free_rack' ||
  array.module_tilt_deg !== undefined ||
  array.module_azimuth_deg !== undefined

/**
 * The largest short-circuit current that the sheet of a module prints; where it prints none with light on the rear, that of
 * its front raised by its bifaciality.
 *
 * @param array How it is mounted; open racks let the light of the stress condition to the rear, as does what is not known.
 * @returns Undefined where the module states no current at all.
 * @source restated words of NEC 690.8(A)(1), highest rating (secondary); REAR_SHARE. In every edition, on the safe side.
 */
export function ratedIsc(module: PvModule, array: Mounting | undefined): RatedIsc | undefined {
  const { isc_a: frontA, isc_bnpi_a: nameplateA, isc_bsi_a: stressA, bifaciality_pct: bifaciality = 0 } = module
  const share = isOpen(array) ? REAR_SHARE.stress : REAR_SHARE.nameplate
  // A printed current with as much light on the rear stands for the reckoned one.
  const printed = stressA !== undefined || (nameplateA !== undefined && share <= REAR_SHARE.nameplate)
  const rearShare = printed ? 0 : (share * bifaciality) / 100
  const candidates: RatedIsc[] = [
    { iscA: (frontA ?? 0) * (1 + rearShare), key: 'isc_a', rearShare },
    { iscA: nameplateA ?? 0, key: 'isc_bnpi_a', rearShare: 0 },
    { iscA: stressA ?? 0, key: 'isc_bsi_a', rearShare: 0 },
  ]
  const highest = candidates.reduce((best, each) => (each.iscA > best.iscA ? each : best))
  return highest.iscA > 0 ? highest : undefined
}
