import { CONTINUOUS_FACTOR, SHORT_CIRCUIT_FACTOR, standardDevices } from '../tables/nec/index.js'
import type { Amperes } from '../values/index.js'
import { editionStanding, reportEditionChange, type Circuit, type Job } from './system/index.js'

/** What rests on an edition that nobody read, and what its changed numbers do to this project. */
export function reportEdition(job: Job, circuits: readonly Circuit[]): void {
  for (const finding of editionStanding(job.edition)) job.worksheet.find(finding)
  for (const circuit of circuits) {
    reportFraction(job, circuit)
    reportShortCircuit(job, circuit)
  }
  reportSupplyDistance(job)
}

/**
 * Current without a fraction below half an ampere.
 *
 * @source NEC 2026 690.4, fractions (secondary): a permission, after all calculations
 */
export function withoutFraction(currentA: Amperes): Amperes {
  const whole = Math.floor(currentA)
  return currentA - whole < 0.5 ? whole : currentA
}

/** The device that would do if the fraction were dropped; the permission itself is not used. */
function reportFraction(job: Job, { id, where, continuousA, deviceA, smallestDeviceA, floor }: Circuit): void {
  if (deviceA === null || floor !== undefined) return
  const requiredA = CONTINUOUS_FACTOR * continuousA
  const dropped = withoutFraction(requiredA)
  const device = standardDevices.find((rating) => rating >= dropped)
  if (device === undefined || device >= smallestDeviceA) return
  reportEditionChange(
    job,
    'fractions of ampere or volt',
    where,
    `${id} needs ${requiredA.toFixed(2)} A and has ${smallestDeviceA} A at least; with the fraction dropped ${dropped} A would let it have ${device} A, which is not used here`,
  )
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
