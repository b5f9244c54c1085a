import type { RemedyCosts } from '../../project/index.js'
import type { Job } from '../system/index.js'
import { failingOnWay, judgeTree, largestPvA, type Tree } from '../distribution/index.js'
import type { Amperes } from '../../values/index.js'

/** A way out when no connection rule holds. */
export interface Remedy {
  readonly key: keyof RemedyCosts
  readonly what: string
  /** Largest PV current that it makes room for, A; undefined where a fact is missing. */
  readonly reachesA: Amperes | undefined
  /** Whether the system as planned then complies; undefined where a fact is missing. */
  readonly passes: boolean | undefined
  readonly section: string
  readonly why: string
}

/** A way out that changes the installation: the house with it is judged again. */
export function byChange(
  remedy: Pick<Remedy, 'key' | 'what' | 'section'> & { readonly note?: string },
  changed: Tree,
): Remedy {
  const verdicts = judgeTree(changed)
  const failing = failingOnWay(changed, verdicts)
  const reachesA = largestPvA(changed, verdicts)
  const passes = failing.length === 0
  return {
    key: remedy.key,
    what: remedy.what,
    section: remedy.section,
    reachesA,
    passes,
    why: [
      passes
        ? 'every busbar and conductor on the way then complies'
        : `still fails: ${failing.map(({ name, governs }) => `${name} (${governs?.why ?? ''})`).join('; ')}`,
      ...(remedy.note === undefined ? [] : [remedy.note]),
    ].join('; '),
  }
}

/** Section of a topic in the edition of the job. */
export const sectionName = (job: Job, topic: Parameters<Job['nec']>[0]): string => job.nec(topic).place ?? ''
