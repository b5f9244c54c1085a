import { label, line, TYPE_PT } from '../layout/index.js'
import { asSymbol, onLayer, textWidthPt, xy, type Primitive } from '../model/index.js'

/** Photovoltaic source: a box with a sun arrow. */
export function sourceSymbol(x: number, y: number): Primitive[] {
  return asSymbol<Primitive>('PV-SOURCE', xy(x, y), [
    { kind: 'rectangle', x, y: y - 9, width: 26, height: 18, pen: 'medium', fill: 'white' },
    { kind: 'path', points: [xy(x, y - 9), xy(x + 9, y), xy(x, y + 9)], pen: 'thin' },
    label(x + 18, y, 'PV', { sizePt: TYPE_PT.small, face: 'bold', align: 'center', valign: 'middle' }),
  ])
}

/** Inverter: a square cut from corner to corner, direct current on one side and alternating current on the other. */
export function inverterSymbol(x: number, y: number, size = 20): Primitive[] {
  const half = size / 2
  const wave = Array.from({ length: 13 }, (_, index) =>
    xy(x + half + 2 + (index * (half - 4)) / 12, y + half * 0.55 - 2.2 * Math.sin((index * Math.PI) / 6)),
  )
  return asSymbol<Primitive>('INVERTER', xy(x, y), [
    { kind: 'rectangle', x, y: y - half, width: size, height: size, pen: 'medium', fill: 'white' },
    line(x, y + half, x + size, y - half),
    line(x + 2.5, y - half * 0.62, x + half - 1, y - half * 0.62),
    line(x + 2.5, y - half * 0.38, x + half - 1, y - half * 0.38, { dash: 'hidden' }),
    { kind: 'path', points: wave, pen: 'thin' },
  ])
}

/** Circuit breaker in a level wire: an arc over a gap between two dots. x is its middle. */
export function breakerSymbol(x: number, y: number): Primitive[] {
  return asSymbol<Primitive>('BREAKER', xy(x, y), [
    { kind: 'rectangle', x: x - 7, y: y - 1.5, width: 14, height: 3, fill: 'white' },
    { kind: 'circle', center: xy(x - 7, y), radiusPt: 1.3, fill: 'black' },
    { kind: 'circle', center: xy(x + 7, y), radiusPt: 1.3, fill: 'black' },
    { kind: 'circle', center: xy(x, y + 3), radiusPt: 7.6, fromDeg: 23, toDeg: 157, pen: 'medium' },
  ])
}

/**
 * Switch in a level wire, its jaw on the side that stays under voltage while it is open and its hinge on the load side.
 *
 * @param x Its middle.
 * @source IEEE 315 (form from memory)
 */
export function switchSymbol(x: number, y: number, live: 'left' | 'right'): Primitive[] {
  return live === 'left' ? openBlade(x + 8, x - 8, y) : openBlade(x - 8, x + 8, y)
}

/** Switch of a control line in a box of its own, 32 pt wide. */
export function boxedSwitch(x: number, y: number): Primitive[] {
  return [
    { kind: 'rectangle', x: x - 16, y: y - 11, width: 32, height: 18, pen: 'medium', fill: 'white' },
    line(x - 16, y, x + 16, y),
    ...switchSymbol(x, y, 'left'),
  ]
}

/** Converter of direct current: a square cut from corner to corner, direct current on both sides. x is its left. */
export function converterSymbol(x: number, y: number): Primitive[] {
  return [
    { kind: 'rectangle', x, y: y - 9, width: 18, height: 18, pen: 'medium', fill: 'white' },
    line(x, y + 9, x + 18, y - 9),
    ...[
      [x + 2, y - 6],
      [x + 10, y + 4],
    ].flatMap(([from = 0, at = 0]) => [
      line(from, at, from + 6, at),
      line(from, at + 2.4, from + 6, at + 2.4, { dash: 'hidden' }),
    ]),
  ]
}

/** Shutdown unit behind modules: a switch that a control line opens, in a box. x is its left. */
export function shutdownUnitSymbol(x: number, y: number): Primitive[] {
  return [
    { kind: 'rectangle', x, y: y - 9, width: 18, height: 18, pen: 'medium', fill: 'white' },
    line(x, y, x + 18, y, { pen: 'medium' }),
    ...openBlade(x + 14, x + 4, y),
  ]
}

/**
 * Switch and fuse in a level wire, the switch on the live side, so that opening it makes the fuse dead.
 *
 * @param x Middle of the two.
 * @param live Side from which the wire stays under voltage while the switch is open.
 * @source NEC 240.40
 */
export function fusedSwitchSymbol(x: number, y: number, live: 'left' | 'right'): Primitive[] {
  const towards = live === 'left' ? -1 : 1
  const fuseX = Math.min(x - towards * 5, x - towards * 19)
  return asSymbol<Primitive>('FUSED-SWITCH', xy(x, y), [
    ...openBlade(x - towards * 2, x + towards * 14, y),
    { kind: 'rectangle', x: fuseX, y: y - 3, width: 14, height: 6, pen: 'thin', fill: 'white' },
    line(fuseX, y, fuseX + 14, y),
  ])
}

/** A blade that hangs open from its hinge and would close on its jaw. */
function openBlade(hingeX: number, jawX: number, y: number): Primitive[] {
  const towards = Math.sign(jawX - hingeX)
  return asSymbol<Primitive>('SWITCH', xy(hingeX, y), [
    {
      kind: 'rectangle',
      x: Math.min(hingeX, jawX),
      y: y - 1.5,
      width: Math.abs(jawX - hingeX),
      height: 3,
      fill: 'white',
    },
    { kind: 'circle', center: xy(hingeX, y), radiusPt: 1.5, pen: 'thin', fill: 'white' },
    { kind: 'circle', center: xy(jawX, y), radiusPt: 1.5, pen: 'thin', fill: 'white' },
    line(hingeX + towards, y - 1, jawX - 2 * towards, y - 8, { pen: 'medium' }),
  ])
}

/** Junction box on a wire. x and y are its middle. */
export function junctionBox(x: number, y: number, width = 18): Primitive[] {
  return [
    { kind: 'rectangle', x: x - width / 2, y: y - 7, width, height: 14, pen: 'medium', fill: 'white' },
    label(x, y, 'JB', { sizePt: TYPE_PT.small, align: 'center', valign: 'middle' }),
  ]
}

/** Round meter. x and y are its middle. */
export function meterSymbol(x: number, y: number): Primitive[] {
  return asSymbol<Primitive>('METER', xy(x, y), [
    { kind: 'circle', center: xy(x, y), radiusPt: 11, pen: 'medium', fill: 'white' },
    label(x, y, 'M', { face: 'bold', sizePt: TYPE_PT.head, align: 'center', valign: 'middle' }),
  ])
}

/** Connection to earth, hanging from a point. */
export function earthSymbol(x: number, y: number): Primitive[] {
  return asSymbol<Primitive>('GROUND', xy(x, y), [
    line(x, y, x, y + 8),
    line(x - 8, y + 8, x + 8, y + 8, { pen: 'medium' }),
    line(x - 5, y + 11, x + 5, y + 11, { pen: 'medium' }),
    line(x - 2, y + 14, x + 2, y + 14, { pen: 'medium' }),
  ])
}

/** Tag of a conductor on its wire: in a circle, or in a box where it has more than two characters. */
export function tagSymbol(x: number, y: number, tag: string): Primitive[] {
  if (tag.length > 2) return tagList(x, y, tag)
  return onLayer<Primitive>('symbol', [
    { kind: 'circle', center: xy(x, y), radiusPt: 6.6, pen: 'thin', fill: 'white' },
    label(x, y, tag, { sizePt: TYPE_PT.small, face: 'bold', align: 'center', valign: 'middle' }),
  ])
}

/** Width of the circle or box of a tag, points. */
export function tagWidthPt(tag: string): number {
  return tag.length > 2 ? textWidthPt(tag, TYPE_PT.small, 'bold') + 6 : 13.2
}

/** Several tags of conductors in one box on a wire. */
export function tagList(x: number, y: number, text: string): Primitive[] {
  const width = textWidthPt(text, TYPE_PT.small, 'bold') + 6
  return onLayer<Primitive>('symbol', [
    { kind: 'rectangle', x: x - width / 2, y: y - 6.6, width, height: 13.2, pen: 'thin', fill: 'white' },
    label(x, y, text, { sizePt: TYPE_PT.small, face: 'bold', align: 'center', valign: 'middle' }),
  ])
}

/** Box with a name above it. */
export function namedBox(x: number, y: number, width: number, height: number, dashed = false): Primitive {
  return { kind: 'rectangle', x, y, width, height, pen: 'medium', dash: dashed ? 'dashed' : 'solid' }
}
