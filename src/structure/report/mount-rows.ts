import type { LaidRail } from '../rails/index.js'
import type { MountValue } from '../model/index.js'
import { planInOf, rafterNumber } from '../rafters/index.js'
import { snowAtPsf } from '../snow/index.js'
import { feetOf, radiansOf } from '../../values/index.js'
import { arrayEdgeFactor } from '../wind/index.js'
import type { SolvedPlane } from '../planes/index.js'

/** Mounts of a rail as rows of the result. */
export function mountRows(plane: SolvedPlane, rail: LaidRail): MountValue[] {
  const { line } = rail.loaded
  const dead = plane.arrays.get(line.array)?.dead
  const { geometry, snowCases } = plane.model
  const atFt = feetOf(planInOf(geometry, line.yIn))
  const snowPsf = Math.max(0, ...snowCases.map((snow) => snowAtPsf(snow, atFt))) * Math.cos(radiansOf(geometry.tiltDeg))
  return rail.demand.mounts.map((mount, index) => {
    const governing = mount.checks.reduce((a, b) => (b.ratio > a.ratio ? b : a))
    return {
      id: `${line.id}.m${index + 1}`,
      plane: line.plane,
      rail: line.id,
      rafter: rafterNumber(plane.framing, mount.xIn),
      x_in: mount.xIn,
      y_in: line.yIn,
      zone: mount.zone,
      edge_factor: arrayEdgeFactor(mount.exposed),
      area_ft2: mount.areaFt2,
      uplift_lb: mount.upliftLb,
      down_lb: mount.downLb,
      along_lb: mount.alongLb,
      capacity_lb: governing.capacityLb,
      ratio: governing.ratio,
      governs: governing.name,
      dead_lb: Math.max(0, mount.reactionAreaFt2) * (dead?.mostPsf ?? 0),
      snow_lb: Math.max(0, mount.reactionAreaFt2) * snowPsf,
      wind_down_lb: mount.windDownLb,
      wind_up_lb: mount.windUpLb,
    }
  })
}
