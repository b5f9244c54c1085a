import { describe, expect, test } from 'vitest'
import { wallFindings } from '../../src/drawings/index.js'
import { drawWall } from '../../src/drawings/wall/draw-wall.js'
import { equipmentWalls } from '../../src/drawings/wall/equipment-walls.js'
import type { PlanEquipment, Project, SitePlan } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { drawnDimensions, feetOf, ptPerFt, readPacket, sheetOf, tableOf, unitOf } from './read-sheet.js'

const corner = (x: number, y: number) => ({ x_ft: x, y_ft: y })
/** An INVENTED house of 40 by 30 ft, counter-clockwise from its south-west corner. */
const CORNERS = [corner(10, 10), corner(50, 10), corner(50, 40), corner(10, 40)]
const LOT = [corner(0, 0), corner(80, 0), corner(80, 100), corner(0, 100)]

const clear = { clear_depth_in: 48, clear_width_in: 36, clear_height_in: 90 }
const panel: PlanEquipment = {
  kind: 'main_panel',
  x_ft: 50,
  y_ft: 20,
  bottom_in: 40,
  width_in: 14,
  height_in: 30,
  handle_in: 64,
  ...clear,
}
const meter: PlanEquipment = { kind: 'utility_meter', x_ft: 50, y_ft: 15, bottom_in: 50, width_in: 13, height_in: 18 }
const disconnect: PlanEquipment = { kind: 'pv_disconnect', x_ft: 50, y_ft: 26.5 }

const planOf = (equipment: Record<string, PlanEquipment>, corners = CORNERS): SitePlan => ({
  lot: LOT,
  buildings: { house: { name: 'House', corners } },
  equipment,
})
const houseOf = (equipment: Record<string, PlanEquipment>, drawings?: Project['drawings']): Project => ({
  ...microHouse(),
  site_plan: planOf(equipment),
  ...(drawings === undefined ? {} : { drawings }),
})
const idsOf = (project: Project): string[] => wallFindings(project).map(({ id }) => id)

describe('which wall, and from which side', () => {
  // Somebody outside who faces the wall has these on the left: of the south wall the west, of the east wall the south,
  // of the north wall the east, of the west wall the north.
  test.each([
    ['south', [30, 10], [20, 10], 10],
    ['east', [50, 30], [50, 20], 10],
    ['north', [20, 40], [30, 40], 20],
    ['west', [10, 20], [10, 30], 10],
  ] as const)('of the %s wall', (_, right, left, fromLeftFt) => {
    for (const corners of [CORNERS, CORNERS.toReversed()]) {
      const walls = equipmentWalls(
        planOf(
          {
            a: { kind: 'combiner', x_ft: right[0], y_ft: right[1] },
            b: { kind: 'inverter', x_ft: left[0], y_ft: left[1] },
          },
          corners,
        ),
      )
      expect(walls).toHaveLength(1)
      expect(walls[0]?.pieces.map(({ id, alongFt }) => [id, alongFt])).toEqual([
        ['b', fromLeftFt],
        ['a', fromLeftFt + 10],
      ])
    }
  })

  test('two walls have a figure each; what stands away from a wall has none', () => {
    const walls = equipmentWalls(
      planOf({
        panel,
        far: { kind: 'inverter', x_ft: 70, y_ft: 70 },
        other: { kind: 'combiner', x_ft: 30, y_ft: 9.5 },
      }),
    )
    expect(walls.map(({ pieces }) => pieces.map(({ id }) => id))).toEqual([['panel'], ['other']])
  })
})

describe('the sheet', () => {
  const input = packetInput(houseOf({ meter, panel, disconnect }), '11x17', true)
  const read = sheetOf(readPacket(input), 'E-606')
  const scale = ptPerFt(read.words.match(/(?:\d+ )?\d+(?:\/\d+)?" = 1'-0"/u)?.[0] ?? '')

  test('heights and distances are to scale, measured on paper', () => {
    const { found } = drawnDimensions(
      read,
      ({ text, lines }) => text.includes("'-") && (lines[0]?.sizePt ?? 0) < 7.4 * unitOf(read),
    )
    const drawn = found.map(({ text, from, to }) => [text, Math.hypot(to.x - from.x, to.y - from.y) / scale] as const)
    for (const [text, ft] of drawn) expect(ft).toBeCloseTo(feetOf(text), 1)
    const texts = drawn.map(([text]) => text)
    // Middle of the meter 50 + 9 in, lower edge of the panel, from meter to panel and on to the disconnect.
    for (const wanted of [`4'-11"`, `3'-4"`, `5'-0"`, `6'-6"`]) expect(texts).toContain(wanted)
  })

  test('an enclosure has its size, and the space in front of it 30 in and 6.5 ft', () => {
    const boxes = read.boxes.map(({ width, height }) => [(width / scale) * 12, (height / scale) * 12] as const)
    const close = (width: number, height: number) =>
      boxes.filter(([w, h]) => Math.abs(w - width) < 0.1 && Math.abs(h - height) < 0.1).length
    expect(close(14, 30)).toBe(1)
    expect(close(13, 18)).toBe(1)
    expect(close(30, 78)).toBe(1)
  })

  test('what is not stated is not drawn, and said', () => {
    expect(read.words).toContain('PV system disconnect height and size not stated')
    expect(tableOf(read, ['Equipment', 'Lower edge', 'Upper edge', 'Width'])).toEqual([
      ['Utility meter', `4'-2"`, `5'-8"`, '13"'],
      ['Main panel', `3'-4"`, `5'-10"`, '14"'],
      ['PV system disconnect', 'not stated', 'not stated', 'not stated'],
    ])
  })

  test('labels have the numbers of the label sheet', () => {
    const labels = sheetOf(readPacket(input), 'E-604')
    const row = (name: string, from: typeof read) => {
      const at = from.said.find(({ text }) => text.toUpperCase() === name)?.middle
      return from.said
        .filter(
          ({ text, middle }) =>
            /^\d+$/u.test(text) && Math.abs(middle.x - (at?.x ?? 0)) < 40 && middle.y < (at?.y ?? 0),
        )
        .map(({ text }) => Number(text))
        .toSorted((a, b) => a - b)
    }
    expect(row('MAIN PANEL', read)).toEqual(row('MAIN PANEL', labels))
    expect(row('MAIN PANEL', read).length).toBeGreaterThan(1)
  })

  test('numbers of labels in rows over a piece keep off the line of the highest grip', () => {
    const [wall] = equipmentWalls(planOf({ panel }))
    if (wall === undefined) throw new Error('no wall')
    // A panel whose second row of numbers would lie on the line.
    for (const ptPerFt of [18, 24, 36, 54]) {
      const drawn = drawWall(wall, { note: '', ptPerFt }, [0, 0, 400], () => [1, 2, 3, 4, 5, 6, 7, 8, 9])
      const lines = drawn.flatMap((one) =>
        one.kind === 'path' && one.dash === 'center' ? [one.points[0]?.y ?? 0] : [],
      )
      const rows = drawn.flatMap((one) => (one.kind === 'circle' && one.radiusPt === 5.8 ? [one.center.y] : []))
      expect(lines).toHaveLength(1)
      expect(rows).toHaveLength(9)
      for (const y of rows) expect(Math.abs(y - (lines[0] ?? 0))).toBeGreaterThan(6)
      const apart = [...new Set(rows)].toSorted((a, b) => a - b)
      for (const [i, y] of apart.slice(1).entries()) expect(y - (apart[i] ?? 0)).toBeGreaterThan(11.9)
    }
  })

  test('there is none while no height is stated', () => {
    const bare = packetInput(houseOf({ disconnect }), '11x17', true)
    expect(readPacket(bare).some(({ sheet }) => sheet.id === 'E-606')).toBe(false)
  })
})

// NEC 110.26(A): Table 110.26(A)(1), 3 ft at 0 to 150 V to ground; (A)(2) 30 in or the equipment; (A)(3) 6 1/2 ft or the
// equipment. 404.8(A): 6 ft 7 in.
describe('working space', () => {
  test.each([
    ['depth', { clear_depth_in: 35.9 }, ['wall.space-depth']],
    ['depth', { clear_depth_in: 36 }, []],
    ['width', { clear_width_in: 29 }, ['wall.space-width']],
    ['width', { clear_width_in: 30 }, []],
    ['width of a wide piece', { width_in: 40, clear_width_in: 36 }, ['wall.space-width']],
    ['height', { clear_height_in: 77 }, ['wall.space-height']],
    ['height', { clear_height_in: 78 }, []],
    ['height of a high piece', { bottom_in: 60, height_in: 34, clear_height_in: 90 }, ['wall.space-height']],
    ['grip', { handle_in: 79 }, []],
    ['grip', { handle_in: 79.5 }, ['wall.handle-too-high']],
  ] as const)('%s %j', (_, change, ids) => {
    expect(idsOf(houseOf({ panel: { ...panel, ...change } }))).toEqual(ids)
  })

  test('what is not stated is told once, with all pieces', () => {
    const found = wallFindings(houseOf({ panel, disconnect, meter }))
    expect(found.map(({ id, severity, where }) => [id, severity, where])).toEqual([
      ['wall.space-unknown', 'note', 'site_plan.equipment.disconnect.clear_depth_in'],
    ])
    expect(found[0]?.message).toContain('PV system disconnect')
  })
})

describe('the meter', () => {
  const rule = { center_min_in: 48, center_max_in: 60, clear_front_in: 36 }
  test.each([
    [{}, ['wall.meter-unknown']],
    [{ clear_depth_in: 36 }, []],
    [{ clear_depth_in: 35 }, ['wall.meter-front']],
    [{ clear_depth_in: 36, bottom_in: 52 }, ['wall.meter-height']],
    [{ clear_depth_in: 36, bottom_in: 38 }, ['wall.meter-height']],
  ])('%j', (change, ids) => {
    const changed: PlanEquipment = { ...meter, ...change }
    expect(idsOf(houseOf({ meter: changed }, { meter: rule }))).toEqual(ids)
  })

  test('a meter without heights is not judged', () => {
    const { bottom_in: _, ...bare } = meter
    expect(idsOf(houseOf({ meter: { ...bare, clear_depth_in: 36 } }, { meter: rule }))).toEqual(['wall.meter-unknown'])
  })

  test('without a rule of the utility nothing is asked', () => {
    expect(idsOf(houseOf({ meter }))).toEqual([])
  })
})
