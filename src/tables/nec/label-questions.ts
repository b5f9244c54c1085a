import type { Edition } from './editions.js'
import { editionsCarried } from './edition-2026.js'
import type { LabelCondition } from './label-rules.js'

/** A label that depends on something that the project file does not tell. */
export interface LabelQuestion {
  /** Ids of its words in label-words. */
  readonly words: readonly string[]
  readonly editions: readonly Edition[]
  readonly when: string
  readonly condition: Extract<LabelCondition, 'always' | 'dc strings'>
}

const rows: readonly LabelQuestion[] = [
  {
    words: ['EMERGENCY_DISC_1', 'EMERGENCY_DISC_2', 'EMERGENCY_DISC_3'],
    editions: ['NEC 2020', 'NEC 2023'],
    when: 'the service is new or replaced, or the PV disconnect serves as the emergency disconnect: one of these, by the kind of device',
    condition: 'always',
  },
  {
    words: ['OTHER_ISOLATION'],
    editions: ['NEC 2023'],
    when: 'there is an emergency disconnect and the PV disconnect is not next to it',
    condition: 'always',
  },
  {
    words: ['METER_DISC'],
    editions: ['NEC 2020', 'NEC 2023'],
    when: 'a meter disconnect switch is set ahead of the service disconnect',
    condition: 'always',
  },
  {
    words: ['NO_LOAD_BREAK'],
    editions: ['NEC 2017', 'NEC 2020', 'NEC 2023'],
    when: 'connectors or a fuse holder without an interrupting rating serve as the isolating device',
    condition: 'dc strings',
  },
  {
    words: ['UNGROUNDED_DC'],
    editions: ['NEC 2011', 'NEC 2014'],
    when: 'the array is not grounded, as with inverters without a transformer: at its boxes and disconnects, instead of the ground-fault warning',
    condition: 'dc strings',
  },
  {
    words: ['DC_RACEWAY_IFC'],
    editions: ['NEC 2011', 'NEC 2020', 'NEC 2023'],
    when: 'the fire code in force is that of 2012 or 2015: these words, which satisfy the electrical code as well',
    condition: 'dc strings',
  },
]

/** Labels to ask about; the project file has no key for what they hang on. @source label-words, each row's section; 2026 as 2023 */
export const labelQuestions: readonly LabelQuestion[] = rows.map((row) => ({
  ...row,
  editions: editionsCarried(row.editions),
}))
