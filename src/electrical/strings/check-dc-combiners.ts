import { COMBINER_WITHOUT_SWITCH_A, deviceSection, lockableDisconnect } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { Circuit, DcCombinerValues, Job, StringValues } from '../system/index.js'
import { checkFuses, checkPolarity } from './combiner-fuses.js'

/** Every DC combiner: fuses, polarity, ratings, listing and the switch at its output. */
export function checkDcCombiners(
  job: Job,
  circuits: readonly Circuit[],
  strings: readonly StringValues[],
): DcCombinerValues[] {
  checkPolarity(job, circuits)
  return circuits.flatMap((circuit): DcCombinerValues[] => {
    const { combiner } = circuit
    return combiner === undefined ? [] : [checkBox(job, circuit, combiner, strings)]
  })
}

function checkBox(
  job: Job,
  output: Circuit,
  { stated, strings }: NonNullable<Circuit['combiner']>,
  values: readonly StringValues[],
): DcCombinerValues {
  const fuses = checkFuses(job, output, stated, strings)
  const ids = strings.map(({ id }) => id)
  const highestV = Math.max(...values.filter(({ id }) => ids.includes(id)).map(({ voc_cold_v: coldV }) => coldV))
  const rated = [
    checkRating(job, output, { key: 'max_voltage_v', what: 'voltage', unit: 'V', needed: highestV }),
    checkRating(job, output, { key: 'max_current_a', what: 'current', unit: 'A', needed: output.continuousA }),
  ]
  const listed = checkListed(job, output)
  const disconnect = checkSwitch(job, output)
  return {
    id: output.id,
    strings: ids,
    poles_fused: stated.poles_fused,
    fuse_a: fuses.fuseA,
    backfeed_a: fuses.backfeedA,
    output_a: output.continuousA,
    highest_voltage_v: highestV,
    fuses_needed: fuses.needed,
    disconnect_needed: disconnect.needed,
    complies: fuses.holds && rated.every((holds) => holds) && listed && disconnect.holds,
  }
}

interface Rating {
  readonly key: 'max_voltage_v' | 'max_current_a'
  readonly what: 'voltage' | 'current'
  readonly unit: 'V' | 'A'
  readonly needed: number
}

function checkRating(job: Job, { id, where, combiner }: Circuit, { key, what, unit, needed }: Rating): boolean {
  const rating = combiner?.stated[key]
  if (rating !== undefined && needed <= rating) return true
  job.worksheet.find({
    severity: rating === undefined ? 'warning' : 'error',
    id: unit === 'V' ? 'wire.dc-combiner-voltage' : 'wire.dc-combiner-current',
    message:
      rating === undefined
        ? `the rated ${what} of DC combiner ${id} is not stated, so ${needed.toFixed(1)} ${unit} were not checked`
        : `DC combiner ${id} sees ${needed.toFixed(1)} ${unit}, ${rating} ${unit} is its limit`,
    where: `${where}.${key}`,
    source: job.nec('listedEquipment'),
    fix: rating === undefined ? 'It stands on the label of the box' : 'Use a box with a higher rating',
  })
  return rating === undefined
}

function checkListed(job: Job, { id, where, combiner }: Circuit): boolean {
  const { listed_for_dc: box, fuses_listed_for_pv: fuses, poles_fused: poles } = combiner?.stated ?? {}
  const parts = [
    { stated: box, key: 'listed_for_dc', what: 'the box' },
    ...(poles === 'none' ? [] : [{ stated: fuses, key: 'fuses_listed_for_pv', what: 'fuses and holders' }]),
  ].filter(({ stated }) => stated !== true)
  for (const { stated, key, what } of parts)
    job.worksheet.find({
      severity: stated === false ? 'error' : 'warning',
      id: 'wire.dc-combiner-listing',
      message: `${what} of DC combiner ${id}: ${stated === false ? 'not listed' : 'not stated to be listed'} for PV DC`,
      where: `${where}.${key}`,
      source: deviceSection(job.edition, 'listedForDc'),
      fix: 'Use parts that are marked for PV and DC; a device for AC does not end a DC arc',
    })
  return parts.every(({ stated }) => stated !== false)
}

/** The switch at the output above 30 A: asked since 2020, good practice before. */
function checkSwitch(job: Job, { id, where, combiner, continuousA }: Circuit): { needed: boolean; holds: boolean } {
  const needed = asksForSwitch(job, continuousA)
  const stated = combiner?.stated.disconnect
  if (!needed || stated === true) return { needed, holds: true }
  job.worksheet.find({
    severity: stated === false ? 'error' : 'warning',
    id: 'wire.dc-combiner-disconnect',
    message: `the output of DC combiner ${id} carries ${continuousA.toFixed(1)} A, above ${COMBINER_WITHOUT_SWITCH_A} A, and ${stated === false ? 'has no disconnect there' : 'a disconnect there is not stated'}`,
    where: `${where}.disconnect`,
    source: deviceSection(job.edition, 'combinerDisconnect'),
    fix: 'Put a load-break DC disconnect in the box or within sight and 10 ft of it, and state disconnect: true',
  })
  return { needed, holds: stated !== false }
}

/** Editions with lockable PV disconnects are those with this rule. */
const asksForSwitch = (job: Job, currentA: Amperes): boolean =>
  lockableDisconnect.includes(job.edition) && currentA > COMBINER_WITHOUT_SWITCH_A
