import type { WiringValues } from '../../electrical/index.js'
import { listModuleGroups, type Project } from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import type { Edition } from '../../tables/nec/index.js'

/** What conditions, places and words of labels are made from. */
export interface LabelFacts {
  readonly project: Project
  readonly wiring: WiringValues
  readonly edition: Edition
  readonly strings: boolean
  readonly moduleLevel: boolean
  readonly supplySide: boolean
  /** PV system disconnects beside the panel; on the supply side there is always one. */
  readonly disconnects: number
  /** Whether the installation is stated as a tree of panels. */
  readonly longForm: boolean
  /** Node that the PV system lands on; undefined ahead of the service disconnect. */
  readonly landing: string | undefined
  readonly hasCombiner: boolean
  /** Whether conductors in the array stay live in the sun after a rapid shutdown. */
  readonly arrayStaysLive: boolean
}

export function labelFacts(project: Project, wiring: WiringValues): LabelFacts {
  const strings = wiring.circuits.some((circuit) => circuit.kind === 'dc_string')
  const supplySide = project.electrical?.connection?.kind === 'supply_side'
  const stated = Object.values(project.electrical?.disconnects ?? {}).filter((each) => each.kind === 'pv_system')
  const inside = project.electrical?.rapid_shutdown?.inside_boundary
  return {
    project,
    wiring,
    edition: wiring.edition as Edition,
    strings,
    moduleLevel: listModuleGroups(countFitted(project)).some((group) => group.conversion.kind === 'module_level'),
    supplySide,
    disconnects: Math.max(stated.length, supplySide ? 1 : 0),
    longForm: project.electrical?.distribution !== undefined,
    landing: supplySide ? undefined : landingOf(project),
    hasCombiner: wiring.combiner !== null,
    arrayStaysLive: strings && inside !== 'module_level' && inside !== 'hazard_control_system',
  }
}

function landingOf({ electrical }: Project): string | undefined {
  const { connection, distribution } = electrical ?? {}
  return connection?.at ?? (distribution === undefined ? 'panel' : Object.keys(distribution.panels)[0])
}
