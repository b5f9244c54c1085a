import { boundsOf, cornersOf, POINTS_PER_INCH, type Sheet, type Viewport, type XY } from '../model/index.js'
import { inchesOf } from '../../values/index.js'
import type { Space } from './shapes.js'

/** Free room between two drawings of a sheet in the model, inches of the thing. */
const BETWEEN_IN = 12

/** A drawing to scale in the model: its space, and the window through which the sheet shows it. */
export interface ModelView {
  readonly space: Space
  readonly hides: boolean
  /** Inches of the thing for an inch of paper. */
  readonly scale: number
  /** On paper and in the model, inches. */
  readonly window: { readonly center: XY; readonly width: number; readonly height: number }
  readonly seen: { readonly center: XY; readonly height: number }
}

/** The sheet itself at true size, the lower left corner of the paper at 0, 0. */
export function paperSpace({ size }: Sheet): Space {
  const inch = (points: number): number => points / POINTS_PER_INCH
  return { point: ({ x, y }) => ({ x: inch(x), y: inch(size.heightPt - y) }), inPerPt: 1 / POINTS_PER_INCH }
}

/**
 * The model of a sheet: what it draws to scale, at real size in inches. A lone plan keeps its own origin (the left end of
 * the eave, the corner that the site plan counts from); details follow one another to the right. A sheet with nothing to
 * scale is its own model.
 */
export function modelViews(sheet: Sheet): ModelView[] {
  const paper = paperSpace(sheet)
  if (sheet.viewports.length === 0) {
    const whole = { x: 0, y: 0, width: sheet.size.widthPt, height: sheet.size.heightPt }
    return [viewOf(whole, paper, paper, 1, true)]
  }
  let from = 0
  return sheet.viewports.map((viewport) => {
    const scale = scaleOf(viewport)
    const alone = sheet.viewports.length === 1
    const left = (viewport.box.x - viewport.originPt.x) * (scale / POINTS_PER_INCH)
    const shift = alone ? 0 : Math.ceil(from - left)
    from = shift + left + viewport.box.width * (scale / POINTS_PER_INCH) + BETWEEN_IN
    return viewOf(viewport.box, modelSpace(viewport, shift), paper, scale, viewport.hides === true)
  })
}

const scaleOf = ({ scalePtPerFt }: Viewport): number => (inchesOf(1) * POINTS_PER_INCH) / scalePtPerFt

function modelSpace(viewport: Viewport, shiftIn: number): Space {
  const inPerPt = scaleOf(viewport) / POINTS_PER_INCH
  const { originPt } = viewport
  return {
    point: ({ x, y }) => ({ x: shiftIn + (x - originPt.x) * inPerPt, y: (originPt.y - y) * inPerPt }),
    inPerPt,
  }
}

function viewOf(box: Viewport['box'], space: Space, paper: Space, scale: number, hides: boolean): ModelView {
  const onPaper = boundsOf(cornersOf(box).map(paper.point))
  const inModel = boundsOf(cornersOf(box).map(space.point))
  const middle = ({ x, y, width, height }: Viewport['box']): XY => ({ x: x + width / 2, y: y + height / 2 })
  return {
    space,
    hides,
    scale,
    window: { center: middle(onPaper), width: onPaper.width, height: onPaper.height },
    seen: { center: middle(inModel), height: inModel.height },
  }
}
