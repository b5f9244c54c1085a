import type { ShutdownEquipment } from '../../project/index.js'
import { necSource, rapidShutdownRules } from '../../tables/nec/index.js'
import type { Job, StringFacts } from '../system/index.js'

const WHERE = 'electrical.rapid_shutdown.equipment'

/**
 * The transmitter whose signal keeps the units on: enough of them, and on the supply that the initiator switches off, as
 * the signal would go on otherwise.
 */
export function checkTransmitter(job: Job, equipment: ShutdownEquipment, strings: readonly StringFacts[]): void {
  const { transmitters = 1, transmitter_on_initiator_supply: onSupply } = equipment
  const units = strings.reduce((sum, { modules }) => sum + Math.ceil(modules / equipment.modules_per_unit), 0)
  checkCount(job, 'strings', strings.length, equipment.strings_per_transmitter, transmitters)
  checkCount(job, 'units', units, equipment.units_per_transmitter, transmitters)
  if (onSupply === true) return
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  job.worksheet.find({
    severity: 'error',
    id: 'wire.shutdown-transmitter-supply',
    message: `the transmitter ${onSupply === false ? 'does not hang' : 'is not stated to hang'} on the supply that the initiator switches off, so OFF would not end its signal`,
    where: `${WHERE}.transmitter_on_initiator_supply`,
    source: rule === undefined ? job.nec('listedEquipment') : necSource(job.edition, rule.section, rule.standing),
    fix: 'Feed it from the circuit that the initiator opens, and state transmitter_on_initiator_supply: true',
  })
}

function checkCount(
  job: Job,
  what: 'strings' | 'units',
  count: number,
  most: number | undefined,
  transmitters: number,
): void {
  const source = job.nec('listedEquipment')
  if (most === undefined) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.shutdown-transmitter-unknown',
      message: `how many ${what} one transmitter keeps on is not stated, so ${count} were not checked`,
      where: `${WHERE}.${what}_per_transmitter`,
      source,
      fix: 'Take it from the instructions of the transmitter',
    })
    return
  }
  if (count <= most * transmitters) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.shutdown-transmitter-count',
    message: `${count} ${what} on ${transmitters} transmitter(s), each keeps ${most} on`,
    where: `${WHERE}.transmitters`,
    source,
    fix: `Use ${Math.ceil(count / most)} transmitters, where their instructions allow more than one`,
  })
}
