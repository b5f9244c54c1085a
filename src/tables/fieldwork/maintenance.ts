import type { Source } from '../../worksheet/index.js'

/** Something that is looked after again and again. */
export interface MaintenanceRule {
  readonly when: string
  readonly what: string
  readonly who: string
  readonly source: Source
  /** Only with strings, only with module-level inverters. */
  readonly only?: 'strings' | 'module_level'
}

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }
const MANUAL: Source = { document: "maker's manual", standing: 'from memory' }
const RECORD: Source = {
  document: 'IEC 62446-1',
  place: 'clause 4, operation and maintenance',
  standing: 'from memory',
}

/** What is looked after and when. No document that was read fixes these times; the makers' manuals come first. */
export const MAINTENANCE: readonly MaintenanceRule[] = [
  {
    when: 'every month',
    what: 'compare the kWh of the month with the table of this paper (review-output does it day by day)',
    who: 'owner',
    source: PRACTICE,
  },
  {
    when: 'every month',
    what: 'look at the monitoring: every module or string reports, no message of a fault',
    who: 'owner',
    source: PRACTICE,
  },
  {
    when: 'twice a year and after storms',
    what: 'look from the ground: broken glass, hanging leads, leaves, nests, stains below the roof',
    who: 'owner',
    source: PRACTICE,
  },
  {
    when: 'every year',
    what: 'labels at meter, panel and disconnects are there and can be read',
    who: 'owner',
    source: RECORD,
  },
  {
    when: 'every year',
    what: 'disconnect and rapid-shutdown initiator are turned off and on once, in the order on the emergency sheet',
    who: 'owner, or as the manual says',
    source: MANUAL,
  },
  {
    when: 'every year',
    what: 'fan, filter and air way of the inverter are clean',
    who: 'owner',
    source: MANUAL,
    only: 'strings',
  },
  {
    when: 'when dirty',
    what: 'modules are cleaned from the ground with plain water, cool and in the morning; nobody steps on modules',
    who: 'owner, or somebody with fall protection',
    source: PRACTICE,
  },
  {
    when: 'every 5 years',
    what: 'visual inspection on the roof, torque marks, bonding, AC terminals',
    who: 'electrician',
    source: PRACTICE,
  },
  {
    when: 'every 5 years',
    what: 'insulation, open-circuit voltage and operating current of each string, held against this record',
    who: 'electrician',
    source: PRACTICE,
    only: 'strings',
  },
  {
    when: 'before work on the roof',
    what: 'whoever works there is told of the array; it is shut down, and counts as live in light all the same',
    who: 'owner',
    source: RECORD,
  },
]
