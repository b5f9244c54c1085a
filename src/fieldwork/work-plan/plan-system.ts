import { listModuleGroups, tiltDegOf } from '../../project/index.js'
import { SAFETY_FIGURES } from '../../tables/fieldwork/index.js'
import type { Edition } from '../../tables/nec/index.js'
import type { PlanInput } from './plan-input.js'
import type { CurrentReading, FirstWeek, InsulationValue, VoltageReading } from './plan-values.js'
import { pitchIn12Of } from '../../values/index.js'

/** What decides which steps and tasks a system has, and the numbers in them. */
export interface PlanSystem extends PlanInput {
  readonly edition: Edition | undefined
  readonly moduleLevel: boolean
  readonly strings: boolean
  /** Units that hang on a wall, string inverters as a rule. */
  readonly wallUnits: boolean
  /** Strings whose modules have shutdown units: off, such a string reads the units' voltage. */
  readonly shutdownUnits: boolean
  readonly supplySide: boolean
  readonly utility: string
  /** Skylights of the planes with modules and of all others, `south: skylight_1`. */
  readonly skylights: readonly string[]
  readonly eaveHeightsFt: Readonly<Record<string, number | undefined>>
  /** Planes steeper than 4 in 12. */
  readonly steep: readonly string[]
  readonly readings: readonly VoltageReading[]
  readonly insulation: readonly InsulationValue[]
  readonly currents: readonly CurrentReading[]
  readonly ac: { readonly nominal_v: number; readonly low_v: number; readonly high_v: number }
  readonly weeks: readonly FirstWeek[]
}

/** Measured figures that other files work out. */
export type PlanFigures = Pick<PlanSystem, 'readings' | 'insulation' | 'currents' | 'ac' | 'weeks'>

/** What decides the tasks of a project; a stage that could not run is left out. */
export function planSystem(input: PlanInput, figures: PlanFigures): PlanSystem {
  const { project, wire } = input
  const groups = listModuleGroups(project)
  const planes = Object.entries(project.roof_planes)
  const strings = groups.some((group) => group.conversion.kind === 'string')
  return {
    ...input,
    edition: wire?.edition as Edition | undefined,
    moduleLevel: groups.some((group) => group.conversion.kind === 'module_level'),
    strings,
    wallUnits: Object.keys(project.inverter_units ?? {}).length > 0,
    shutdownUnits:
      strings &&
      (project.electrical?.rapid_shutdown?.inside_boundary === 'module_level' ||
        groups.some(({ array }) => array.optimiser !== undefined)),
    supplySide: project.electrical?.connection?.kind === 'supply_side',
    utility: project.parties?.utility?.name ?? 'the utility',
    skylights: planes.flatMap(([plane, { obstructions }]) =>
      Object.entries(obstructions ?? {})
        .filter(([, each]) => each.kind === 'skylight')
        .map(([id]) => `${plane}: ${id}`),
    ),
    eaveHeightsFt: Object.fromEntries(planes.map(([id, plane]) => [id, plane.eave_height_ft])),
    steep: planes
      .filter(([, plane]) => pitchIn12Of(tiltDegOf(plane)) > SAFETY_FIGURES.steepAboveIn12 + 1e-9)
      .map(([id]) => id),
    ...figures,
  }
}
