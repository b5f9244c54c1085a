import { LEAST_DWELLING_SERVICE_A, standardDevices } from '../../tables/nec/index.js'
import { judgeTree, largestPvA, pathOfPv, type Tree } from '../distribution/index.js'
import type { Job } from '../system/index.js'
import { atOppositeEnds, firstPanel, panelsOnWay, pvOf, withPanel } from './change-tree.js'
import { byChange, sectionName, type Remedy } from './remedy.js'

export function moveBreaker(job: Job, tree: Tree): Remedy[] {
  const moved = atOppositeEnds(tree)
  if (JSON.stringify(moved) === JSON.stringify(tree)) return []
  return [
    byChange(
      {
        key: 'move_breaker',
        what: 'Move every breaker that is backfed to the end of its busbar opposite to the main',
        section: sectionName(job, 'loadSideBusbar'),
        note: 'several sources on one busbar are best gathered in one combiner panel',
      },
      moved,
    ),
  ]
}

export function fewerInverters(job: Job, tree: Tree): Remedy {
  const reachesA = largestPvA(tree, judgeTree(tree))
  const pvA = pvOf(tree)?.currentA ?? 0
  return {
    key: 'fewer_inverters',
    what:
      reachesA === undefined
        ? 'Fewer inverters'
        : `Bring the inverters of this project down to ${reachesA.toFixed(1)} A`,
    section: sectionName(job, 'loadSideBusbar'),
    reachesA,
    passes: reachesA === undefined ? undefined : reachesA > 0,
    why: `they give ${pvA.toFixed(1)} A; fewer inverters, or an output limit that is part of their listing and locked`,
  }
}

/** A smaller main is allowed by a load calculation only, and never below what a one-family dwelling needs. */
export function smallerMain(job: Job, tree: Tree): Remedy[] {
  const panel = firstPanel(tree)
  const mainA = panel?.mainA
  if (panel === undefined || mainA === undefined || !panelsOnWay(tree).includes(panel)) return []
  const base = { key: 'smaller_main', section: `${sectionName(job, 'leastDwellingService')}, Article 220` } as const
  if (mainA <= LEAST_DWELLING_SERVICE_A && tree.feeders.every(({ to }) => to !== panel.id))
    return [
      {
        ...base,
        what: `Smaller main breaker in the ${panel.name}`,
        reachesA: largestPvA(tree, judgeTree(tree)),
        passes: false,
        why: `the service of a one-family dwelling is not below ${LEAST_DWELLING_SERVICE_A} A, which the main of ${mainA} A does not exceed`,
      },
    ]
  const { loadA } = tree.service
  if (loadA === undefined)
    return [
      {
        ...base,
        what: `Smaller main breaker in the ${panel.name}`,
        reachesA: undefined,
        passes: undefined,
        why: 'no load calculation is stated; state electrical.load_calculation, without which no smaller main is allowed',
      },
    ]
  const leastA = standardDevices.find((ratingA) => ratingA >= Math.max(loadA, LEAST_DWELLING_SERVICE_A))
  if (leastA === undefined || leastA >= mainA)
    return [
      {
        ...base,
        what: `Smaller main breaker in the ${panel.name}`,
        reachesA: largestPvA(tree, judgeTree(tree)),
        passes: false,
        why: `the calculated load of ${loadA.toFixed(1)} A and the least service of ${LEAST_DWELLING_SERVICE_A} A leave no smaller main than ${mainA} A`,
      },
    ]
  const fits = standardDevices
    .filter((ratingA) => ratingA >= leastA && ratingA < mainA)
    .toReversed()
    .map((ratingA) => smallerMainOf(tree, panel.id, panel.name, ratingA, base, loadA))
  const best = fits.find(({ passes }) => passes === true) ?? fits.at(-1)
  return best === undefined ? [] : [best]
}

function smallerMainOf(
  tree: Tree,
  id: string,
  name: string,
  ratingA: number,
  base: Pick<Remedy, 'key' | 'section'>,
  loadA: number,
): Remedy {
  const changed = withPanel({ ...tree, service: { ...tree.service, ratingA } }, id, { mainA: ratingA })
  return byChange(
    {
      ...base,
      what: `Main breaker of ${ratingA} A, listed for the panel, in the ${name}`,
      note: `the calculated load is ${loadA.toFixed(1)} A; the service conductors stay`,
    },
    changed,
  )
}

export function fewerBreakers(job: Job, tree: Tree): Remedy[] {
  if (job.edition === 'NEC 2011') return []
  const failing = judgeTree(tree).filter(
    ({ kind, complies, id }) => kind === 'panel' && !complies && pathOfPv(tree).includes(id),
  )
  if (failing.length === 0) return []
  const changed = failing.reduce((sum, { id }) => withPanel(sum, id, { loadBreakersA: 0 }), tree)
  const remedy = byChange(
    {
      key: 'fewer_breakers',
      what: 'Move load breakers to a panel of their own, or consolidate them, for the sum of breakers',
      section: sectionName(job, 'loadSideBusbar'),
    },
    changed,
  )
  const rooms = failing.map(({ id, name }) => {
    const rule = judgeTree(changed)
      .find((each) => each.id === id)
      ?.rules.find((each) => each.rule === 'sum of breakers')
    return `${name}: load breakers of ${Math.max(0, (rule?.limitA ?? 0) - (rule?.sumA ?? 0)).toFixed(0)} A may stay, with the one that feeds the new panel among them`
  })
  return [{ ...remedy, why: `${remedy.why}; ${rooms.join('; ')}` }]
}
