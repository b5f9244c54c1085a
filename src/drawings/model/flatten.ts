import { expand, type Placing } from './expand.js'
import type { Box, XY } from './geometry.js'
import type { FlatSheet, Mark } from './mark.js'
import { obstaclesOf } from './obstacles.js'
import { TextPlaces, type Waiting } from './place-texts.js'
import { placeKeyed } from './keyed-notes.js'
import { onPaper, type Sheet } from './sheet.js'

const done = new WeakMap<Sheet, FlatSheet>()

/**
 * Works out every mark of a sheet on paper, and finds places for the texts that may move.
 * Texts that may not move keep their place. The others take, in order, the best of their places: on nothing, on hatch, within
 * an area. What finds none stands aside with a line to what it names, or is a keyed note, unless it may be left out.
 * A sheet is worked out once.
 */
export function flattenSheet(sheet: Sheet): FlatSheet {
  const known = done.get(sheet)
  if (known !== undefined) return known
  const figures: Mark[] = []
  const waiting: Waiting[] = []
  const take = (primitives: Sheet['paper'], placing: Placing, within: Box): void => {
    for (const primitive of primitives) {
      const { marks, texts } = expand(primitive, placing)
      figures.push(...marks)
      waiting.push(...texts.map((each) => ({ ...each, within })))
    }
  }
  for (const viewport of sheet.viewports) {
    const point = (each: XY): XY => onPaper(viewport, each)
    take(viewport.primitives, { point, scale: viewport.scalePtPerFt, yUp: true }, viewport.box)
  }
  take(sheet.paper, { point: (each) => each, scale: 1, yUp: false }, sheet.frame)
  const { texts, leaders, collisions } = placeAll(figures, waiting, sheet.body ?? sheet.frame)
  const flat = { marks: [...figures, ...leaders, ...texts, ...overlayMarks(sheet)], collisions }
  done.set(sheet, flat)
  return flat
}

/** Marks that no text keeps clear of; their own texts stay where they are. */
function overlayMarks({ overlay = [] }: Sheet): Mark[] {
  const parts = overlay.map((each) => expand(each, { point: (point) => point, scale: 1, yUp: false }))
  const waiting = parts.flatMap(({ texts }) => texts.map((each) => ({ ...each, within: EVERYWHERE })))
  const places = new TextPlaces(obstaclesOf([]), 0)
  for (const [index, each] of waiting.entries()) places.fix(OVERLAY_BLOCKS + index, each)
  return [...parts.flatMap(({ marks }) => marks), ...places.result().texts]
}

const EVERYWHERE: Box = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 }
/** Numbers of blocks of the overlay lie past those of any sheet. */
const OVERLAY_BLOCKS = 1_000_000

function placeAll(
  figures: readonly Mark[],
  waiting: readonly Waiting[],
  body: Box,
): { texts: readonly Mark[]; leaders: readonly Mark[]; collisions: string[] } {
  const places = new TextPlaces(obstaclesOf(figures), figures.length)
  const collisions: string[] = []
  const numbered = [...waiting.entries()]
  const movable = numbered.filter(([, { text }]) => text.shifts !== undefined)
  for (const [index, each] of numbered) {
    if (each.text.shifts === undefined && !places.fix(index, each)) collisions.push(each.text.text)
  }
  const aside: [number, Waiting][] = []
  for (const [index, each] of movable.filter(([, { text }]) => text.optional !== true)) {
    if (each.text.aside === true || !places.settleBeside(index, each)) aside.push([index, each])
  }
  const keyed = aside.filter(([index, each]) => !places.settleAside(index, each))
  collisions.push(...placeKeyed(places, keyed, body).map(({ text }) => text.text))
  for (const [index, each] of movable.filter(([, { text }]) => text.optional === true)) places.settleBeside(index, each)
  return { ...places.result(), collisions }
}
