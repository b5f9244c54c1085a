import type { WiringValues } from '../../electrical/index.js'
import type { Materials, Project } from '../../project/index.js'
import type { Arrangement } from '../../roof/index.js'
import type { MountValues } from '../../structure/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { PriceBook } from '../price-list/price-book.js'

/** A label that the project needs, as the drawings word it. */
export interface LabelNeed {
  readonly id: string
  readonly count: number
  /** How the count comes about. */
  readonly counted: string
  readonly reflective: boolean
  /** Material, colours and letters in words. */
  readonly look: string
  /** All its text on one line. */
  readonly text: string
}

/** What quantities are taken from. */
export interface TakeOffJob {
  readonly project: Project
  readonly materials: Materials
  readonly arrangement: Arrangement
  readonly mounts: MountValues | undefined
  readonly wiring: WiringValues | undefined
  readonly labels: readonly LabelNeed[] | undefined
  /** Prices decide which stock lengths are cut. */
  readonly prices: PriceBook | undefined
  readonly worksheet: Worksheet
}

/** A part of an item id: lower case, without spaces. */
export const idPart = (text: string): string => text.toLowerCase().replaceAll(' ', '-')
