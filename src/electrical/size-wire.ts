import type { Project } from '../project/index.js'
import { countFitted } from '../roof/index.js'
import { RESISTANCE_TEMPERATURE_C } from '../tables/nec/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import { checkBackup, storageValues } from './backup/index.js'
import { checkBoxes } from './boxes/index.js'
import { buildCircuits, checkCircuits, checkRatings, recordCircuits } from './circuits/index.js'
import { reportEdition } from './edition-effects.js'
import { checkGrounding } from './grounding/index.js'
import {
  checkConnection,
  conductorList,
  faultAtPanels,
  findFeederRise,
  nodeValues,
  PV_SOURCE,
  serviceBonding,
} from './distribution/index.js'
import { checkShutdown } from './shutdown/index.js'
import { serviceValues } from './service-values.js'
import { checkDcCombiners, checkStrings } from './strings/index.js'
import { newJob, type WiringContext, resolveEdition, serviceOf, type WiringValues } from './system/index.js'
import { faultValues } from './fault/index.js'
import { loadValues } from './loads/index.js'
import { listRemedies } from './remedies/index.js'
import { recordSegments, sizeSegments } from './segments/index.js'
import { checkOverhead } from './overhead/index.js'
import { buildStorageCircuits, checkStorage } from './storage/index.js'
import { checkDrawnRoute, resolveRuns } from './raceways/index.js'
import { circuitValues, racewayValues } from './values-of.js'
import { powerFactorOf } from './voltage/index.js'

/**
 * Every conductor, raceway, overcurrent device and grounding conductor of the project, and whether the panel allows it.
 *
 * @param context Edition that wins over `codes.electrical`, design temperatures, and what is known of the arrangement.
 * @returns Values with the worksheet in the order in which an inspector checks it.
 * @throws StageError when a safety input is missing or a case is not covered.
 * @source NEC (NFPA 70) of the chosen edition, 110, 240, 250, 310, 690, 705, Chapter 9
 * @limits Single-phase 120/240 V, and 208Y/120 V in three phases or two lines; raceways, cables and listed trunk cables; conductors to 500 kcmil, raceways to trade size 3.
 */
export function sizeWire(stated: Project, context: WiringContext): Result<WiringValues> {
  const project = countFitted(stated)
  const worksheet = new Worksheet()
  const job = newJob(project, resolveEdition(project, context.edition), context, worksheet)
  const circuits = buildCircuits(job)
  const storage = buildStorageCircuits(job)
  const all = [...circuits, ...storage]
  const segments = resolveRuns(job, all)
  checkDrawnRoute(job, all, segments)
  const strings = checkStrings(job, circuits)
  const dcCombiners = checkDcCombiners(job, circuits, strings)
  checkCircuits(job, circuits)
  recordCircuits(job, storage)
  checkRatings(job, circuits)
  const sized = sizeSegments(job, all, segments)
  recordSegments(job, sized)
  const raceways = racewayValues(job, sized)
  const boxes = checkBoxes(job, sized)
  const values = circuitValues(job, circuits, sized)
  const storageCircuits = circuitValues(job, storage, sized)
  const grounding = checkGrounding(job, circuits, sized)
  const { panel, combiner, tree, verdicts, load, fault } = checkConnection(job, circuits, sized)
  findFeederRise(job, tree, values)
  const bonding = serviceBonding(job)
  const faults = faultAtPanels(tree, fault)
  // Other sources on the panel do not pass the disconnect of the PV system.
  checkShutdown(job, circuits, strings, tree.sources.find(({ id }) => id === PV_SOURCE)?.currentA ?? 0)
  const overhead = checkOverhead(job)
  const checked = checkStorage(job, storage, sized)
  const backup = checked && checkBackup(job, checked.system, tree)
  reportEdition(job, circuits)
  return worksheet.result({
    edition: job.edition,
    circuits: values,
    raceways,
    boxes,
    strings,
    panel,
    combiner,
    distribution: verdicts.map((verdict) => nodeValues(verdict, faults.get(verdict.id))),
    conductors: conductorList({ job, tree, circuits: all, sized, grounding, bonding }),
    remedies: listRemedies(job, tree),
    service_load_a: load?.a ?? null,
    service_load: loadValues(load),
    fault_current: faultValues(fault),
    grounding,
    voltage: {
      method: `two-wire circuit, rated current${serviceOf(job).phases === 3 ? ' (on three lines that of a two-wire circuit with the rise of the worst pair, sqrt(3)/2 of equal line currents)' : ''}; effective impedance of Chapter 9 Table 9 (resistance not below Table 8) for AC in raceways, Table 8 for DC and for the trunk unless its maker states another`,
      conductor_temperature_c: RESISTANCE_TEMPERATURE_C,
      power_factor: powerFactorOf(job),
    },
    ...serviceValues(job, circuits),
    ...(dcCombiners.length === 0 ? {} : { dc_combiners: dcCombiners }),
    ...(overhead.length === 0 ? {} : { overhead }),
    ...(checked === undefined || backup === undefined
      ? {}
      : { storage: storageValues(job, checked, backup, tree, storageCircuits) }),
  })
}
