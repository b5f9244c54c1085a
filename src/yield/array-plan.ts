import { statedModuleCount, tiltDegOf } from '../project/facts.js'
import type { Inverter, Project, PvModule, SpaceProject } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import { isOnRacks, standIn, type Scene } from '../scene/index.js'
import { planeAxes } from '../sun/index.js'
import { StageError } from '../worksheet/index.js'
import { own, type Degrees, type Inches } from '../values/index.js'
import { moduleView, type ModuleView } from './shade/index.js'

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
  /** What each module sees, in the order of `modules`; one view for all where the modules have no places. */
  readonly views: readonly ModuleView[]
  /** Things on the roof plane that are not counted, as nobody knows where the modules lie. */
  readonly uncounted: number
  /** Whether racks turn the modules out of the roof plane. */
  readonly onRacks: boolean
  /** Module rows up the slope, for snow; undefined when the modules have no places. */
  readonly rows: number | undefined
}

export interface PlannedModule {
  /** Placement id, or `<array>.m<number>` when the modules have no places. */
  readonly id: string
  readonly inverterId: string
  /** String inverter that takes the module; undefined behind a module-level inverter. */
  readonly unit: string | undefined
  /** Tracker input and string on it; undefined where each module has electronics of its own. */
  readonly series: SeriesPlace | undefined
}

/** Where a module hangs in series with others. */
export interface SeriesPlace {
  /** `<unit> input <number>`: strings with the same are in parallel. */
  readonly input: string
  /** Number of the string in its array. */
  readonly string: number
  /** Lowest voltage of the tracker relative to that of the string's best point; 0 where the sheets do not tell. */
  readonly leastVoltage: number
}

/** Looks an inverter up; the project file's rules have checked that it is there. */
export function inverterOf(project: SpaceProject, inverterId: string, where: string): Inverter {
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
 * @param scene The house in space.
 * @throws StageError when a part of the equipment is missing.
 */
export function planArray(
  project: SpaceProject,
  arrayId: string,
  placements: readonly ModulePlacement[],
  scene: Scene,
): ArrayPlan {
  const named = partsOf(project, arrayId)
  const { array, plane, module } = named
  const tiltDeg = array.module_tilt_deg ?? tiltDegOf(plane)
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
      ...takes,
    })),
    views: viewsOf(project, arrayId, named, scene, placements),
    uncounted:
      placements.length > 0
        ? 0
        : Object.values(plane.obstructions ?? {}).filter(({ height_ft: heightFt }) => heightFt > 0).length,
    onRacks: isOnRacks(project, arrayId),
    rows: placements.length > 0 ? new Set(placements.map((placement) => placement.row)).size : undefined,
  }
}

/** What an array names. */
interface ArrayParts {
  readonly array: Project['arrays'][string]
  readonly plane: Project['roof_planes'][string]
  readonly module: PvModule
}

function partsOf(project: SpaceProject, arrayId: string): ArrayParts {
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

/** What one module of an array sees; of an array without places, what its middle sees, without the things on its roof. */
function viewsOf(
  project: SpaceProject,
  arrayId: string,
  { array, plane, module }: ArrayParts,
  scene: Scene,
  placements: readonly ModulePlacement[],
): ModuleView[] {
  const solids = scene.worlds.get(array.roof_plane)?.solids ?? []
  const horizon = (project.site.horizon ?? [])
    .map((point) => ({ azimuthDeg: point.azimuth_deg, elevationDeg: point.elevation_deg }))
    .toSorted((a, b) => a.azimuthDeg - b.azimuthDeg)
  const sections = module.bypass_sections ?? 3
  const faces = new Map(scene.faces.map((face) => [face.id, face]))
  if (placements.length > 0) {
    return placements.flatMap((placement) => {
      const face = faces.get(placement.id)
      return face === undefined
        ? []
        : [moduleView(face, solids, horizon, sections, placement.orientation === 'portrait')]
    })
  }
  const frame = scene.frames.get(array.roof_plane)
  if (frame === undefined) return []
  const face = {
    id: arrayId,
    array: arrayId,
    planeId: array.roof_plane,
    middle: standIn(project, frame),
    axes: planeAxes(array.module_tilt_deg ?? frame.tiltDeg, array.module_azimuth_deg ?? plane.azimuth_deg),
    widthFt: 0,
    heightFt: 0,
    onRack: false,
  }
  const things = `roof_planes.${array.roof_plane}.obstructions.`
  return [
    moduleView(
      face,
      solids.filter(({ path }) => !path.startsWith(things)),
      horizon,
      sections,
      true,
    ),
  ]
}

function leastVoltageOf(
  project: SpaceProject,
  moduleId: string | undefined,
  inverterId: string,
  modules: number,
): number {
  const vmpV = moduleId === undefined ? undefined : own(project.equipment.modules, moduleId)?.vmp_v
  const leastV = own(project.equipment.inverters, inverterId)?.mppt_min_v
  return vmpV === undefined || leastV === undefined ? 0 : Math.min(1, leastV / (modules * vmpV))
}

/** For each module in order, the inverter that takes it. */
function invertersOf(project: SpaceProject, arrayId: string, count: number): Omit<PlannedModule, 'id'>[] {
  const array = own(project.arrays, arrayId)
  if (array?.inverter !== undefined) {
    const inverterId = array.inverter
    return Array.from({ length: count }, () => ({ inverterId, unit: undefined, series: undefined }))
  }
  const takes = (array?.strings ?? []).flatMap((string, number) => {
    const inverterId = own(project.inverter_units, string.inverter_unit)?.inverter
    if (inverterId === undefined) {
      throw new StageError(
        `arrays.${arrayId}.strings`,
        `no inverter unit '${string.inverter_unit}' under inverter_units`,
        'name one that is listed there',
      )
    }
    const unit = string.inverter_unit
    const series =
      array?.optimiser === undefined
        ? {
            input: `${unit} input ${string.input ?? 1}`,
            string: number,
            leastVoltage: leastVoltageOf(project, array?.module, inverterId, string.modules),
          }
        : undefined
    return Array.from({ length: string.modules }, () => ({ inverterId, unit, series }))
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
