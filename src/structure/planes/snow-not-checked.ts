import type { RoofProject } from '../../project/index.js'
import { DRIFT_RULES, VALLEY_OVER_PSF } from '../../tables/asce7/index.js'
import type { Finding } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { PlaneGeometry } from '../model/index.js'
import { isUnbalancedSlope, unbalancedForms, type PlaneEnd, type SnowOnPlane } from '../snow/index.js'

/** What the snow cases of a plane leave out for want of an input or a method, and bounds that they took. */
export function snowNotChecked(
  project: RoofProject,
  site: SiteLoads,
  geometry: PlaneGeometry,
  on: SnowOnPlane,
): Finding[] {
  if (site.snow.groundPsf <= 0) return []
  return [
    ...boundFindings(site, on),
    ...wallFindings(site, geometry, on),
    ...projectionFindings(project, site, geometry),
  ]
}

/** A fetch that was not stated and for which the house's own length stands in. */
function boundFindings(site: SiteLoads, on: SnowOnPlane): Finding[] {
  const { ridge, plane, depthFt } = on
  if (ridge === undefined || !isUnbalancedSlope(on.snow.tiltDeg)) return []
  if (!unbalancedForms(depthFt, ridge.framing).heap || site.snowCases.oppositeEaveToRidgeFt !== undefined) return []
  return [
    {
      severity: 'warning',
      id: 'structure.snow-opposite-not-stated',
      message: `plane '${plane}': the distance from eave to ridge on the other side of the ridge is not stated, so unbalanced snow takes ${ridge.windwardFt.toFixed(1)} ft, the longer side of the house, which no roof exceeds`,
      where: 'structure.building.opposite_eave_to_ridge_ft',
      source: { document: site.edition, place: '7.6.1', standing: 'secondary' },
      fix: 'Measure it in plan, from the eave to below the ridge, and state it; the snow gets less.',
    },
  ]
}

/** Edges along a wall whose height is not stated, and valleys. */
function wallFindings(site: SiteLoads, geometry: PlaneGeometry, on: SnowOnPlane): Finding[] {
  const { id } = geometry
  const source = { document: site.edition, standing: 'secondary' as const }
  const stated = new Set([...on.higherRoofs, ...on.parapets].map(({ end }) => end))
  const walls = geometry.edges.filter(({ kind }) => kind === 'wall').map((edge) => endOf(geometry, edge))
  const findings: Finding[] = [...new Set(walls)]
    .filter((end) => !stated.has(end))
    .map((end) => ({
      severity: 'error',
      id: 'structure.snow-wall-drift',
      message: `plane '${id}': snow that drifts and slides down at the wall along its ${END_WORDS[end]} is not checked, as the height of the wall is not stated`,
      where: 'structure.snow.higher_roofs',
      source: { ...source, place: '7.7 to 7.9' },
      fix: `State the roof above that wall under higher_roofs, or the wall under parapets, with plane: ${id} and end: ${end}.`,
    }))
  const valley = geometry.edges.some(({ kind }) => kind === 'valley')
  if (valley && site.snow.groundPsf * site.snowCases.mapsOverStated > VALLEY_OVER_PSF) {
    findings.push({
      severity: 'error',
      id: 'structure.snow-valley',
      message: `plane '${id}': the drifts that meet in its valley are not checked, and the ground snow of ${site.snow.groundPsf} psf is over ${VALLEY_OVER_PSF} psf at the level of the maps`,
      where: `roof_planes.${id}.outline`,
      source: { ...source, place: '7.7.3' },
      fix: 'Have a structural engineer state the snow at the valley, or keep modules and mounts off that plane.',
    })
  }
  return findings
}

const END_WORDS = { top: 'upper edge', eave: 'lower edge', side: 'side' } as const

function endOf(geometry: PlaneGeometry, { from, to }: PlaneGeometry['edges'][number]): PlaneEnd {
  const ys = geometry.edges.map((edge) => edge.from.yFt)
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2
  if (Math.abs(to.yFt - from.yFt) > 1e-6 || from.xFt === to.xFt) return 'side'
  return from.yFt > middle ? 'top' : 'eave'
}

/** Boxes on the plane that are long enough to make a drift of their own. */
function projectionFindings(project: RoofProject, site: SiteLoads, geometry: PlaneGeometry): Finding[] {
  const boxes = Object.entries(own(project.roof_planes, geometry.id)?.obstructions ?? {})
  return boxes
    .filter(([, box]) => Math.max(box.width_ft, box.length_ft) >= DRIFT_RULES.leastProjectionFt && box.height_ft > 0)
    .map(([id, box]) => ({
      severity: 'error',
      id: 'structure.snow-projection',
      message: `plane '${geometry.id}': the drift at '${id}', ${Math.max(box.width_ft, box.length_ft)} ft long and ${box.height_ft} ft high, is not checked; from ${DRIFT_RULES.leastProjectionFt} ft on a box makes one`,
      where: `roof_planes.${geometry.id}.obstructions.${id}`,
      source: { document: site.edition, place: '7.8', standing: 'secondary' },
      fix: 'Have a structural engineer state the snow beside it, or keep modules and mounts away from it.',
    }))
}
