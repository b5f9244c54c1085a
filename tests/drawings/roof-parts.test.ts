import { describe, expect, test } from 'vitest'
import { flattenSheet, type Primitive, type Sheet } from '../../src/drawings/model/index.js'
import { isTooDense } from '../../src/drawings/sheets/plan-density.js'
import { planParts } from '../../src/drawings/sheets/plan-parts.js'
import { withinRegion } from '../../src/drawings/sheets/plan-region.js'
import { microHouse, packetInput } from './demo-packet.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import { drawnDimensions, feetOf, inDrawing, ptPerFt, readPacket, type ReadSheet } from './read-sheet.js'

const makeL = DRAWN_HOUSES.find(([name]) => name === 'sixty in an L 21')?.[1]
if (makeL === undefined) throw new Error('no house with an L')
const input = packetInput(makeL())
const { modules } = input.arrangement.values
const plans = readPacket(input).filter(({ sheet }) => sheet.id.startsWith('A-101'))
const [whole, ...others] = plans
if (whole === undefined) throw new Error('no plan')
const parts = others.filter(({ sheet }) => /, parts? [A-Z](?:, [A-Z])*$/u.test(sheet.title))
const shortNames = modules.map(({ id }) => id.replace(/^south\./u, '').replace('.', ' '))
const modulesNamed = (read: ReadSheet) =>
  read.said.filter(({ text, middle }) => shortNames.includes(text) && inDrawing(read, middle))

describe('a plan of sixty modules in an L', () => {
  test('is followed by parts at one larger scale of an architect', () => {
    expect(parts.length).toBeGreaterThan(1)
    const scales = new Set(parts.map(({ sheet }) => sheet.scaleNote))
    expect(scales.size).toBe(1)
    for (const scale of scales) expect(ptPerFt(scale)).toBeGreaterThan(ptPerFt(whole.sheet.scaleNote))
  })

  test('the parts name each module once, where the arrangement has it', () => {
    const named = parts.flatMap((read) => modulesNamed(read).map(({ text }) => text))
    expect(new Set(named).size).toBe(named.length)
    // One lies under the junction box, whose words take its place.
    expect(named.length).toBeGreaterThanOrEqual(modules.length - 1)
    for (const read of parts) {
      const scale = ptPerFt(read.sheet.scaleNote)
      const found = modulesNamed(read).map(({ text, middle }) => {
        const module = modules[shortNames.indexOf(text)]!
        return { middle, x: module.xFt + module.widthFt / 2, y: module.yFt + module.heightFt / 2 }
      })
      const [first, ...more] = found
      // A name may stand a line higher or lower; one stands beside the raceway that crosses its module.
      const aside = more.filter((each) => {
        const ft = Math.abs((each.middle.x - first!.middle.x) / scale - (each.x - first!.x))
        expect(ft).toBeLessThan(0.5)
        return ft >= 0.05
      })
      expect(aside.length).toBeLessThanOrEqual(1)
      for (const each of more) {
        expect(Math.abs((first!.middle.y - each.middle.y) / scale - (each.y - first!.y))).toBeLessThan(0.9)
      }
    }
  })

  test('every dimension of a part is as long as it says, by its scale', () => {
    for (const read of parts) {
      const { found } = drawnDimensions(read, (said) => inDrawing(read, said.middle))
      expect(found.length).toBeGreaterThan(3)
      for (const { text, from, to } of found) {
        const feet = Math.hypot(to.x - from.x, to.y - from.y) / ptPerFt(read.sheet.scaleNote)
        expect(Math.abs(feet - feetOf(text)), text).toBeLessThan(1 / 64)
      }
    }
  })

  test('on the whole plan each part has a frame round its modules, with its letter in it and its sheet told', () => {
    const frames = whole.paths.filter(({ closed, dash, pen }) => closed && dash === 'hidden' && pen === 'medium')
    const letters = parts.flatMap(({ sheet }) => (/, parts? (.*)$/u.exec(sheet.title)?.[1] ?? '').split(', '))
    expect(frames).toHaveLength(letters.length)
    const told = whole.said.find(({ text }) => text.startsWith('FRAMED PARTS ARE DRAWN LARGER'))?.text
    for (const { sheet } of parts) expect(told).toContain(`ON ${sheet.id}`)
    for (const letter of letters)
      expect(whole.said.filter(({ text, middle }) => text === letter && inDrawing(whole, middle))).toHaveLength(1)
    for (const [index, read] of parts.entries()) {
      const xs = frames[index]!.points.map(({ x }) => x)
      const width = (Math.max(...xs) - Math.min(...xs)) / ptPerFt(whole.sheet.scaleNote)
      const own = modulesNamed(read).map(({ text }) => modules[shortNames.indexOf(text)]!)
      const span = Math.max(...own.map(({ xFt, widthFt }) => xFt + widthFt)) - Math.min(...own.map(({ xFt }) => xFt))
      expect(width).toBeGreaterThan(span - 0.8)
    }
  })

  test('a plan that shows its modules and mounts has none', () => {
    const ids = readPacket(packetInput(microHouse())).map(({ sheet }) => sheet.id)
    expect(ids.filter((id) => id.startsWith('A-101'))).toEqual(['A-101'])
  })
})

const viewOf = (primitives: readonly Primitive[]): Sheet => ({
  id: 'T-001',
  title: 'test',
  size: { name: 'test', widthPt: 200, heightPt: 200 },
  frame: { x: 0, y: 0, width: 200, height: 200 },
  scaleNote: 'None',
  viewports: [
    { scalePtPerFt: 1, originPt: { x: 0, y: 200 }, box: { x: 0, y: 0, width: 200, height: 200 }, primitives },
  ],
  paper: [],
})
const word = (x: number, text: string, optional: boolean): Primitive => ({
  kind: 'text',
  at: { x, y: 100 },
  text,
  sizePt: 7,
  shifts: [{ x: 0, y: 0 }],
  ...(optional ? { optional: true } : {}),
})

describe('a plan is too dense', () => {
  test('when fewer than half of the words that may be left out stand on it', () => {
    const [a, b, c] = [word(10, 'r1c1', true), word(12, 'r1c2', true), word(14, 'r1c3', true)]
    expect(isTooDense(viewOf([a, word(80, 'r1c4', true)]))).toBe(false)
    expect(isTooDense(viewOf([a, b]))).toBe(false)
    expect(isTooDense(viewOf([a, b, c]))).toBe(true)
  })
  test('when a text becomes a keyed note, or has no place at all', () => {
    const long = { ...word(20, 'CHIMNEY OF THE FORMER WASH HOUSE', false) } as Primitive
    const narrow = (sheet: Sheet, width: number): Sheet => ({
      ...sheet,
      viewports: sheet.viewports.map((each) => ({ ...each, box: { ...each.box, width } })),
    })
    expect(isTooDense(viewOf([long]))).toBe(false)
    const keyed = narrow(viewOf([long]), 40)
    expect(flattenSheet(keyed).marks.some(({ layer }) => layer === 'keynote')).toBe(true)
    expect(isTooDense(keyed)).toBe(true)
    const lost = narrow(viewOf([long]), 4)
    expect(flattenSheet(lost).collisions).toHaveLength(1)
    expect(isTooDense(lost)).toBe(true)
  })
})

describe('parts of a plan', () => {
  const grid = (columns: number, pitch: number) =>
    Array.from({ length: columns }, (_, index) => ({
      ...modules[0]!,
      xFt: 1 + index * pitch,
      yFt: 2,
      widthFt: pitch - 0.05,
      heightFt: 5,
    }))
  test('are no larger than asked, cover each module once, and are cut between modules', () => {
    const found = planParts({ x: 0, y: 0, width: 40, height: 12 }, grid(10, 3.7), { widthFt: 23, heightFt: 30 })
    expect(found.map(({ letter }) => letter)).toEqual(['A', 'B'])
    const [a, b] = found
    expect([a!.region.x, b!.region.x + b!.region.width]).toEqual([0, 40])
    expect(a!.region.x + a!.region.width).toBeCloseTo(b!.region.x, 9)
    for (const { region } of found) expect(region.width).toBeLessThanOrEqual(23)
    const cut = b!.region.x
    expect(grid(10, 3.7).some(({ xFt, widthFt }) => cut > xFt + 1e-9 && cut < xFt + widthFt - 1e-9)).toBe(false)
  })
  test('without modules are left out', () => {
    const found = planParts({ x: 0, y: 0, width: 90, height: 12 }, grid(5, 3.7), { widthFt: 30, heightFt: 30 })
    expect(found.map(({ region }) => region.x)).toEqual([0])
  })
})

describe('what lies within a part', () => {
  const region = { x: 0, y: 0, width: 10, height: 10 }
  const square = [
    { x: 5, y: 5 },
    { x: 15, y: 5 },
    { x: 15, y: 8 },
    { x: 5, y: 8 },
  ]
  test('an area ends at the edge of the part, its line is not drawn along it', () => {
    const found = withinRegion([{ kind: 'path', points: square, closed: true, pen: 'medium', fill: 'light' }], region)
    const [ground, ...lines] = found.map((each) => (each.kind === 'path' ? each : undefined))
    expect(ground?.pen).toBeUndefined()
    expect(Math.max(...(ground?.points ?? []).map(({ x }) => x))).toBe(10)
    for (const line of lines) expect([line?.pen, line?.fill, line?.closed]).toEqual(['medium', undefined, undefined])
    const along = lines.flatMap((line) =>
      (line?.points ?? []).slice(1).filter(({ x }, index) => x === 10 && line?.points[index]?.x === 10),
    )
    expect(along).toEqual([])
    const length = lines.reduce(
      (sum, line) =>
        sum +
        (line?.points ?? [])
          .slice(1)
          .reduce(
            (each, { x, y }, index) => each + Math.hypot(x - line!.points[index]!.x, y - line!.points[index]!.y),
            0,
          ),
      0,
    )
    expect(length).toBeCloseTo(5 + 3 + 5, 9)
  })
  test('signs and words are there whole or not at all', () => {
    const circle = (x: number): Primitive => ({ kind: 'circle', center: { x, y: 1 }, radiusPt: 2 })
    expect(withinRegion([circle(9.9), circle(10.1), word(50, 'x', false)], region)).toEqual([circle(9.9)])
  })
})
