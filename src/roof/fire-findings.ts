import type { RoofProject } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import type { FireAccess } from './fire-access.js'
import { adjacentPathwayFindings } from './pathway-need.js'
import { firstPathways, pathwayOptions, type Pathway } from './pathways.js'
import type { PlaneField } from './plane-field.js'
import { blockersOf, type Trial } from './trial.js'
import { feetOf, type Degrees, type Feet } from '../values/index.js'

/** Pathways found by plane, and what is wrong with fire access. */
export interface FireCheck {
  readonly pathways: ReadonlyMap<string, readonly Pathway[]>
  readonly findings: readonly Finding[]
}

/** Checks the pathways of the finished layout, plane by plane and for the building. */
export function checkFireAccess(project: RoofProject, access: FireAccess | undefined, trial: Trial): FireCheck {
  const pathways = new Map<string, readonly Pathway[]>()
  if (access === undefined) return { pathways, findings: [notChecked()] }
  const findings: Finding[] = overrideFindings(project, access)
  let [ruledPlanes, open, street] = [0, 0, false]
  for (const [planeId, field] of trial.fields) {
    const { fire, plane, surface } = field
    if (fire === undefined) continue
    const modules = trial.modules.filter((module) => module.roofPlane === planeId)
    const used = Object.values(project.arrays).some((array) => array.roof_plane === planeId)
    if (fire.exempt) {
      if (used) findings.push(exemptNote(planeId, surface.tiltDeg, access))
      continue
    }
    const blockers = blockersOf(field, modules)
    const whole = pathwayOptions(surface, blockers, feetOf(fire.pathwayIn.value))
    if (used) {
      ruledPlanes += 1
      findings.push(...adjacentPathwayFindings(planeId, plane, fire, access.rules))
      const options = pathwayOptions(surface, blockers, field.need.widthFt, field.need.sidesOnly)
      const found = firstPathways(options, field.need.count)
      pathways.set(planeId, found ?? [])
      if (found === undefined) findings.push(missingPathway(planeId, field, blockers))
    }
    if (whole.length === 0) continue
    open += 1
    street ||= plane.street_side === true
  }
  if (ruledPlanes > 0) findings.push(...buildingFindings(project, access, open, street))
  return { pathways, findings }
}

function notChecked(): Finding {
  return {
    severity: 'note',
    id: 'roof.fire-access-not-checked',
    message: 'firefighter pathways and ridge setbacks were not checked: no residential or fire code edition is stated',
    where: 'codes.residential',
    fix: 'Ask the building department which edition it has adopted and state it.',
  }
}

function overrideFindings(project: RoofProject, access: FireAccess): Finding[] {
  return access.overridden.map((key) => ({
    severity: 'note',
    id: 'roof.fire-access-override',
    message: `${key} ${String(project.roof_access?.[key as 'pathway_in'])} stands instead of the value of ${access.rules.edition}: ${project.roof_access?.waiver_note ?? ''}`,
    where: `roof_access.${key}`,
    fix: 'Append the written approval to the permit packet.',
  }))
}

function exemptNote(planeId: string, tiltDeg: Degrees, access: FireAccess): Finding {
  return {
    severity: 'note',
    id: 'roof.fire-access-exempt',
    message: `plane ${planeId} slopes ${tiltDeg.toFixed(1)} degrees, not more than ${access.rules.exemptPitchIn12.value} in 12, so fire access pathways and setbacks are not required on it`,
    where: `roof_planes.${planeId}`,
    source: access.rules.exemptPitchIn12.source,
  }
}

function missingPathway(planeId: string, field: PlaneField, blockers: ReturnType<typeof blockersOf>): Finding {
  const { surface, need, fire } = field
  const fits = (widthFt: Feet) =>
    firstPathways(pathwayOptions(surface, blockers, widthFt, need.sidesOnly), need.count) !== undefined
  let [low, high] = [0, need.widthFt]
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2
    if (fits(middle)) low = middle
    else high = middle
  }
  const widestIn = Math.floor(low * 120 + 1e-3) / 10
  const widthIn = Math.round(need.widthFt * 1200) / 100
  const many = need.count === 1 ? 'a pathway' : `${need.count} pathways`
  return {
    severity: 'error',
    id: 'roof.pathway-missing',
    message: `plane ${planeId} needs ${many} ${widthIn} in wide from the lowest roof edge to the ridge; the widest free is ${widestIn} in (${Math.ceil((widthIn - widestIn) * 10 - 1e-6) / 10} in too narrow)`,
    where: `roof_planes.${planeId}`,
    ...(fire === undefined ? {} : { source: fire.pathways.source }),
    fix: 'Leave a column of modules out or move the blocks; if the code allows it, state that the pathway lies on the adjacent plane with fire_pathway.',
  }
}

function buildingFindings(project: RoofProject, access: FireAccess, open: number, street: boolean): Finding[] {
  const wanted = access.rules.pathwaysOfBuilding
  if (wanted === undefined || project.roof_access?.pathways_per_plane === 0) return []
  const shown = open + (project.roof_access?.other_pathways ?? 0)
  const findings: Finding[] = []
  if (shown < wanted.value) {
    findings.push({
      severity: 'warning',
      id: 'roof.pathways-of-building',
      message: `the building needs ${wanted.value} pathways on separate roof planes; this file shows ${shown}`,
      where: 'roof_access.other_pathways',
      source: wanted.source,
      fix: 'State other_pathways for planes that are not in this file, or add those planes to roof_planes.',
    })
  }
  if (!street && project.roof_access?.street_side_pathway === undefined) {
    findings.push({
      severity: 'warning',
      id: 'roof.street-side-pathway',
      message: 'one pathway must lie on the street or driveway side; this file does not show which one does',
      where: 'roof_access.street_side_pathway',
      source: wanted.source,
      fix: 'Mark the plane with street_side, or say in street_side_pathway where that pathway lies.',
    })
  }
  return findings
}
