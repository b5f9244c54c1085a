import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { hipHouse, microHouse, packetInput } from './demo-packet.js'
import {
  drawnDimensions,
  feetOf,
  ptPerFt,
  readPacket,
  sheetOf,
  inDrawing,
  tableOf,
  unitOf,
  type ReadSheet,
  type Spot,
} from './read-sheet.js'

const near = (a: Spot, b: Spot, by = 0.05): boolean => Math.hypot(a.x - b.x, a.y - b.y) < by
const isSame = (one: readonly Spot[], other: readonly Spot[]): boolean =>
  one.length === other.length && one.every((a) => other.some((b) => near(a, b)))
const spot = ({ x_ft: x, y_ft: y }: { x_ft: number; y_ft: number }): Spot => ({ x, y })

function planOf(project: Project) {
  const input = packetInput(project)
  const read = sheetOf(readPacket(input), 'C-101')
  const scale = ptPerFt(read.sheet.scaleNote)
  const lot = (project.site_plan?.lot ?? []).map(spot)
  const line = read.paths.find(({ closed, pen, dash }) => closed && pen === 'heavy' && dash === 'center')
  if (line === undefined) throw new Error('no lot')
  // The lowest corner on paper is one of the lowest of the lot.
  const [low] = line.points.toSorted((a, b) => b.y - a.y || a.x - b.x)
  const [corner] = lot.toSorted((a, b) => a.y - b.y || a.x - b.x)
  if (low === undefined || corner === undefined) throw new Error('no corner')
  const toFt = ({ x, y }: Spot): Spot => ({ x: corner.x + (x - low.x) / scale, y: corner.y + (low.y - y) / scale })
  const figures = read.paths.map((path) => ({ ...path, ft: path.points.map(toFt) }))
  return { input, read, scale, lot, toFt, figures }
}

/** Far ends of the lines that lead from a point of the plan to a text, on paper. */
const leadsTo = (read: ReadSheet, toFt: (spot: Spot) => Spot, from: Spot): Spot[] =>
  read.paths.flatMap(({ points: [tip, end, ...more], pen, dash }) =>
    more.length === 0 &&
    pen === 'hair' &&
    dash === 'solid' &&
    tip !== undefined &&
    end !== undefined &&
    near(toFt(tip), from)
      ? [end]
      : [],
  )

describe.each([
  ['a lot of right angles', microHouse],
  ['a slanted lot', hipHouse],
] as const)('site plan of %s', (_, make) => {
  const project = make()
  const plan = project.site_plan
  if (plan === undefined) throw new Error('no plan')
  const { input, read, lot, toFt, figures, scale } = planOf(project)
  const sides = lot.map((a, index) => ({ a, b: lot[(index + 1) % lot.length] ?? a }))

  test('lot, buildings and driveway have their corners', () => {
    expect(figures.filter(({ closed, pen }) => closed && pen === 'heavy').map(({ ft }) => isSame(ft, lot))).toEqual([
      true,
    ])
    const buildings = Object.values(plan.buildings ?? {})
    const drawn = figures.filter(({ closed, pen, fill }) => closed && pen === 'medium' && fill === 'white')
    expect(drawn).toHaveLength(buildings.length)
    for (const { corners } of buildings) expect(drawn.some(({ ft }) => isSame(ft, corners.map(spot)))).toBe(true)
    const drive = figures.filter(({ closed, pen, fill }) => closed && pen === 'thin' && fill === 'light')
    expect(drive.map(({ ft }) => isSame(ft, (plan.driveway ?? []).map(spot)))).toEqual(
      plan.driveway === undefined ? [] : [true],
    )
    expect(read.said.filter(({ text }) => text === 'DRIVEWAY')).toHaveLength(plan.driveway === undefined ? 0 : 1)
  })

  test('each building is named within it or beside it', () => {
    for (const [id, { name, corners }] of Object.entries(plan.buildings ?? {})) {
      const found = read.said.filter(({ text }) => text === (name ?? id).toUpperCase())
      expect(found).toHaveLength(1)
      const [xs, ys] = [corners.map(({ x_ft: x }) => x), corners.map(({ y_ft: y }) => y)]
      const at = toFt(found[0]?.middle ?? { x: 0, y: 0 })
      const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }
      expect(Math.abs(at.x - middle.x) * scale).toBeLessThan(61)
      expect(Math.abs(at.y - middle.y) * scale).toBeLessThan(51)
    }
  })

  test('each lot line bears its length, outside the lot and along the line', () => {
    for (const { a, b } of sides) {
      const length = Math.hypot(b.x - a.x, b.y - a.y)
      const found = read.said.filter(({ text, middle, lines: [line] }) => {
        const at = toFt(middle)
        const outside = ((at.x - (a.x + b.x) / 2) * (b.y - a.y) - (at.y - (a.y + b.y) / 2) * (b.x - a.x)) / length
        const way = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI
        return (
          text.startsWith('LOT LINE ') &&
          outside * scale > 4 &&
          outside * scale < 40 &&
          Math.abs((((((line?.rotationDeg ?? 0) - way) % 180) + 270) % 180) - 90) < 0.01
        )
      })
      expect(found).toHaveLength(1)
      const words = (found[0]?.text ?? '').replace('LOT LINE ', '')
      expect([words, feetOf(words)]).toEqual([words, Math.round(length * 12) / 12])
    }
  })

  test('the street lies outside its lot line', () => {
    const street = plan.street
    if (street === undefined) throw new Error('no street')
    const { a, b } = sides[street.lot_line - 1] ?? { a: { x: 0, y: 0 }, b: { x: 1, y: 0 } }
    const name = read.said.find(({ text }) => text === street.name.toUpperCase())
    const at = toFt(name?.middle ?? { x: 0, y: 0 })
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const outside = ((at.x - a.x) * (b.y - a.y) - (at.y - a.y) * (b.x - a.x)) / length
    expect(outside * scale).toBeGreaterThan(20)
    expect(outside * scale).toBeLessThan(40)
    expect(Math.abs(at.x - (a.x + b.x) / 2)).toBeLessThan(1)
  })

  test('distances from the main building to the lot lines are as long as they say, and the shortest', () => {
    const { found, alone } = drawnDimensions(read, ({ middle }) => inDrawing(read, middle))
    expect(alone).toEqual([])
    const [main] = Object.values(plan.buildings ?? {}).filter(
      (each, _index, all) => each.main === true || all.length === 1,
    )
    const corners = (main?.corners ?? []).map(spot)
    expect(found.length).toBeGreaterThanOrEqual(3)
    for (const { text, from, to } of found) {
      const ends = [toFt(from), toFt(to)]
      const length = Math.hypot((ends[0]?.x ?? 0) - (ends[1]?.x ?? 0), (ends[0]?.y ?? 0) - (ends[1]?.y ?? 0))
      expect([text, Math.abs(length - feetOf(text)) < 1 / 24 + 0.02]).toEqual([text, true])
      // One end lies on a lot line; no corner of the building is nearer to it.
      const line = sides.find(({ a, b }) =>
        ends.some(
          (end) =>
            Math.abs((b.x - a.x) * (end.y - a.y) - (b.y - a.y) * (end.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y) <
            0.05,
        ),
      )
      expect(line).toBeDefined()
      if (line === undefined) continue
      const { a, b } = line
      const away = corners.map(
        ({ x, y }) => Math.abs((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y),
      )
      expect(length).toBeCloseTo(Math.min(...away), 1)
    }
  })

  test('roof planes with their modules lie in the plan as seen from above', () => {
    for (const [id, { eave_left: left }] of Object.entries(plan.roof_planes ?? {})) {
      const stated = project.roof_planes[id]
      if (stated === undefined) throw new Error('no plane')
      const flat = Math.cos(Math.atan((stated.pitch_in_12 ?? 0) / 12))
      const turned = (deg: number): Spot => {
        const angle = ((deg - (plan.up_azimuth_deg ?? 0)) * Math.PI) / 180
        return { x: Math.sin(angle), y: Math.cos(angle) }
      }
      // Up the slope is away from where the plane faces, along the eave to the right is a quarter turn on.
      const [up, right] = [turned(stated.azimuth_deg - 180), turned(stated.azimuth_deg - 90)]
      const place = (x: number, y: number): Spot => ({
        x: left.x_ft + x * right.x + y * flat * up.x,
        y: left.y_ft + x * right.y + y * flat * up.y,
      })
      const corners = (input.arrangement.values.planes[id]?.corners ?? []).map(({ xFt, yFt }) => place(xFt, yFt))
      expect(
        figures.filter(
          ({ closed, dash, pen, ft }) => closed && dash === 'dashed' && pen === 'thin' && isSame(ft, corners),
        ),
      ).toHaveLength(1)
      const modules = input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === id)
      const drawn = figures.filter(
        ({ closed, pen, fill, ft }) => closed && pen === 'thin' && fill === 'mid' && ft.length === 4,
      )
      for (const { xFt: x, yFt: y, widthFt: w, heightFt: h } of modules)
        expect(
          drawn.filter(({ ft }) => isSame(ft, [place(x, y), place(x + w, y), place(x + w, y + h), place(x, y + h)])),
        ).toHaveLength(1)
      expect(drawn).toHaveLength(modules.length)
      for (const array of new Set(modules.map((module) => module.array))) {
        const own = modules.filter((module) => module.array === array)
        const name = read.said.filter(({ text }) => text === `ARRAY ${array}: ${own.length} MODULES`)
        expect(name).toHaveLength(1)
        const middles = own.map(({ xFt, yFt, widthFt, heightFt }) => place(xFt + widthFt / 2, yFt + heightFt / 2))
        const at = toFt(name[0]?.middle ?? { x: 0, y: 0 })
        const [xs, ys] = [middles.map(({ x }) => x), middles.map(({ y }) => y)]
        const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }
        // On the array, or beside it with a line to its middle.
        const isOn = Math.abs(at.x - middle.x) * scale < 31 && Math.abs(at.y - middle.y) * scale < 33
        expect(isOn || leadsTo(read, toFt, middle).length === 1).toBe(true)
      }
      const pathways = input.arrangement.values.planes[id]?.pathways ?? []
      const hatched = figures.filter(({ closed, pen, dash }) => closed && pen === 'hair' && dash === 'dashed' && closed)
      expect(hatched.filter(({ points }) => points.every((point) => inDrawing(read, point)))).toHaveLength(
        pathways.flatMap((pathway) => pathway.figures).length,
      )
      const way = plan.roof_planes?.[id]?.raceway?.map(({ x_ft: x, y_ft: y }) => place(x, y))
      if (way !== undefined)
        expect(figures.some(({ ft, pen, dash }) => pen === 'heavy' && dash === 'dashed' && isSame(ft, way))).toBe(true)
    }
    if (plan.raceway_route !== undefined)
      expect(
        figures.some(
          ({ ft, pen, dash }) =>
            pen === 'heavy' && dash === 'dashed' && isSame(ft, plan.raceway_route?.map(spot) ?? []),
        ),
      ).toBe(true)
  })

  test('equipment stands where it is, with its mark beside it and in the table', () => {
    const names: Readonly<Record<string, readonly [string, string]>> = {
      utility_meter: ['M', 'Utility meter'],
      main_panel: ['MP', 'Main panel'],
      pv_disconnect: ['D', 'PV system disconnect'],
      combiner: ['C', 'AC combiner'],
    }
    const pieces = Object.values(plan.equipment ?? {})
    const dots = read.circles.filter(
      ({ radius, fill }) => Math.abs(radius - 1.8 * unitOf(read)) < 0.002 && fill === 'black',
    )
    expect(dots).toHaveLength(pieces.length)
    for (const piece of pieces) {
      const [mark = ''] = names[piece.kind] ?? []
      expect(dots.filter(({ center }) => near(toFt(center), spot(piece)))).toHaveLength(1)
      // A line leads from the dot to the mark and ends at its letters.
      const beside = read.said.filter(({ text, lines: [line], middle }) =>
        leadsTo(read, toFt, spot(piece)).some(
          (end) =>
            text === mark &&
            Math.hypot(middle.x - end.x, middle.y - end.y) < (line?.widthPt ?? 0) / 2 + unitOf(read) * 7,
        ),
      )
      expect(beside).toHaveLength(1)
    }
    const ladders = plan.ground_access ?? []
    const rows = pieces.map(({ kind, name }) => [names[kind]?.[0], name ?? names[kind]?.[1]])
    expect(tableOf(read, ['Mark', 'What it is'])).toEqual([
      ...rows,
      ...(ladders.length > 0 ? [['L', 'Place for a ladder to the roof pathways']] : []),
    ])
    for (const at of ladders) {
      expect(
        read.circles.filter(
          ({ center, radius, fill }) =>
            Math.abs(radius - 5 * unitOf(read)) < 0.002 && fill === 'white' && near(toFt(center), spot(at)),
        ),
      ).toHaveLength(1)
      expect(read.said.filter(({ text, middle }) => text === 'L' && near(toFt(middle), spot(at), 0.3))).toHaveLength(1)
    }
  })

  test('the scale is the largest of those on a rule at which the lot fits with its words', () => {
    // Architects' scales up to 1/8 in for a foot, and an inch for 10, 20, 30, 40, 50 or 60 ft.
    const known = [9, 6.75, 4.5, ...[5, 10, 20, 30, 40, 50, 60].map((feet) => 72 / feet)].toSorted((x, y) => y - x)
    expect(known.some((each) => Math.abs(each - scale) < 1e-9)).toBe(true)
    const [xs, ys] = [lot.map(({ x }) => x), lot.map(({ y }) => y)]
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
    const larger = known.filter((each) => each > scale + 1e-9).at(-1) ?? Infinity
    // The plan has three quarters of the body of the sheet, less 38 or 40 units of the layout all round.
    const { width = 0, height = 0 } = read.sheet.body ?? {}
    const around = 80 * unitOf(read)
    expect(wide * larger > width * 0.75 - around - 12 || high * larger > height - around).toBe(true)
  })

  test('notes and legend', () => {
    for (const note of [
      '1. Made from what the owner knows of the lot; it is not a survey.',
      '2. Distances to the lot lines are measured from the nearest corner of the main building.',
      '3. Roof planes and modules are seen from above, so lengths up the slope look shorter than on the roof plans.',
      '4. Where the raceway crosses a roof it keeps clear of the pathways and takes the shortest way to the wall.',
    ])
      expect(read.words).toContain(note)
    const looks: readonly (readonly [
      string,
      (mark: { pen?: string | undefined; dash: string; fill?: string | undefined }) => boolean,
    ])[] = [
      ['Lot line', ({ pen, dash }) => pen === 'heavy' && dash === 'center'],
      ['Building, at the walls', ({ pen, fill }) => pen === 'medium' && fill === undefined],
      ['Roof plane', ({ pen, dash }) => pen === 'thin' && dash === 'dashed'],
      ['Module', ({ pen, fill }) => pen === 'thin' && fill === 'mid'],
      ['Fire access pathway on the roof', ({ pen, dash }) => pen === 'hair' && dash === 'dashed'],
      ['Raceway', ({ pen, dash }) => pen === 'heavy' && dash === 'dashed'],
    ]
    for (const [words, isDrawn] of looks) {
      const found = read.said.filter(({ text }) => text === words)
      expect([words, found.length]).toEqual([words, 1])
      expect([words, marksBefore(read, found[0]?.at ?? { x: 0, y: 0 }, found[0]?.middle.y ?? 0).some(isDrawn)]).toEqual(
        [words, true],
      )
    }
  })
})

/** Boxes and lines that stand just before some words. */
function marksBefore(read: ReadSheet, at: Spot, middle: number) {
  const isThere = (xs: readonly number[], ys: readonly number[]): boolean =>
    Math.max(...xs) < at.x &&
    at.x - Math.min(...xs) < 40 * unitOf(read) &&
    Math.max(...xs) - Math.min(...xs) > 20 &&
    Math.min(...ys) <= middle + 0.6 &&
    Math.max(...ys) >= middle - 0.6 &&
    Math.max(...ys) - Math.min(...ys) < 12 * unitOf(read)
  return [
    ...read.paths.filter(({ points }) =>
      isThere(
        points.map(({ x }) => x),
        points.map(({ y }) => y),
      ),
    ),
    ...read.boxes.filter(({ x, y, width, height }) => isThere([x, x + width], [y, y + height])),
  ]
}
