import type { PlausibleRange } from '../../../tables/equipment/index.js'
import type { Finding, Source } from '../../../worksheet/index.js'
import { withUnit } from '../../key-unit.js'
import { showNumber } from '../../words.js'
import { entryPath, type EquipmentEntry } from '../entry.js'

/** What most doubts ask for. */
export const READ_AGAIN = 'read the line of the data sheet again: its unit, its sign and its conditions'

/** Collects what is doubtful or wrong about one entry, each at its key. */
export class Doubts {
  readonly findings: Finding[] = []
  readonly #entry: EquipmentEntry

  constructor(entry: EquipmentEntry) {
    this.#entry = entry
  }

  /** @param id Of the finding. @param key That it is about. */
  add(
    severity: 'error' | 'warning',
    id: string,
    key: string,
    say: { message: string; source: Source; fix?: string },
  ): void {
    const { message, source, fix = READ_AGAIN } = say
    const where = entryPath(this.#entry, key)
    this.findings.push({ severity, id, message: `${this.#entry.id}: ${message}`, where, source, fix })
  }

  /** A warning when a value lies outside what sheets of the trade state. */
  outside(id: string, key: string, name: string, value: number | undefined, range: PlausibleRange): void {
    if (value === undefined || (value >= range.low && value <= range.high)) return
    const usual = withUnit(`${range.low} to ${range.high}`, range.unit)
    const message = `${name} is ${withUnit(showNumber(rounded(value)), range.unit)}; data sheets state ${usual}`
    this.add('warning', id, key, { message, source: range.source })
  }
}

/** Four digits, as more say nothing in a comparison. */
export function rounded(value: number): number {
  return Number(value.toPrecision(4))
}
