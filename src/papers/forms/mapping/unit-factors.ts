import { INCHES_PER_FOOT, KG_PER_POUND, MM_PER_INCH } from '../../../values/index.js'

const MM_PER_FOOT = MM_PER_INCH * INCHES_PER_FOOT

/** Size of each unit in a unit of its kind. */
const SIZES: Readonly<Record<string, readonly [kind: string, size: number]>> = {
  W: ['power', 1],
  kW: ['power', 1000],
  VA: ['apparent power', 1],
  kVA: ['apparent power', 1000],
  kWh: ['energy', 1],
  MWh: ['energy', 1000],
  mm: ['length', 1],
  m: ['length', 1000],
  in: ['length', MM_PER_INCH],
  ft: ['length', MM_PER_FOOT],
  m2: ['area', 1],
  'sq ft': ['area', (MM_PER_FOOT / 1000) ** 2],
  kg: ['mass', 1],
  lb: ['mass', KG_PER_POUND],
}

/** A number brought to another unit; undefined when the units are not of one kind. */
export function convert(value: number, from: string, to: string): number | undefined {
  if (from === to) return value
  if (from === 'deg C' && to === 'deg F') return value * 1.8 + 32
  const [source, target] = [SIZES[from], SIZES[to]]
  if (source === undefined || target === undefined || source[0] !== target[0]) return undefined
  return (value * source[1]) / target[1]
}
