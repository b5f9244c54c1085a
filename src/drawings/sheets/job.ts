import type { PacketInput } from '../inputs.js'
import type { SheetDraft, Stationery } from '../layout/index.js'

/** What every sheet is drawn from. */
export interface SheetJob {
  readonly input: PacketInput
  readonly stationery: Stationery
}

/** Sheets that one drawer makes: the first has the number asked for, the others continue it. */
export type DrawSheets = (job: SheetJob) => SheetDraft[]

/** Number of a continuation: `E-603` then `E-603-2`. */
export function continued(id: string, index: number): string {
  return index === 0 ? id : `${id}-${index + 1}`
}
