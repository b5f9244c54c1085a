import { powerControlSections, SOURCE_FACTOR } from '../../tables/nec/index.js'
import { PV_SOURCE, type Tree } from '../distribution/index.js'
import { supplySideRule, type Job } from '../system/index.js'
import { atOppositeEnds, firstPanel, panelsOnWay, pvOf, withPanel, withPv } from './change-tree.js'
import { byChange, sectionName, type Remedy } from './remedy.js'

/** Busbar and main of the panel that is made for a PV breaker beside a whole main. @source from memory; trade practice */
const NEW_PANEL = { busA: 225, mainA: 200 } as const

/** Share of a busbar that carries without end. @source common practice, no source */
const CONTINUOUS_SHARE = 0.8

export function powerControl(job: Job, tree: Tree): Remedy[] {
  const place = powerControlSections[job.edition]
  const works = tree.powerControl !== undefined && tree.powerControl.fault === undefined
  if (place === undefined || works) return []
  const panels = panelsOnWay(tree)
  if (panels.length === 0) return []
  const settingA = Math.min(
    ...panels.map((panel) => {
      const outsideA = tree.sources
        .filter((source) => source.id !== PV_SOURCE && source.runsInParallel && source.at !== 'supply_side')
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
      uncontrolled: tree.sources.filter(({ id }) => id !== PV_SOURCE).map(({ id }) => id),
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

export function supplySide(job: Job, tree: Tree): Remedy[] {
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
  return [
    byChange({ ...base, note: 'with leave of the utility and a disconnect that is fit as service equipment' }, changed),
  ]
}

/** Another panel of the house, and a new one ahead of the first that takes the PV breaker. */
export function otherPanels(job: Job, tree: Tree): Remedy[] {
  const at = pvOf(tree)?.at
  const here = at !== undefined && at !== 'supply_side' && 'panel' in at ? at.panel : undefined
  const others = tree.panels
    .filter(({ id }) => id !== here)
    .map((panel) =>
      byChange(
        {
          key: 'other_panel',
          what: `Land the PV breaker in the ${panel.name}, at the end opposite to its feed`,
          section: sectionName(job, 'loadSideBusbar'),
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
        : [pv, ...tree.sources.filter(({ id }) => id !== PV_SOURCE)].map((source) => ({
            ...source,
            at: source.at === 'supply_side' && source.id !== PV_SOURCE ? source.at : { panel: AHEAD.id },
            devices: source.devices.map((device) => ({ ...device, oppositeEnd: true })),
          })),
    powerControl: undefined,
  }
  return byChange(
    {
      key: 'other_panel',
      what: `New panel with a ${NEW_PANEL.busA} A busbar ahead of the first one, which takes the PV breaker and feeds the old panel`,
      section: sectionName(job, 'loadSideBusbar'),
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

export function study(job: Job): Remedy {
  return {
    key: 'engineering_study',
    what: 'Study of fault current and busbar load by a licensed engineer',
    section: sectionName(job, 'loadSideBusbar'),
    reachesA: undefined,
    passes: undefined,
    why:
      job.edition === 'NEC 2011'
        ? 'this edition names no such way; ask the authority'
        : 'what it reaches is for the engineer to say',
  }
}

export function newPanel(job: Job, tree: Tree): Remedy[] {
  const first = firstPanel(tree)
  if (first === undefined || first.busA >= NEW_PANEL.busA) return []
  const mainA = Math.min(first.mainA ?? NEW_PANEL.mainA, NEW_PANEL.mainA)
  const changed = atOppositeEnds(withPanel(tree, first.id, { busA: NEW_PANEL.busA, mainA, mainPosition: 'end' }))
  return [
    byChange(
      {
        key: 'new_panel',
        what: `Replace the ${first.name} by one with a ${NEW_PANEL.busA} A busbar and a ${mainA} A main`,
        section: sectionName(job, 'loadSideBusbar'),
      },
      changed,
    ),
  ]
}
