import type { SourceStanding } from '../../worksheet/index.js'

/** Who supplies what is missing. */
export type Supplier = 'owner' | 'installer' | 'engineer' | 'utility' | 'authority' | 'preparer'

/** A point that plan reviewers ask for. */
export interface ChecklistPoint {
  /** Stable id, as an authority's own file names it. */
  readonly id: string
  /** What is asked, in words for a list. */
  readonly asks: string
  /** Published lists that ask for it; empty for what is not on a list that was read. */
  readonly lists: readonly ListName[]
  /** Who supplies it when it is missing. */
  readonly by: Supplier
  readonly standing: SourceStanding
}

/** Published lists of building departments, what kind each is, and where. */
export const LISTS = {
  SF: 'plan format page, San Francisco CA',
  FV: 'plan-check list, Fountain Valley CA',
  IRV: 'e-permit eligibility list, Irvine CA',
  LAY: 'submittal list, Layton UT',
  FL: 'expedited packet of a county in Florida, 2018',
  SA: 'expedited form, Santa Ana CA',
  PA: 'Uniform Construction Code checklist, Pennsylvania',
  SIM: 'national simplified-permit training slides',
  CC: 'submittal list, Cathedral City CA',
  CHE: 'submittal list, Chesterfield VA',
  SR: 'submittal list, San Ramon CA',
  HNL: 'electronic plan format list, Honolulu HI',
  VEN: 'plan format list, Ventura County CA',
  MOR: 'plan format list, Moreland Hills OH',
  CA: 'expedited-permit ordinances under Gov. Code 65850.5, California',
} as const satisfies Readonly<Record<string, string>>

export type ListName = keyof typeof LISTS
