import { failingOnWay, judgeTree, type Tree } from '../distribution/index.js'
import type { Job, RemedyValues } from '../system/index.js'
import { fewerBreakers, fewerInverters, moveBreaker, smallerMain } from './breaker-remedies.js'
import { newPanel, otherPanels, powerControl, study, supplySide } from './place-remedies.js'

/**
 * The ways out when a node between the PV system and the utility does not comply, in the order in which an electrician
 * tries them, each with what it reaches.
 *
 * @returns Nothing while everything on the way complies.
 * @source common practice, no source (the order); sections of the edition
 */
export function listRemedies(job: Job, tree: Tree): RemedyValues[] {
  if (failingOnWay(tree, judgeTree(tree)).length === 0) return []
  const costs = job.electrical.remedy_costs_usd ?? {}
  return [
    ...moveBreaker(job, tree),
    fewerInverters(job, tree),
    ...smallerMain(job, tree),
    ...fewerBreakers(job, tree),
    ...powerControl(job, tree),
    ...supplySide(job, tree),
    ...otherPanels(job, tree),
    study(job),
    ...newPanel(job, tree),
  ].map(({ key, what, reachesA, passes, section, why }) => ({
    what,
    reaches_a: reachesA ?? null,
    passes: passes ?? null,
    cost_usd: costs[key] ?? null,
    section,
    why,
  }))
}
