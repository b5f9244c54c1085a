import type { Framing, Obstruction, RoofProject } from '../project/index.js'
import { feetOf, inchesOf, own, radiansOf, type Feet, type Inches, type Point } from '../values/index.js'
import { cutRafters } from './cut-rafters.js'
import { segmentStrip } from './keep-out.js'
import { rafterPlaces, type RafterGrid } from './rafter-lines.js'
import { railInsetIn, type ClampZone } from './rail-lines.js'
import { MOUNT_CLEARANCE_IN, MOUNT_EDGE_IN, railRules, type RailRules } from './rail-rules.js'
import type { RoofSurface } from './roof-surface.js'

/** What the rails under a fitted array stand on: rafters, and the rules of the sheets. */
export interface RailGround {
  readonly grid: RafterGrid
  readonly rules: RailRules
  /** Longest run of rail without an expansion break, in. */
  readonly continuousIn: Inches
  /** Whether both rails of a row stand on the same rafters. */
  readonly aligned: boolean
  /** Rails below a rail whose rafters it leaves free. */
  readonly stagger: number
  readonly obstructions: readonly Obstruction[]
  /** Space that mounts keep from an obstruction, in. */
  readonly keepIn: (obstruction: Obstruction) => Inches
  /** Distance of the rails from the lower and upper edge of a module, ft; undefined where the sheet states no clamp zone. */
  readonly insetFt: (orientation: 'portrait' | 'landscape', heightFt: Feet) => Feet | undefined
  /** Rafters on which a mount may stand at a height up the slope, in, ascending. */
  readonly raftersAt: (yIn: number) => readonly Inches[]
  /** Overhangs, over which no module may lie, as convex figures, ft. */
  readonly overhangs: readonly (readonly Point[])[]
}

/** Longest run of rail without an expansion break when the sheet sets none, ft. @source common practice, no source: 40 to 50 ft */
export const CONTINUOUS_FT = 40

/** Neighbouring rails below a rail whose rafters it leaves free, when mounts are staggered. */
export function staggerRails(project: RoofProject): number {
  return project.structure?.mount_stagger_rafters ?? 1
}

/** Longest run of the chosen rail without an expansion break, ft, and whether its sheet says so. */
export function continuousRailFt(project: RoofProject): { readonly lengthFt: Feet; readonly stated: boolean } {
  const stated = own(project.equipment.rails, project.structure?.rail)?.splice?.max_continuous_ft
  return { lengthFt: stated ?? CONTINUOUS_FT, stated: stated !== undefined }
}

/**
 * The ground of an array that is to be fitted.
 *
 * @returns undefined where the project does not state rafters up the slope, rail and clamp zone; modules are then placed
 *   without regard to rafters.
 */
export function railGround(project: RoofProject, arrayId: string, surface: RoofSurface): RailGround | undefined {
  const { structure } = project
  const framing = own(structure?.framing, surface.id)
  const rules = railRules(project)
  const array = own(project.arrays, arrayId)
  const module = own(project.equipment.modules, array?.module)
  if (framing?.spacing_in === undefined || framing.first_offset_in === undefined || rules === undefined)
    return undefined
  if (framing.direction === 'along_eave') return undefined
  if (module?.clamp_zone_from_corner_in === undefined && module?.clamp_zone_short_side_in === undefined)
    return undefined
  const rafters = { spacingIn: framing.spacing_in, firstOffsetIn: framing.first_offset_in }
  const lines = mountLines(project, framing, rafters)
  if (lines === undefined) return undefined
  const { grid } = lines
  const obstructions = Object.values(own(project.roof_planes, surface.id)?.obstructions ?? {})
  const field = {
    plane: surface,
    framing: grid,
    obstructions,
    edgeIn: structure?.mount_edge_in ?? MOUNT_EDGE_IN,
    clearanceIn: structure?.mount_clearance_in ?? MOUNT_CLEARANCE_IN,
  }
  const cut = lines.areRafters
    ? cutRafters({ ...rafters, breadthIn: RAFTER_IN, cutRafters: framing.cut_rafters ?? [] }, obstructions)
    : new Set<number>()
  const widestIn = inchesOf(Math.max(...surface.corners.map((corner) => corner.xFt)))
  const known = new Map<number, readonly Inches[]>()
  return {
    grid,
    rules: { ...rules, longestSpanIn: Math.min(rules.longestSpanIn, structure?.mount_spacing_in ?? Infinity) },
    continuousIn: inchesOf(continuousRailFt(project).lengthFt),
    aligned: structure?.mount_layout === 'aligned',
    stagger: staggerRails(project),
    obstructions,
    keepIn: (o) => Math.max(field.clearanceIn, o.clearance_in ?? 0),
    insetFt: (orientation, heightFt) => {
      const zone = orientation === 'portrait' ? module.clamp_zone_from_corner_in : module.clamp_zone_short_side_in
      const read = zoneOf(zone)
      return read === undefined ? undefined : feetOf(railInsetIn(inchesOf(heightFt), read))
    },
    raftersAt: (yIn) => {
      const held = known.get(yIn)
      if (held !== undefined) return held
      const places = rafterPlaces(field, { startIn: 0, endIn: widestIn, yIn }).filter(({ number }) => !cut.has(number))
      const found = places.map((place) => place.xIn)
      known.set(yIn, found)
      return found
    },
    overhangs: overhangStrips(surface, framing.eave_overhang_in ?? 0, framing.rake_overhang_in ?? 0),
  }
}

/** Breadth of a rafter, in, when it is not measured. @source American Softwood Lumber Standard PS 20, table 3 (from memory) */
const RAFTER_IN = 1.5

/** Lines up the slope on which the chosen kind of mount stands; undefined where its seams are not stated. */
function mountLines(
  project: RoofProject,
  framing: Framing,
  rafters: RafterGrid,
): { readonly grid: RafterGrid; readonly areRafters: boolean } | undefined {
  const mount = own(project.equipment.mounts, project.structure?.mount)
  if (mount?.kind === 'standing_seam_clamp') {
    const { seam_spacing_in: spacingIn, first_seam_in: firstOffsetIn } = framing.standing_seam ?? {}
    if (spacingIn === undefined || firstOffsetIn === undefined) return undefined
    return { grid: { spacingIn, firstOffsetIn }, areRafters: false }
  }
  if (mount?.kind !== 'deck') return { grid: rafters, areRafters: true }
  const offIn = mount.deck?.from_rafter_in ?? 0
  return { grid: { ...rafters, firstOffsetIn: rafters.firstOffsetIn + offIn }, areRafters: false }
}

function zoneOf(zone: readonly Inches[] | undefined): ClampZone | undefined {
  const [nearestIn, farthestIn] = zone ?? []
  return nearestIn === undefined || farthestIn === undefined ? undefined : { nearestIn, farthestIn }
}

/** Strips of roof outside the walls; their depths are horizontal, so that up the slope they are longer. */
function overhangStrips(surface: RoofSurface, eaveIn: Inches, rakeIn: Inches): Point[][] {
  const lengthen = 1 / Math.cos(radiansOf(surface.tiltDeg))
  return surface.edges.flatMap((edge) => {
    const depthFt = feetOf(edge.kind === 'eave' ? eaveIn : edge.kind === 'rake' ? rakeIn : 0)
    if (depthFt === 0) return []
    const upright = Math.abs(edge.from.xFt - edge.to.xFt) < 1e-9
    return [segmentStrip(edge, upright ? depthFt : depthFt * lengthen)]
  })
}
