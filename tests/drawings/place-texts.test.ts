import { describe, expect, test } from 'vitest'
import { doesNotFit, flattenSheet, type Sheet } from '../../src/drawings/index.js'
import { enlarged, measureSheet, overprints } from '../../src/drawings/layout/index.js'
import { xy, type Primitive } from '../../src/drawings/model/index.js'
import { readSheet } from './read-sheet.js'

const sheet = (paper: readonly Primitive[], size = 400): Sheet => ({
  id: 'T-001',
  title: 'Test',
  size: { name: 'test', widthPt: size, heightPt: size },
  frame: { x: 10, y: 10, width: size - 20, height: size - 20 },
  scaleNote: 'None',
  viewports: [],
  paper,
})
const word = (x: number, y: number, text: string, more: Partial<Primitive & { kind: 'text' }> = {}): Primitive => ({
  kind: 'text',
  at: xy(x, y),
  text,
  sizePt: 10,
  align: 'center',
  valign: 'middle',
  halo: true,
  ...more,
})
const stroke = (x1: number, y1: number, x2: number, y2: number): Primitive => ({
  kind: 'path',
  points: [xy(x1, y1), xy(x2, y2)],
  pen: 'thin',
})
const area = (x: number, y: number, width: number, height: number): Primitive => ({
  kind: 'rectangle',
  x,
  y,
  width,
  height,
  pen: 'thin',
  fill: 'mid',
})
/** A wall of words round a place, so that no line can leave it. */
const wall = (x: number, y: number, half: number): Primitive[] =>
  [0, 1, 2, 3].flatMap((side) =>
    Array.from({ length: 12 }, (_, index) => {
      const along = -half + (index * 2 * half) / 11
      const [dx = 0, dy = 0] =
        [
          [along, -half],
          [half, along],
          [along, half],
          [-half, along],
        ][side] ?? []
      return word(x + dx, y + dy, 'MM', { halo: false })
    }),
  )

describe('places of texts', () => {
  test('a text leaves a line, hatch is only its second choice, and a white ground lies on hatch alone', () => {
    const hatch: Primitive = {
      kind: 'path',
      points: [xy(60, 60), xy(340, 60), xy(340, 190), xy(60, 190)],
      closed: true,
      hatch: { angleDeg: 45, gapPt: 5 },
    }
    const line = stroke(60, 100, 340, 100)
    const shifts = [xy(0, 0), xy(0, 20), xy(0, 120)]
    const on = readSheet(sheet([hatch, line, word(200, 100, 'NAME', { shifts: shifts.slice(0, 2) })]))
    expect(on.said[0]?.middle.y).toBeCloseTo(120, 0)
    expect(on.said[0]?.lines[0]?.halo).toBe(true)
    const off = readSheet(sheet([line, word(200, 100, 'NAME', { shifts })]))
    expect(off.said[0]?.lines[0]?.halo).toBe(false)
  })

  test('a text stays in the area that it names rather than far from it, without a ground that hides it', () => {
    const read = readSheet(sheet([area(100, 100, 120, 40), word(160, 120, 'DRIVE', { shifts: [xy(0, 0), xy(0, 60)] })]))
    expect(read.said[0]?.middle).toEqual({ x: expect.closeTo(160, 0), y: expect.closeTo(120, 0) })
    expect(read.said[0]?.lines[0]?.halo).toBe(false)
  })

  test('a text that has no place stands aside with a line from a dot; the line runs through no text', () => {
    const modules = Array.from({ length: 12 }, (_, index) => area(100 + 12 * index, 150, 12, 20))
    const made = sheet([...modules, word(172, 160, 'ARRAY', { shifts: [xy(0, 0)] }), word(172, 130, 'OTHER')])
    const read = readSheet(made)
    const dot = read.circles.find(({ radius }) => radius === 1.3)
    expect(dot?.center).toEqual(xy(172, 160))
    expect(overprints(measureSheet(made))).toEqual([])
    const lines = read.paths.filter(({ pen, points: [from] }) => pen === 'hair' && from?.x === 172)
    expect(lines).toHaveLength(1)
  })

  test('what lies close together is named by lines, which do not cross', () => {
    const at = [0, 1, 2, 3, 4].map((index) => xy(200, 180 + 9 * index))
    const made = sheet(
      at.flatMap(({ x, y }, index): Primitive[] => [
        { kind: 'circle', center: xy(x, y), radiusPt: 3, pen: 'thin', fill: 'black' },
        word(x, y, `E${index}`, { aside: true, shifts: [] }),
      ]),
    )
    const { paths } = readSheet(made)
    expect(overprints(measureSheet(made))).toEqual([])
    expect(paths).toHaveLength(5)
    const side = (a: { x: number; y: number }, b: typeof a, c: typeof a): number =>
      Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))
    for (const [
      index,
      {
        points: [a, b],
      },
    ] of paths.entries()) {
      for (const {
        points: [c, d],
      } of paths.slice(index + 1)) {
        if (a === undefined || b === undefined || c === undefined || d === undefined) throw new Error('no line')
        expect(side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)).toBe(false)
      }
    }
  })

  test('a text that no line can reach is a number in a hexagon, told in a list on the sheet', () => {
    const made = sheet([...wall(200, 150, 40), word(200, 150, 'A LONG NAME OF A HOUSE', { shifts: [xy(0, 0)] })])
    const read = readSheet(made)
    const hexagons = read.paths.filter(({ points, closed }) => closed && points.length === 6)
    expect(hexagons).toHaveLength(2)
    // The wall is made of words that touch each other.
    expect(overprints(measureSheet(made)).filter((each) => !each.endsWith('MM / MM'))).toEqual([])
    expect(flattenSheet(made).collisions.filter((text) => text !== 'MM')).toEqual([])
    const numbers = read.marks.filter((mark) => mark.kind === 'text' && mark.text === '1')
    expect(numbers).toHaveLength(2)
    expect(read.words).toContain('A LONG NAME OF A HOUSE')
  })

  test('what has no place on the whole sheet is told', () => {
    const full = Array.from({ length: 30 }, (_, index) =>
      word(60, 14 + 3.2 * index, 'MMMMMMMMM', { halo: false, sizePt: 10 }),
    )
    const made = sheet([...full, word(60, 60, 'LOST', { shifts: [xy(0, 0)] })], 120)
    const { collisions } = flattenSheet(made)
    expect(collisions).toContain('LOST')
    const [finding] = doesNotFit([made])
    expect(finding).toMatchObject({ severity: 'error', id: 'drawings.does-not-fit', where: 'drawings' })
    expect(finding?.message).toContain('sheet T-001 on test paper has no room for ')
    expect(doesNotFit([sheet([word(60, 60, 'FOUND')])])).toEqual([])
  })
})

describe('the measure of a sheet', () => {
  const found = (paper: readonly Primitive[]): string[] => overprints(measureSheet(sheet(paper)))
  test('finds text over text, over lines and over areas, out of the frame, and sign over sign', () => {
    expect(found([word(100, 100, 'ONE'), word(110, 104, 'TWO')])).toEqual(['text over text: ONE / TWO'])
    expect(found([word(100, 100, 'ONE'), stroke(50, 100, 150, 100)])).toEqual(['line and text: ONE (thin line)'])
    expect(found([word(12, 100, 'ONE', { halo: false })])).toEqual(['out of the frame: ONE'])
    const dot = (x: number): Primitive => ({ kind: 'circle', center: xy(x, 50), radiusPt: 3, pen: 'thin' })
    expect(found([dot(100), dot(104)])).toHaveLength(1)
    expect(found([dot(100), dot(107)])).toEqual([])
  })

  test('does not mind what a filled figure hides, nor words within an area', () => {
    const line = stroke(50, 100, 150, 100)
    const cover: Primitive = { kind: 'rectangle', x: 70, y: 80, width: 60, height: 40, fill: 'white' }
    expect(found([line, cover, word(100, 100, 'ONE')])).toEqual([])
    expect(found([area(50, 80, 120, 40), word(100, 100, 'ONE')])).toEqual([])
  })

  test('tells the least capitals and the share that is used', () => {
    // A capital of this font is 1493 of 2048 of its height of type.
    const measure = measureSheet(sheet([word(100, 100, 'ONE', { sizePt: 10 }), word(100, 200, 'TWO', { sizePt: 9 })]))
    expect(measure.leastCapitalIn).toBeCloseTo((9 * 1493) / 2048 / 72, 9)
    expect(measure.fill).toBeLessThan(0.1)
    expect(measureSheet(sheet([area(10, 10, 380, 380)])).fill).toBe(1)
    // Half of the sheet and a finger's width more.
    const half = measureSheet(sheet([area(10, 10, 190, 380)])).fill
    expect(half).toBeGreaterThan(0.5)
    expect(half).toBeLessThan(0.6)
  })
})

describe('what is laid out small and printed large', () => {
  test('grows in every size on paper, but for its pens', () => {
    const by = 10 / 6.75
    expect(enlarged(word(10, 20, 'A', { sizePt: 6.75, shifts: [xy(0, 9)], maxWidthPt: 30 }), by)).toMatchObject({
      at: { x: 10 * by, y: 20 * by },
      sizePt: 10,
      shifts: [{ x: 0, y: 9 * by }],
      maxWidthPt: 30 * by,
    })
    expect(enlarged({ kind: 'circle', center: xy(1, 2), radiusPt: 3, pen: 'thin' }, 2)).toEqual({
      kind: 'circle',
      center: { x: 2, y: 4 },
      radiusPt: 6,
      pen: 'thin',
    })
    expect(
      enlarged({ kind: 'dimension', from: xy(0, 0), to: xy(9, 0), offsetPt: 5, text: '9', between: [xy(3, 0)] }, 2),
    ).toMatchObject({ to: { x: 18, y: 0 }, offsetPt: 10, sizePt: 14, between: [{ x: 6, y: 0 }] })
    expect(enlarged({ kind: 'leader', tip: xy(1, 1), reachPt: xy(5, 6), text: 'n' }, 2)).toMatchObject({
      tip: { x: 2, y: 2 },
      reachPt: { x: 10, y: 12 },
      sizePt: 14,
    })
  })
})
