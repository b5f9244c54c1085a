import { StageError } from '../../worksheet/index.js'
import { endingAtConnection, highestLineCurrentA } from '../circuits/index.js'
import { checkSupplySide, type Sources } from '../connection/index.js'
import { faultAtService, type ServiceFault } from '../fault/index.js'
import { serviceLoad, type ServiceLoad } from '../loads/index.js'
import type { SizedSegment } from '../segments/index.js'
import {
  COMBINED_OUTPUT,
  isAc,
  isShared,
  isSupplyTap,
  polesOf,
  type Circuit,
  type Job,
  type PanelValues,
} from '../system/index.js'
import { buildTree } from './build-tree.js'
import { findInConnection } from './find-in-connection.js'
import { findCombiner } from './find-panel-of-pv.js'
import { findInTree } from './find-in-tree.js'
import { judgeCombiner } from './judge-combiner.js'
import { failingOnWay, judgeTree } from './judge-tree.js'
import { panelValues } from './node-values.js'
import { recordTree } from './record-tree.js'
import { PV_SOURCE, SERVICE, type Tree } from './tree.js'
import type { NodeVerdict } from './verdict.js'

/** What the connection comes to. */
export interface ConnectionVerdict {
  readonly tree: Tree
  readonly verdicts: readonly NodeVerdict[]
  readonly load: ServiceLoad | undefined
  readonly fault: ServiceFault | undefined
  readonly panel: PanelValues
  readonly combiner: PanelValues | null
}

/**
 * Whether the installation takes the sources, by the rules of the edition, from the module to the utility.
 *
 * @param sized Segments that are sized, of which the conductors ahead of a supply-side device are judged; none where they
 * are chosen anew.
 * @throws StageError when a rating that a sum needs is missing.
 */
export function checkConnection(
  job: Job,
  circuits: readonly Circuit[],
  sized: readonly SizedSegment[],
): ConnectionVerdict {
  const { connection } = job.electrical
  if (connection === undefined)
    throw new StageError(
      'electrical.connection',
      'where the PV system joins the house wiring is not stated',
      'State connection.kind: load_side_breaker or supply_side',
    )
  const output = circuits.find((circuit) => circuit.id === COMBINED_OUTPUT)
  const first = circuits.filter((circuit) => isAc(circuit) && !isShared(circuit))
  const sources = sourcesOf(circuits, first)
  findInConnection(job, output, first)
  const load = serviceLoad(job)
  const fault = faultAtService(job)
  const tree = buildTree(job, { sources, serviceLoadA: load?.a })
  const combiner = output === undefined ? undefined : judgeCombiner(job, first, output, landingId(tree))
  const verdicts = [...judgeTree(tree), ...(combiner === undefined ? [] : [combiner.verdict])]
  const panel =
    connection.kind === 'supply_side'
      ? supplySidePanel(checkSupplySide(job, sources, sized, tree.service.ampacityA), tree, verdicts)
      : panelOfPv(tree, verdicts, landingOf(circuits))
  recordTree(job, tree, verdicts)
  if (combiner !== undefined) findCombiner(job, combiner)
  findInTree(job, { tree, verdicts, panel, fault })
  return {
    tree,
    verdicts,
    load,
    fault,
    combiner: combiner === undefined ? null : panelValues(combiner.panel, combiner.verdict, combiner.spacesNeeded),
    panel,
  }
}

/** Node that the PV system lands on. */
function landingId(tree: Tree): string {
  const at = tree.sources.find(({ id }) => id === PV_SOURCE)?.at
  return at === undefined || at === 'supply_side' ? SERVICE : 'panel' in at ? at.panel : at.tap
}

/** Circuits whose devices land at the connection. */
const landingOf = (circuits: readonly Circuit[]): Circuit[] =>
  endingAtConnection(circuits.filter((circuit) => isAc(circuit) && !isSupplyTap(circuit)))

function sourcesOf(circuits: readonly Circuit[], first: readonly Circuit[]): Sources {
  const landing = landingOf(circuits)
  return {
    inverterA: highestLineCurrentA(first),
    breakersA: landing.map((circuit) => circuit.deviceA ?? 0),
    firstBreakersA: first.reduce((sum, circuit) => sum + (circuit.deviceA ?? 0), 0),
  }
}

/** The verdict on a supply-side connection, with the other sources that stand there. */
const supplySidePanel = (own: PanelValues, tree: Tree, verdicts: readonly NodeVerdict[]): PanelValues => ({
  ...own,
  complies: own.complies && failingOnWay(tree, verdicts).length === 0,
})

/** The panel with the PV breaker; of a feeder tap the one that the feeder comes from. */
function panelOfPv(tree: Tree, verdicts: readonly NodeVerdict[], landing: readonly Circuit[]): PanelValues {
  const at = tree.sources.find(({ id }) => id === PV_SOURCE)?.at
  if (at === undefined || at === 'supply_side') throw new Error('the PV system lands on no panel')
  const tap = 'tap' in at ? tree.taps.find(({ id }) => id === at.tap) : undefined
  const id = 'panel' in at ? at.panel : tree.feeders.find((feeder) => feeder.id === tap?.feeder)?.from
  const panel = tree.panels.find((each) => each.id === id)
  const verdict = verdicts.find((each) => each.kind === 'panel' && each.id === id)
  if (panel === undefined || verdict === undefined)
    throw new StageError(
      'electrical.connection.at',
      `there is no '${'panel' in at ? at.panel : at.tap}' under electrical.distribution`,
      'Name a panel or a tap that stands there',
    )
  return panelValues(panel, verdict, 'panel' in at ? landing.reduce((sum, circuit) => sum + polesOf(circuit), 0) : 0)
}
