import { cleanLine } from '../../report/index.js'
import type { Box, XY } from './geometry.js'
import type { Primitive } from './primitive.js'
import { printed } from './text-metrics.js'

export interface PaperSize {
  /** As the person asks for it: `11x17`. */
  readonly name: string
  readonly widthPt: number
  readonly heightPt: number
}

/** A drawing to scale on a sheet. */
export interface Viewport {
  /** Points of paper per foot of the thing. */
  readonly scalePtPerFt: number
  /** Where the model's origin lies on paper, points from the upper left corner, y down. */
  readonly originPt: XY
  /** Part of the paper that the drawing must keep to. */
  readonly box: Box
  /** Whether nearer things hide what lies behind them, as in a section; in a plan a CAD program shows all that there is. */
  readonly hides?: boolean
  /** What it shows with its main dimensions, for people who do not see it. */
  readonly says?: string
  /** In feet, y up. */
  readonly primitives: readonly Primitive[]
}

/** A drawing of the permit packet: its paper and what is drawn on it. */
export interface Sheet {
  /** Number by the National CAD Standard: `E-601`. */
  readonly id: string
  readonly title: string
  readonly size: PaperSize
  /** What may be drawn on: the inside of the frame. */
  readonly frame: Box
  /** Room for the drawing itself, without title strip; missing on what has none. */
  readonly body?: Box
  /** Points of paper for a unit of the layout: how much larger it is printed than it was laid out; 1 when missing. */
  readonly unitPt?: number
  readonly scaleNote: string
  readonly viewports: readonly Viewport[]
  /** In points from the upper left corner, y down. */
  readonly paper: readonly Primitive[]
  /** Drawn over all of it when every text has its place, so that it moves none: clouds of a revision. */
  readonly overlay?: readonly Primitive[]
}

/** What a sheet shows, in words: its scale, its drawings to scale, then other figures in the order of drawing. */
export function sheetSays({ title, scaleNote, viewports, paper, overlay = [] }: Sheet): string {
  const scale = scaleNote === 'None' ? 'not to scale' : `scale ${scaleNote}`
  const figures = new Set([...paper, ...overlay].flatMap(({ tag }) => (tag?.kind === 'Figure' ? [tag] : [])))
  const words = [...viewports, ...figures].flatMap(({ says }) => (says === undefined ? [] : [says]))
  return cleanLine(
    printed([`${title}, ${scale}`, ...words].map((each) => (each.endsWith('.') ? each : `${each}.`)).join(' ')),
  )
}

/** Where a point of a viewport lies on paper: the only change of units and of direction there is. */
export function onPaper(viewport: Pick<Viewport, 'scalePtPerFt' | 'originPt'>, point: XY): XY {
  return {
    x: viewport.originPt.x + point.x * viewport.scalePtPerFt,
    y: viewport.originPt.y - point.y * viewport.scalePtPerFt,
  }
}
