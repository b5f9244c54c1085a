import type { RoofProject } from '../../project/index.js'
import { DRIFT_RULES } from '../../tables/asce7/index.js'
import { own } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { SolvedPlane } from '../planes/index.js'
import { flatRoofSnowPsf, slidingSnow, snowSlopeFactor, stripBelowPsf } from '../snow/index.js'

/** A strip below an array that is narrower than this may fill with what slides off the glass, ft. */
const NARROW_STRIP_FT = 3

/** Says what snow does besides its cases: slides off the glass, is held, and is not counted. */
export function reportSnowNotes(
  project: RoofProject,
  site: SiteLoads,
  planes: readonly SolvedPlane[],
  worksheet: Worksheet,
): void {
  const { notSlippery, onRoof } = site.snowCases
  if (onRoof.groundPsf <= 0) return
  if (notSlippery !== undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.snow-not-slippery',
      message: `the glass of the modules is not counted as slippery: ${notSlippery}`,
      where: 'structure.snow.slippery_modules',
      source: { document: site.edition, place: '7.4.1', standing: 'secondary' },
      fix: 'State roof_insulation_r (and roof_ventilated), or slippery_modules: false.',
    })
  }
  for (const plane of planes) {
    noteHeld(plane.model.geometry.id, worksheet)
    noteLowerRoof(project, site, plane, worksheet)
    noteStrip(project, site, plane, worksheet)
    noteBoxes(project, site, plane, worksheet)
  }
  worksheet.find({
    severity: 'note',
    id: 'structure.snow-rails-partial',
    message:
      'rails are checked with full snow along all of their length; half of it gone from some spans, which a rail that runs through may feel more, is not a case of its own',
    where: 'structure.snow',
    source: { document: site.edition, place: '7.5', standing: 'from memory' },
    fix: 'Keep some of the strength of rails and mounts unused where snow governs.',
  })
}

function noteHeld(plane: string, worksheet: Worksheet): void {
  worksheet.find({
    severity: 'note',
    id: 'structure.snow-held',
    message: `plane '${plane}': snow that guards, chimneys or the upper edge of the array hold back is not counted beyond the stated cases, nor what slides from a roof that is not stated`,
    where: 'structure.snow',
    fix: 'State higher roofs under higher_roofs; where snow guards or a chimney hold snow on the array, ask a structural engineer.',
  })
}

/** Snow that slides off a new array onto a roof below its eave. */
function noteLowerRoof(project: RoofProject, site: SiteLoads, { model }: SolvedPlane, worksheet: Worksheet): void {
  const { id } = model.geometry
  const where = 'structure.snow.planes_above_lower_roofs'
  const stated = project.structure?.snow?.planes_above_lower_roofs
  const depthFt = model.snow.cases[0]?.snowCase.pieces.at(-1)?.toFt ?? 0
  const slid = slidingSnow(flatRoofSnowPsf(site.snow), depthFt)
  const figure = `${slid.perFootPlf.toFixed(0)} lb per ft of eave, ${slid.psf.toFixed(1)} psf over 15 ft (0.4 pf W, ${site.snowIsAllowable ? 'allowable' : 'strength'} level)`
  const source = { document: site.edition, place: '7.9', standing: 'secondary' as const }
  if (stated === undefined) {
    worksheet.find({
      severity: 'note',
      id: 'structure.snow-lower-roof-not-stated',
      message: `plane '${id}': whether a lower roof lies below its eave is not stated; glass would slide ${figure} onto it`,
      where,
      source,
      fix: 'State the planes with a porch, garage or other roof below their eave, or an empty list.',
    })
  } else if (stated.includes(id)) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.snow-onto-lower-roof',
      message: `plane '${id}': snow slides off the modules onto the lower roof below its eave: ${figure}, which that roof is not checked for`,
      where,
      source,
      fix: 'Have the lower roof checked for it together with its balanced snow, or hold the snow with guards made for it.',
    })
  }
}

/** The most that may pile up on a narrow strip below the array. */
function noteStrip(project: RoofProject, site: SiteLoads, { model }: SolvedPlane, worksheet: Worksheet): void {
  const { geometry, modules } = model
  const eaveFt = Math.min(...geometry.edges.map(({ from }) => from.yFt))
  const lowestFt = Math.min(...modules.map((m) => m.yFt))
  const stripFt = lowestFt - eaveFt
  const above = project.structure?.snow?.planes_above_lower_roofs?.includes(geometry.id) === true
  if (stripFt <= 0 || (stripFt >= NARROW_STRIP_FT && !above)) return
  const arrayFt = Math.max(...modules.map((m) => m.yFt + m.heightFt)) - lowestFt
  const flatPsf = flatRoofSnowPsf(site.snow)
  const { edition, snow } = site
  const ps = (surface: 'slippery' | 'other'): number =>
    flatPsf * snowSlopeFactor(geometry.tiltDeg, { edition, thermalFactor: snow.thermalFactor, surface })
  const mostPsf = stripBelowPsf({ coveringPsf: ps('other'), glassPsf: ps('slippery'), arrayFt, stripFt })
  worksheet.find({
    severity: 'note',
    id: 'structure.snow-strip-below-array',
    message: `plane '${geometry.id}': if all snow that leaves the glass stops on the ${stripFt.toFixed(1)} ft below the array, up to ${mostPsf.toFixed(0)} psf may lie there (${ps('other').toFixed(0)} psf without the array), which is not checked`,
    where: `arrays`,
    source: { document: 'Balance of masses', standing: 'common practice, no source' },
    fix: 'Leave 3 ft or more below the array, or have an engineer check eave and gutter for it.',
  })
}

/** Boxes on the plane that are too short to make a drift. */
function noteBoxes(project: RoofProject, site: SiteLoads, { model }: SolvedPlane, worksheet: Worksheet): void {
  const { id } = model.geometry
  const boxes = Object.entries(own(project.roof_planes, id)?.obstructions ?? {}).filter(
    ([, box]) => Math.max(box.width_ft, box.length_ft) < DRIFT_RULES.leastProjectionFt,
  )
  if (boxes.length === 0) return
  worksheet.note({
    id: `structure.${id}.snow-boxes`,
    says: `No drift is counted at boxes on the roof that are shorter than ${DRIFT_RULES.leastProjectionFt} ft`,
    formula: `longest side < ${DRIFT_RULES.leastProjectionFt} ft`,
    inputs: boxes.map(([name, box]) => ({
      symbol: name,
      value: Math.max(box.width_ft, box.length_ft),
      unit: 'ft',
      from: `roof_planes.${id}.obstructions.${name}`,
    })),
    result: { symbol: 'drift', value: 'none', unit: '' },
    source: { document: site.edition, place: '7.8', standing: 'secondary' },
  })
}
