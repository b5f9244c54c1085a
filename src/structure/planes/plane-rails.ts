import type { Project } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { own, type Inches, type PoundsPerSquareFoot } from '../../values/index.js'
import { arrayDead, type ArrayDead } from './array-weight.js'
import { combinedLoads, type CombinedLoad, type SiteLoads } from '../loads/index.js'
import type { Chosen, MountProduct, RailProduct } from './equipment-spec.js'
import { type FramingSpec, rafterPlaces } from '../rafters/index.js'
import {
  type RailToLay,
  type RailStrength,
  railLines,
  type ClampZone,
  type RailLine,
  moduleKeys,
  railPatches,
  type ModuleKeys,
  spanLimit,
  type SpanLimit,
} from '../rails/index.js'
import type { MountStrength } from '../mounts/index.js'
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

/** Dead load and combinations of an array; the least dead load against uplift, the most downwards. */
export function arrayOnPlane(
  project: Project,
  site: SiteLoads,
  plane: PlaneModel,
  framing: FramingSpec,
  kit: RailKit,
  module: ModulePlacement,
): ArrayOnPlane {
  const dead = arrayDead(project, module.array, module, kit.rail, kit.mount, framing.spacingIn)
  const combine = (deadPsf: PoundsPerSquareFoot): CombinedLoad[] =>
    combinedLoads(
      site.edition,
      { deadPsf, snowPsf: plane.snowPsf.modules, slopeDeg: plane.geometry.tiltDeg },
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
  project: Project,
  plane: PlaneModel,
  framing: FramingSpec,
  kit: RailKit,
  mount: MountStrength,
  arrays: ReadonlyMap<string, ArrayOnPlane>,
): RailToLay[] {
  const obstructions = Object.values(own(project.roof_planes, plane.geometry.id)?.obstructions ?? {})
  const zoneOf = (module: ModulePlacement): ClampZone => clampZoneOf(project, module)
  const lines = railLines(plane.modules, zoneOf, kit.endAllowanceIn, obstructions)
  // Both rails of a run carry the same modules.
  const known = new Map<ModulePlacement, ModuleKeys>()
  const keysOf = (module: ModulePlacement): ModuleKeys => {
    const keys = known.get(module) ?? moduleKeys(module, plane.keyAt)
    known.set(module, keys)
    return keys
  }
  return lines
    .toSorted((a, b) => a.yIn - b.yIn || a.startIn - b.startIn)
    .map((line) => {
      const places = rafterPlaces(plane.geometry, framing, obstructions, line, kit.mountEdgeIn, kit.mountClearanceIn)
      return railToLay(
        plane,
        framing,
        kit,
        mount,
        line,
        keysOf,
        arrays.get(line.array)?.combinations ?? [],
        places.map((p) => p.xIn),
      )
    })
}

function railToLay(
  plane: PlaneModel,
  framing: FramingSpec,
  kit: RailKit,
  mount: MountStrength,
  line: RailLine,
  keysOf: (module: ModulePlacement) => ModuleKeys,
  combinations: readonly CombinedLoad[],
  rafters: readonly number[],
): RailToLay {
  const patches = railPatches(line, keysOf)
  const parts = { wind: plane.wind, combinations, mount, strength: kit.railStrength }
  const widthFt = Math.max(...patches.map((patch) => patch.totalWidthFt))
  const limits = new Map<string, SpanLimit>()
  return {
    loaded: { line, patches, ...parts },
    rafters,
    limitOf: (zone, exposed) => {
      const key = `${zone}${exposed}`
      const held = limits.get(key) ?? spanLimit(parts, zone, exposed, widthFt, framing.spacingIn, kit.longestSpanIn)
      limits.set(key, held)
      return held
    },
  }
}
