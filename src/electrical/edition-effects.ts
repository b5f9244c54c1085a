import { CONTINUOUS_FACTOR, SHORT_CIRCUIT_FACTOR } from '../tables/nec/index.js'
import {
  dropsFractions,
  editionStanding,
  isAc,
  nextStandardDeviceA,
  reportEditionChange,
  withoutFraction,
  type Circuit,
  type Job,
} from './system/index.js'

/** What rests on an edition that nobody read, and what its changed numbers do to this project. */
export function reportEdition(job: Job, circuits: readonly Circuit[]): void {
  for (const finding of editionStanding(job.edition)) job.worksheet.find(finding)
  const changed = circuits.map((circuit) => reportFraction(job, circuit))
  reportUnusedWish(job, changed.includes(true))
  for (const circuit of circuits) reportShortCircuit(job, circuit)
  reportSupplyDistance(job)
  reportLoadNumbers(job)
}

/** The device with the fraction and without it, where they differ, and which of them is used. */
function reportFraction(job: Job, circuit: Circuit): boolean {
  const { id, where, continuousA, deviceA, floor } = circuit
  if (deviceA === null || floor !== undefined || !isAc(circuit)) return false
  const requiredA = CONTINUOUS_FACTOR * continuousA
  const droppedA = withoutFraction(requiredA)
  const [kept, dropped] = [requiredA, droppedA].map((amperes) => nextStandardDeviceA(amperes, where))
  if (kept === dropped) return false
  reportEditionChange(
    job,
    'fractions of ampere or volt',
    where,
    `${id} needs ${requiredA.toFixed(2)} A, which a device of ${kept} A carries, and ${droppedA} A without the fraction, for which ${dropped} A would do; ${
      dropsFractions(job) ? 'drop_fractions is stated, so it is dropped' : 'the fraction is not dropped here'
    }`,
  )
  return true
}

/** A wish to drop fractions that changes nothing is told. */
function reportUnusedWish(job: Job, changesDevices: boolean): void {
  if (job.electrical.drop_fractions !== true) return
  const permitted = dropsFractions(job)
  if (permitted && changesDevices) return
  job.worksheet.find({
    severity: permitted ? 'note' : 'warning',
    id: 'wire.fractions-kept',
    message: permitted
      ? 'drop_fractions changes no device of this project: every one is the same with the fraction of its current'
      : `drop_fractions was not used: ${job.edition} has no permission to drop fractions of an ampere from the currents of article 690`,
    where: 'electrical.drop_fractions',
    source: job.nec('fractions'),
    fix: 'Take drop_fractions out',
  })
}

function reportShortCircuit(job: Job, { string }: Circuit): void {
  if (string === undefined) return
  reportEditionChange(
    job,
    'source circuit max current',
    `equipment.modules.${string.moduleId}.isc_a`,
    `the highest current printed for module ${string.moduleId} counts, also with light on its back; ${string.iscA} A x ${SHORT_CIRCUIT_FACTOR} is reckoned with`,
  )
}

function reportSupplyDistance(job: Job): void {
  const { connection } = job.electrical
  if (connection?.kind !== 'supply_side') return
  const distanceFt = connection.overcurrent_device_distance_ft
  reportEditionChange(
    job,
    'supply-side overcurrent distance dwelling (inside)',
    'electrical.connection.overcurrent_device_distance_ft',
    distanceFt === undefined ? 'the project states no distance' : `the project states ${distanceFt} ft`,
  )
}

/** What the changed numbers of the load calculation are, where the project has one by a method that has them. */
function reportLoadNumbers(job: Job): void {
  const { load_calculation: load } = job.electrical
  if (load?.method !== 'optional_new') return
  const where = 'electrical.load_calculation'
  const area =
    load.floor_area_ft2 === undefined ? 'the floor area is not stated' : `for ${load.floor_area_ft2} ft2 here`
  reportEditionChange(job, 'dwelling lighting load', `${where}.floor_area_ft2`, area)
  reportEditionChange(job, 'optional method first tier', `${where}.method`, 'counted whole, the rest in part')
  for (const [id, { kind }] of Object.entries(load.appliances ?? {}))
    if (kind === 'ev_supply')
      reportEditionChange(job, 'EV supply equipment optional method', `${where}.appliances.${id}`, `counts for ${id}`)
}
