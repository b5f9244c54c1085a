import { necSource } from '../../tables/nec/index.js'
import type { FaultPair } from '../fault/index.js'
import type { Job, PanelValues } from '../system/index.js'
import { findDevices } from './find-devices.js'
import { findFault } from './find-fault.js'
import { findMeter } from './find-meter.js'
import { findPanelOfPv } from './find-panel-of-pv.js'
import { findUnknown } from './find-unknown.js'
import { pathOfPv } from './judge-tree.js'
import { flowOnSupplySide } from './flows.js'
import { PV_SOURCE, SERVICE, type Tree } from './tree.js'
import type { NodeRule, NodeVerdict } from './verdict.js'

/** What was found about the installation. */
export interface Found {
  readonly tree: Tree
  readonly verdicts: readonly NodeVerdict[]
  readonly panel: PanelValues
  /** Available fault current at the service; undefined when it is not known. */
  readonly fault: FaultPair | undefined
}

/** What fails in the installation, and what could not be checked. */
export function findInTree(job: Job, found: Found): void {
  const { tree, verdicts, panel, fault } = found
  findPanelOfPv(job, tree, panel)
  const short = job.electrical.distribution === undefined
  for (const verdict of verdicts.filter(({ kind }) => kind !== 'combiner')) {
    // The panel of the short form is told of with the words for the only panel.
    if (short && verdict.kind === 'panel') findLoad(job, verdict)
    else if (verdict.kind === 'panel') findPanel(job, tree, verdict)
    else
      for (const rule of verdict.rules)
        if (rule.needed === 'all' && !rule.holds && !toldAlone(tree, rule)) findRule(job, verdict, rule)
    if (verdict.kind === 'tap') findTap(job, verdict)
  }
  findDevices(job, tree)
  findFault(job, tree, fault)
  findMeter(job, tree)
  findUnknown(job, tree, verdicts, fault)
}

/** The load is told of where it is worked out, and the PV system alone on the supply side where that connection is checked. */
const toldAlone = (tree: Tree, { rule }: NodeRule): boolean =>
  rule === 'load within service' ||
  (rule === 'supply side' && flowOnSupplySide(tree).sources.every(({ id }) => id === PV_SOURCE))

function findLoad(job: Job, verdict: NodeVerdict): void {
  const rule = verdict.rules.find((each) => each.rule === 'load within busbar' && !each.holds)
  if (rule !== undefined) findRule(job, verdict, rule)
}

function findPanel(job: Job, tree: Tree, verdict: NodeVerdict): void {
  for (const rule of verdict.rules) if (rule.needed === 'all' && !rule.holds) findRule(job, verdict, rule)
  const ways = verdict.rules.filter(({ needed }) => needed === 'one_of')
  if (ways.length === 0 || ways.some(({ holds }) => holds)) return
  const own = pathOfPv(tree).includes(verdict.id)
  job.worksheet.find({
    severity: 'error',
    id: 'wire.panel-busbar',
    message: `no connection rule holds on the ${verdict.name}: ${verdict.inverterA.toFixed(2)} A of sources pass its busbar, which takes ${Math.max(0, verdict.maxInverterA).toFixed(2)} A here (${verdict.governs?.why ?? ''})`,
    where: verdict.where,
    source: job.nec('loadSideBusbar'),
    fix: own
      ? 'Look at the ways out that this result lists in order, with what each reaches'
      : 'It fails with the sources that are there already, without the PV system of this project; have an electrician look at it',
  })
}

/** A rule that has to hold and does not. */
function findRule(job: Job, verdict: NodeVerdict, rule: NodeRule): void {
  function say(id: string): void {
    job.worksheet.find({
      severity: 'error',
      id,
      message: `${verdict.name}: ${rule.rule}: ${rule.why}`,
      where: verdict.where,
      source: necSource(job.edition, rule.section, rule.standing),
      fix: FIXES[verdict.kind] ?? 'Read the ratings again, or have an electrician look at it',
    })
  }
  switch (rule.rule) {
    case 'device within busbar':
      return say('wire.main-above-busbar')
    case 'load within busbar':
      return say('wire.load-above-busbar')
    case 'service conductors':
      return say('wire.service-conductors')
    case 'least service':
      return say('wire.service-small')
    case 'supply side':
      return say('wire.supply-side-sum')
    default:
      return say('wire.node-rule')
  }
}

const FIXES: Readonly<Record<string, string>> = {
  feeder: 'Use larger conductors, a smaller device, or put the source elsewhere',
  tap: 'Use larger conductors or a smaller device',
  [SERVICE]: 'Read size and rating again; a service that is too small is replaced by the utility and an electrician',
  source: 'Read the rating on the inverter and on its device again',
}

function findTap(job: Job, verdict: NodeVerdict): void {
  const ways = verdict.rules.filter(({ needed }) => needed === 'one_of')
  if (ways.some(({ holds }) => holds)) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.feeder-tap',
    message: `${verdict.name} passes no way for feeder taps: ${ways.map(({ rule, why }) => `${rule}: ${why}`).join('; ')}`,
    where: verdict.where,
    source: job.nec('feederTap'),
    fix: 'Shorten it, use larger conductors, or put a device at its start',
  })
}
