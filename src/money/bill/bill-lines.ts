import { ZERO, toCents, type Decimal } from '../../values/decimal/index.js'

export type LineGroup = 'fixed' | 'energy' | 'riders' | 'demand' | 'minimum' | 'surplus' | 'credit' | 'taxes'

/** One line of a bill: quantity times price, in exact decimals. */
export interface BillLine {
  /** Stable: `energy.summer.tier_2`. */
  readonly id: string
  readonly group: LineGroup
  readonly says: string
  readonly quantity: Decimal
  readonly unit: string
  readonly price: Decimal
  readonly amount: Decimal
  /** Whether a credit may pay it when credits offset only energy. */
  readonly bypassable: boolean
}

/** Collects the lines of one bill and rounds them as the tariff says. */
export class BillLines {
  readonly lines: BillLine[] = []
  readonly #toTheLine: boolean

  constructor(rounding: 'line' | 'total') {
    this.#toTheLine = rounding === 'line'
  }

  /** Adds quantity x price; a line of nothing is left out. */
  add(line: Omit<BillLine, 'amount' | 'bypassable'> & { readonly bypassable?: boolean }): void {
    if (line.quantity.eq(0)) return
    const amount = line.quantity.times(line.price)
    const rounded = this.#toTheLine ? toCents(amount) : amount
    const { id, group, says, quantity, unit, price, bypassable = group === 'energy' } = line
    this.lines.push({ id, group, says, quantity, unit, price, amount: rounded, bypassable })
  }

  /** Sum of the lines that pass. */
  total(passes: (line: BillLine) => boolean): Decimal {
    let total = ZERO
    for (const line of this.lines) if (passes(line)) total = total.plus(line.amount)
    return total
  }

  /** What is to be paid, to the cent. */
  payable(): Decimal {
    return toCents(this.total(() => true))
  }
}
