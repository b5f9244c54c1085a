import { label, plainNumber, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive, inCapitals } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { breakerSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { clipName } from './clip-name.js'
import { drawLeafWithDevice, leafHeightPt } from './draw-leaf.js'
import type { TapPart } from './tree-parts.js'
import type { Drawn } from './tree-room.js'
import { dot, lighter, wire } from './tree-symbols.js'

const SIZE = TYPE_PT.small
const WORDS_PT = 84

function wordsOf({ node, conductor }: TapPart): string {
  const length = conductor?.length_ft ?? null
  return [
    clipName(inCapitals(nodeTitle(node)), SIZE, 'plain', WORDS_PT),
    node.main_a === null ? '' : `ends in ${node.main_a} A`,
    length === null ? '' : `${plainNumber(length)} ft`,
  ]
    .filter((each) => each !== '')
    .join(', ')
}

/** Room that a tap takes above its feeder, points. */
export function tapHeightPt(tap: TapPart): number {
  const words = blockHeightPt(wrapText(wordsOf(tap), SIZE, 'plain', WORDS_PT).length, SIZE)
  return Math.max(...tapRows(tap)) + Math.max(16, words + 16)
}

/** Middles of the rows of what hangs on a tap, below its top. */
function tapRows({ leaves }: TapPart): number[] {
  const heights = leaves.length === 0 ? [32] : leaves.map(leafHeightPt)
  return heights.map((height, index) => heights.slice(0, index).reduce((sum, each) => sum + each, 0) + height / 2)
}

/** A tap from its feeder up and to the left. x is where it leaves the feeder at `feederY`. */
export function drawTap(tap: TapPart, x: number, top: number, feederY: number): Drawn<Primitive> {
  const ys = tapRows(tap).map((row) => top + row)
  const [first = top] = ys
  const last = ys.at(-1) ?? first
  const end = x - 30
  const leaves = tap.leaves.flatMap((leaf, index) => drawLeafWithDevice(leaf, end, ys[index] ?? first))
  return {
    drawn: [
      dot(x, feederY),
      wire(x, feederY, x, first),
      wire(x, first, end, first),
      ...(last > first ? [wire(end, first, end, last)] : []),
      ...leaves,
      ...(tap.leaves.length === 0 ? tappedLoad(tap, end, first) : []),
      ...(tap.conductor === undefined ? [] : tagSymbol(x - 15, first, tap.conductor.tag)),
      label(x - 4, last + 11, wordsOf(tap), { sizePt: SIZE, align: 'right', maxWidthPt: WORDS_PT }),
    ],
    bottom: top + tapHeightPt(tap),
  }
}

function tappedLoad({ node }: TapPart, x: number, y: number): Primitive[] {
  return [
    ...lighter([wire(x - 26, y, x, y), ...breakerSymbol(x - 12, y)]),
    label(x - 30, y, node.main_a === null ? 'load' : `load, ${node.main_a} A`, {
      sizePt: SIZE,
      align: 'right',
      valign: 'middle',
    }),
  ]
}
