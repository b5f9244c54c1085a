import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { carriedStanding, editionsCarried, withCarried } from './edition-2026.js'

/** What an edition asks about a grounding electrode at the array, and about DC ground-fault protection. */
export interface GroundingRule {
  readonly edition: Edition
  readonly arrayElectrode: 'required' | 'permitted' | 'no rule'
  readonly arrayElectrodeSection: string
  readonly arrayElectrodeStanding: SourceStanding
  /** DC ground-fault protection is asked above these; 0 means always. */
  readonly faultProtectionAboveV: number
  readonly faultProtectionAboveA: number
}

const rows: readonly GroundingRule[] = [
  {
    edition: 'NEC 2011',
    arrayElectrode: 'no rule',
    arrayElectrodeSection: '690.47',
    arrayElectrodeStanding: 'secondary',
    faultProtectionAboveV: 0,
    faultProtectionAboveA: 0,
  },
  {
    edition: 'NEC 2014',
    arrayElectrode: 'required',
    arrayElectrodeSection: '690.47(D)',
    arrayElectrodeStanding: 'secondary',
    faultProtectionAboveV: 0,
    faultProtectionAboveA: 0,
  },
  {
    edition: 'NEC 2017',
    arrayElectrode: 'permitted',
    arrayElectrodeSection: '690.47(B)',
    arrayElectrodeStanding: 'read',
    faultProtectionAboveV: 0,
    faultProtectionAboveA: 0,
  },
  {
    edition: 'NEC 2020',
    arrayElectrode: 'permitted',
    arrayElectrodeSection: '690.47(B)',
    arrayElectrodeStanding: 'read',
    faultProtectionAboveV: 30,
    faultProtectionAboveA: 8,
  },
  {
    edition: 'NEC 2023',
    arrayElectrode: 'permitted',
    arrayElectrodeSection: '690.47(B)',
    arrayElectrodeStanding: 'secondary',
    faultProtectionAboveV: 30,
    faultProtectionAboveA: 8,
  },
]

/**
 * @source NEC 690.47 (2014 (D) and 2017, 2020 (B)); 690.5 (2011, 2014), 690.41(B) (2017 to 2023); 2026 as 2023, no source reports a change.
 */
export const groundingRules: readonly GroundingRule[] = withCarried(rows, (row) => ({
  ...row,
  arrayElectrodeStanding: carriedStanding(row.arrayElectrodeStanding),
}))

/** Largest rod, pipe or plate conductor that is asked for, AWG copper. @source NEC 250.66(A). */
export const ROD_CONDUCTOR_AWG = '6'

/** Largest conductor to a concrete-encased electrode that is asked for, AWG copper. @source NEC 250.66(B): from memory */
export const ENCASED_CONDUCTOR_AWG = '4'

/** Smallest grounding conductor that needs no protection from physical damage, AWG. @source NEC 250.120(C), 690.46. */
export const UNPROTECTED_GROUND_AWG = '6'

/** DC voltage between conductors from which arc-fault protection is asked, V. @source NEC 690.11. */
export const ARC_FAULT_FROM_V = 80

/** Largest DC voltage on or in a one- or two-family dwelling, V. @source NEC 690.7. */
export const DWELLING_DC_LIMIT_V = 600

/** Editions that ask that a PV disconnect can be locked open. @source NEC 2020 690.13. */
export const lockableDisconnect: readonly Edition[] = editionsCarried(['NEC 2020', 'NEC 2023'])
