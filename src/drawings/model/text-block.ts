import type { XY } from './geometry.js'
import type { TextMark } from './mark.js'
import { rounded, roundedPoint } from './mark.js'
import { layerOf } from './on-layer.js'
import type { TextPrimitive } from './primitive.js'
import { ASCENT, DESCENT, LEADING, textWidthPt, wrapText } from './text-metrics.js'
import { radiansOf } from '../../values/index.js'

/** Height of a block of lines, points. */
export function blockHeightPt(lines: number, sizePt: number): number {
  return lines === 0 ? 0 : ((lines - 1) * LEADING + ASCENT + DESCENT) * sizePt
}

/**
 * The lines of a text at a place on paper.
 *
 * @param at Place of the text, points, y down; `shift` is added to it.
 */
export function textMarks(text: TextPrimitive, at: XY, block: number): TextMark[] {
  const face = text.face ?? 'plain'
  const { sizePt, rotationDeg = 0 } = text
  const lines = wrapText(text.text, sizePt, face, text.maxWidthPt)
  const height = blockHeightPt(lines.length, sizePt)
  const top = { top: 0, middle: -height / 2, bottom: -height }[text.valign ?? 'top']
  const turn = radiansOf(-rotationDeg)
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return lines.map((line, index) => {
    const widthPt = textWidthPt(line, sizePt, face)
    const dx = { left: 0, center: -widthPt / 2, right: -widthPt }[text.align ?? 'left']
    const dy = top + (ASCENT + index * LEADING) * sizePt
    return {
      kind: 'text',
      layer: layerOf(text),
      text: line,
      at: roundedPoint({ x: at.x + dx * cos - dy * sin, y: at.y + dx * sin + dy * cos }),
      widthPt: rounded(widthPt),
      sizePt,
      face,
      color: text.color ?? 'black',
      rotationDeg,
      halo: text.halo === true,
      block,
    }
  })
}

/** Corners of the box of a line of text on paper, grown by a margin. */
export function textFigure(mark: TextMark, marginPt = 0): XY[] {
  const turn = radiansOf(-mark.rotationDeg)
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const [left, right] = [-marginPt, mark.widthPt + marginPt]
  const [top, bottom] = [-ASCENT * mark.sizePt - marginPt, DESCENT * mark.sizePt + marginPt]
  const corner = (dx: number, dy: number): XY => ({
    x: mark.at.x + dx * cos - dy * sin,
    y: mark.at.y + dx * sin + dy * cos,
  })
  return [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)]
}
