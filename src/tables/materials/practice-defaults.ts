import type { Source } from '../../worksheet/index.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

interface PracticeDefault {
  readonly value: number
  readonly unit: string
  readonly why: string
  readonly source: Source
}

export type PracticeKey =
  | 'kerf_in'
  | 'raceway_stick_ft'
  | 'wire_slack_ft'
  | 'mid_clamp_max_gap_in'
  | 'mounts_per_sealant_tube'
  | 'cable_clips_per_module'

/** Habits of the trade that quantities need; the project can state each of them. */
export const PRACTICE_DEFAULTS: Readonly<Record<PracticeKey, PracticeDefault>> = {
  kerf_in: { value: 0.125, unit: 'in', why: 'a metal saw blade takes about 1/8 in', source: PRACTICE },
  raceway_stick_ft: {
    value: 10,
    unit: 'ft',
    why: 'rigid and metallic raceways are sold in sticks of 10 ft',
    source: PRACTICE,
  },
  wire_slack_ft: {
    value: 2,
    unit: 'ft',
    why: 'at each end of each segment a conductor needs at least 6 in free in the box, and some to dress and to cut off',
    source: {
      document: 'NEC',
      place: '300.14 (6 in of free conductor); the rest is practice',
      standing: 'from memory',
    },
  },
  mid_clamp_max_gap_in: {
    value: 1,
    unit: 'in',
    why: 'a mid clamp bridges the gap that it is made for, usually 1/4 to 1 in',
    source: PRACTICE,
  },
  mounts_per_sealant_tube: {
    value: 15,
    unit: 'mounts',
    why: 'a tube of 10 oz fills the lead holes and beads under about 15 mounts',
    source: PRACTICE,
  },
  cable_clips_per_module: {
    value: 2,
    unit: 'clips',
    why: 'each module has two leads that must not touch the roof',
    source: PRACTICE,
  },
}
