import type { Finding } from '../../worksheet/index.js'

/** Something in a record that a tariff cannot hold. */
export interface NotCarried {
  readonly field: string
  readonly message: string
  readonly fix: string
  /** Whether a person may have the tariff without it. */
  readonly canBeLeftOut: boolean
}

/** What comes out of a record beside the tariff itself. */
export class Carried {
  readonly refused: NotCarried[] = []
  readonly told: Finding[] = []

  /** Would change a bill, and there is no key for it: nothing is written unless the person agrees to leave it out. */
  refuse(field: string, message: string, fix: string): void {
    this.refused.push({ field, message, fix, canBeLeftOut: true })
  }

  /** Without it there is no tariff. */
  impossible(field: string, message: string, fix: string): void {
    this.refused.push({ field, message, fix, canBeLeftOut: false })
  }

  warn(id: WarningId, field: string, message: string, fix: string): void {
    this.told.push({ severity: 'warning', id, message: `${field}: ${message}`, where: '', fix })
  }

  /** A gap of the record that was filled on the cautious side, or left to the person. */
  assume(key: string, message: string, fix: string): void {
    this.told.push({ severity: 'warning', id: 'rates.assumed', message: `${key}: ${message}`, where: '', fix })
  }
}

export const WARNING_IDS = [
  'rates.check',
  'rates.comments',
  'rates.dates',
  'rates.eligibility',
  'rates.ignored',
  'rates.implausible',
  'rates.tier-count',
] as const

export type WarningId = (typeof WARNING_IDS)[number]
