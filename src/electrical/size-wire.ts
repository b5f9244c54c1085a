import type { Project } from '../project/index.js'
import { countFitted } from '../roof/index.js'
import { RESISTANCE_TEMPERATURE_C } from '../tables/nec/index.js'
import { StageError, Worksheet, type Result } from '../worksheet/index.js'
import { buildCircuits, checkCircuits, checkRatings, endingAtConnection } from './circuits/index.js'
import { reportEdition } from './edition-effects.js'
import { checkGrounding } from './grounding/index.js'
import { checkCombiner, checkMainPanel, type Sources, checkSupplySide } from './connection/index.js'
import { checkShutdown } from './shutdown/index.js'
import { checkStrings } from './strings/index.js'
import {
  type Circuit,
  COMBINED_OUTPUT,
  isAc,
  isShared,
  isSupplyTap,
  newJob,
  type Job,
  type WiringContext,
  resolveEdition,
  type PanelValues,
  type WiringValues,
} from './system/index.js'
import { recordSegments, sizeSegments, type SizedSegment } from './segments/index.js'
import { resolveRuns } from './raceways/index.js'
import { circuitValues, racewayValues } from './values-of.js'
import { powerFactorOf } from './voltage/index.js'
import type { Amperes } from '../values/index.js'

/**
 * Every conductor, raceway, overcurrent device and grounding conductor of the project, and whether the panel allows it.
 *
 * @param context Edition that wins over `codes.electrical`, design temperatures, and what is known of the arrangement.
 * @returns Values with the worksheet in the order in which an inspector checks it.
 * @throws StageError when a safety input is missing or a case is not covered.
 * @source NEC (NFPA 70) of the chosen edition, 110, 240, 250, 310, 690, 705, Chapter 9
 * @limits Single-phase 120/240 V; raceways and listed trunk cables; conductors to 500 kcmil, raceways to trade size 3.
 */
export function sizeWire(stated: Project, context: WiringContext): Result<WiringValues> {
  const project = countFitted(stated)
  const worksheet = new Worksheet()
  const job = newJob(project, resolveEdition(project, context.edition), context, worksheet)
  const circuits = buildCircuits(job)
  const segments = resolveRuns(job, circuits)
  const strings = checkStrings(job, circuits)
  checkCircuits(job, circuits)
  checkRatings(job, circuits)
  const sized = sizeSegments(job, circuits, segments)
  recordSegments(job, sized)
  const raceways = racewayValues(job, sized)
  const values = circuitValues(job, circuits, sized)
  const grounding = checkGrounding(job, circuits, sized)
  const { panel, combiner } = checkConnection(job, circuits, sized)
  checkShutdown(job, circuits, strings, panel.inverter_a)
  reportEdition(job, circuits)
  return worksheet.result({
    edition: job.edition,
    circuits: values,
    raceways,
    strings,
    panel,
    combiner,
    grounding,
    voltage: {
      method:
        'two-wire circuit, rated current; effective impedance of Chapter 9 Table 9 (resistance not below Table 8) for AC in raceways, Table 8 for DC and for the trunk unless its maker states another',
      conductor_temperature_c: RESISTANCE_TEMPERATURE_C,
      power_factor: powerFactorOf(job),
    },
  })
}

/**
 * Whether main panel and combiner take the sources, by the rules of the edition.
 *
 * @param sized Segments that are sized, of which the conductors ahead of a supply-side device are judged; none where they
 * are chosen anew.
 */
export function checkConnection(
  job: Job,
  circuits: readonly Circuit[],
  sized: readonly SizedSegment[],
): { readonly panel: PanelValues; readonly combiner: PanelValues | null } {
  const { connection, panel, service } = job.electrical
  if (connection === undefined)
    throw new StageError(
      'electrical.connection',
      'where the PV system joins the house wiring is not stated',
      'State connection.kind: load_side_breaker or supply_side',
    )
  const output = circuits.find((circuit) => circuit.id === COMBINED_OUTPUT)
  const first = circuits.filter((circuit) => isAc(circuit) && !isShared(circuit))
  const atPanel = endingAtConnection(circuits.filter((circuit) => isAc(circuit) && !isSupplyTap(circuit)))
  const sources: Sources = {
    inverterA: first.reduce((sum, circuit) => sum + circuit.continuousA, 0),
    breakersA: atPanel.map((circuit) => circuit.deviceA ?? 0),
    firstBreakersA: first.reduce((sum, circuit) => sum + (circuit.deviceA ?? 0), 0),
  }
  const combiner = output === undefined ? null : checkCombiner(job, first, output)
  if (connection.breaker_marked_line_load === true)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.breaker-line-load',
      message: 'a breaker marked LINE and LOAD must not be backfed',
      where: 'electrical.connection.breaker_marked_line_load',
      source: job.nec('backfedBreaker'),
      fix: 'Use a breaker without those marks',
    })
  if (service?.available_fault_current_a !== undefined && panel?.interrupting_rating_a !== undefined)
    checkFaultCurrent(job, service.available_fault_current_a, panel.interrupting_rating_a)
  if (output === undefined && first.length > 1)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.several-breakers',
      message: `${first.length} circuits land on breakers of their own in the panel; a combiner panel would need one`,
      where: 'electrical.combiner',
      source: job.nec('loadSideBusbar'),
    })
  if (output === undefined && first.length > 1 && connection.breaker_a !== undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.connection-breaker-unused',
      message: `breaker_a of ${connection.breaker_a} A was not used: ${first.length} circuits land on devices of their own`,
      where: 'electrical.connection.breaker_a',
      source: job.nec('standardDevice'),
      fix: 'State the breakers in electrical.branches, or a combiner panel with one device',
    })
  return {
    combiner,
    panel: connection.kind === 'supply_side' ? checkSupplySide(job, sources, sized) : checkMainPanel(job, sources),
  }
}

function checkFaultCurrent(job: Job, availableA: Amperes, ratingA: Amperes): void {
  if (ratingA >= availableA) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.interrupting-rating',
    message: `the breakers interrupt ${ratingA} A, ${availableA} A can flow`,
    where: 'electrical.panel.interrupting_rating_a',
    source: job.nec('interruptingRating'),
    fix: 'Use breakers with a higher interrupting rating',
  })
}
