import {
  ENCASED_CONDUCTOR_AWG,
  ROD_CONDUCTOR_AWG,
  type ConductorMaterial,
  type ConductorSize,
} from '../../tables/nec/index.js'
import { largerOf } from '../conductors/index.js'
import { bondingJumperSize, electrodeConductorSize } from '../grounding/index.js'
import type { Job } from '../system/index.js'

/** Grounding and bonding of the service, in copper. */
export interface ServiceBonding {
  readonly electrodeAwg: ConductorSize
  readonly electrodes: string
  readonly mainJumperAwg: ConductorSize
  /** Jumper of metal ahead of the service disconnect; undefined where none is stated. */
  readonly supplySideJumperAwg: ConductorSize | undefined
}

/**
 * Grounding electrode conductor, main bonding jumper and supply-side bonding jumper of the service.
 *
 * A conductor to a rod need not be above 6 AWG, one to a concrete-encased electrode not above 4 AWG.
 *
 * @returns undefined while size or metal of the service conductors are not stated.
 * @source NEC 250.66, 250.66(A), (B), 250.102(C), 250.28(D)
 */
export function serviceBonding(job: Job): ServiceBonding | undefined {
  const { service } = job.electrical
  if (service?.conductor_size === undefined || service.conductor_material === undefined) {
    if (service?.bonding !== undefined)
      job.worksheet.find({
        severity: 'warning',
        id: 'wire.service-conductor-unknown',
        message: 'size or metal of the service conductors is not stated, so its electrode conductor was not sized',
        where: 'electrical.service.conductor_size',
        source: job.nec('electrodeConductorSize'),
        fix: 'Read them on the conductors, or ask the utility',
      })
    return undefined
  }
  const conductor = { size: service.conductor_size, material: service.conductor_material }
  const electrodeAwg = electrodeSize(job, conductor)
  const jumper = bondingJumperSize(conductor)
  checkStated(job, electrodeAwg)
  return {
    electrodeAwg,
    electrodes: (service.bonding?.electrodes ?? []).join(', ').replaceAll('_', ' ') || 'not stated',
    mainJumperAwg: jumper,
    supplySideJumperAwg: service.bonding?.metal_service_raceway === true ? jumper : undefined,
  }
}

function electrodeSize(
  job: Job,
  conductor: { readonly size: ConductorSize; readonly material: ConductorMaterial },
): ConductorSize {
  const byTable = electrodeConductorSize(conductor)
  const electrodes = job.electrical.service?.bonding?.electrodes
  const size =
    electrodes === undefined ? byTable : electrodes.map((each) => smallerOf(byTable, MOST[each])).reduce(largerOf)
  job.worksheet.note({
    id: 'wire.service.electrode-conductor',
    says: `Copper grounding electrode conductor of the service${electrodes === undefined ? '; its electrodes are not stated, so no limit of one is used' : ` to ${electrodes.join(', ').replaceAll('_', ' ')}`}`,
    formula: 'size from Table 250.66; to a rod at most 6 AWG, to a concrete-encased electrode at most 4 AWG',
    inputs: [
      { symbol: 'service', value: `${conductor.size} ${conductor.material}`, unit: '', from: 'electrical.service' },
      { symbol: 'table', value: byTable, unit: '', from: 'Table 250.66' },
    ],
    result: { symbol: 'size', value: size, unit: 'AWG' },
    source: job.nec('electrodeConductorSize'),
  })
  return size
}

/** Size above which a conductor to an electrode need not go. @source NEC 250.66(A): read; (B) 4 AWG: from memory */
const MOST: Readonly<Record<'rod' | 'concrete_encased' | 'water_pipe', ConductorSize | undefined>> = {
  rod: ROD_CONDUCTOR_AWG,
  concrete_encased: ENCASED_CONDUCTOR_AWG,
  water_pipe: undefined,
}

const smallerOf = (size: ConductorSize, most: ConductorSize | undefined): ConductorSize =>
  most === undefined || largerOf(size, most) === most ? size : most

function checkStated(job: Job, least: ConductorSize): void {
  const stated = job.electrical.service?.bonding?.electrode_conductor_awg
  if (stated === undefined || largerOf(stated, least) === stated) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.electrode-conductor-small',
    message: `the ${stated} AWG grounding electrode conductor of the service is below the ${least} AWG copper that its conductors ask for`,
    where: 'electrical.service.bonding.electrode_conductor_awg',
    source: job.nec('electrodeConductorSize'),
    fix: `Use ${least} AWG copper or larger`,
  })
}
