import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { requiredLabels } from '../../src/drawings/index.js'
import {
  ARCHITECT_SCALES,
  feetInches,
  flowBlocks,
  inches,
  largestScale,
  type Block,
} from '../../src/drawings/layout/index.js'
import { hatchLines } from '../../src/drawings/model/hatch-lines.js'
import { CAP_HEIGHT, textWidthPt, wrapText, xy, type Primitive } from '../../src/drawings/model/index.js'
import { lotDistances } from '../../src/drawings/sheets/lot-distances.js'
import { planeInPlan } from '../../src/drawings/sheets/plan-frame.js'
import { clippedTo } from '../../src/drawings/sheets/plane-figures.js'
import { microHouse, packetInput, stringHouse } from './demo-packet.js'

describe('lengths', () => {
  test.each([
    [40, '40\'-0"'],
    [3.5, '3\'-6"'],
    [12 + 6.5 / 12, '12\'-6 1/2"'],
    [2 / 3, '0\'-8"'],
    [5.999, '6\'-0"'],
    [17 + 3 / 96, '17\'-0 3/8"'],
    [1 / 48, '0\'-0 1/4"'],
  ])('%f ft is written %s', (ft, text) => expect(feetInches(ft)).toBe(text))

  test.each([
    [1.5, '1 1/2"'],
    [0.3125, '5/16"'],
    [3, '3"'],
    [0, '0"'],
  ])('%f in is written %s', (inch, text) => expect(inches(inch)).toBe(text))
})

describe('text', () => {
  const words = fc.array(fc.stringMatching(/^[A-Za-z0-9-]{1,24}$/u), { minLength: 1, maxLength: 20 })

  test('wrapped lines fit and lose no letter', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 30, max: 300 }), (list, width) => {
        const text = list.join(' ')
        const lines = wrapText(text, 7, 'plain', width)
        for (const line of lines) expect(textWidthPt(line, 7)).toBeLessThanOrEqual(width)
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''))
      }),
      { numRuns: 60 },
    )
  })

  test('joins accents with their letters and takes tabs for spaces', () => {
    expect(wrapText('e\u0301\tx', 7, 'plain', undefined)).toEqual(['é x'])
  })
})

describe('flow', () => {
  const area = { x: 10, y: 20, width: 300, height: 200 }
  const texts = (page: readonly Primitive[]) => page.flatMap((each) => (each.kind === 'text' ? [each] : []))

  test('keeps every row of a long table, inside the columns, with its heading on each page', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 2 }), (count, columns) => {
        const rows = Array.from({ length: count }, (_, index) => [`row ${index}`, 'x '.repeat((index * 7) % 40)])
        const block: Block = {
          kind: 'table',
          columns: [
            { heading: 'Name', share: 1 },
            { heading: 'Text', share: 2 },
          ],
          rows,
        }
        const pages = flowBlocks([block], area, columns)
        const names = pages.flatMap((page) =>
          texts(page).flatMap((text) => (text.text.startsWith('row ') ? [text.text] : [])),
        )
        expect(names).toEqual(rows.map(([name]) => name))
        for (const page of pages) {
          expect(texts(page).filter((text) => text.text === 'Name').length).toBeGreaterThanOrEqual(1)
          for (const each of page) {
            if (each.kind === 'rectangle') expect(each.y + each.height).toBeLessThanOrEqual(area.y + area.height + 1e-6)
          }
        }
      }),
      { numRuns: 40 },
    )
  })

  test('a row taller than a page goes on at the next', () => {
    const tall = Array.from({ length: 60 }, (_, index) => `line ${index}`).join('\n')
    const block: Block = { kind: 'table', columns: [{ heading: 'Text', share: 1 }], rows: [[tall]] }
    const words = flowBlocks([block], area).flatMap((page) => texts(page).flatMap((text) => text.text.split('\n')))
    expect(words.filter((word) => word.startsWith('line '))).toEqual(tall.split('\n'))
  })
})

describe('geometry', () => {
  test('a scale is the largest at which the thing fits', () => {
    expect(largestScale(ARCHITECT_SCALES, 40, 17, { width: 730, height: 400 }).note).toBe('1/4" = 1\'-0"')
    expect(largestScale(ARCHITECT_SCALES, 40, 17, { width: 719, height: 400 }).note).toBe('3/16" = 1\'-0"')
  })

  test('hatch lines keep inside an L-shaped figure and cover it evenly', () => {
    const figure = [xy(0, 0), xy(40, 0), xy(40, 20), xy(20, 20), xy(20, 40), xy(0, 40)]
    const lines = hatchLines(figure, { angleDeg: 0, gapPt: 1 })
    // Lengths of level lines 1 pt apart sum to the area of 1200 square points, to one line.
    const sum = lines.reduce((total, [a, b]) => total + Math.hypot(b.x - a.x, b.y - a.y), 0)
    expect(Math.abs(sum - 1200)).toBeLessThanOrEqual(40)
    for (const [a, b] of lines) expect(Math.max(a.x, b.x)).toBeLessThanOrEqual(a.y < 20 ? 40 : 20)
  })

  test('a strip is cut at the outline', () => {
    const square = [xy(0, 0), xy(10, 0), xy(10, 10), xy(0, 10)]
    const cut = clippedTo(square, [xy(-5, 7), xy(15, 7), xy(15, 20), xy(-5, 20)])
    expect(new Set(cut.map(({ x, y }) => `${x} ${y}`))).toEqual(new Set(['0 10', '0 7', '10 10', '10 7']))
  })

  test('distances to lot lines are those of the nearest wall', () => {
    const lot = [xy(0, 0), xy(80, 0), xy(80, 120), xy(0, 120)]
    const house = [xy(18, 35), xy(60, 35), xy(60, 65), xy(18, 65)]
    expect(lotDistances(lot, house).map((each) => each.lengthFt)).toEqual([35, 20, 55, 18])
    expect(lotDistances(lot, house)[0]?.from).toEqual(xy(39, 35))
  })

  test('a plane in plan runs up the slope away from where it faces, shortened by its slope', () => {
    const project = microHouse({
      roof_planes: { west: { azimuth_deg: 270, tilt_deg: 60 } },
      site_plan: {
        lot: microHouse().site_plan?.lot ?? [
          { x_ft: 0, y_ft: 0 },
          { x_ft: 1, y_ft: 0 },
          { x_ft: 1, y_ft: 1 },
        ],
        roof_planes: { west: { eave_left: { x_ft: 10, y_ft: 50 } } },
      },
    })
    const place = planeInPlan(project, 'west')
    // It faces west: seen from there its eave runs to the south, and up the slope is to the east at cos 60 = 0.5.
    expect(place?.({ xFt: 4, yFt: 0 }).x).toBeCloseTo(10, 9)
    expect(place?.({ xFt: 4, yFt: 0 }).y).toBeCloseTo(46, 9)
    expect(place?.({ xFt: 0, yFt: 6 }).x).toBeCloseTo(13, 9)
  })
})

describe('labels', () => {
  const idsOf = (project: ReturnType<typeof microHouse>) => {
    const { wire: wiring } = packetInput(project)
    if (wiring === undefined) throw new Error('no wiring')
    return requiredLabels(project, wiring.values)
  }
  const codes = (electrical: 'NEC 2011' | 'NEC 2014' | 'NEC 2017' | 'NEC 2020' | 'NEC 2023') => ({
    codes: { ...microHouse().codes, electrical },
  })

  test('of module-level inverters by edition', () => {
    // 690.54 is gone in 2023; rapid shutdown comes with 2014, its switch label with 2017.
    const ids = (edition: Parameters<typeof codes>[0]) => idsOf(microHouse(codes(edition))).map((each) => each.id)
    expect(ids('NEC 2011')).not.toContain('RSD_PLACARD')
    expect(ids('NEC 2014')).toContain('RSD_PLACARD')
    expect(ids('NEC 2014')).not.toContain('RSD_SWITCH')
    expect(ids('NEC 2017')).toContain('RSD_SWITCH')
    expect(ids('NEC 2020')).toContain('AC_POI')
    expect(ids('NEC 2023')).not.toContain('AC_POI')
    for (const edition of ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023'] as const) {
      expect(ids(edition)).not.toContain('DC_RACEWAY')
      expect(ids(edition)).toContain('BACKFED_BREAKER')
    }
  })

  test('of strings on the supply side', () => {
    const labels = idsOf(stringHouse())
    const ids = labels.map((each) => each.id)
    for (const id of ['LINE_LOAD', 'DC_RACEWAY', 'DC_SOURCE']) expect(ids).toContain(id)
    expect(ids).not.toContain('BACKFED_BREAKER')
    // 2020 asks for the words without WARNING, and for one dc voltage only: 8 modules at -12 deg C, rounded up.
    const words = (id: string) =>
      labels
        .find((each) => each.id === id)
        ?.parts.map((part) => part.text)
        .join(' ')
    expect(words('DC_RACEWAY')).toBe('PHOTOVOLTAIC POWER SOURCE')
    expect(words('DC_SOURCE')).toBe(
      `MAXIMUM DC VOLTAGE OF PV SYSTEM ${Math.ceil(8 * 37.4 * (1 - 0.0027 * (-12 - 25)))} V`,
    )
  })

  test.each([
    ['pv', 'outdoors', 'OUTDOORS'],
    ['garage_wall', 'outdoors', 'GARAGE WALL, OUTDOORS'],
    ['garage_wall', undefined, 'GARAGE WALL'],
    ['pv', undefined, 'PV'],
  ] as const)('the directory says where disconnect %s, %s, is', (id, location, says) => {
    const house = microHouse()
    const stated = Object.values(house.electrical?.disconnects ?? {}).find(({ kind }) => kind === 'pv_system')
    if (stated === undefined || house.electrical === undefined) throw new Error('the house has a disconnect')
    const { location: _, ...rest } = stated
    const disconnects = { [id]: { ...rest, ...(location === undefined ? {} : { location }) } }
    const labels = idsOf({ ...house, electrical: { ...house.electrical, disconnects } })
    const text = labels.flatMap((label) => label.parts.map((part) => part.text)).join('\n')
    expect(text.split('\n')).toContain(`PV SYSTEM DISCONNECT: ${says}`)
  })

  test('have letters of the height and colours that the code sets', () => {
    const labels = idsOf(microHouse())
    const placard = labels.find((each) => each.id === 'RSD_PLACARD')?.parts ?? []
    // NEC 2020 690.56(C): title at least 3/8 in, black on yellow; the rest at least 3/16 in, black on white.
    expect(placard.slice(0, 2).map((part) => [part.ink, part.ground, part.capsIn])).toEqual([
      ['black', 'yellow', 3 / 8],
      ['black', 'white', 3 / 16],
    ])
    const label = labels.find((each) => each.id === 'RSD_SWITCH')?.parts[0]
    expect([label?.ink, label?.ground, label?.capsIn]).toEqual(['white', 'red', 3 / 8])
    // Capitals of the font are 1493 of 2048 units high, so 3/8 in of capitals is type of 37.04 pt.
    expect(27 / CAP_HEIGHT).toBeCloseTo(37.04, 2)
  })
})
