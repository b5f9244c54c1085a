import { labelsOfEdition, type WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { Edition } from '../../tables/nec/index.js'
import { formatSource } from '../../worksheet/index.js'
import { wordLabel } from './word-label.js'
import type { LabelPart } from './label-style.js'

/** Equipment that a label is fixed to. */
export type LabelPlace =
  | 'main_panel'
  | 'pv_disconnect'
  | 'combiner'
  | 'inverter'
  | 'dc_disconnect'
  | 'dc_raceway'
  | 'meter'

/** A label that the project needs, with its words and where it goes. */
export interface RequiredLabel {
  /** Id of the rule: `RSD_SWITCH`. */
  readonly id: string
  readonly number: number
  readonly parts: readonly LabelPart[]
  /** Width that it is laid out for, in. */
  readonly widthIn: number
  readonly places: readonly LabelPlace[]
  readonly count: number
  /** What the code says of place, size and colour. */
  readonly where: string
  /** Whether size and colour of this edition were read, or the code leaves them open. */
  readonly verified: boolean
  readonly source: string
}

/** What the words of labels are made from. */
export interface LabelFacts {
  readonly project: Project
  readonly wiring: WiringValues
  readonly edition: Edition
  readonly strings: boolean
  readonly supplySide: boolean
  readonly hasDisconnect: boolean
  readonly hasCombiner: boolean
}

/** The labels and placards of the project's code edition, in the order of the rules, each with words filled in. */
export function requiredLabels(project: Project, wiring: WiringValues): RequiredLabel[] {
  const edition = wiring.edition as Edition
  const disconnects = Object.values(project.electrical?.disconnects ?? {})
  const facts: LabelFacts = {
    project,
    wiring,
    edition,
    strings: wiring.circuits.some((circuit) => circuit.kind === 'dc_string'),
    supplySide: project.electrical?.connection?.kind === 'supply_side',
    hasDisconnect: disconnects.some((each) => each.kind === 'pv_system'),
    hasCombiner: wiring.combiner !== null,
  }
  const worded = labelsOfEdition(edition).flatMap(({ rule, source }) => {
    const words = wordLabel(rule.id, facts)
    if (words === undefined) return []
    return [
      {
        id: rule.id,
        ...words,
        where: rule.where,
        verified: sizesVerified(rule.id, edition),
        source: formatSource(source),
      },
    ]
  })
  return worded.map((each, index) => ({ number: index + 1, ...each }))
}

/** The rapid shutdown labels of 2014 and 2023 were not read for this project. */
function sizesVerified(id: string, edition: Edition): boolean {
  return !(id.startsWith('RSD_') && (edition === 'NEC 2014' || edition === 'NEC 2023'))
}
