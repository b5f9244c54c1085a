import { statedModuleCount, tiltDegOf } from '../project/facts.js'
import type { Inverter, Project, PvModule } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import { levelRise, planeAxes, plumbFrame, type FarObstacle, type PlaneAxes, type Point } from '../sun/index.js'
import { StageError } from '../worksheet/index.js'
import { feetOf, own, type Degrees, type Inches } from '../values/index.js'
import type { ShadeScene, ShadedModule } from './module-shade.js'
import { monthlyValues } from './months.js'
import { rowNeighbours } from './row-shade.js'

/** A module that differs less from its plane lies on it, degrees. */
const LEAST_RACK_DEG = 0.5

/** One array as the estimate runs it. */
export interface ArrayPlan {
  readonly id: string
  readonly tiltDeg: Degrees
  readonly azimuthDeg: Degrees
  readonly mounting: Project['arrays'][string]['mounting']
  readonly standoffIn: Inches
  readonly moduleId: string
  readonly module: PvModule
  readonly modules: readonly PlannedModule[]
  readonly scene: ShadeScene
  /** Whether racks turn the modules out of the roof plane. */
  readonly onRacks: boolean
  /** Module rows up the slope, for snow; undefined when the modules have no places. */
  readonly rows: number | undefined
}

export interface PlannedModule {
  /** Placement id, or `<array>.m<number>` when the modules have no places. */
  readonly id: string
  readonly shaded: ShadedModule
  readonly inverterId: string
  /** String inverter that takes the module; undefined behind a module-level inverter. */
  readonly unit: string | undefined
}

/** Looks an inverter up; the project file's rules have checked that it is there. */
export function inverterOf(project: Project, inverterId: string, where: string): Inverter {
  const inverter = own(project.equipment.inverters, inverterId)
  if (inverter === undefined) {
    throw new StageError(
      where,
      `no inverter '${inverterId}' under equipment.inverters`,
      'name one that is listed there',
    )
  }
  return inverter
}

/**
 * Turns an array of the project into what the estimate needs: direction, modules with their places, what shades them,
 * and the inverter that takes each.
 *
 * @param placements Places of this array's modules; empty when the project does not state them.
 * @param rowShade Whether rows on racks shade each other.
 * @throws StageError when a part of the equipment is missing.
 */
export function planArray(
  project: Project,
  arrayId: string,
  placements: readonly ModulePlacement[],
  rowShade = true,
): ArrayPlan {
  const named = partsOf(project, arrayId)
  const { array, plane, module } = named
  const roofTiltDeg = tiltDegOf(plane)
  const tiltDeg = array.module_tilt_deg ?? roofTiltDeg
  const azimuthDeg = array.module_azimuth_deg ?? plane.azimuth_deg
  const count = placements.length > 0 ? placements.length : (statedModuleCount(array) ?? 0)
  if (count === 0) {
    throw new StageError(
      `arrays.${arrayId}`,
      'does not say how many modules it has',
      'state modules, strings or arrangement.blocks',
    )
  }
  const inverters = invertersOf(project, arrayId, count)
  const scene = shadeScene(project, arrayId, named, planeAxes(tiltDeg, azimuthDeg))
  const onRacks = rowShade && (Math.abs(tiltDeg - roofTiltDeg) > LEAST_RACK_DEG || azimuthDeg !== plane.azimuth_deg)
  const sections = module.bypass_sections ?? 3
  const shaded =
    placements.length > 0
      ? placedModules(placements, scene, sections, onRacks)
      : Array.from({ length: count }, () => moduleWithoutPlace(sections))
  return {
    id: arrayId,
    tiltDeg,
    azimuthDeg,
    mounting: array.mounting,
    standoffIn: array.standoff_in,
    moduleId: array.module,
    module,
    modules: inverters.map((takes, index) => ({
      id: placements[index]?.id ?? `${arrayId}.m${index + 1}`,
      shaded: shaded[index]!,
      ...takes,
    })),
    scene,
    onRacks,
    rows: placements.length > 0 ? new Set(placements.map((placement) => placement.row)).size : undefined,
  }
}

/** What an array names. */
interface ArrayParts {
  readonly array: Project['arrays'][string]
  readonly plane: Project['roof_planes'][string]
  readonly module: PvModule
}

function partsOf(project: Project, arrayId: string): ArrayParts {
  const array = own(project.arrays, arrayId)
  const plane = array === undefined ? undefined : own(project.roof_planes, array.roof_plane)
  const module = array === undefined ? undefined : own(project.equipment.modules, array.module)
  if (array === undefined || plane === undefined || module === undefined) {
    throw new StageError(
      `arrays.${arrayId}`,
      'names a roof plane or a module that is not in the file',
      'correct the name',
    )
  }
  return { array, plane, module }
}

/** A module that nothing near can shade, as nobody knows where it lies. */
function moduleWithoutPlace(sections: number): ShadedModule {
  return {
    middle: { east: 0, north: 0, up: 0 },
    rectangle: undefined,
    sections,
    sectionsAlongX: true,
    neighbours: [],
  }
}

/** Modules where they lie, seen from the middle of the array. */
function placedModules(
  placements: readonly ModulePlacement[],
  { roof, modulePlane }: ShadeScene,
  sections: number,
  onRacks: boolean,
): ShadedModule[] {
  const centre = middleOf(placements)
  const middles = placements.map((placement): Point => {
    const dx = placement.xFt + placement.widthFt / 2 - centre.x
    const dy = placement.yFt + placement.heightFt / 2 - centre.y
    return {
      east: dx * roof.x.east + dy * roof.y.east,
      north: dx * roof.x.north + dy * roof.y.north,
      up: dx * roof.x.up + dy * roof.y.up,
    }
  })
  return placements.map((placement, index) => {
    const middle = middles[index]!
    return {
      middle,
      neighbours: onRacks ? rowNeighbours(middle, middles, modulePlane) : [],
      rectangle: placement,
      sections,
      sectionsAlongX: placement.orientation === 'portrait',
    }
  })
}

/** Horizon, far things and boxes on the roof round an array. */
function shadeScene(
  project: Project,
  arrayId: string,
  { array, plane, module }: ArrayParts,
  modulePlane: PlaneAxes,
): ShadeScene {
  const roofTiltDeg = tiltDegOf(plane)
  return {
    roof: planeAxes(roofTiltDeg, plane.azimuth_deg),
    modulePlane,
    horizon: (project.site.horizon ?? [])
      .map((point) => ({ azimuthDeg: point.azimuth_deg, elevationDeg: point.elevation_deg }))
      .toSorted((a, b) => a.azimuthDeg - b.azimuthDeg),
    obstacles: farObstacles(project, arrayId),
    boxes: Object.values(plane.obstructions ?? {})
      .filter((box) => box.height_ft > 0)
      .map((box) => ({
        xFt: box.x_ft,
        yFt: box.y_ft,
        widthFt: box.width_ft,
        lengthFt: box.length_ft,
        heightFt: box.height_ft,
        risePerFt: box.kind === 'skylight' || box.kind === 'dormer' ? 0 : levelRise(roofTiltDeg),
      })),
    plumb: plumbFrame(roofTiltDeg),
    moduleHeightFt: feetOf(array.standoff_in + (module.thickness_in ?? 0)),
  }
}

function farObstacles(project: Project, arrayId: string): FarObstacle[] {
  return Object.values(project.site.obstacles ?? {})
    .filter((obstacle) => obstacle.arrays === undefined || obstacle.arrays.includes(arrayId))
    .map((obstacle) => ({
      bearingDeg: obstacle.bearing_deg,
      distanceFt: obstacle.distance_ft,
      widthFt: obstacle.width_ft,
      topFt: obstacle.height_ft,
      baseFt: obstacle.base_height_ft ?? Number.NEGATIVE_INFINITY,
      transmittance: monthlyValues(obstacle.transmittance ?? 0),
    }))
}

/** For each module in order, the inverter that takes it. */
function invertersOf(
  project: Project,
  arrayId: string,
  count: number,
): { readonly inverterId: string; readonly unit: string | undefined }[] {
  const array = own(project.arrays, arrayId)
  if (array?.inverter !== undefined) {
    const inverterId = array.inverter
    return Array.from({ length: count }, () => ({ inverterId, unit: undefined }))
  }
  const takes = (array?.strings ?? []).flatMap((string) => {
    const inverterId = own(project.inverter_units, string.inverter_unit)?.inverter
    if (inverterId === undefined) {
      throw new StageError(
        `arrays.${arrayId}.strings`,
        `no inverter unit '${string.inverter_unit}' under inverter_units`,
        'name one that is listed there',
      )
    }
    return Array.from({ length: string.modules }, () => ({ inverterId, unit: string.inverter_unit }))
  })
  if (takes.length !== count) {
    throw new StageError(
      `arrays.${arrayId}`,
      `has ${count} modules but its strings take ${takes.length}`,
      'state an inverter, or strings whose modules add up',
    )
  }
  return takes
}

function middleOf(placements: readonly ModulePlacement[]): { readonly x: number; readonly y: number } {
  const sum = placements.reduce(
    (so, placement) => ({
      x: so.x + placement.xFt + placement.widthFt / 2,
      y: so.y + placement.yFt + placement.heightFt / 2,
    }),
    { x: 0, y: 0 },
  )
  return { x: sum.x / placements.length, y: sum.y / placements.length }
}
