import type { DcCombiner } from '../../project/index.js'
import { deviceSection } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { Circuit, Job } from '../system/index.js'

/** What the fuses of a box come to. */
export interface CombinerFuses {
  readonly needed: boolean
  /** Largest current that the other strings feed into one, A. */
  readonly backfeedA: Amperes
  readonly fuseA: Amperes | null
  readonly holds: boolean
}

/** Strings in parallel from which on every one has a fuse, whatever the modules bear. @source NEC 690.9(A) */
const ALWAYS_FUSED_FROM = 3

/**
 * Whether the strings of a box need fuses, and have them: in a fault the others feed one backwards, (n - 1) x 1.25 Isc.
 *
 * @source NEC 690.9(A) Exception (2017), 690.9(A)(1) (2020)
 */
export function checkFuses(
  job: Job,
  { id, where }: Circuit,
  stated: DcCombiner,
  strings: readonly Circuit[],
): CombinerFuses {
  const sumA = strings.reduce((sum, { continuousA }) => sum + continuousA, 0)
  const backfeedA = Math.max(...strings.map(({ continuousA }) => sumA - continuousA))
  const bearsA = Math.min(...strings.map(({ maxDeviceA }) => maxDeviceA ?? 0))
  const needed = strings.length >= ALWAYS_FUSED_FROM || backfeedA > bearsA
  const fuseA = stated.poles_fused === 'none' ? null : Math.max(...strings.map(({ deviceA }) => deviceA ?? 0))
  const source = deviceSection(job.edition, 'noBackfeed')
  job.worksheet.note({
    id: `wire.${id}.backfeed`,
    says: 'Current that the other strings of the box can feed into one in a fault, against what its modules bear',
    formula: '(n - 1) x 1.25 x I_sc <= maximum series fuse, else fuses; from 3 strings on always',
    inputs: [
      { symbol: 'n', value: strings.length, unit: 'strings', from: `${where}.inputs` },
      { symbol: 'sum', value: sumA, unit: 'A', from: `wire.${id}.current` },
    ],
    result: { symbol: 'backfeed', value: backfeedA, unit: 'A' },
    check: { relation: '<=', limit: bearsA, pass: backfeedA <= bearsA },
    source,
  })
  if (needed && fuseA === null)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.dc-combiner-unfused',
      message: `DC combiner ${id} has no fuses, and ${strings.length - 1} strings can feed ${backfeedA.toFixed(1)} A into the other one, which bears ${bearsA} A`,
      where: `${where}.poles_fused`,
      source,
      fix: 'Fuse every string in the box and state poles_fused, or bring fewer strings together',
    })
  const within = strings.every(({ deviceA, maxDeviceA }) => deviceA === null || deviceA <= (maxDeviceA ?? 0))
  return { needed, backfeedA, fuseA, holds: !(needed && fuseA === null) && within }
}

/**
 * Fuses in one pole only are in the same one in every box.
 *
 * @source NEC 690.9(C), 2017 and 2020; earlier editions were not read, so both poles are asked for
 */
export function checkPolarity(job: Job, circuits: readonly Circuit[]): void {
  const source = deviceSection(job.edition, 'onePoleFused')
  const onePole = circuits.filter(({ combiner }) => combiner?.stated.poles_fused === 'one')
  const find = (where: string, message: string, fix: string): void => {
    job.worksheet.find({ severity: 'error', id: 'wire.dc-combiner-polarity', message, where, source, fix })
  }
  for (const { id, where, combiner } of onePole) {
    if (job.edition === 'NEC 2011' || job.edition === 'NEC 2014')
      find(
        `${where}.poles_fused`,
        `DC combiner ${id} has fuses in one pole; that ${job.edition} allows it was not found`,
        'Fuse both poles, or ask the authority',
      )
    else if (combiner?.stated.fused_pole === undefined)
      find(
        `${where}.fused_pole`,
        `DC combiner ${id} has fuses in one pole, and which one is not stated; it has to be the same in every box`,
        'State fused_pole: positive or negative',
      )
  }
  const [first, ...others] = onePole.filter(({ combiner }) => combiner?.stated.fused_pole !== undefined)
  for (const { id, where, combiner } of others)
    if (combiner?.stated.fused_pole !== first?.combiner?.stated.fused_pole)
      find(
        `${where}.fused_pole`,
        `DC combiner ${id} has its fuses in the ${combiner?.stated.fused_pole ?? '?'} pole, ${first?.id ?? ''} in the ${first?.combiner?.stated.fused_pole ?? '?'} one`,
        'Put all fuses into the same pole',
      )
}
