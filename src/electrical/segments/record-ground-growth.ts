import { circularMils, equipmentGroundSize } from '../conductors/index.js'
import { isAc, type Job } from '../system/index.js'
import type { SizedSegment } from './size-segments.js'

/**
 * The increase of the grounding conductor with the circuit conductors, in circular mils, for every circuit whose
 * conductors are larger than they need be.
 *
 * @source NEC 250.122(B); Chapter 9 Table 8 for the areas
 */
export function recordGroundGrowth(job: Job, { segment, circuits }: SizedSegment): void {
  for (const { circuit, sized } of circuits) {
    const { increased } = sized
    if (!isAc(circuit) || increased === undefined || sized.increase <= 1) continue
    const table = equipmentGroundSize(circuit.groundingDeviceA, circuit.where)
    job.worksheet.note({
      id: `wire.${segment.id}.${circuit.id}.ground-growth`,
      says: `Area that the grounding conductor needs, as ${increased.used} is used where ${increased.needed} would do; the next size up, and never above the circuit conductors`,
      formula: 'A = A_table x A_used / A_needed',
      inputs: [
        { symbol: 'A_table', value: circularMils(table), unit: 'cmil', from: `${table} AWG, Chapter 9 Table 8` },
        { symbol: 'A_used', value: circularMils(increased.used), unit: 'cmil', from: `${increased.used}, Table 8` },
        {
          symbol: 'A_needed',
          value: circularMils(increased.needed),
          unit: 'cmil',
          from: `${increased.needed}, Table 8`,
        },
      ],
      result: { symbol: 'A', value: circularMils(table) * sized.increase, unit: 'cmil' },
      source: job.nec('equipmentGroundIncrease'),
    })
  }
}
