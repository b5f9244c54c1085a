import type { Project, RoofProject } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { mountOnPlane, type MountLines } from './mount-spec.js'
import { framingSpec, type FramingSpec, rafterDocument } from '../rafters/index.js'
import { layRails, type LaidRail, type LayoutRules } from '../rails/index.js'
import { gridOf, type MountStrength } from '../mounts/index.js'
import type { PlaneGeometry } from '../model/index.js'
import { planeModel, topHeightIn, type PlaneModel } from './plane-model.js'
import { rafterInput, rafterRatio, solveRafters, type PlaneRafters } from './plane-rafters.js'
import { arrayOnPlane, planeRails, type ArrayOnPlane, type PlaneParts, type RailKit } from './plane-rails.js'
import { rafterProposals, type RafterProposal } from './rafter-proposals.js'
import { layoutRules, type SpaceMountsOptions } from './rail-kit.js'
import { reportRailPlaces } from './report-rail-places.js'
import { reportedZones } from './report-zones.js'
import type { ReportedZone } from './report-plane.js'
import type { SiteLoads } from '../loads/index.js'
import { solarConditions } from '../wind/index.js'
import { spliceRail, type SplicedRail } from './splice-rails.js'
import { sparingRafters } from './spare-rafters.js'

/** One plane, laid out. */
export interface SolvedPlane {
  readonly model: PlaneModel
  readonly framing: FramingSpec
  /** Title and date of the document that the rafters stand on. */
  readonly covered: string | undefined
  readonly mount: MountStrength
  /** Where its mounts may stand. */
  readonly lines: MountLines
  readonly arrays: ReadonlyMap<string, ArrayOnPlane>
  readonly rails: readonly SplicedRail[]
  readonly zones: readonly ReportedZone[]
  /** The check of the rafters; undefined under trusses, which are not judged. */
  readonly rafters: PlaneRafters | undefined
  /** Ways out where the rafters fail and no document covers them. */
  readonly proposals: readonly RafterProposal[]
}

/** What the planes of a house share. */
export interface HouseToMount {
  readonly project: RoofProject & Pick<Project, 'documents'>
  readonly site: SiteLoads
  readonly kit: RailKit
  readonly options: SpaceMountsOptions
}

/**
 * Loads, rails and mounts of one plane.
 *
 * @param modules Those on this plane.
 * @throws StageError when a safety input is missing or the method does not reach the case.
 */
export function solvePlane(
  house: HouseToMount,
  geometry: PlaneGeometry,
  modules: readonly ModulePlacement[],
  worksheet: Worksheet,
): SolvedPlane {
  const { project, site, kit, options } = house
  const framing = framingSpec(project, geometry.id)
  const model = planeModel(project, site, geometry, framing, modules)
  const { strength: mount, lines } = mountOnPlane(project, kit.mount, framing, geometry.id, worksheet)
  const parts = { plane: model, framing, lines, kit, mount }
  const arrays = new Map<string, ArrayOnPlane>()
  for (const { array } of modules) {
    if (arrays.has(array)) continue
    // Where rows lie different ways, the rails weigh most under the lower ones.
    const own = modules.filter((module) => module.array === array)
    const lowest = own.reduce((a, b) => (b.heightFt < a.heightFt ? b : a))
    arrays.set(array, arrayOnPlane(project, site, parts, lowest))
  }
  for (const array of arrays.keys()) checkConditions(house, geometry, modules, array, worksheet)
  const toLay = planeRails(project, parts, arrays)
  reportRailPlaces(
    project,
    geometry,
    toLay.map((rail) => rail.loaded.line),
    worksheet,
  )
  for (const rail of toLay) {
    if (rail.rafters.length >= 2) continue
    throw new StageError(
      `structure.framing.${geometry.id}`,
      `rail ${rail.loaded.line.id} crosses ${rail.rafters.length} usable ${placesOf(mount)}; it needs two`,
      `Move the modules, choose rails across more modules, or check the ${gridOf(mount) === 'seam' ? 'seam' : 'rafter'} spacing and first offset.`,
    )
  }
  const covered = rafterDocument(project, geometry.id, options, worksheet)
  const rules = layoutRules(project, kit, { spacingIn: lines.spacingIn, on: placesOf(mount) }, options, worksheet)
  const ratioOf = (laid: readonly LaidRail[]): number =>
    covered === undefined ? rafterRatio(project, site, { model, framing, rails: laid, arrays }) : 0
  const rails = sparingRafters(geometry.id, toLay, rules, ratioOf, worksheet).map((rail) => spliceRail(rail, kit))
  for (const rail of rails) reportBroken(rail, { places: placesOf(mount), staggerRails: rules.staggerRails }, worksheet)
  const rafters = solveRafters(project, site, { model, framing, rails, arrays })
  const proposals =
    rafters === undefined || covered !== undefined
      ? []
      : rafterProposals({
          id: geometry.id,
          modules,
          toLay,
          rules,
          laid: rails,
          ...rafters,
          ratioOf,
          inputWith: (other) => {
            const under = planeModel(project, site, geometry, other, modules)
            return rafterInput(project, site, { model: under, framing: other, rails, arrays })
          },
          ratioWith: (fewer) => ratioWith(house, parts, arrays, rules, fewer),
        })
  return {
    proposals,
    model,
    framing,
    covered,
    mount,
    lines,
    arrays,
    rails,
    rafters,
    zones: reportedZones(model, toLay),
  }
}

/** Highest ratio of the rafters under other modules, laid by the same rules; undefined when a rail has no two rafters. */
function ratioWith(
  { project, site }: HouseToMount,
  parts: PlaneParts,
  arrays: ReadonlyMap<string, ArrayOnPlane>,
  rules: LayoutRules,
  modules: readonly ModulePlacement[],
): number | undefined {
  const { framing, plane } = parts
  if (modules.length === 0) return 0
  const model = planeModel(project, site, plane.geometry, framing, modules)
  const toLay = planeRails(project, { ...parts, plane: model }, arrays)
  if (toLay.some((rail) => rail.rafters.length < 2)) return undefined
  return rafterRatio(project, site, { model, framing, rails: layRails(toLay, rules), arrays })
}

function checkConditions(
  { project, site }: HouseToMount,
  plane: PlaneGeometry,
  modules: readonly ModulePlacement[],
  arrayId: string,
  worksheet: Worksheet,
): void {
  const array = own(project.arrays, arrayId)
  const placed = modules.filter((m) => m.array === arrayId)
  const tilted = array?.module_tilt_deg === undefined ? 0 : Math.abs(array.module_tilt_deg - plane.tiltDeg)
  const facing = own(project.roof_planes, plane.id)?.azimuth_deg
  const turned =
    array?.module_azimuth_deg === undefined || facing === undefined
      ? 0
      : Math.abs(((array.module_azimuth_deg - facing + 540) % 360) - 180)
  const findings = solarConditions({
    edition: site.edition,
    plane,
    array: arrayId,
    modules: placed,
    tiltToRoofDeg: Math.max(tilted, turned),
    topHeightIn: topHeightIn(project, arrayId),
    moduleLengthFt: Math.max(...placed.flatMap((m) => [m.widthFt, m.heightFt])),
  })
  for (const finding of findings) worksheet.find(finding)
}

/** What mounts stand on, for texts. */
function placesOf(mount: MountStrength): 'rafters' | 'seams' | 'lines of the sheathing' {
  const grid = gridOf(mount)
  return grid === 'seam' ? 'seams' : grid === 'deck' ? 'lines of the sheathing' : 'rafters'
}

function reportBroken(
  rail: LaidRail,
  { places, staggerRails }: { readonly places: string; readonly staggerRails: number },
  worksheet: Worksheet,
): void {
  const below = staggerRails === 1 ? 'the rail below' : `the ${staggerRails} rails below`
  const { id } = rail.loaded.line
  const { sharedIn, supportsIn } = rail
  if (rail.limitsBroken) {
    worksheet.find({
      severity: 'error',
      id: 'structure.no-mount-layout',
      message: `rail ${id}: no set of ${places} keeps both the mount spacing and the free ends within their limits; every usable one is taken`,
      where: 'structure',
      fix: 'Move the modules so that the rail ends near a rafter, or allow a longer free end or spacing where the sheets do.',
    })
  }
  if (sharedIn.length === 0) return
  const ends = [supportsIn[0], supportsIn.at(-1)]
  if (sharedIn.length < supportsIn.length && sharedIn.every((x) => ends.includes(x))) {
    worksheet.find({
      severity: 'note',
      id: 'structure.stagger-ends-shared',
      message: `rail ${id}: an end mount stands on the same rafter as one of ${below}, since no other rafter is within the free end`,
      where: 'structure.mount_layout',
      fix: 'Nothing to do while the checks of rafter bending pass; end mounts carry less than the others.',
    })
    return
  }
  const how =
    sharedIn.length === supportsIn.length && staggerRails === 1
      ? 'so the two rails are aligned, not staggered'
      : 'so these rafters carry more than one of them'
  worksheet.find({
    severity: 'warning',
    id: 'structure.stagger-not-possible',
    message: `rail ${id}: ${sharedIn.length} of its ${supportsIn.length} mounts stand on rafters of ${below}, as spacing and free ends leave no others, ${how}; the rafters are checked with that load`,
    where: 'structure.mount_layout',
    fix: 'Accept it while the checks of rafter bending pass, or use a rail that allows longer spans or free ends.',
  })
}
