import {
  conductorSizes,
  groundingRules,
  necSource,
  ROD_CONDUCTOR_AWG,
  UNPROTECTED_GROUND_AWG,
  type ConductorSize,
} from '../../tables/nec/index.js'
import { bondingJumperSize } from './bonding-jumper-size.js'
import { isSupplyTap, type Circuit, practice, type Job, type GroundingValues } from '../system/index.js'
import { electrodeConductorSize } from './electrode-conductor-size.js'
import { equipmentGroundSize, largerOf } from '../conductors/index.js'
import { isMetal } from '../raceways/index.js'
import type { SizedSegment } from '../segments/index.js'

/** Everything that is grounded or bonded, with what must be unspliced. */
export function checkGrounding(
  job: Job,
  circuits: readonly Circuit[],
  sized: readonly SizedSegment[],
): GroundingValues {
  return {
    equipment: sized.flatMap(({ segment, ground, conditions }) =>
      ground === null
        ? []
        : [
            {
              raceway: segment.id,
              size_awg: ground,
              device_a: Math.max(...segment.circuits.map((circuit) => circuit.groundingDeviceA)),
              material: conditions.freeAir ? 'bare copper' : 'copper',
              unspliced: false,
            },
          ],
    ),
    array: arrayConductor(job, circuits),
    electrode: arrayElectrode(job),
    supply_side_bonding_awg: supplySideBonding(job, sized),
    raceway_bonding: racewayBonding(job, sized),
  }
}

/** The bare conductor that bonds the rails of the array. */
function arrayConductor(job: Job, circuits: readonly Circuit[]): GroundingValues['array'] {
  const atArray = circuits.filter((circuit) => circuit.kind === 'ac_branch' || circuit.kind === 'dc_string')
  const needed = atArray
    .map((circuit) => equipmentGroundSize(circuit.groundingDeviceA, circuit.where))
    .reduce(largerOf, '14')
  const chosen = sizeNamed(job.electrical.array_bonding_conductor_awg)
  const size =
    chosen ??
    job.worksheet.assume({
      path: 'electrical.array_bonding_conductor_awg',
      value: largerOf(needed, UNPROTECTED_GROUND_AWG),
      unit: 'AWG',
      why: 'Bare copper that needs no protection from damage, laid in one piece from rail to rail',
      source: job.nec('equipmentGroundProtection'),
    })
  job.worksheet.note({
    id: 'wire.grounding.array',
    says: 'Bare conductor that bonds rails and modules: by the table, and large enough to lie unprotected',
    formula: 'at least the table size; at least 6 AWG where it is exposed',
    inputs: [{ symbol: 'table', value: needed, unit: 'AWG', from: 'largest device of the array circuits' }],
    result: { symbol: 'size', value: size, unit: 'AWG' },
    source: job.nec('equipmentGrounding'),
  })
  if (conductorSizes.indexOf(size) < conductorSizes.indexOf(needed))
    job.worksheet.find({
      severity: 'error',
      id: 'wire.array-bonding-small',
      message: `the ${size} AWG array conductor is below the ${needed} AWG that the circuits need`,
      where: 'electrical.array_bonding_conductor_awg',
      source: job.nec('equipmentGroundSize'),
      fix: `Use ${needed} AWG or larger`,
    })
  else if (conductorSizes.indexOf(size) < conductorSizes.indexOf(UNPROTECTED_GROUND_AWG))
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.array-bonding-exposed',
      message: `${size} AWG bare copper on the array is smaller than ${UNPROTECTED_GROUND_AWG} AWG and needs protection from damage`,
      where: 'electrical.array_bonding_conductor_awg',
      source: job.nec('equipmentGroundProtection'),
      fix: 'Ask the authority whether under the modules counts as protected, or use 6 AWG',
    })
  return {
    size_awg: size,
    material: 'bare copper',
    unspliced: true,
    note: 'one piece along the array, so that taking a module out does not open it (habit of the trade; the code asks it only of electrode conductors); with rails and clamps listed for bonding one lug a row is enough',
  }
}

const sizeNamed = (name: string | undefined): ConductorSize | undefined =>
  conductorSizes.find((candidate) => candidate === name)

function arrayElectrode(job: Job): GroundingValues['electrode'] {
  const rule = groundingRules.find((candidate) => candidate.edition === job.edition)
  if (rule === undefined) throw new Error(`no grounding rule for ${job.edition}`)
  const source = necSource(job.edition, rule.arrayElectrodeSection, rule.arrayElectrodeStanding)
  const required = rule.arrayElectrode === 'required'
  const stated = job.electrical.array_electrode
  job.worksheet.note({
    id: 'wire.grounding.electrode',
    says: `Grounding electrode at the array: ${rule.arrayElectrode} in this edition; the project states ${stated ?? 'nothing'}`,
    formula: 'rod conductor need not exceed 6 AWG copper',
    inputs: [{ symbol: 'stated', value: stated ?? 'nothing', unit: '', from: 'electrical.array_electrode' }],
    result: { symbol: 'rule', value: rule.arrayElectrode, unit: '' },
    source,
  })
  if (required && (stated === undefined || stated === 'none'))
    job.worksheet.find({
      severity: 'error',
      id: 'wire.array-electrode',
      message: 'this edition asks for a grounding electrode at the array and the project has none',
      where: 'electrical.array_electrode',
      source,
      fix: 'Drive a rod, or show that the array is within 6 ft of the premises electrode',
    })
  const rod = stated === 'rod'
  return {
    required,
    size_awg: rod ? ROD_CONDUCTOR_AWG : null,
    unspliced: rod,
    length_ft: rod ? (job.electrical.array_electrode_run_ft ?? null) : null,
    note: rod
      ? 'copper, in one piece or irreversibly spliced (250.64(C))'
      : 'the array is grounded by the equipment grounding conductors of its circuits',
  }
}

/** Jumpers and least neutral of the conductors ahead of the PV disconnect, and the electrode conductor of the service. */
function supplySideBonding(job: Job, sized: readonly SizedSegment[]): string | null {
  const tap = sized.flatMap(({ circuits }) => circuits).find(({ circuit }) => isSupplyTap(circuit))
  if (tap === undefined) return null
  const conductor = { size: tap.sized.size, material: tap.demand.material }
  const jumper = bondingJumperSize(conductor)
  job.worksheet.note({
    id: 'wire.grounding.supply-side',
    says: 'Copper main and supply-side bonding jumper and least neutral of the PV disconnect, by the conductors ahead of it; its copper electrode conductor by Table 250.66 has the same size',
    formula: 'size from Table 250.102(C)(1)',
    inputs: [
      { symbol: 'set', value: `${conductor.size} ${conductor.material}`, unit: '', from: 'wire.supply_tap.to_device' },
    ],
    result: { symbol: 'size', value: jumper, unit: 'AWG' },
    source: job.nec('bondingJumper'),
  })
  serviceElectrode(job)
  job.worksheet.find({
    severity: 'note',
    id: 'wire.supply-side-not-judged',
    message: `not judged ahead of the PV disconnect: where neutral and ground are bonded (its jumper is at least ${jumper} AWG copper), the way of its electrode conductor, and whether the tap connectors are listed for their place and have room there`,
    where: 'electrical.connection',
    source: job.nec('serviceGrounding'),
    fix: 'Have a licensed electrician settle them with the authority and the utility, as for a service; ask the utility for the available fault current',
  })
  return jumper
}

function serviceElectrode(job: Job): void {
  const { service } = job.electrical
  const size = sizeNamed(service?.conductor_size)
  if (size === undefined) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.service-conductor-unknown',
      message:
        'the size of the service conductors is not stated, so the electrode conductor of the service, which that of the PV disconnect joins, was not sized',
      where: 'electrical.service.conductor_size',
      source: job.nec('electrodeConductorSize'),
      fix: 'Read the size on the conductors, or ask the utility',
    })
    return
  }
  const material = service?.conductor_material ?? 'copper'
  job.worksheet.note({
    id: 'wire.grounding.service',
    says: 'Copper electrode conductor of the service, which that of the PV disconnect joins',
    formula: 'size from Table 250.66',
    inputs: [{ symbol: 'service', value: `${size} ${material}`, unit: '', from: 'electrical.service' }],
    result: { symbol: 'size', value: electrodeConductorSize({ size, material }), unit: 'AWG' },
    source: job.nec('electrodeConductorSize'),
  })
}

/** Metal raceway that meets plastic has to be bonded there, because the plastic carries no fault current. */
function racewayBonding(job: Job, sized: readonly SizedSegment[]): GroundingValues['raceway_bonding'] {
  const found = sized.flatMap(({ segment }, i) => {
    const next = sized[i + 1]?.segment
    if (next === undefined || next.run !== segment.run) return []
    const [a, b] = [segment.stated.raceway, next.stated.raceway]
    if (a === 'none' || b === 'none' || isMetal(a) === isMetal(b)) return []
    return [
      {
        at: `${segment.id} to ${next.id}`,
        between: `${a} and ${b}`,
        note: 'grounding bushing or bonded box at the metal end',
      },
    ]
  })
  if (found.length > 0)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.raceway-bonding',
      message: `metal raceway meets plastic at ${found.map((row) => row.at).join(', ')}; bond the metal there`,
      where: 'electrical.runs',
      source: { ...practice('bonding of metal raceways'), ...job.nec('metalRacewayBonding') },
      fix: 'Use a grounding bushing or a metal box with a bonding screw on the metal side',
    })
  return found
}
