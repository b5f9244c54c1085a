import {
  LEAST_DWELLING_SERVICE_A,
  powerControlSections,
  SOURCE_FACTOR,
  standardDevices,
} from '../../tables/nec/index.js'
import { judgeTree, largestPvA, pathOfPv, type Tree } from '../distribution/index.js'
import { supplySideRule, type Job, type RemedyValues } from '../system/index.js'
import { atOppositeEnds, firstPanel, panelsOnWay, pvOf, withPanel, withPv } from './change-tree.js'
import { byChange, failingOnWay, type Remedy } from './remedy.js'

/** Busbar and main of the panel that is made for a PV breaker beside a whole main. @source from memory; trade practice */
const NEW_PANEL = { busA: 225, mainA: 200 } as const

/** Share of a busbar that carries without end. @source common practice, no source */
const CONTINUOUS_SHARE = 0.8

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

const section = (job: Job, topic: Parameters<Job['nec']>[0]): string => job.nec(topic).place ?? ''

function moveBreaker(job: Job, tree: Tree): Remedy[] {
  const moved = atOppositeEnds(tree)
  if (JSON.stringify(moved) === JSON.stringify(tree)) return []
  return [
    byChange(
      {
        key: 'move_breaker',
        what: 'Move every breaker that is backfed to the end of its busbar opposite to the main',
        section: section(job, 'loadSideBusbar'),
        note: 'several sources on one busbar are best gathered in one combiner panel',
      },
      moved,
    ),
  ]
}

function fewerInverters(job: Job, tree: Tree): Remedy {
  const reachesA = largestPvA(tree, judgeTree(tree))
  const pvA = pvOf(tree)?.currentA ?? 0
  return {
    key: 'fewer_inverters',
    what: `Bring the inverters of this project down to ${reachesA.toFixed(1)} A`,
    section: section(job, 'loadSideBusbar'),
    reachesA,
    passes: reachesA > 0 && reachesA >= pvA,
    why: `they give ${pvA.toFixed(1)} A; fewer inverters, or an output limit that is part of their listing and locked`,
  }
}

/** A smaller main is allowed by a load calculation only, and never below what a one-family dwelling needs. */
function smallerMain(job: Job, tree: Tree): Remedy[] {
  const panel = firstPanel(tree)
  const mainA = panel?.mainA
  if (panel === undefined || mainA === undefined || !panelsOnWay(tree).includes(panel)) return []
  const base = { key: 'smaller_main', section: `${section(job, 'leastDwellingService')}, Article 220` } as const
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

function fewerBreakers(job: Job, tree: Tree): Remedy[] {
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
      section: section(job, 'loadSideBusbar'),
    },
    changed,
  )
  const rooms = failing.map(({ id, name }) => {
    const rule = judgeTree(changed)
      .find((each) => each.id === id)
      ?.rules.find((each) => each.rule === 'sum of breakers')
    return `${name}: load breakers of ${Math.max(0, (rule?.limitA ?? 0) - (rule?.sumA ?? 0)).toFixed(0)} A may stay`
  })
  return [{ ...remedy, why: `${remedy.why}; ${rooms.join('; ')}` }]
}

function powerControl(job: Job, tree: Tree): Remedy[] {
  const place = powerControlSections[job.edition]
  const works = tree.powerControl !== undefined && tree.powerControl.fault === undefined
  if (place === undefined || works) return []
  const panels = panelsOnWay(tree)
  if (panels.length === 0) return []
  const settingA = Math.min(
    ...panels.map((panel) => {
      const outsideA = tree.sources
        .filter((source) => source.id !== 'pv' && source.runsInParallel && source.at !== 'supply_side')
        .reduce((sum, source) => sum + Math.max(SOURCE_FACTOR * source.currentA, source.firstDevicesA[0] ?? 0), 0)
      return Math.min(CONTINUOUS_SHARE * panel.busA - outsideA, panel.mainA ?? Infinity)
    }),
  )
  if (settingA <= 0) return []
  const changed: Tree = {
    ...tree,
    powerControl: {
      settingA,
      panels: panels.map(({ id }) => id),
      uncontrolled: tree.sources.filter(({ id }) => id !== 'pv').map(({ id }) => id),
      fault: undefined,
    },
  }
  const remedy = byChange(
    {
      key: 'power_control',
      what: `Listed power control system set to ${settingA.toFixed(0)} A on ${panels.map(({ name }) => name).join(', ')}`,
      section: place.place,
      note: 'it throttles the inverters when the busbar is full; the document of its listing has to be shown',
    },
    changed,
  )
  return [{ ...remedy, reachesA: settingA }]
}

function supplySide(job: Job, tree: Tree): Remedy[] {
  if (pvOf(tree)?.at === 'supply_side') return []
  const rule = supplySideRule(job.edition)
  const base = {
    key: 'supply_side',
    what: 'Connect ahead of the service disconnect, by a tap or a listed meter adapter',
    section: rule.section,
  } as const
  const missing = rule.compares === 'devices with service rating' ? tree.service.ratingA : tree.service.ampacityA
  if (missing === undefined)
    return [
      {
        ...base,
        reachesA: undefined,
        passes: undefined,
        why: `the ${rule.compares === 'devices with service rating' ? 'rating of the service' : 'ampacity of the service conductors'} is not stated`,
      },
    ]
  const changed = withPv(tree, { at: 'supply_side' })
  const remedy = byChange(
    { ...base, note: 'with leave of the utility and a disconnect that is fit as service equipment' },
    changed,
  )
  const service = judgeTree(changed).find(({ kind }) => kind === 'service')
  const others = (service?.inverterA ?? 0) - (pvOf(tree)?.currentA ?? 0)
  const limitA = service?.rules.find((each) => each.rule === 'supply side')?.maxInverterA
  return [{ ...remedy, reachesA: limitA === undefined ? undefined : Math.max(0, limitA - Math.max(0, others)) }]
}

/** Another panel of the house, and a new one ahead of the first that takes the PV breaker. */
function otherPanels(job: Job, tree: Tree): Remedy[] {
  const at = pvOf(tree)?.at
  const here = at !== undefined && at !== 'supply_side' && 'panel' in at ? at.panel : undefined
  const others = tree.panels
    .filter(({ id }) => id !== here)
    .map((panel) =>
      byChange(
        {
          key: 'other_panel',
          what: `Land the PV breaker in the ${panel.name}, at the end opposite to its feed`,
          section: section(job, 'loadSideBusbar'),
        },
        atOppositeEnds(withPv(tree, { at: { panel: panel.id } })),
      ),
    )
  const first = firstPanel(tree)
  if (first?.mainA === undefined || first.mainA > NEW_PANEL.busA) return others
  return [...others, aheadOf(job, tree, first.mainA)]
}

function aheadOf(job: Job, tree: Tree, mainA: number): Remedy {
  const pv = pvOf(tree)
  const ahead: Tree = {
    ...tree,
    panels: [{ ...AHEAD, mainA }],
    feeders: [],
    taps: [],
    sources:
      pv === undefined
        ? []
        : [pv, ...tree.sources.filter(({ id }) => id !== 'pv')].map((source) => ({
            ...source,
            at: source.at === 'supply_side' && source.id !== 'pv' ? source.at : { panel: AHEAD.id },
            devices: source.devices.map((device) => ({ ...device, oppositeEnd: true })),
          })),
    powerControl: undefined,
  }
  return byChange(
    {
      key: 'other_panel',
      what: `New panel with a ${NEW_PANEL.busA} A busbar ahead of the first one, which takes the PV breaker and feeds the old panel`,
      section: section(job, 'loadSideBusbar'),
      note: 'the old panels then get a device of their own ahead of them and lie on no way of this system',
    },
    ahead,
  )
}

const AHEAD = {
  id: 'new_panel',
  name: 'new panel',
  where: 'electrical',
  busA: NEW_PANEL.busA,
  mainPosition: 'end',
  loadBreakersA: undefined,
  loadA: undefined,
  spacesFree: undefined,
  interruptingA: undefined,
  terminalC: 75,
  location: undefined,
  lugs: undefined,
} as const

function study(job: Job): Remedy {
  return {
    key: 'engineering_study',
    what: 'Study of fault current and busbar load by a licensed engineer',
    section: section(job, 'loadSideBusbar'),
    reachesA: undefined,
    passes: undefined,
    why:
      job.edition === 'NEC 2011'
        ? 'this edition names no such way; ask the authority'
        : 'what it reaches is for the engineer to say',
  }
}

function newPanel(job: Job, tree: Tree): Remedy[] {
  const first = firstPanel(tree)
  if (first === undefined || first.busA >= NEW_PANEL.busA) return []
  const mainA = Math.min(first.mainA ?? NEW_PANEL.mainA, NEW_PANEL.mainA)
  const changed = atOppositeEnds(withPanel(tree, first.id, { busA: NEW_PANEL.busA, mainA, mainPosition: 'end' }))
  return [
    byChange(
      {
        key: 'new_panel',
        what: `Replace the ${first.name} by one with a ${NEW_PANEL.busA} A busbar and a ${mainA} A main`,
        section: section(job, 'loadSideBusbar'),
      },
      changed,
    ),
  ]
}
