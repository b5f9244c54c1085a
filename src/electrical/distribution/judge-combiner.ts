import { StageError } from '../../worksheet/index.js'
import { judgeBusbar, type Busbar } from '../connection/index.js'
import { polesOf, type Circuit, type Job } from '../system/index.js'
import { busbarRule } from './judge-panel.js'
import type { PanelNode } from './tree.js'
import { nodeVerdict, type NodeVerdict } from './verdict.js'

/** The combiner panel with what was found about it. */
export interface Combiner {
  readonly panel: PanelNode
  readonly verdict: NodeVerdict
  /** One-pole spaces that it needs. */
  readonly spacesNeeded: number
}

/** Poles of a breaker that is stated by its rating alone. */
const POLES = 2

/**
 * The combiner panel: no loads, its main is the device of the combined output.
 *
 * @param branches Circuits that it gathers.
 * @param output Circuit that leaves it.
 * @param parent Node that it hangs on.
 * @throws StageError when its busbar rating is not stated.
 */
export function judgeCombiner(job: Job, branches: readonly Circuit[], output: Circuit, parent: string): Combiner {
  const combiner = job.electrical.combiner
  const breakersA = branches.map((circuit) => circuit.deviceA ?? 0)
  const others = combiner?.other_breakers_a ?? []
  const panel: PanelNode = {
    id: 'combiner',
    name: combiner?.name ?? 'combiner',
    where: 'electrical.combiner',
    busA: busbarRating(combiner?.bus_a),
    mainA: output.deviceA ?? 0,
    mainPosition: 'end',
    loadBreakersA: sum(others),
    loadA: undefined,
    spacesFree: combiner?.spaces_total,
    interruptingA: undefined,
    terminalC: combiner?.terminal_temperature_c === 75 ? 75 : 60,
    location: combiner?.location,
    lugs: undefined,
  }
  const bus: Busbar = {
    busA: panel.busA,
    mainA: output.deviceA ?? 0,
    mainPosition: 'end',
    oppositeEnd: false,
    inverterA: output.continuousA,
    sourceBreakersA: sum(breakersA),
    firstBreakersA: sum(breakersA),
    loadBreakersA: panel.loadBreakersA,
    feedThrough: undefined,
  }
  const verdict = nodeVerdict({
    id: panel.id,
    kind: 'combiner',
    parent,
    name: panel.name,
    where: panel.where,
    busA: panel.busA,
    mainA: bus.mainA,
    inverterA: bus.inverterA,
    rules: judgeBusbar(job.edition, bus).map((each) => busbarRule(each, panel, bus)),
  })
  return {
    panel,
    verdict,
    spacesNeeded: branches.reduce((total, circuit) => total + polesOf(circuit), POLES * others.length),
  }
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

function busbarRating(value: number | undefined): number {
  if (value !== undefined && Number.isFinite(value) && value > 0) return value
  throw new StageError(
    'electrical.combiner.bus_a',
    'the busbar rating is not stated',
    'It stands on the label of the combiner panel',
  )
}
