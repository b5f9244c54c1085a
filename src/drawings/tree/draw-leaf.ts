import { label, plainNumber, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive, inCapitals } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { breakerSymbol } from '../diagram/one-line-symbols.js'
import { clipName } from './clip-name.js'
import type { Leaf } from './tree-parts.js'
import { batterySymbol, existingSource, joinFlag, lighter, wire } from './tree-symbols.js'

const SIZE = TYPE_PT.small
/** Room for the words of a leaf, and from its wire to its symbol, points. */
const WORDS_PT = 106
const SYMBOL_PT = 26
const STUB_PT = 22

/** Words beside a leaf. */
function wordsOf(leaf: Leaf): string {
  if (leaf.kind === 'pv')
    return `PV SYSTEM of this project, from its disconnect${leaf.oppositeEnd ? '; breaker at the end of the bus opposite the main' : ''}`
  const { node } = leaf
  const current = node.inverter_a === 0 ? 'not in parallel with the utility' : `${plainNumber(node.inverter_a)} A`
  return `${clipName(inCapitals(nodeTitle(node)), SIZE, 'plain', WORDS_PT)}\n${current}, ${leaf.planned ? 'SEE STORAGE' : 'EXISTING'}`
}

/** Height of the row of a leaf, points. */
export function leafHeightPt(leaf: Leaf): number {
  return Math.max(32, blockHeightPt(wrapText(wordsOf(leaf), SIZE, 'plain', WORDS_PT).length, SIZE) + 10)
}

/** Rating of the device of a leaf, A; null where none is stated. */
export const deviceOf = (leaf: Leaf): number | null => (leaf.kind === 'pv' ? leaf.landing.breakerA : leaf.node.main_a)

/** Whether this project brings it: its PV system, or the storage that it plans. */
export const isNew = (leaf: Leaf): boolean => leaf.kind === 'pv' || leaf.planned

function symbolOf(leaf: Leaf, x: number, y: number): Primitive[] {
  if (leaf.kind === 'pv') return joinFlag(x + 2, y, leaf.landing.letter)
  return leaf.planned ? batterySymbol(x, y) : existingSource(leaf.of, x, y)
}

/** A source with its words left of a wire that begins at x. */
export function drawLeaf(leaf: Leaf, x: number, y: number): Primitive[] {
  const symbolX = x - STUB_PT - SYMBOL_PT
  const stub = wire(symbolX + SYMBOL_PT, y, x, y)
  return [
    ...(isNew(leaf) ? [stub] : lighter([stub])),
    ...symbolOf(leaf, symbolX, y),
    label(symbolX - 5, y, wordsOf(leaf), { sizePt: SIZE, align: 'right', valign: 'middle', maxWidthPt: WORDS_PT }),
  ]
}

/** A leaf with its breaker outside a panel: on a tap, or ahead of the service. The wire begins at x. */
export function drawLeafWithDevice(leaf: Leaf, x: number, y: number): Primitive[] {
  const device = deviceOf(leaf)
  const symbol = [wire(x - 26, y, x, y), ...breakerSymbol(x - 12, y)]
  // The device of the PV system ahead of the service, or on a tap, stands in its disconnect: the flag leads there.
  if (leaf.kind === 'pv') return [wire(x - 26, y, x, y), ...drawLeaf(leaf, x - 26, y)]
  return [
    ...(isNew(leaf) ? symbol : lighter(symbol)),
    label(x - 12, y - 7, device === null ? '' : `${device} A`, { sizePt: SIZE, align: 'center', valign: 'bottom' }),
    ...drawLeaf(leaf, x - 26, y),
  ]
}
