import { describe, expect, test } from 'vitest'
import { drawPacket, flattenSheet, type Mark, type PaperName, type Sheet } from '../../src/drawings/index.js'
import {
  boundsOf,
  cornersOf,
  figuresOverlap,
  missingGlyphs,
  textFigure,
  type Box,
  type TextMark,
  type XY,
} from '../../src/drawings/model/index.js'
import type { Project } from '../../src/project/index.js'
import { hipHouse, longNames, manyBranches, microHouse, noCombiner, packetInput, stringHouse } from './demo-packet.js'
import { knownService, longTree, supplyTree, threeLevels } from './tree-houses.js'

/** Least height of type, points: "10 point or larger" in the permit guide of a large city (read); on letter paper capitals of 0.08 in. */
const LEAST_TEXT_PT = { '11x17': 10, A3: 10, letter: (0.08 * 72 * 2048) / 1493 } as const

const demos: readonly (readonly [string, () => Project])[] = [
  ['two branches and a combiner', microHouse],
  ['three planes with hip and valley, four branches', hipHouse],
  ['strings and a supply-side connection', stringHouse],
  ['very long names', longNames],
  ['fifteen branches', manyBranches],
  ['three branches without combiner', noCombiner],
  ['a known service', knownService],
  ['three levels of panels, a tap and older sources', threeLevels],
  ['panels and sources of long names', longTree],
  ['two panels at the service, strings ahead of them', supplyTree],
]
const sizes: readonly PaperName[] = ['11x17', 'letter', 'A3']

const isText = (mark: Mark): mark is TextMark => mark.kind === 'text'

/** Every straight piece of a figure. */
function strokesOf(mark: Mark): [XY, XY][] {
  if (mark.kind === 'text' || mark.kind === 'circle' || mark.pen === undefined) return []
  const points =
    mark.kind === 'path' ? mark.points : cornersOf({ x: mark.x, y: mark.y, width: mark.width, height: mark.height })
  const closed = mark.kind === 'rectangle' || mark.closed
  return points.flatMap((point, index): [XY, XY][] => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined)
    return next === undefined ? [] : [[point, next]]
  })
}

/** Whether a filled figure hides what was drawn before it under all of a text. */
function hides(mark: Mark, text: readonly XY[]): boolean {
  if (mark.kind === 'text' || mark.fill === undefined) return false
  if (mark.kind === 'circle')
    return text.every(({ x, y }) => Math.hypot(x - mark.center.x, y - mark.center.y) <= mark.radius)
  if (mark.kind === 'path') return text.every((point) => isInside(point, mark.points))
  return text.every(({ x, y }) => x >= mark.x && x <= mark.x + mark.width && y >= mark.y && y <= mark.y + mark.height)
}

/** Whether a point lies on the same side of every edge of a convex figure. */
function isInside({ x, y }: XY, figure: readonly XY[]): boolean {
  const sides = figure.map((a, index) => {
    const b = figure[(index + 1) % figure.length] ?? a
    return Math.sign((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x))
  })
  return figure.length > 2 && (sides.every((side) => side >= 0) || sides.every((side) => side <= 0))
}

function outsideFrame(sheet: Sheet, marks: readonly Mark[]): string[] {
  const { x, y, width, height } = sheet.frame
  const out = (point: XY): boolean =>
    point.x < x - 0.8 || point.y < y - 0.8 || point.x > x + width + 0.8 || point.y > y + height + 0.8
  return marks.flatMap((mark) => {
    const points =
      mark.kind === 'text'
        ? textFigure(mark)
        : mark.kind === 'path'
          ? mark.points
          : mark.kind === 'circle'
            ? [
                { x: mark.center.x - mark.radius, y: mark.center.y - mark.radius },
                { x: mark.center.x + mark.radius, y: mark.center.y + mark.radius },
              ]
            : [
                { x: mark.x, y: mark.y },
                { x: mark.x + mark.width, y: mark.y + mark.height },
              ]
    return points.some(out)
      ? [mark.kind === 'text' ? mark.text : `${mark.kind} ${JSON.stringify(points.find(out))}`]
      : []
  })
}

function textsOverText(texts: readonly TextMark[]): string[] {
  const boxes = texts.map((text) => ({ text, figure: textFigure(text), box: boundsOf(textFigure(text)) }))
  return boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => {
      if (one.text.block === other.text.block || !near(one.box, other.box)) return []
      return figuresOverlap(one.figure, other.figure, 0.3) ? [`${one.text.text} / ${other.text.text}`] : []
    }),
  )
}

const near = (a: Box, b: Box): boolean =>
  a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height

/** Texts without a white ground that a line runs through; the box of the letters only, without room for descenders. */
function linesThroughText(marks: readonly Mark[]): string[] {
  const figures = marks
    .filter((mark) => !isText(mark))
    .map((mark) => ({ mark, lines: strokesOf(mark).map((line) => ({ line, box: boundsOf(line) })) }))
  return marks.filter(isText).flatMap((text) => {
    if (text.halo || text.text.trim() === '') return []
    const figure = textFigure(text, -0.12 * text.sizePt)
    const box = boundsOf(figure)
    const ground = figures.findLastIndex(({ mark }) => hides(mark, figure))
    const crossed = figures
      .slice(ground + 1)
      .some(({ lines }) => lines.some((each) => near(box, each.box) && figuresOverlap(figure, each.line, 0.05)))
    return crossed ? [text.text] : []
  })
}

describe.each(demos)('%s', (_, make) => {
  const input = packetInput(make())
  describe.each(sizes)('on %s', (size) => {
    const sheets = drawPacket({ ...input, size, draft: true })
    const flats = sheets.map((sheet) => ({ sheet, ...flattenSheet(sheet) }))

    test('no text lies over another text', () => {
      expect(
        flats.flatMap(({ sheet, marks, collisions }) =>
          [...collisions, ...textsOverText(marks.filter(isText))].map((each) => `${sheet.id}: ${each}`),
        ),
      ).toEqual([])
    })

    test('everything lies inside the frame', () => {
      expect(
        flats.flatMap(({ sheet, marks }) => outsideFrame(sheet, marks).map((each) => `${sheet.id}: ${each}`)),
      ).toEqual([])
    })

    test('no line runs through a text', () => {
      expect(
        flats.flatMap(({ sheet, marks }) => linesThroughText(marks).map((each) => `${sheet.id}: ${each}`)),
      ).toEqual([])
    })

    test('no text is smaller than what is asked for its paper, and the font has every character', () => {
      const texts = flats.flatMap(({ marks }) => marks.filter(isText))
      expect(Math.min(...texts.map((text) => text.sizePt))).toBeGreaterThan(LEAST_TEXT_PT[size] - 1e-9)
      expect(texts.flatMap((text) => missingGlyphs(text.text))).toEqual([])
    })

    test('sheet numbers are unique and follow the National CAD Standard', () => {
      const ids = sheets.map((sheet) => sheet.id)
      expect(new Set(ids).size).toBe(ids.length)
      // One discipline letter, one digit for the type of sheet, two for the sequence; continuations carry a suffix.
      for (const id of ids) expect(id).toMatch(/^[GCASE]-[0156]\d\d(-\d+)?$/)
    })
  })
})
