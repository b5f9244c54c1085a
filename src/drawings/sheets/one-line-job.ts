import type { WiringValues } from '../../electrical/index.js'
import type { LabelMarks } from '../labels/label-marks.js'
import type { PacketInput } from '../inputs.js'
import { DESCENT, textMarks, type Box, type Primitive } from '../model/index.js'
import { junctionBox, tagList, tagSymbol, tagWidthPt } from '../diagram/one-line-symbols.js'
import type { Places } from './one-line-places.js'
import type { WireTag } from '../diagram/wire-tags.js'
import type { Amperes } from '../../values/index.js'

/** What the diagram needs to know of the project. */
export interface DiagramJob {
  readonly input: PacketInput
  readonly wiring: WiringValues
  readonly tags: readonly WireTag[]
  /** Numbers of the labels at a place. */
  readonly labels: LabelMarks
  readonly box: Box
  readonly places: Places
  /** Sheet where the diagram is continued or came from. */
  readonly note?: string | undefined
  readonly withConnection: boolean
  /** Circuits of the same collector that stand on other sheets. */
  readonly further: number
  /** Room between rows beyond what their texts need, points. */
  readonly spreadPt: number
}

/** An AC wire that leaves the sources, and all that stands on the way to it. */
export interface Output {
  readonly circuitId: string
  readonly x: number
  readonly y: number
  readonly breakerA: Amperes | null
  readonly drawn: readonly Primitive[]
}

/** Lower edge of the lowest words, points; 0 without words. */
export function lowestWordPt(drawn: readonly Primitive[]): number {
  return Math.max(
    0,
    ...drawn.flatMap((each) =>
      each.kind === 'text' ? textMarks(each, each.at, 0).map(({ at, sizePt }) => at.y + DESCENT * sizePt) : [],
    ),
  )
}

/** Least distance of the middles of two tags, points. */
const TIGHT_PT = 15

const sharedText = (tags: readonly WireTag[]): string => tags.map(({ tag }) => tag).join(', ')

/** Width of the box that several tags share, and a little room beside it, points; 0 for a tag alone. */
export function sharedPt(tags: readonly WireTag[]): number {
  return tags.length < 2 ? 0 : tagWidthPt(sharedText(tags)) + 4
}

/** Width of a junction box between two tags, and least room beside it, points. */
const BOX_PT = 14
const BESIDE_BOX_PT = 1

/**
 * Tags evenly along a piece of wire, with the junction boxes between them where there is room, or in one box when they would
 * touch.
 */
export function spread(tags: readonly WireTag[], fromX: number, toX: number, y: number): Primitive[] {
  const step = (toX - fromX) / (tags.length + 1)
  const widest = Math.max(0, ...tags.map(({ tag }) => tagWidthPt(tag)))
  if (tags.length > 1 && step < Math.max(TIGHT_PT, widest + 1.8))
    return [...tagList((fromX + toX) / 2, y, sharedText(tags))]
  const hasBoxes = step >= widest + BOX_PT + BESIDE_BOX_PT
  return tags.flatMap((tag, index) => [
    ...tagSymbol(fromX + (index + 1) * step, y, tag.tag),
    ...(hasBoxes && tag.toBox && index < tags.length - 1 ? junctionBox(fromX + (index + 1.5) * step, y, BOX_PT) : []),
  ])
}
