import { describe, expect, test } from 'vitest'
import { flattenSheet, renderSvg, type Sheet } from '../../src/drawings/index.js'
import {
  flowBlocks,
  largestScale,
  SITE_SCALES,
  DETAIL_SCALES,
  ARCHITECT_SCALES,
  counted,
  plainNumber,
  type Block,
} from '../../src/drawings/layout/index.js'
import {
  figuresOverlap,
  textFigure,
  textWidthPt,
  wrapText,
  xy,
  type Primitive,
} from '../../src/drawings/model/index.js'
import { hatchLines } from '../../src/drawings/model/hatch-lines.js'
import { spread } from '../../src/drawings/sheets/one-line-job.js'
import { noteColumn } from '../../src/drawings/sheets/note-column.js'
import { clippedTo, uprightInside } from '../../src/drawings/sheets/plane-figures.js'
import { amount } from '../../src/drawings/sheets/amount.js'
import type { WireTag } from '../../src/drawings/diagram/wire-tags.js'
import { ptPerFt, readSheet, type Spot, type TextMark } from './read-sheet.js'

const sheet = (paper: readonly Primitive[], primitives: readonly Primitive[] = []): Sheet => ({
  id: 'T-001',
  title: 'Test',
  size: { name: 'test', widthPt: 400, heightPt: 300 },
  frame: { x: 0, y: 0, width: 400, height: 300 },
  scaleNote: 'None',
  // 10 pt for a foot; the origin lies 50 pt from the left and 200 pt down.
  viewports: [{ scalePtPerFt: 10, originPt: xy(50, 200), box: { x: 0, y: 0, width: 400, height: 300 }, primitives }],
  paper,
})
const marksOf = (paper: readonly Primitive[], inFeet: readonly Primitive[] = []) =>
  flattenSheet(sheet(paper, inFeet)).marks
const textOf = (primitive: Primitive): TextMark => {
  const mark = marksOf([primitive]).find((each) => each.kind === 'text')
  if (mark?.kind !== 'text') throw new Error('no text')
  return mark
}
const at = (points: readonly Spot[]): number[][] => points.map(({ x, y }) => [x, y])

describe('figures in feet', () => {
  test('lie at the scale, up is up', () => {
    const [path, box, circle] = marksOf(
      [],
      [
        { kind: 'path', points: [xy(0, 0), xy(3, 4)], pen: 'thin' },
        { kind: 'rectangle', x: 1, y: 2, width: 3, height: 4, pen: 'thin' },
        { kind: 'circle', center: xy(2, 1), radius: 0.5, pen: 'thin' },
      ],
    )
    expect(path).toMatchObject({ points: [xy(50, 200), xy(80, 160)], dash: 'solid', color: 'black' })
    expect(box).toMatchObject({ x: 60, y: 140, width: 30, height: 40 })
    expect(circle).toMatchObject({ center: xy(70, 190), radius: 5 })
    expect(marksOf([], [{ kind: 'circle', center: xy(2, 1), radiusPt: 3, pen: 'thin' }])[0]).toMatchObject({
      radius: 3,
    })
  })

  test('an arc runs counter-clockwise from its first angle to its last', () => {
    const [arc] = marksOf([{ kind: 'circle', center: xy(100, 100), radiusPt: 10, fromDeg: 0, toDeg: 90, pen: 'thin' }])
    if (arc?.kind !== 'path') throw new Error('no arc')
    expect([arc.points[0], arc.points.at(-1), arc.closed]).toEqual([xy(110, 100), xy(100, 90), false])
    for (const { x, y } of arc.points) expect(Math.hypot(x - 100, y - 100)).toBeCloseTo(10, 2)
    expect(arc.points.length).toBeGreaterThanOrEqual(16)
  })

  test('a hatched figure: its ground, the lines, its outline, in this order', () => {
    const [ground, line, ...rest] = marksOf([
      {
        kind: 'rectangle',
        x: 10,
        y: 10,
        width: 20,
        height: 10,
        pen: 'heavy',
        fill: 'light',
        hatch: { angleDeg: 90, gapPt: 5 },
      },
    ])
    const outline = rest.at(-1)
    expect([
      ground?.kind === 'path' && [ground.fill, ground.pen],
      line?.kind === 'hatch' && [line.pen, line.color],
    ]).toEqual([
      ['light', undefined],
      ['hair', 'grey'],
    ])
    expect(outline).toMatchObject({ kind: 'path', pen: 'heavy', closed: true })
    expect(outline?.kind === 'path' && outline.fill).toBe(undefined)
    const bare = marksOf([
      { kind: 'path', points: [xy(0, 0), xy(9, 0), xy(9, 9)], closed: true, hatch: { angleDeg: 0, gapPt: 4 } },
    ])
    expect(bare.map((mark) => mark.kind)).toEqual(['hatch'])
  })

  test('hatch lines run at their angle, as far apart as they should, crosswise when wanted', () => {
    const square = [xy(0, 0), xy(40, 0), xy(40, 40), xy(0, 40)]
    for (const angleDeg of [0, 30, 45, 90, 135]) {
      const lines = hatchLines(square, { angleDeg, gapPt: 5 })
      const [ux, uy] = [Math.cos((angleDeg * Math.PI) / 180), -Math.sin((angleDeg * Math.PI) / 180)]
      const levels = lines.map(([a, b]) => {
        const length = Math.hypot(b.x - a.x, b.y - a.y)
        if (length > 1e-6) expect(Math.abs(((b.x - a.x) * ux + (b.y - a.y) * uy) / length)).toBeCloseTo(1, 6)
        for (const { x, y } of [a, b]) expect(Math.min(x, y) > -1e-6 && Math.max(x, y) < 40 + 1e-6).toBe(true)
        return a.y * ux - a.x * uy
      })
      for (const [index, level] of levels.slice(1).entries()) expect(level - (levels[index] ?? 0)).toBeCloseTo(5, 6)
      const crossed = hatchLines(square, { angleDeg, gapPt: 5, cross: true })
      expect(crossed).toEqual([...lines, ...hatchLines(square, { angleDeg: angleDeg + 90, gapPt: 5 })])
    }
  })

  test('parts of polygons: inside a convex one, and along an upright line', () => {
    const square = [xy(0, 0), xy(10, 0), xy(10, 10), xy(0, 10)]
    const triangle = [xy(-5, 5), xy(5, -5), xy(15, 5)]
    const area = (points: readonly Spot[]): number =>
      Math.abs(
        points.reduce(
          (sum, a, index) =>
            sum +
            (a.x * (points[(index + 1) % points.length] ?? a).y - (points[(index + 1) % points.length] ?? a).x * a.y) /
              2,
          0,
        ),
      )
    // The triangle above the square's foot, 10 wide there and 20 at its top of 5: 75, less the two corners outside of 12.5.
    for (const clip of [triangle, triangle.toReversed()]) expect(area(clippedTo(square, clip))).toBeCloseTo(50, 9)
    expect(clippedTo(square, [xy(20, 20), xy(30, 20), xy(30, 30)])).toEqual([])
    expect(area(clippedTo(square, [xy(-1, -1), xy(11, -1), xy(11, 11), xy(-1, 11)]))).toBeCloseTo(100, 9)
    const notched = [xy(0, 0), xy(10, 0), xy(10, 10), xy(5, 4), xy(0, 10)]
    expect(uprightInside(notched, 5).map((piece) => at(piece))).toEqual([
      [
        [5, 0],
        [5, 4],
      ],
    ])
    expect(
      uprightInside([xy(0, 0), xy(8, 0), xy(8, 2), xy(2, 2), xy(2, 4), xy(8, 4), xy(8, 6), xy(0, 6)], 5).map((piece) =>
        at(piece),
      ),
    ).toEqual([
      [
        [5, 0],
        [5, 2],
      ],
      [
        [5, 4],
        [5, 6],
      ],
    ])
    expect(uprightInside(notched, 11)).toEqual([])
  })
})

describe('dimensions', () => {
  const drawn = (change: object = {}, inFeet = true) => {
    const primitive = {
      kind: 'dimension',
      from: xy(0, 0),
      to: xy(20, 0),
      offsetPt: 15,
      text: '20\'-0"',
      ...change,
    } as Primitive
    return readSheet(inFeet ? sheet([], [primitive]) : sheet([primitive]))
  }

  test('lie on the left of the way from end to end when the distance is positive, on the right when not', () => {
    for (const [offset, y] of [
      [15, 185],
      [-15, 215],
    ] as const) {
      const { paths, said } = drawn({ offsetPt: offset })
      const [line, first, second, ...extensions] = paths
      expect(at(line?.points ?? [])).toEqual([
        [47, y],
        [253, y],
      ])
      for (const [slash, x] of [
        [first, 50],
        [second, 250],
      ] as const) {
        const [a, b] = slash?.points ?? []
        expect([((a?.x ?? 0) + (b?.x ?? 0)) / 2, ((a?.y ?? 0) + (b?.y ?? 0)) / 2]).toEqual([x, y])
        // At 45 degrees, rising to the right.
        expect((b?.x ?? 0) - (a?.x ?? 0)).toBeCloseTo(-((b?.y ?? 0) - (a?.y ?? 0)), 3)
        expect(slash?.pen).toBe('medium')
      }
      // Extension lines leave a gap of 2 pt at the thing and pass the line by 3 pt.
      const sign = Math.sign(200 - y)
      expect(extensions.map(({ points }) => at(points))).toEqual([
        [
          [50, 200 - 2 * sign],
          [50, y - 3 * sign],
        ],
        [
          [250, 200 - 2 * sign],
          [250, y - 3 * sign],
        ],
      ])
      expect(said[0]?.middle.x).toBeCloseTo(150, 1)
      // The words stand over the line, clear of it.
      expect(said[0]?.middle.y).toBeCloseTo(y - 0.62 * 7 - 1.5, 1)
      expect(said[0]?.lines[0]).toMatchObject({ halo: false, sizePt: 7, rotationDeg: 0 })
    }
    expect(drawn({ offsetPt: 4 }).paths).toHaveLength(3)
    expect(drawn({ offsetPt: -4.5 }).paths).toHaveLength(5)
  })

  test('are read from below or from the right, whichever way they run', () => {
    const turn = (to: Spot): number => drawn({ from: xy(0, 0), to }).said[0]?.lines[0]?.rotationDeg ?? Number.NaN
    expect(turn(xy(10, 0))).toBe(0)
    expect(turn(xy(-4, 0))).toBe(0)
    expect(turn(xy(0, 10))).toBe(90)
    expect(drawn({ from: xy(0, 10), to: xy(0, 0) }).said[0]?.lines[0]?.rotationDeg).toBe(90)
    expect(turn(xy(5, 5))).toBeCloseTo(45, 6)
    expect(drawn({ from: xy(5, 5), to: xy(0, 0) }).said[0]?.lines[0]?.rotationDeg).toBeCloseTo(45, 6)
    expect(drawn({ from: xy(0, 5), to: xy(5, 0) }).said[0]?.lines[0]?.rotationDeg).toBeCloseTo(-45, 6)
  })

  test('words that are longer than the line stand beside it: over it, under it, beyond either end', () => {
    const wide = textWidthPt('12\'-6 1/2"', 7)
    const short = { kind: 'dimension', from: xy(100, 100), to: xy(110, 100), offsetPt: 0, text: '12\'-6 1/2"' } as const
    const places = (taken: readonly Primitive[]): number[] => {
      const { said } = readSheet(sheet([short, ...taken]))
      const own = said.find(({ text }) => text === short.text)
      return [Math.round((own?.middle.x ?? 0) * 10) / 10, Math.round((own?.middle.y ?? 0) * 10) / 10]
    }
    const block = (x: number, y: number): Primitive => ({
      kind: 'text',
      at: xy(x, y),
      text: 'XXXX',
      sizePt: 7,
      align: 'center',
      valign: 'middle',
    })
    const beside = Math.round((5 + wide / 2 + 6) * 10) / 10
    const ends = [Math.round((105 + beside) * 10) / 10, Math.round((105 - beside) * 10) / 10] as const
    // Beyond the ends, then over and under the line at distances at which it is clear of the slashes.
    expect(places([])).toEqual([ends[0], 100])
    const right = block(105 + beside, 100)
    expect(places([right])).toEqual([ends[1], 100])
    const all = [right, block(105 - beside, 100)]
    const levels = [0.62, 1.85, 3.05, 4.25].map((level) => Math.round((level * 7 + 1.5) * 10) / 10)
    const taken = [...all]
    for (const away of levels) {
      for (const y of [100 - away, 100 + away]) {
        const [x, found = 0] = places(taken)
        expect(x).toBe(105)
        expect(Math.abs(found - y)).toBeLessThan(0.11)
        taken.push(block(105, y))
      }
    }
    // Where none of them is free, what may be left out is, and what may not is a keyed note.
    const optional = flattenSheet(sheet([{ ...short, optional: true }, ...taken]))
    expect(optional.collisions).toEqual([])
    expect(optional.marks.some((mark) => mark.kind === 'text' && mark.text === short.text)).toBe(false)
    const keyed = readSheet(sheet([short, ...taken]))
    expect(keyed.paths.filter(({ points, closed }) => closed && points.length === 6)).toHaveLength(2)
    expect(keyed.words).toContain(short.text)
    expect(flattenSheet(keyed.sheet).collisions).toEqual([])
  })
})

describe('notes with a line', () => {
  test('knee, end, mark and words', () => {
    const leader = (x: number, end: 'dot' | 'arrow') =>
      readSheet(sheet([{ kind: 'leader', tip: xy(100, 100), reachPt: xy(x, -30), text: 'note', end }]))
    const right = leader(40, 'dot')
    expect(at(right.paths[0]?.points ?? [])).toEqual([
      [100, 100],
      [132, 70],
      [140, 70],
    ])
    expect(right.circles[0]).toMatchObject({ center: xy(100, 100), radius: 1.3, fill: 'black' })
    expect(right.said[0]?.at.x).toBe(143)
    const left = leader(-40, 'arrow')
    expect(at(left.paths[0]?.points ?? [])).toEqual([
      [100, 100],
      [68, 70],
      [60, 70],
    ])
    const head = left.paths[1]
    expect([head?.closed, head?.fill, head?.points[0]]).toEqual([true, 'black', xy(100, 100)])
    // Barbs of 6 pt lie towards the knee.
    for (const { x, y } of head?.points.slice(1) ?? []) {
      expect(Math.hypot(x - 100, y - 100)).toBeCloseTo(6, 2)
      expect(x < 100 && y < 100).toBe(true)
    }
    const [line] = left.said[0]?.lines ?? []
    expect((line?.at.x ?? 0) + (line?.widthPt ?? 0)).toBeCloseTo(57, 2)
    expect(left.said[0]?.middle.y).toBeCloseTo(70, 1)
  })

  test('in a column: in the order of what they point at, without a line over another, inside it', () => {
    const notes = [40, 220, 90].map((y, index) => ({ tip: xy(60, y), text: `note ${index} `.repeat(6).trim() }))
    for (const side of ['right', 'left'] as const) {
      const column = { x: side === 'right' ? 200 : 190, top: 30, bottom: 240, widthPt: 60, side }
      const read = readSheet(sheet(noteColumn(notes, column)))
      const words = read.said.toSorted((a, b) => a.middle.y - b.middle.y).map(({ text }) => text.slice(0, 6))
      expect(words).toEqual(['note 0', 'note 2', 'note 1'])
      for (const { lines } of read.said)
        for (const { at: place, widthPt } of lines) {
          expect(place.y > 30 && place.y < 240).toBe(true)
          expect(side === 'right' ? place.x : place.x + widthPt).toBeCloseTo(column.x, 1)
          expect(widthPt).toBeLessThanOrEqual(60)
        }
      const ends = read.paths.map(({ points: [tip, , end] }) => [tip?.y ?? 0, end?.y ?? 0, end?.x ?? 0])
      expect(ends.toSorted((a, b) => (a[0] ?? 0) - (b[0] ?? 0))).toEqual(
        ends.toSorted((a, b) => (a[1] ?? 0) - (b[1] ?? 0)),
      )
      for (const [, , x] of ends) expect(x).toBe(side === 'right' ? 197 : 193)
    }
  })
})

describe('lines of text', () => {
  const text = (change: object = {}): Primitive => ({
    kind: 'text',
    at: xy(100, 100),
    text: 'Mount',
    sizePt: 10,
    ...change,
  })
  const width = textWidthPt('Mount', 10)

  test('stand at the left, in the middle or at the right of their place, under, on or over it', () => {
    expect(textOf(text()).at.x).toBe(100)
    expect(textOf(text({ align: 'center' })).at.x).toBeCloseTo(100 - width / 2, 2)
    expect(textOf(text({ align: 'right' })).at.x).toBeCloseTo(100 - width, 2)
    // The box of a line reaches 0.78 above and 0.24 below its baseline.
    expect(textOf(text()).at.y).toBeCloseTo(107.8, 6)
    expect(textOf(text({ valign: 'middle' })).at.y).toBeCloseTo(100 + 7.8 - 5.1, 6)
    expect(textOf(text({ valign: 'bottom' })).at.y).toBeCloseTo(97.6, 6)
    expect(textOf(text())).toMatchObject({ face: 'plain', color: 'black', halo: false, rotationDeg: 0 })
  })

  test('follow each other by 1.22 of their height, and turn about their place', () => {
    const two = marksOf([text({ text: 'one\ntwo' })]).flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
    expect((two[1]?.at.y ?? 0) - (two[0]?.at.y ?? 0)).toBeCloseTo(12.2, 6)
    expect(two[0]?.block).toBe(two[1]?.block)
    const up = textOf(text({ rotationDeg: 90 }))
    // Turned by a quarter to the left the baseline runs up, right of its place.
    expect([up.at.x, up.at.y]).toEqual([107.8, 100])
  })

  test('cover a box from 0.78 above to 0.24 below the baseline, turned as they are, with a margin', () => {
    const boxOf = (rotationDeg: number, margin: number): number[][] =>
      textFigure(textOf(text({ rotationDeg })), margin).map(({ x, y }) => [
        Math.round(x * 10) / 10,
        Math.round(y * 10) / 10,
      ])
    const wide = Math.round((100 + width) * 10) / 10
    expect(boxOf(0, 0)).toEqual([
      [100, 100],
      [wide, 100],
      [wide, 110.2],
      [100, 110.2],
    ])
    // A quarter to the left: the line runs up, its top is at the left.
    const high = Math.round((100 - width) * 10) / 10
    expect(boxOf(90, 0)).toEqual([
      [100, 100],
      [100, high],
      [110.2, high],
      [110.2, 100],
    ])
    expect(boxOf(0, 2)[0]).toEqual([98, 98])
    expect(boxOf(0, 2)[2]).toEqual([Math.round((102 + width) * 10) / 10, 112.2])
  })

  test('break at spaces, and in a word after a mark where there is one', () => {
    const w = (words: string): number => textWidthPt(words, 10)
    expect(wrapText('one two three', 10, 'plain', w('one two') + 0.1)).toEqual(['one two', 'three'])
    expect(wrapText('one two', 10, 'plain', w('one two'))).toEqual(['one two'])
    expect(wrapText('south.lower.row1', 10, 'plain', w('south.lower.ro'))).toEqual(['south.lower.', 'row1'])
    expect(wrapText('abcdefgh', 10, 'plain', w('abcd') + 0.1)).toEqual(['abcd', 'efgh'])
    expect(wrapText('a-b', 10, 'plain', w('a-b'))).toEqual(['a-b'])
    expect(wrapText('one\n\ntwo', 10, 'plain', 100)).toEqual(['one', '', 'two'])
    expect(wrapText('x', 10, 'plain', 0.1)).toEqual(['x'])
    expect(wrapText('a longword', 10, 'plain', w('longw') + 0.1)).toEqual(['a', 'longw', 'ord'])
  })

  test('two that touch do not lie over each other', () => {
    const box = (x: number): Spot[] => [xy(x, 0), xy(x + 10, 0), xy(x + 10, 10), xy(x, 10)]
    expect([
      figuresOverlap(box(0), box(10)),
      figuresOverlap(box(0), box(9.9)),
      figuresOverlap(box(0), box(30)),
    ]).toEqual([false, true, false])
    const diamond = [xy(15, 5), xy(20, 10), xy(15, 15), xy(10, 10)]
    expect(figuresOverlap(box(0), diamond)).toBe(false)
    expect(figuresOverlap(box(4), diamond)).toBe(true)
  })
})

describe('numbers of conductors on a wire', () => {
  const tags = (count: number) =>
    Array.from({ length: count }, (_, index): WireTag => ({
      tag: `${index + 1}`,
      circuits: [],
      inArray: false,
      toBox: false,
    }))
  const numbers = (count: number, from: number, to: number) => readSheet(sheet(spread(tags(count), from, to, 100)))

  test('stand evenly, each in a circle; in one box where they would touch', () => {
    const apart = numbers(2, 100, 145)
    expect(apart.circles.map(({ center, radius }) => [center.x, center.y, radius])).toEqual([
      [115, 100, 6.6],
      [130, 100, 6.6],
    ])
    const tight = numbers(2, 100, 144)
    expect(tight.circles).toEqual([])
    expect(tight.said.map(({ text }) => text)).toEqual(['1, 2'])
    const [box] = tight.boxes
    expect((box?.x ?? 0) + (box?.width ?? 0) / 2).toBeCloseTo(122, 2)
    expect(box?.width ?? 0).toBeCloseTo(textWidthPt('1, 2', 6.75, 'bold') + 6, 2)
    expect(numbers(1, 100, 110).circles).toHaveLength(1)
    expect(numbers(0, 100, 200).said).toEqual([])
  })
})

describe('scales', () => {
  test('each says in words what it is', () => {
    for (const { note, ptPerFt: scale } of [...ARCHITECT_SCALES, ...SITE_SCALES, ...DETAIL_SCALES])
      expect(ptPerFt(note.replace(/ \(.*\)$/u, ''))).toBeCloseTo(scale, 9)
    // Of scale rules: 3/4 to 1/16 in for a foot; an inch for 5, 10, 20, 30, 40, 50, 60 ft and larger steps.
    expect(ARCHITECT_SCALES.map(({ ptPerFt: scale }) => scale / 72)).toEqual([
      3 / 4,
      1 / 2,
      3 / 8,
      1 / 4,
      3 / 16,
      1 / 8,
      3 / 32,
      1 / 16,
    ])
    for (const feet of [5, 10, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500])
      expect(SITE_SCALES.some(({ note }) => note === `1" = ${feet}'-0"`)).toBe(true)
    for (const inch of ['1/8', '3/32', '1/16'])
      expect(SITE_SCALES.some(({ note }) => note === `${inch}" = 1'-0"`)).toBe(true)
    expect(SITE_SCALES).toHaveLength(17)
    // Shares of full size: 6 in for a foot is half of it.
    const shares = { half: 2, third: 3, quarter: 4, sixth: 6, eighth: 8, twelfth: 12 }
    expect(DETAIL_SCALES.map(({ note, ptPerFt: scale }) => [/\((\w+) size\)/u.exec(note)?.[1], 864 / scale])).toEqual(
      Object.entries(shares),
    )
    for (const scales of [ARCHITECT_SCALES, SITE_SCALES, DETAIL_SCALES])
      for (const [index, { ptPerFt: scale }] of scales.slice(1).entries())
        expect(scale).toBeLessThan(scales[index]?.ptPerFt ?? 0)
  })

  test('what fits exactly fits; what fits at none takes the smallest', () => {
    expect(largestScale(ARCHITECT_SCALES, 10, 10, { width: 180, height: 180 }).note).toBe('1/4" = 1\'-0"')
    expect(largestScale(ARCHITECT_SCALES, 10, 10, { width: 180, height: 179 }).note).toBe('3/16" = 1\'-0"')
    expect(largestScale(ARCHITECT_SCALES, 1000, 10, { width: 180, height: 180 }).note).toBe('1/16" = 1\'-0"')
  })
})

describe('numbers in words', () => {
  test('without needless decimals, with their thing', () => {
    expect([plainNumber(2.5), plainNumber(2), plainNumber(2.345, 1), plainNumber(2.999)]).toEqual([
      '2.5',
      '2',
      '2.3',
      '3',
    ])
    expect([counted(1, 'module'), counted(2, 'module'), counted(0, 'module')]).toEqual([
      '1 module',
      '2 modules',
      '0 modules',
    ])
    expect(
      [1234.6, 1000, 999.994, 12.345678, 10, 9.87654321, 0.01234567, 0.0098765432, 0].map((value) =>
        amount(value, 'lb'),
      ),
    ).toEqual([
      '1235 lb',
      '1000 lb',
      '999.99 lb',
      '12.35 lb',
      '10 lb',
      '9.8765 lb',
      '0.0123 lb',
      '0.0098765 lb',
      '0 lb',
    ])
    expect([amount('6', 'AWG'), amount('yes', ''), amount(3, ''), amount(-2000.4, 'W')]).toEqual([
      '6 AWG',
      'yes',
      '3',
      '-2000 W',
    ])
  })
})

describe('pages of text', () => {
  const area = { x: 10, y: 20, width: 200, height: 100 }
  const textsOf = (page: readonly Primitive[]) => page.flatMap((each) => (each.kind === 'text' ? [each] : []))
  const flow = (blocks: readonly Block[], columns = 1) => flowBlocks(blocks, area, columns)

  test('lists have their numbers or dots, and hang by them', () => {
    const [page = []] = flow([
      { kind: 'list', numbered: true, items: ['first', 'second'] },
      { kind: 'list', items: ['third'] },
    ])
    expect(textsOf(page).map(({ text, at: { x } }) => [text, x])).toEqual([
      ['1.', 10],
      ['first', 24],
      ['2.', 10],
      ['second', 24],
      ['•', 10],
      ['third', 24],
    ])
    const [wrapped = []] = flow([{ kind: 'list', items: ['word '.repeat(30).trim()] }])
    expect(textsOf(wrapped).filter(({ text }) => text === '•')).toHaveLength(1)
    for (const {
      text,
      at: { x },
    } of textsOf(wrapped))
      expect(x + textWidthPt(text, 7.5)).toBeLessThanOrEqual(210)
  })

  test('a heading stays with what follows, has a line under it and room above it', () => {
    const filler: Block = { kind: 'figure', heightPt: 70, draw: () => [] }
    const [first = [], second = []] = flow([
      filler,
      { kind: 'heading', text: 'Head' },
      {
        kind: 'figure',
        heightPt: 15,
        draw: (x, y) => [{ kind: 'rectangle', x, y, width: 5, height: 15, pen: 'thin' }],
      },
    ])
    expect(textsOf(first)).toEqual([])
    expect(textsOf(second).map(({ text, at: place }) => [text, place.y])).toEqual([['Head', 20]])
    const line = second.find((each) => each.kind === 'path')
    const figure = second.find((each) => each.kind === 'rectangle')
    // 9.5 pt of type: 1.02 of it high, 3 pt to the line.
    const under = 20 + 1.02 * 9.5 + 3
    expect(line?.kind === 'path' && at(line.points)).toEqual([
      [10, under],
      [210, under],
    ])
    expect(figure?.kind === 'rectangle' && figure.y).toBeCloseTo(under + 8, 6)
    const [together = []] = flow([
      { kind: 'text', text: 'above' },
      { kind: 'heading', text: 'Head' },
    ])
    const [above, head] = textsOf(together)
    expect((head?.at.y ?? 0) - (above?.at.y ?? 0)).toBeCloseTo(7.5 * 1.22 + 12, 6)
  })

  test('columns fill one after the other; a break starts the next where there are as many', () => {
    const blocks: Block[] = [
      { kind: 'text', text: 'one', bold: true },
      { kind: 'break', columns: 2 },
      { kind: 'text', text: 'two' },
    ]
    const [wide = []] = flow(blocks, 2)
    // Two columns with 18 pt between them: 91 pt each.
    expect(textsOf(wide).map(({ text, at: place, face }) => [text, place.x, place.y, face])).toEqual([
      ['one', 10, 20, 'bold'],
      ['two', 119, 20, 'plain'],
    ])
    const [narrow = []] = flow(blocks, 1)
    expect(textsOf(narrow).map(({ at: place }) => place.x)).toEqual([10, 10])
    const pages = flow(
      Array.from({ length: 30 }, (_, index): Block => ({ kind: 'text', text: `line ${index}` })),
      2,
    )
    expect(pages.flatMap((page) => textsOf(page).map(({ text }) => text))).toEqual(
      Array.from({ length: 30 }, (_, index) => `line ${index}`),
    )
    for (const page of pages)
      for (const { at: place } of textsOf(page)) expect(place.y + 7.5).toBeLessThanOrEqual(120.5)
  })

  test('pages after the first may have another area, in which columns keep their width', () => {
    const later = { x: 10, y: 5, width: 420, height: 115 }
    const pages = flowBlocks(
      Array.from({ length: 20 }, (_, index): Block => ({ kind: 'text', text: `line ${index}` })),
      area,
      1,
      later,
    )
    expect(pages).toHaveLength(2)
    const xs = [...new Set(textsOf(pages[1] ?? []).map(({ at: { x } }) => x))]
    expect(xs).toEqual([10, 228])
    expect(Math.min(...textsOf(pages[1] ?? []).map(({ at: { y } }) => y))).toBe(5)
  })

  test('cells stand under their headings: left, centred or right, bold where the column is', () => {
    const block: Block = {
      kind: 'table',
      columns: [
        { heading: 'A', share: 1, bold: true },
        { heading: 'B', share: 1, align: 'center' },
        { heading: 'C', share: 2, align: 'right' },
      ],
      rows: [['a', 'b', 'c']],
    }
    const [page = []] = flow([block])
    const cells = textsOf(page).map(({ text, at: { x }, align, face }) => [text, x, align, face])
    expect(cells).toEqual([
      ['A', 13, 'left', 'bold'],
      ['B', 85, 'center', 'bold'],
      ['C', 207, 'right', 'bold'],
      ['a', 13, 'left', 'bold'],
      ['b', 85, 'center', 'plain'],
      ['c', 207, 'right', 'plain'],
    ])
    const boxes = page.flatMap((each) => (each.kind === 'rectangle' ? [each] : []))
    expect(boxes.map(({ fill, width }) => [fill, width])).toEqual([
      ['light', 200],
      [undefined, 200],
    ])
    expect(boxes[1]?.y).toBeCloseTo((boxes[0]?.y ?? 0) + (boxes[0]?.height ?? 0), 9)
  })
})

describe('as SVG', () => {
  test('every look comes over: pens, dashes, colours, grounds, turned and bold text', () => {
    const svg = renderSvg(
      sheet([
        { kind: 'path', points: [xy(1, 2), xy(3, 4)], pen: 'heavy', dash: 'center', color: 'grey' },
        { kind: 'path', points: [xy(1, 2), xy(3, 4), xy(5, 2)], closed: true, fill: 'mid' },
        { kind: 'rectangle', x: 1, y: 2, width: 3, height: 4, pen: 'hair', fill: 'yellow', dash: 'hidden' },
        { kind: 'circle', center: xy(9, 8), radiusPt: 2, pen: 'thin', dash: 'dotted' },
        {
          kind: 'path',
          points: [xy(90, 60), xy(180, 60), xy(180, 120), xy(90, 120)],
          closed: true,
          hatch: { angleDeg: 45, gapPt: 5 },
        },
        {
          kind: 'text',
          at: xy(100, 100),
          text: 'A & <B> "C"',
          sizePt: 9,
          face: 'bold',
          color: 'red',
          rotationDeg: 30,
          halo: true,
        },
      ]),
      'de',
    )
    for (const part of [
      'xml:lang="de"',
      'width="5.5556in" height="4.1667in" viewBox="0 0 400 300"',
      '<title id="sheet-title">T-001 Test</title>',
      '<path d="M1 2 L3 4" fill="none" stroke="#555555" stroke-width="1.4" stroke-dasharray="10 2 2 2"/>',
      '<path d="M1 2 L3 4 L5 2 Z" fill="#d2d2d2"/>',
      '<rect x="1" y="2" width="3" height="4" fill="#ffd100" stroke="#000000" stroke-width="0.25" stroke-dasharray="2.5 1.8"/>',
      '<circle cx="9" cy="8" r="2" fill="none" stroke="#000000" stroke-width="0.45" stroke-dasharray="0.8 1.8"/>',
      'font-size="9" font-weight="bold" fill="#c8102e"',
      'transform="rotate(-30 ',
      '>A &amp; &lt;B&gt; &quot;C&quot;</text>',
      'fill="#ffffff"/>\n',
    ])
      expect(svg).toContain(part)
    // The white ground lies under its text and over the hatch.
    expect(svg.indexOf('<polygon')).toBeLessThan(svg.indexOf('<text'))
    expect(svg.indexOf('<polygon')).toBeGreaterThan(svg.indexOf('<circle'))
  })
})
