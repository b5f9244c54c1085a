import type { RailToLay } from '../rails/index.js'
import type { PlaneModel } from './plane-model.js'
import type { ReportedZone } from './report-plane.js'
import { zoneNames } from '../wind/index.js'

/**
 * Loads and largest span of every zone of one plane: for a zone under a rail with the exposure that really occurs there, for
 * other zones with the edge factor when any edge of the array is exposed.
 */
export function reportedZones(plane: PlaneModel, rails: readonly RailToLay[]): ReportedZone[] {
  const { edition, roofKind } = plane.wind.shape
  const used = new Set(
    rails.flatMap((rail) => rail.loaded.patches.flatMap((p) => p.widths.map((w) => `${w.key.zone}|${w.key.exposed}`))),
  )
  return zoneNames(edition, roofKind).flatMap((zone) => {
    const exposures = [true, false].filter((exposed) => used.has(`${zone}|${exposed}`))
    const asked = exposures.length > 0 ? exposures : [plane.exposed.length > 0]
    const limits = rails.flatMap((rail) =>
      asked.map((exposed): ReportedZone => ({ zone, exposed, ...rail.limitOf(zone, exposed) })),
    )
    const worst = limits.toSorted((a, b) => a.spanIn - b.spanIn || b.upliftPsf - a.upliftPsf)[0]
    if (worst === undefined) return []
    return [
      {
        ...worst,
        upliftPsf: Math.max(...limits.map((l) => l.upliftPsf)),
        downPsf: Math.max(...limits.map((l) => l.downPsf)),
      },
    ]
  })
}
