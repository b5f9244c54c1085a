import { asSymbol, inPart, onLayer, xy, type Primitive } from '../model/index.js'
import type { Block } from './block.js'
import type { Scale } from './scales.js'
import { label, TYPE_PT } from './text.js'
import { radiansOf, type Degrees } from '../../values/index.js'

/** North arrow on paper. `northDeg` is the direction of true north on paper, clockwise from the top. */
export function northArrow(x: number, y: number, northDeg: Degrees, radiusPt = 17): Primitive[] {
  const turn = radiansOf(northDeg)
  const at = (along: number, across: number): { x: number; y: number } =>
    xy(x + along * Math.sin(turn) + across * Math.cos(turn), y - along * Math.cos(turn) + across * Math.sin(turn))
  const letter = at(radiusPt + 8, 0)
  return inPart(
    { kind: 'Figure', says: 'North arrow' },
    asSymbol(
      'NORTH',
      xy(x, y),
      onLayer<Primitive>('symbol', [
        { kind: 'circle', center: xy(x, y), radiusPt: radiusPt * 0.62, pen: 'thin' },
        {
          kind: 'path',
          points: [at(radiusPt, 0), at(-radiusPt * 0.55, radiusPt * 0.42), at(-radiusPt * 0.25, 0)],
          closed: true,
          pen: 'thin',
          fill: 'black',
        },
        {
          kind: 'path',
          points: [at(radiusPt, 0), at(-radiusPt * 0.55, -radiusPt * 0.42), at(-radiusPt * 0.25, 0)],
          closed: true,
          pen: 'thin',
          fill: 'white',
        },
        label(letter.x, letter.y, 'N', { face: 'bold', sizePt: TYPE_PT.head, align: 'center', valign: 'middle' }),
      ]),
    ),
  )
}

/** Lengths of a piece of a scale bar, ft. */
const STEPS_FT = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000]
/** A piece is long enough to measure by from here on. */
const LEAST_PIECE = 13

/** The shortest piece that is long enough to measure by, or the longest of those for which there is room. */
function stepFt(scale: Scale, widthPt: number): number {
  const fitting = STEPS_FT.filter((feet) => 4 * feet * scale.ptPerFt <= widthPt)
  return fitting.find((feet) => feet * scale.ptPerFt >= LEAST_PIECE) ?? fitting.at(-1) ?? 1
}

/** Scale bar on paper with the scale in words; x and y are its upper left corner, at most a width wide. */
export function scaleBar(x: number, y: number, scale: Scale, widthPt = Infinity): Primitive[] {
  const step = stepFt(scale, widthPt)
  const drawn: Primitive[] = [label(x, y, `SCALE ${scale.note}`, { sizePt: TYPE_PT.small, face: 'bold' })]
  const top = y + 12
  for (let index = 0; index < 4; index++) {
    const left = x + index * step * scale.ptPerFt
    drawn.push({
      kind: 'rectangle',
      x: left,
      y: top,
      width: step * scale.ptPerFt,
      height: 4,
      pen: 'thin',
      fill: index % 2 === 0 ? 'black' : 'white',
    })
  }
  for (const count of [0, 1, 2, 4]) {
    const text = count === 4 ? `${4 * step} ft` : String(count * step)
    drawn.push(label(x + count * step * scale.ptPerFt, top + 6, text, { sizePt: TYPE_PT.small, align: 'center' }))
  }
  return inPart({ kind: 'Figure', says: `Scale bar, ${scale.note}` }, onLayer('symbol', drawn))
}

/** North arrow and scale bar side by side at the head of the notes of a plan. */
export function mapMarks(scale: Scale, northDeg: Degrees): Block {
  return {
    kind: 'figure',
    heightPt: 52,
    draw: (x, y, width) => [
      ...northArrow(x + 26, y + 28, northDeg, 15),
      ...scaleBar(x + 62, y + 14, scale, width - 62 - 16),
    ],
  }
}
