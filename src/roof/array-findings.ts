import { statedModuleCount, tiltDegOf } from '../project/facts.js'
import type { RoofProject } from '../project/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import { planeOf } from './plane-field.js'
import type { ArrayFit } from './fit-array.js'
import type { Trial } from './trial.js'

/** What the person must know about each array's places, whatever the plane: counts, missing places, racks. */
export function arrayFindings(project: RoofProject, trial: Trial): Finding[] {
  return Object.entries(project.arrays).flatMap(([arrayId, array]) => {
    const plane = planeOf(project, arrayId)
    const placed = trial.modules.filter((module) => module.array === arrayId).length
    const stated = statedModuleCount(array)
    if (array.arrangement === undefined) return [noArrangement(arrayId, stated)]
    const findings: Finding[] = []
    const fit = trial.fits.get(arrayId)
    const path = `arrays.${arrayId}`
    if (fit !== undefined && placed < (stated ?? 1)) {
      const asked = stated === undefined ? 'as many modules as there is room for' : `${stated} modules`
      const covered =
        placed < fit.capacity ? `; there is room for ${fit.capacity}, but they would cover too much of the roof` : ''
      const held =
        fit.room !== undefined && placed < fit.room && fit.capacity < fit.room
          ? `; there is room for ${fit.room}, but mounts on the rafters cannot hold the rails of more`
          : ''
      findings.push({
        severity: 'error',
        id: 'roof.fit-too-few',
        message: `${arrayId} asks for ${asked}, and the usable part of plane ${array.roof_plane} takes ${placed}${covered}${held}`,
        where: `${path}.modules`,
        fix: 'Ask for fewer, allow the other orientation, or use another plane for the rest.',
      })
    }
    const fewer = fewerForRafters(arrayId, fit, placed, stated)
    if (fewer !== undefined) findings.push(fewer)
    if (fit === undefined && stated !== undefined && stated !== placed) {
      findings.push({
        severity: 'error',
        id: 'roof.module-count',
        message: `${arrayId} states ${stated} modules, and its blocks hold ${placed}`,
        where: `${path}.modules`,
        fix: 'Leave modules out; it is counted from the blocks.',
      })
    }
    if (plane.outline === undefined) {
      findings.push({
        severity: 'note',
        id: 'roof.no-outline',
        message: `plane ${array.roof_plane} has no outline, so its edges and fire access were not checked for ${arrayId}`,
        where: `roof_planes.${array.roof_plane}.outline`,
        fix: 'State the outline: eave, ridge and the length from eave to ridge, measured along the surface.',
      })
    }
    const { module_tilt_deg: rackTilt, module_azimuth_deg: rackAzimuth } = array
    const tilted =
      rackTilt !== undefined && Math.abs(rackTilt - tiltDegOf(plane, `roof_planes.${array.roof_plane}`)) > 0.5
    if (tilted || (rackAzimuth !== undefined && rackAzimuth !== plane.azimuth_deg)) {
      findings.push({
        severity: 'note',
        id: 'roof.rack-footprint',
        message: `${arrayId} stands on racks; its modules are laid out as if they lay flat on the plane`,
        where: `${path}.${tilted ? 'module_tilt_deg' : 'module_azimuth_deg'}`,
        fix: 'Check by hand that the feet of the racks stand on the plane. The energy estimate counts the shade of row on row.',
      })
    }
    return findings
  })
}

/** A note where the roof has room for more modules than rails with rafters under them can hold. */
function fewerForRafters(
  arrayId: string,
  fit: ArrayFit | undefined,
  placed: number,
  stated: number | undefined,
): Finding | undefined {
  if (fit?.room === undefined || stated !== undefined || placed === 0) return undefined
  if (fit.capacity >= fit.room || placed < fit.capacity) return undefined
  return {
    severity: 'note',
    id: 'roof.fewer-for-rafters',
    message: `${arrayId}: there is room for ${fit.room} modules, and ${placed} of them have rails that mounts on the rafters hold within spans and free ends`,
    where: `arrays.${arrayId}.arrangement`,
    fix: 'Nothing to do; a rail that allows longer free ends or spans may hold more.',
  }
}

function noArrangement(arrayId: string, modules: number | undefined): Finding {
  if (modules === undefined) {
    throw new StageError(
      `arrays.${arrayId}`,
      `array '${arrayId}' states neither modules nor arrangement`,
      'State the number of modules, or an arrangement: fit, or blocks.',
    )
  }
  return {
    severity: 'note',
    id: 'roof.no-arrangement',
    message: `${arrayId} has ${modules} modules but no arrangement, so their places were not worked out or checked`,
    where: `arrays.${arrayId}.arrangement`,
    fix: 'State arrangement: fit, or place blocks of rows and columns.',
  }
}
