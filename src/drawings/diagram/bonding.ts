import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive } from '../model/index.js'
import { tagSymbol } from './one-line-symbols.js'
import { lettered, sizeText } from './wire-tags.js'

const SIZE = TYPE_PT.small

/** Grounding and bonding conductors by the place where the diagram shows them. */
export interface Bonding {
  /** From rails and modules to the equipment ground. */
  readonly array: ConductorValues | undefined
  /** From the service to its electrode. */
  readonly electrode: ConductorValues | undefined
  /** From the neutral of the service to its enclosure. */
  readonly jumper: ConductorValues | undefined
  /** Those that are told beside the electrode. */
  readonly others: readonly ConductorValues[]
}

export function bondingOf(wiring: WiringValues): Bonding {
  const rows = lettered(wiring, 'G')
  const array = rows.find(({ from }) => from === 'rails and modules')
  const electrode = rows.find(({ from, method }) => from === 'service' && method === 'electrode conductor')
  const jumper = rows.find(({ from }) => from === 'service neutral')
  return { array, electrode, jumper, others: rows.filter((row) => ![array, electrode, jumper].includes(row)) }
}

/**
 * Bar of the neutral with the jumper to the enclosure, in a box.
 *
 * @param x Place of the bar; `frameX` is the side of the box.
 * @param jumper Tag of the jumper; nothing is drawn without one.
 */
export function neutralBar(x: number, y: number, frameX: number, jumper: string | undefined): Primitive[] {
  if (jumper === undefined) return []
  return [
    label(x, y - 8, 'N', { sizePt: SIZE, align: 'center', valign: 'bottom' }),
    line(x, y - 7, x, y + 7, { pen: 'heavy' }),
    line(x, y, frameX, y),
    ...tagSymbol((x + frameX) / 2, y, jumper),
  ]
}

/** Grounding and bonding conductors that have no line of their own, one below the other; and how high they stand. */
export function bondingList(
  rows: readonly ConductorValues[],
  x: number,
  y: number,
  widthPt: number,
): { readonly drawn: readonly Primitive[]; readonly heightPt: number } {
  const drawn: Primitive[] = []
  let top = y
  for (const row of rows) {
    const text = `${row.method}, ${row.from} to ${row.to}: ${sizeText(row)}`
    const height = Math.max(15, blockHeightPt(wrapText(text, SIZE, 'plain', widthPt - 18).length, SIZE) + 4)
    drawn.push(
      ...tagSymbol(x + 7, top + 7, row.tag),
      label(x + 18, top + 3, text, { sizePt: SIZE, maxWidthPt: widthPt - 18 }),
    )
    top += height
  }
  return { drawn, heightPt: top - y }
}
