import { CATEGORY_D_FROM_SDS_G, EXEMPT_BELOW_SS_G, type DesignCategory } from '../../tables/asce7/index.js'

/** What decides whether the array has to be checked at all. */
export interface SeismicFacts {
  readonly dwelling: 'one_two_family' | 'other' | undefined
  readonly category: DesignCategory | undefined
  readonly ssG: number | undefined
  /** SDS, g. */
  readonly sdsG: number | undefined
}

/** Whether a stated category of A to C cannot be true of the stated shaking. */
export function contradictsCategory({ category, sdsG }: SeismicFacts): boolean {
  const low = category === 'A' || category === 'B' || category === 'C'
  return low && sdsG !== undefined && sdsG >= CATEGORY_D_FROM_SDS_G
}

/**
 * Why no force has to be worked out, asked in the order of the standard; undefined when one has to be, or when it cannot be told.
 *
 * @source ASCE 7 11.1.2 and 13.1.4, IBC 1613.1 (secondary)
 */
export function seismicExemption(facts: SeismicFacts): string | undefined {
  const { dwelling, category, ssG } = facts
  if (contradictsCategory(facts)) return undefined
  if (category === 'A') return 'seismic design category A asks only for a positive connection, which the mounts are'
  if (dwelling === 'one_two_family') {
    if (category === 'B' || category === 'C')
      return `a detached house of one or two families in seismic design category ${category} needs no check`
    if (category === undefined && ssG !== undefined && ssG < EXEMPT_BELOW_SS_G)
      return `a detached house of one or two families where Ss is ${ssG} g, below ${EXEMPT_BELOW_SS_G} g, needs no check`
  }
  if (category === 'B') return 'mechanical and electrical components need no check in seismic design category B'
  if (category === 'C')
    return 'mechanical and electrical components of importance 1.0 need no check in seismic design category C'
  return undefined
}
