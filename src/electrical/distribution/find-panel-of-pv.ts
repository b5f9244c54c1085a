import type { Job, PanelValues } from '../system/index.js'
import type { Combiner } from './judge-combiner.js'
import { panelValues } from './node-values.js'
import { PV_SOURCE, type Tree } from './tree.js'

/** What there is to say of the panel that takes the PV breaker: whether a rule holds in the short form, position and spaces. */
export function findPanelOfPv(job: Job, tree: Tree, panel: PanelValues): void {
  const at = tree.sources.find(({ id }) => id === PV_SOURCE)?.at
  if (at === undefined || at === 'supply_side' || 'tap' in at) return
  const node = tree.panels.find(({ id }) => id === at.panel)
  if (node === undefined) return
  if (job.electrical.distribution === undefined && !panel.complies) findBusbar(job, panel)
  findSpaces(job, 'panel', panel, node.where)
}

/** The combiner panel: whether a rule holds, and its spaces. */
export function findCombiner(job: Job, { panel, verdict, spacesNeeded }: Combiner): void {
  const values = panelValues(panel, verdict, spacesNeeded)
  if (!values.complies)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.combiner-busbar',
      message: `no connection rule holds on the combiner: ${sourcesWords(values)}`,
      where: 'electrical.combiner',
      source: job.nec('loadSideBusbar'),
      fix: 'Use a combiner panel with a larger busbar',
    })
  findSpaces(job, 'combiner', values, 'electrical.combiner')
}

function findBusbar(job: Job, panel: PanelValues): void {
  job.worksheet.find({
    severity: 'error',
    id: 'wire.panel-busbar',
    message: `no connection rule holds on the panel: ${sourcesWords(panel)}`,
    where: 'electrical.panel',
    source: job.nec('loadSideBusbar'),
    fix: `${reduceWords(panel)}, put the breaker at the opposite end, use a smaller main breaker if the load calculation allows it, state the load breakers for the sum rule, or connect on the supply side`,
  })
}

/** Whether the one-pole spaces of a panel are enough. */
function findSpaces(job: Job, id: string, values: PanelValues, where: string): void {
  if (values.spaces_free === null)
    job.worksheet.find({
      severity: 'warning',
      id: `wire.${id}-spaces-unknown`,
      message: `the ${id} needs ${values.spaces_needed} one-pole spaces; how many are free is not stated`,
      where,
      fix: 'Count them at the panel',
    })
  else if (values.spaces_free < values.spaces_needed)
    job.worksheet.find({
      severity: 'error',
      id: `wire.${id}-spaces`,
      message: `the ${id} needs ${values.spaces_needed} one-pole spaces and has ${values.spaces_free}`,
      where,
      source: job.nec('listedEquipment'),
      fix: 'Make room with listed tandem breakers where the panel allows them, or use another panel',
    })
}

/** What is there and what fits, in the quantity that the nearest rule counts. */
function sourcesWords({
  inverter_a: inverterA,
  max_inverter_a: maxA,
  max_breakers_a: breakersA,
  ...values
}: PanelValues): string {
  if (breakersA === undefined)
    return `${inverterA.toFixed(2)} A of inverters, the busbar takes ${maxA.toFixed(2)} A here`
  const why = values.rules.find(({ rule }) => rule === values.rule)?.why ?? ''
  return `the rule counts PV breakers, of which the busbar takes ${breakersA.toFixed(1)} A here (${why}); the inverters give ${inverterA.toFixed(2)} A`
}

function reduceWords({ max_inverter_a: maxA, max_breakers_a: breakersA }: PanelValues): string {
  if (breakersA === undefined) return `Reduce the inverters to ${maxA.toFixed(2)} A`
  return `Bring the PV breakers down to ${breakersA.toFixed(1)} A together (fewer and fuller branches, or fewer inverters)`
}
