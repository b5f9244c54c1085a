import { own, type Degrees } from '../values/index.js'
import { moduleCountOf } from './module-count.js'
import type { ArrayOfModules, Inverter, Project, PvModule, RoofPlane } from './project-types.generated.js'
import { tiltDegOf } from './tilt.js'

/** An array with all that it refers to, and the direction of its modules. */
export interface ModuleGroup {
  /** Key under `arrays`. */
  readonly id: string
  readonly array: ArrayOfModules
  readonly plane: RoofPlane
  readonly module: PvModule
  readonly modules: number
  /** Tilt of the modules from level, deg: that of the racks, or of the roof. */
  readonly tiltDeg: Degrees
  /** Direction of the modules clockwise from true north, deg. */
  readonly azimuthDeg: Degrees
  /** The inverter behind every module, or the strings with theirs. */
  readonly conversion: ModuleLevelConversion | StringConversion
}

export interface ModuleLevelConversion {
  readonly kind: 'module_level'
  readonly inverterId: string
  readonly inverter: Inverter
}

export interface StringConversion {
  readonly kind: 'string'
  readonly strings: readonly ModuleString[]
}

export interface ModuleString {
  readonly modules: number
  /** Key under `inverter_units`. */
  readonly unitId: string
  readonly inverterId: string
  readonly inverter: Inverter
  /** Counted from 1; undefined when the project does not say. */
  readonly input: number | undefined
}

/** The arrays of a loaded project in the order of the file, each with its references followed. */
export function listModuleGroups(project: Project): ModuleGroup[] {
  return Object.entries(project.arrays).map(([id, array]) => {
    const plane = lookUp(project.roof_planes, array.roof_plane, 'roof plane')
    return {
      id,
      array,
      plane,
      module: lookUp(project.equipment.modules, array.module, 'module'),
      modules: moduleCountOf(array),
      tiltDeg: array.module_tilt_deg ?? tiltDegOf(plane),
      azimuthDeg: array.module_azimuth_deg ?? plane.azimuth_deg,
      conversion: conversionOf(project, array),
    }
  })
}

function conversionOf(project: Project, array: ArrayOfModules): ModuleLevelConversion | StringConversion {
  const { inverters } = project.equipment
  if (array.inverter !== undefined) {
    const inverter = lookUp(inverters, array.inverter, 'inverter')
    return { kind: 'module_level', inverterId: array.inverter, inverter }
  }
  const strings = (array.strings ?? []).map(({ modules, inverter_unit: unitId, input }): ModuleString => {
    const inverterId = lookUp(project.inverter_units, unitId, 'inverter unit').inverter
    return { modules, unitId, inverterId, inverter: lookUp(inverters, inverterId, 'inverter'), input }
  })
  return { kind: 'string', strings }
}

/**
 * The entry under an id of the project.
 *
 * @throws Error when there is none; a loaded project refers to nothing that is missing.
 */
export function lookUp<Value>(map: Readonly<Record<string, Value>> | undefined, id: string, what: string): Value {
  const value = own(map, id)
  if (value === undefined) throw new Error(`no ${what} '${id}': the project was not checked`)
  return value
}
