import { checkDcProtection } from './dc-protection.js'
import { checkDisconnects } from './check-disconnects.js'
import { isSupplyTap, type Circuit, type Job, type StringValues } from '../system/index.js'
import { checkInsideVoltage, checkRapidShutdown } from './rapid-shutdown.js'
import { checkOutsideVoltage } from './outside-voltage.js'
import { checkShutdownEquipment } from './shutdown-equipment.js'
import type { Amperes } from '../../values/index.js'

/** Rapid shutdown, arc-fault, ground-fault and disconnects: what the edition asks and what the project declares. */
export function checkShutdown(
  job: Job,
  circuits: readonly Circuit[],
  strings: readonly StringValues[],
  outputA: Amperes,
): void {
  checkRapidShutdown(job, circuits)
  checkInsideVoltage(job, circuits, strings)
  checkOutsideVoltage(job, circuits, strings)
  checkShutdownEquipment(job, circuits, strings)
  checkDcProtection(job, circuits, strings)
  checkDisconnects(job, outputA, circuits.find(isSupplyTap)?.floor)
}
