import type { RoofProject } from '../../project/index.js'
import {
  rafterPlaces,
  continuousRailFt,
  railInsetIn,
  railLines,
  type ModulePlacement,
  type RailLine,
} from '../../roof/index.js'
import { inchesOf, own, type Inches, type PoundsPerSquareFoot } from '../../values/index.js'
import { arrayDead, type ArrayDead } from './array-weight.js'
import { combinedLoads, type CombinedLoad, type SiteLoads } from '../loads/index.js'
import type { Chosen, MountProduct, RailProduct } from './equipment-spec.js'
import { cutRafters, type FramingSpec } from '../rafters/index.js'
import type { MountLines } from './mount-spec.js'
import {
  type LoadedRail,
  type RailToLay,
  type RailStrength,
  moduleKeys,
  railPatches,
  type ModuleKeys,
  spanLimit,
  type SpanLimit,
} from '../rails/index.js'
import { gridOf, type MountStrength } from '../mounts/index.js'
import { clampZoneOf, type PlaneModel } from './plane-model.js'

/** What the rails of all planes share. */
export interface RailKit {
  readonly rail: Chosen<RailProduct>
  readonly mount: Chosen<MountProduct>
  readonly railStrength: RailStrength
  readonly endAllowanceIn: Inches
  readonly longestSpanIn: Inches
  readonly mountEdgeIn: Inches
  readonly mountClearanceIn: Inches
}

/** Loads of one array on one plane. */
export interface ArrayOnPlane {
  readonly dead: ArrayDead
  readonly combinations: readonly CombinedLoad[]
}

/** A plane with its framing, the lines on which mounts stand, and the rails and mounts. */
export interface PlaneParts {
  readonly plane: PlaneModel
  readonly framing: FramingSpec
  readonly lines: MountLines
  readonly kit: RailKit
  readonly mount: MountStrength
}

/** Dead load and combinations of the array of a module; the least dead load against uplift, the most downwards. */
export function arrayOnPlane(
  project: RoofProject,
  site: SiteLoads,
  { plane, lines, kit }: PlaneParts,
  module: ModulePlacement,
): ArrayOnPlane {
  const dead = arrayDead(project, module, kit, lines.spacingIn)
  const combine = (deadPsf: PoundsPerSquareFoot): CombinedLoad[] =>
    combinedLoads(
      site.edition,
      { deadPsf, snowPsf: plane.snowPsf.modules, tiltDeg: plane.geometry.tiltDeg },
      site.snowIsAllowable,
    )
  return {
    dead,
    combinations: [
      ...combine(dead.mostPsf).filter((c) => c.direction === 'down'),
      ...combine(dead.leastPsf).filter((c) => c.direction === 'uplift'),
    ],
  }
}

/** Rails of one plane with their loads, rafters and span limits, from the lowest up. */
export function planeRails(
  project: RoofProject,
  parts: PlaneParts,
  arrays: ReadonlyMap<string, ArrayOnPlane>,
): RailToLay[] {
  const { plane, kit } = parts
  const obstructions = Object.values(own(project.roof_planes, plane.geometry.id)?.obstructions ?? {})
  const rails = railLines(plane.modules, {
    insetInOf: (module) => railInsetIn(inchesOf(module.heightFt), clampZoneOf(project, module)),
    endAllowanceIn: kit.endAllowanceIn,
    obstructions,
    continuousIn: inchesOf(continuousRailFt(project).lengthFt),
  })
  // Both rails of a run carry the same modules.
  const known = new Map<ModulePlacement, ModuleKeys>()
  const keysOf = (module: ModulePlacement): ModuleKeys => {
    const keys = known.get(module) ?? moduleKeys(module, plane.keyAt)
    known.set(module, keys)
    return keys
  }
  const field = {
    plane: plane.geometry,
    framing: parts.lines,
    obstructions,
    edgeIn: kit.mountEdgeIn,
    clearanceIn: kit.mountClearanceIn,
  }
  const cut = gridOf(parts.mount) === 'rafter' ? cutRafters(parts.framing, obstructions) : new Set<number>()
  return rails
    .toSorted((a, b) => a.yIn - b.yIn || a.startIn - b.startIn)
    .map((line) => {
      const places = rafterPlaces(field, line).filter(({ number }) => !cut.has(number))
      const rafters = places.map((place) => place.xIn)
      const loads = { patches: railPatches(line, keysOf), combinations: arrays.get(line.array)?.combinations ?? [] }
      return railToLay(parts, line, loads, rafters)
    })
}

function railToLay(
  { plane, lines, kit, mount }: PlaneParts,
  line: RailLine,
  { patches, combinations }: Pick<LoadedRail, 'patches' | 'combinations'>,
  rafters: readonly number[],
): RailToLay {
  const loads = { wind: plane.wind, combinations, mount, strength: kit.railStrength }
  const widthFt = Math.max(...patches.map((patch) => patch.totalWidthFt))
  // Asked a million times for a large roof: two maps by zone are found without a text of both being made.
  const limits = { exposed: new Map<string, SpanLimit>(), covered: new Map<string, SpanLimit>() }
  return {
    loaded: { line, patches, ...loads },
    rafters,
    limitOf: (zone, exposed) => {
      const known = exposed ? limits.exposed : limits.covered
      const held = known.get(zone)
      if (held !== undefined) return held
      const limit = spanLimit({ ...loads, key: { zone, exposed }, widthFt }, lines.spacingIn, kit.longestSpanIn)
      known.set(zone, limit)
      return limit
    },
  }
}
