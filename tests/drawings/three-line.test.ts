import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { drawPacket, type PaperName } from '../../src/drawings/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { readPacket, readSheet, type PathMark, type ReadSheet, type Spot } from './read-sheet.js'
import { wiredHouses } from './wired-houses.js'

const TAG = /^(?:\d+[a-z]*|[FTSG]\d+)$/u

function threeLine(project: Project, size: PaperName = '11x17') {
  const input = { ...packetInput(project, size, true), threeLine: true }
  const sheets = drawPacket(input)
    .filter(({ id }) => id.startsWith('E-605'))
    .map(readSheet)
  const wiring = input.wire?.values
  if (wiring === undefined) throw new Error('no wiring')
  return { sheets, wiring }
}

describe('the three-line diagram', () => {
  test('stands on one sheet with the panel where there is room', () => {
    const { sheets } = threeLine(microHouse())
    expect(sheets.map(({ sheet }) => sheet.id)).toEqual(['E-605'])
    expect(sheets[0]?.words).toContain('MAIN PANEL')
    expect(sheets[0]?.words).toContain('AC COMBINER')
  })

  test.each(wiredHouses)('has each tag clear of boxes and of other tags: %s', (_, make) => {
    for (const size of ['11x17', 'letter', 'A3'] as const)
      for (const { sheet, circles, boxes, said } of threeLine(make(), size).sheets) {
        const tags = circles.filter(
          ({ center, radius }) =>
            Math.abs(radius - 6.6) < 0.01 &&
            said.some(
              ({ text, middle }) => TAG.test(text) && Math.hypot(middle.x - center.x, middle.y - center.y) < 1.5,
            ),
        )
        // What hangs under a panel lies on the line to its electrode.
        const cut = tags.filter(({ center: { x, y }, radius }) =>
          boxes.some(
            (box) =>
              box.width > 40 &&
              box.height > 40 &&
              y > box.y &&
              y < box.y + box.height &&
              Math.min(Math.abs(x - box.x), Math.abs(x - box.x - box.width)) < radius - 0.3,
          ),
        )
        expect([sheet.id, cut.map(({ center }) => center)]).toEqual([sheet.id, []])
      }
  })
})

const isLevel = ({ points: [a, b, ...more] }: PathMark): boolean =>
  a !== undefined && b !== undefined && more.length === 0 && Math.abs(a.y - b.y) < 0.01
const isUpright = ({ points: [a, b, ...more] }: PathMark): boolean =>
  a !== undefined && b !== undefined && more.length === 0 && Math.abs(a.x - b.x) < 0.01
const lowY = ({ points }: PathMark): number => Math.min(...points.map(({ y }) => y))
const highY = ({ points }: PathMark): number => Math.max(...points.map(({ y }) => y))

/** Wires that the stroke below a tag goes through, by whether they are dashed. */
function wiresAt(read: ReadSheet, tag: Spot): { readonly solid: number; readonly dashed: number } {
  const strokes = read.paths.filter(
    (path) =>
      isUpright(path) &&
      path.pen === 'hair' &&
      path.dash === 'solid' &&
      Math.abs(lowY(path) - tag.y) < 2 &&
      Math.abs((path.points[0]?.x ?? 0) - tag.x) < 2,
  )
  const [stroke, ...more] = strokes
  if (stroke === undefined || more.length > 0) throw new Error(`${strokes.length} strokes`)
  const x = stroke.points[0]?.x ?? 0
  const crossed = read.paths.filter(
    (path) =>
      isLevel(path) &&
      path.pen === 'thin' &&
      lowY(path) > lowY(stroke) + 7 &&
      lowY(path) < highY(stroke) &&
      Math.min(...path.points.map((point) => point.x)) < x &&
      Math.max(...path.points.map((point) => point.x)) > x,
  )
  // One wire that two pieces draw is one wire.
  const heights = (dashed: boolean): number =>
    new Set(crossed.filter(({ dash }) => (dash === 'dashed') === dashed).map((path) => lowY(path).toFixed(1))).size
  return { solid: heights(false), dashed: heights(true) }
}

const threePhases = (): Project => {
  const base = microHouse()
  return {
    ...base,
    equipment: {
      ...base.equipment,
      inverters: Object.fromEntries(
        Object.entries(base.equipment.inverters ?? {}).map(([id, each]) => [
          id,
          { ...each, ac_voltage_v: 208, ac_current_a: 1.76 },
        ]),
      ),
    },
    electrical: {
      ...base.electrical,
      service: { ...base.electrical?.service, voltage_v: 208, phases: 3, system: 'wye' },
    },
  }
}

interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const isIn = (a: Rectangle, b: Rectangle): boolean =>
  a.x >= b.x - 0.5 && a.y >= b.y - 0.5 && a.x + a.width <= b.x + b.width + 0.5 && a.y + a.height <= b.y + b.height + 0.5

describe.each(wiredHouses)('three-line diagram of %s', (_, make) => {
  describe.each(['11x17', 'letter'] as const)('on %s', (size) => {
    const { sheets, wiring } = threeLine(make(), size)

    test('every conductor is tagged once', () => {
      const tags = sheets.flatMap(({ said }) => said.flatMap(({ text }) => (TAG.test(text) ? [text] : [])))
      expect(tags.toSorted()).toEqual(wiring.conductors.map(({ tag }) => tag).toSorted())
    })

    test('every conductor of a circuit is drawn with as many wires as it counts', () => {
      for (const { tag, count } of wiring.conductors) {
        if (count.lines === 0) continue
        const read = sheets.find(({ said }) => said.some(({ text }) => text === tag))
        const at = read?.said.find(({ text }) => text === tag)?.middle
        if (read === undefined || at === undefined) throw new Error(`no ${tag}`)
        expect({ tag, ...wiresAt(read, at) }).toEqual({
          tag,
          solid: count.lines + count.neutral,
          dashed: count.ground,
        })
      }
    })

    test('neutral and ground are bonded at service disconnects and nowhere else', () => {
      const bars = sheets.flatMap((read) =>
        read.paths
          .filter(
            (path) =>
              path.pen === 'heavy' &&
              isLevel(path) &&
              Math.abs((path.points[1]?.x ?? 0) - (path.points[0]?.x ?? 0) - 13) < 0.01,
          )
          .map((path) => ({ read, path })),
      )
      const roots = wiring.distribution.filter(({ kind, parent }) => kind === 'panel' && parent === 'service')
      expect(bars).toHaveLength(roots.length)
      // Each joins the busbars called N and G of its panel.
      for (const { read, path } of bars) {
        const names = path.points.map(({ x, y }) => {
          const over = read.said.filter(
            (each) => /^(?:L\d|N|G)$/u.test(each.text) && Math.abs(each.middle.x - x) < 1 && each.middle.y < y,
          )
          return over.toSorted((a, b) => b.middle.y - a.middle.y)[0]?.text
        })
        expect(names).toEqual(['N', 'G'])
      }
      const ahead = wiring.conductors.filter(
        ({ from, method }) => from === 'PV disconnect' && method === 'main bonding jumper',
      )
      const upright = sheets.flatMap(({ paths }) =>
        paths.filter(
          (path) => path.pen === 'heavy' && isUpright(path) && Math.abs(highY(path) - lowY(path) - 10) < 0.01,
        ),
      )
      expect(upright).toHaveLength(ahead.length)
    })

    test('no box of equipment lies half on another', () => {
      for (const { boxes, sheet } of sheets) {
        const boxed = boxes.filter(({ fill, width, height }) => fill !== 'light' && width > 25 && height > 25)
        const halfOn = boxed.flatMap((a, index) =>
          boxed.slice(index + 1).flatMap((b) => {
            const apart =
              a.x + a.width <= b.x + 0.5 ||
              b.x + b.width <= a.x + 0.5 ||
              a.y + a.height <= b.y + 0.5 ||
              b.y + b.height <= a.y + 0.5
            return apart || isIn(a, b) || isIn(b, a) ? [] : [`${sheet.id}: ${Math.round(a.x)} on ${Math.round(b.x)}`]
          }),
        )
        expect(halfOn).toEqual([])
      }
    })

    test('nothing lies outside the sheet, and no two words on one another', () => {
      for (const { said, sheet } of sheets) {
        const boxes = said.flatMap(({ text, lines }) =>
          lines
            .filter(({ rotationDeg }) => rotationDeg === 0)
            .map(({ at, widthPt, sizePt, text: line }) => ({
              text: `${text}/${line}`,
              left: at.x,
              right: at.x + widthPt,
              top: at.y - sizePt * 0.7,
              bottom: at.y,
            })),
        )
        const hits = boxes.flatMap((a, index) =>
          boxes
            .slice(index + 1)
            .flatMap((b) =>
              a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5
                ? [`${sheet.id}: ${a.text} on ${b.text}`]
                : [],
            ),
        )
        expect(hits).toEqual([])
        expect(boxes.filter(({ left }) => left < 18)).toEqual([])
      }
    })
  })
})

test('lines of a circuit go through poles, the neutral and the ground do not', () => {
  const { sheets } = threeLine(microHouse())
  const arcs = sheets.flatMap(({ paths }) => paths.filter(({ points, pen }) => points.length > 10 && pen === 'medium'))
  // Two branches in the combiner, existing loads, the PV breaker and the main breaker, two poles each.
  expect(arcs).toHaveLength(10)
})

test('three phases have three lines, and a main breaker of three poles', () => {
  const { sheets, wiring } = threeLine(threePhases())
  const [first] = sheets
  if (first === undefined) throw new Error('no sheet')
  expect(wiring.service?.phases).toBe(3)
  expect(first.said.filter(({ text }) => text === 'L3').length).toBeGreaterThan(1)
  for (const { tag, count } of wiring.conductors) {
    const at = first.said.find(({ text }) => text === tag)?.middle
    if (count.lines === 0 || at === undefined) continue
    expect({ tag, ...wiresAt(first, at) }).toEqual({ tag, solid: count.lines + count.neutral, dashed: count.ground })
  }
})

test('it is drawn on request only: of the command, or of the project', () => {
  const has = (project: Project): boolean =>
    readPacket(packetInput(project, '11x17', true)).some(({ sheet }) => sheet.id === 'E-605')
  expect(has(microHouse())).toBe(false)
  expect(has({ ...microHouse(), drawings: { three_line: true } })).toBe(true)
})
