import type { TextPlaces } from './place-texts.js'
import type { Waiting } from './waiting.js'
import { boundsOf, cornersOf, type Box, type XY } from './geometry.js'
import { roundedPoint, type Mark } from './mark.js'
import type { TextPrimitive } from './primitive.js'
import { textFigure, textMarks } from './text-block.js'

/** Distances from what is named at which its number is tried, points. */
const RINGS = [0, 8, 14, 20, 28, 38, 50, 64, 80, 100]
const DIRECTIONS = Array.from({ length: 16 }, (_, index) => (index * Math.PI) / 8)
/** Steps in which a place for the list is sought, points. */
const STEP_PT = 9
/** Width of a line of the list, heights of type. */
const LIST_WIDTH = 22

/**
 * Texts for which the drawing has no room, as keyed notes: a number in a hexagon stands for each, and a list on the same sheet
 * tells them.
 *
 * @param waiting Texts with the numbers of their blocks.
 * @param body Part of the sheet that may take the list.
 * @returns texts that found no place even so.
 */
export function placeKeyed(places: TextPlaces, waiting: readonly (readonly [number, Waiting])[], body: Box): Waiting[] {
  const listed: { readonly index: number; readonly text: TextPrimitive; readonly number: number }[] = []
  const left: Waiting[] = []
  for (const [index, each] of waiting) {
    const number = listed.length + 1
    if (placeNumber(places, index, each, number)) listed.push({ index, text: each.text, number })
    else left.push(each)
  }
  for (const { index, text, number } of listed) {
    if (!placeListed(places, index, text, number, body)) left.push({ text, at: text.at, within: body, belongs: {} })
  }
  return left
}

function placeNumber(places: TextPlaces, index: number, { text, at, within }: Waiting, number: number): boolean {
  for (const ring of RINGS) {
    for (const turn of ring === 0 ? [0] : DIRECTIONS) {
      const middle = { x: at.x + ring * Math.cos(turn), y: at.y - ring * Math.sin(turn) }
      const hexagon = hexagonAt(middle, text.sizePt)
      const corners = cornersOf(boundsOf(hexagon.points))
      if (!places.isClear(corners, within)) continue
      places.put(numberMarks(text, middle, number, index), [hexagon], corners)
      return true
    }
  }
  return false
}

/** A line of the list at the first free place, from the foot of the sheet up, from the left to the right. */
function placeListed(places: TextPlaces, index: number, text: TextPrimitive, number: number, body: Box): boolean {
  const radius = text.sizePt
  const plain: TextPrimitive = {
    kind: 'text',
    at: { x: 0, y: 0 },
    text: text.text,
    sizePt: text.sizePt,
    valign: 'middle',
    maxWidthPt: LIST_WIDTH * text.sizePt,
  }
  const box = boundsOf(textMarks(plain, { x: 0, y: 0 }, index).flatMap((mark) => textFigure(mark)))
  const [width, height] = [box.width + 3 * radius, Math.max(box.height, 2 * radius)]
  for (let x = body.x; x + width < body.x + body.width; x += STEP_PT) {
    for (let y = body.y + body.height - height; y > body.y; y -= STEP_PT) {
      const room = cornersOf({ x, y, width, height })
      if (!places.isClear(room, body)) continue
      const middle = { x: x + radius, y: y + height / 2 }
      const marks = [
        ...numberMarks(text, middle, number, index),
        ...textMarks(plain, { x: x + 2.6 * radius, y: middle.y }, index),
      ]
      places.put(marks, [hexagonAt(middle, text.sizePt)], room)
      return true
    }
  }
  return false
}

const numberMarks = (text: TextPrimitive, middle: XY, number: number, index: number) =>
  textMarks(
    {
      kind: 'text',
      at: middle,
      text: String(number),
      sizePt: text.sizePt,
      face: 'bold',
      align: 'center',
      valign: 'middle',
    },
    middle,
    index,
  )

function hexagonAt(middle: XY, sizePt: number): Mark & { readonly kind: 'path' } {
  const points = Array.from({ length: 6 }, (_, corner) => {
    const turn = (corner * Math.PI) / 3
    return roundedPoint({ x: middle.x + sizePt * Math.cos(turn), y: middle.y + sizePt * Math.sin(turn) })
  })
  return { kind: 'path', layer: 'keynote', points, closed: true, pen: 'thin', dash: 'solid', color: 'black' }
}
