import { describe, expect, test } from 'vitest'
import type { PacketInput } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { hipHouse, microHouse, packetInput, stringHouse } from './demo-packet.js'
import {
  drawnDimensions,
  factsOf,
  inDrawing,
  feetOf,
  isLength,
  ptPerFt,
  readPacket,
  sheetOf,
  tableOf,
  unitOf,
  type PathMark,
  type ReadSheet,
  type Said,
  type Spot,
} from './read-sheet.js'

const shown = (text: string): RegExp => new RegExp(`^${text}$`, 'u')

/** Whether two figures have the same corners, in whatever order, to a hundredth of a foot. */
const isSame = (one: readonly Spot[], other: readonly Spot[]): boolean =>
  one.length === other.length && one.every((a) => other.some((b) => Math.hypot(a.x - b.x, a.y - b.y) < 0.01))

/** Figures that should be drawn and are not. */
const undrawn = (wanted: readonly (readonly Spot[])[], drawn: readonly (readonly Spot[])[]): (readonly Spot[])[] =>
  wanted.filter((figure) => !drawn.some((each) => isSame(figure, each)))

const onPlan =
  (read: ReadSheet) =>
  ({ middle }: Said): boolean =>
    inDrawing(read, middle)

/** A drawn plan with its points in feet from the lower left corner of the plane, as a scale rule gives them. */
interface Plan {
  readonly read: ReadSheet
  readonly toFt: (spot: Spot) => Spot
  readonly scale: number
}

/** The outline is the one closed heavy line of the plan. */
function planOf(sheets: readonly ReadSheet[], id: string): Plan {
  const read = sheetOf(sheets, id)
  const scale = ptPerFt(read.sheet.scaleNote)
  const outlines = read.paths.filter(({ closed, pen }) => closed && pen === 'heavy')
  expect(outlines).toHaveLength(1)
  const points = outlines[0]?.points ?? []
  const eave = points.filter(({ y }) => y > Math.max(...points.map((each) => each.y)) - 0.01)
  const left = Math.min(...eave.map(({ x }) => x))
  const low = Math.max(...points.map(({ y }) => y))
  return { read, scale, toFt: ({ x, y }) => ({ x: (x - left) / scale, y: (low - y) / scale }) }
}

const houses: readonly (readonly [string, () => Project, readonly (readonly [sheet: string, plane: string])[]])[] = [
  ['a rectangle', microHouse, [['A-101', 'south']]],
  ['strings', stringHouse, [['A-101', 'south']]],
  [
    'hip, triangle and valley',
    hipHouse,
    [
      ['A-101', 'south'],
      ['A-102', 'east'],
      ['A-103', 'west'],
    ],
  ],
]

describe.each(houses)('roof plan of %s', (_, make, planes) => {
  const input = packetInput(make())
  const sheets = readPacket(input)
  describe.each(planes)('%s', (id, plane) => {
    const plan = planOf(sheets, id)
    const { read, toFt } = plan
    const arranged = input.arrangement.values.planes[plane]
    if (arranged === undefined) throw new Error('no plane')
    const ft = (path: PathMark): Spot[] => path.points.map(toFt)
    const modules = input.arrangement.values.modules.filter((each) => each.roofPlane === plane)

    test('is named after its plane, with the scale in words on the sheet and in the title block', () => {
      expect(read.sheet.title).toBe(`Roof plan: ${plane}`)
      expect(read.said.filter(({ text }) => text === `SCALE ${read.sheet.scaleNote}`)).toHaveLength(1)
      expect(read.words).toContain(`ROOF PLAN: ${plane.toUpperCase()}`)
    })

    test('the outline has the corners of the plane, up the slope up on the sheet', () => {
      const outline = read.paths.filter(({ closed, pen }) => closed && pen === 'heavy')
      expect(undrawn([arranged.corners.map(({ xFt, yFt }) => ({ x: xFt, y: yFt }))], outline.map(ft))).toEqual([])
    })

    test('each edge bears its kind outside the plane, beside its middle', () => {
      for (const { from, to, kind } of arranged.edges) {
        const middle = { x: (from.xFt + to.xFt) / 2, y: (from.yFt + to.yFt) / 2 }
        const length = Math.hypot(to.xFt - from.xFt, to.yFt - from.yFt)
        const found = read.said
          .filter(({ text }) => text === kind.toUpperCase())
          .map(({ middle: at, lines: [line] }) => ({ at: toFt(at), angle: line?.rotationDeg ?? 0 }))
          .map(({ at, angle }) => ({
            angle,
            along: ((at.x - middle.x) * (to.xFt - from.xFt) + (at.y - middle.y) * (to.yFt - from.yFt)) / length,
            // Left of the way round is the plane, so right of it is outside.
            outside: ((at.x - middle.x) * (to.yFt - from.yFt) - (at.y - middle.y) * (to.xFt - from.xFt)) / length,
          }))
        const way = (Math.atan2(to.yFt - from.yFt, to.xFt - from.xFt) * 180) / Math.PI
        const beside = found.filter(
          ({ along, outside, angle }) =>
            Math.abs(along) * plan.scale < 70 &&
            outside * plan.scale > 5 &&
            outside * plan.scale < 40 &&
            Math.abs(((((angle - way) % 180) + 270) % 180) - 90) < 0.01,
        )
        expect(beside.length, `${kind} of ${id}`).toBeGreaterThanOrEqual(1)
      }
    })

    test('every module lies where the arrangement has it, with its row and column in it', () => {
      const drawn = read.paths.filter(({ closed, pen, fill }) => closed && pen === 'medium' && fill === 'light')
      const wanted = modules.map(({ xFt: x, yFt: y, widthFt: w, heightFt: h }) => [
        { x, y },
        { x: x + w, y },
        { x: x + w, y: y + h },
        { x, y: y + h },
      ])
      expect(drawn).toHaveLength(wanted.length)
      expect(undrawn(wanted, drawn.map(ft))).toEqual([])
      for (const { xFt, yFt, widthFt, heightFt, row, column } of modules) {
        const names = read.said.filter(({ text, middle }) => {
          const at = toFt(middle)
          return (
            text.endsWith(`r${row}c${column}`) &&
            at.x > xFt &&
            at.x < xFt + widthFt &&
            at.y > yFt &&
            at.y < yFt + heightFt
          )
        })
        expect(names).toHaveLength(1)
      }
    })

    test('rails and mounts lie where they were worked out', () => {
      const rails = input.mounts?.values.rails.filter((rail) => rail.plane === plane) ?? []
      const mounts = input.mounts?.values.mounts.filter((mount) => mount.plane === plane) ?? []
      expect(rails.length).toBeGreaterThan(0)
      const legendRail = 1
      const drawn = read.paths.filter(({ pen, color }) => pen === 'heavy' && color === 'grey')
      expect(drawn).toHaveLength(rails.length + legendRail)
      const wanted = rails.map(({ x_in: x, y_in: y, length_in: length }) => [
        { x: x / 12, y: y / 12 },
        { x: (x + length) / 12, y: y / 12 },
      ])
      expect(undrawn(wanted, drawn.map(ft))).toEqual([])
      const dots = read.circles.filter(
        ({ radius, fill }) => Math.abs(radius - 1.7 * unitOf(read)) < 0.002 && fill === 'black',
      )
      expect(dots).toHaveLength(mounts.length + 1)
      const places = mounts.map(({ x_in: x, y_in: y }) => [{ x: x / 12, y: y / 12 }])
      expect(
        undrawn(
          places,
          dots.map(({ center }) => [toFt(center)]),
        ),
      ).toEqual([])
      // A joint is a short line across its rail, a quarter of a foot to each side.
      const joints = rails.flatMap(({ y_in: y, splices_in: splices }) =>
        splices.map((x) => [
          { x: x / 12, y: y / 12 - 0.25 },
          { x: x / 12, y: y / 12 + 0.25 },
        ]),
      )
      const upright = read.paths.filter(
        ({ points: [a, b, ...more], pen }) =>
          more.length === 0 && pen === 'medium' && a !== undefined && b !== undefined && a.x === b.x,
      )
      expect(undrawn(joints, upright.map(ft))).toEqual([])
    })

    test('rafters stand at their spacing from the first, from edge to edge', () => {
      const framing = input.project.structure?.framing?.[plane]
      const lines = read.paths
        .filter(({ dash, pen, color }) => dash === 'center' && pen === 'hair' && color === 'grey')
        .map(ft)
        .filter(([a, b]) => a !== undefined && b !== undefined && Math.abs(a.x - b.x) < 1e-6)
      const xs = arranged.corners.map(({ xFt }) => xFt)
      const [low, high] = [Math.min(...xs), Math.max(...xs)]
      const wanted: number[] = []
      for (let at = low + (framing?.first_offset_in ?? 0) / 12; at < high; at += (framing?.spacing_in ?? 0) / 12)
        wanted.push(at)
      const places = lines.map(([a]) => Math.round((a?.x ?? 0) * 100) / 100)
      expect([...new Set(places)].toSorted((a, b) => a - b)).toEqual(wanted.map((x) => Math.round(x * 100) / 100))
      // Their length sums to the area over the spacing, to one spacing of the height.
      const sum = lines.reduce((total, [a, b]) => total + Math.abs((b?.y ?? 0) - (a?.y ?? 0)), 0)
      const area = arranged.corners.reduce((total, a, index) => {
        const b = arranged.corners[(index + 1) % arranged.corners.length] ?? a
        return total + (a.xFt * b.yFt - b.xFt * a.yFt) / 2
      }, 0)
      expect(Math.abs(sum * ((framing?.spacing_in ?? 0) / 12) - area)).toBeLessThan(45)
    })

    test('strips and pathways that stay free cover what the roof has free, hatched each in its way', () => {
      const dashed = read.paths.filter(({ closed, dash, pen }) => closed && dash === 'dashed' && pen === 'thin')
      const strips = arranged.keepOuts.filter(
        ({ kind, clearanceIn }) => kind === 'rescue-opening' || (kind === 'edge' && clearanceIn > 0),
      )
      const figures = arranged.pathways.flatMap((pathway) => pathway.figures)
      const inPlan = dashed.filter(({ points }) => points.every((point) => inDrawing(read, point)))
      expect(inPlan).toHaveLength(strips.length + figures.length)
      for (const path of inPlan)
        for (const point of ft(path))
          expect(
            insideOrOn(
              point,
              arranged.corners.map(({ xFt: x, yFt: y }) => ({ x, y })),
            ),
          ).toBe(true)
      // Where outline and strip are upright rectangles the strip is a rectangle of its clearance.
      if (arranged.corners.length === 4 && arranged.edges.every((edge) => isUpright(edge) || isLevel(edge)))
        for (const { thing, clearanceIn, kind } of strips.filter((each) => each.kind === 'edge')) {
          const [from, to] = thing
          if (from === undefined || to === undefined) throw new Error(kind)
          const wide = clearanceIn / 12
          const inner = isLevel({ from, to })
            ? { x: 0, y: to.xFt > from.xFt ? wide : -wide }
            : { x: to.yFt > from.yFt ? -wide : wide, y: 0 }
          const wanted = [
            { x: from.xFt, y: from.yFt },
            { x: to.xFt, y: to.yFt },
            { x: to.xFt + inner.x, y: to.yFt + inner.y },
            { x: from.xFt + inner.x, y: from.yFt + inner.y },
          ]
          expect(undrawn([wanted], inPlan.map(ft))).toEqual([])
        }
      for (const { widthFt } of arranged.pathways) {
        const words = read.said.filter(({ text }) => text.endsWith(' FIRE ACCESS PATHWAY'))
        expect(words.map(({ text }) => feetOf(text.replace(' FIRE ACCESS PATHWAY', '')))).toContain(widthFt)
        expect(words).toHaveLength(arranged.pathways.length)
      }
    })

    test('each dimension says how far apart its ends are', () => {
      const { found, alone } = drawnDimensions(read, onPlan(read))
      expect(alone).toEqual([])
      expect(found.length).toBeGreaterThanOrEqual(6)
      for (const { text, from, to } of found) {
        const lengthFt = Math.hypot(to.x - from.x, to.y - from.y) / plan.scale
        expect([text, Math.abs(lengthFt - feetOf(text)) < 1 / 16 / 12 + 0.002]).toEqual([text, true])
      }
    })

    test('chains of dimensions run from edge to edge over the arrays', () => {
      const lines = drawnDimensions(read, onPlan(read)).found.map(({ from, to }) => ({
        from: toFt(from),
        to: toFt(to),
      }))
      const [left, right] = [arranged.corners, arranged.corners].map((each, index) =>
        (index === 0 ? Math.min : Math.max)(...each.map(({ xFt }) => xFt)),
      ) as [number, number]
      const top = Math.max(...arranged.corners.map(({ yFt }) => yFt))
      const groups = (spans: (readonly [number, number])[], low: number, high: number): [number, number][] => {
        const all: number[] = [low]
        let end = Number.NEGATIVE_INFINITY
        for (const [a, b] of spans.toSorted((one, other) => one[0] - other[0])) {
          // Gaps between modules of one array are not dimensioned; 4 in is more than such a gap.
          if (a - end > 4 / 12) all.push(...(end === Number.NEGATIVE_INFINITY ? [] : [end]), a)
          end = Math.max(end, b)
        }
        const stops = [...all, end, high]
        return stops
          .slice(1)
          .flatMap((stop, index): [number, number][] =>
            stop - (stops[index] ?? 0) > 1e-6 ? [[stops[index] ?? 0, stop]] : [],
          )
      }
      const along = lines
        .filter(({ from, to }) => Math.abs(from.y - to.y) < 0.01)
        .map(({ from, to }) => [Math.min(from.x, to.x), Math.max(from.x, to.x)] as const)
      const up = lines
        .filter(({ from, to }) => Math.abs(from.x - to.x) < 0.01)
        .map(({ from, to }) => [Math.min(from.y, to.y), Math.max(from.y, to.y)] as const)
      const across = groups(
        modules.map(({ xFt, widthFt }) => [xFt, xFt + widthFt]),
        left,
        right,
      )
      const upwards = groups(
        modules.map(({ yFt, heightFt }) => [yFt, yFt + heightFt]),
        0,
        top,
      )
      const without = (wanted: readonly [number, number][], drawn: readonly (readonly [number, number])[]) =>
        wanted.filter(([a, b]) => !drawn.some((each) => Math.abs(each[0] - a) < 0.01 && Math.abs(each[1] - b) < 0.01))
      expect(without(across, along)).toEqual([])
      expect(without(upwards, up)).toEqual([])
      // Dimensions of the eave stand below it, those up the slope at its left; those of things on the roof begin at them.
      const things = arranged.keepOuts.filter(({ kind }) => kind === 'obstruction').flatMap(({ thing }) => thing)
      const touches = (x: number): boolean => things.some(({ xFt }) => Math.abs(xFt - x) < 0.01)
      for (const { from, to } of lines) {
        if (Math.abs(from.y - to.y) < 0.01)
          expect(from.y < 0 || from.y > top || touches(from.x) || touches(to.x)).toBe(true)
      }
    })

    test('the facts beside the plan are those of the plane', () => {
      const facts = factsOf(read)
      const stated = input.project.roof_planes[plane]
      const pitch = stated?.pitch_in_12 ?? 0
      const degrees = (Math.atan(pitch / 12) * 180) / Math.PI
      expect(facts.get('Faces')).toBe(`${stated?.azimuth_deg}° from true north`)
      expect(facts.get('Slope')).toBe(`${pitch} in 12 (${Number(degrees.toFixed(1))}°)`)
      const area = Math.abs(
        arranged.corners.reduce((sum, a, index) => {
          const b = arranged.corners[(index + 1) % arranged.corners.length] ?? a
          return sum + (a.xFt * b.yFt - b.xFt * a.yFt) / 2
        }, 0),
      )
      expect(facts.get('Area')).toBe(`${Math.round(area)} ft² along the slope`)
      const covered = modules.reduce((sum, { widthFt, heightFt }) => sum + widthFt * heightFt, 0) / area
      expect(facts.get('Modules')).toBe(`${modules.length}, covering ${Math.round(100 * covered)} % of the plane`)
      // 67.8 by 44.6 in of the invented module, to the sixteenth.
      expect(facts.get(`Array ${plane}`)).toBe('Invented M410, 410 W, 67 13/16" by 44 5/8"')
      expect(facts.get('Rafters')).toBe('2x6 at 24" on centre, first at 11" from the left end')
    })

    test('the table of rails has every rail with its mounts and free ends, equal ones in one row', () => {
      const headings = ['Row', 'Rails', 'Length', 'Free ends', 'Mounts, from the left end of the eave']
      // It stands on the plan, or under the name of the plane on the sheet that the notes of the plan name.
      const apart = /Rails and mounts: sheet (\S+)\./u.exec(read.words)?.[1]
      const under = `Rails and mounts, roof plane ${plane}`
      const rows =
        apart === undefined
          ? tableOf(read, headings)
          : sheets
              .filter(({ sheet, said }) => sheet.id.startsWith(apart) && said.some(({ text }) => text === under))
              .flatMap((each) => tableOf(each, headings, under))
      const rails = input.mounts?.values.rails.filter((rail) => rail.plane === plane) ?? []
      const named = rows.flatMap(([, names = '']) =>
        names
          .replace(/^\d+ rails: /u, '')
          .replaceAll(' ', '')
          .split(','),
      )
      expect(named.toSorted()).toEqual(rails.map(({ id: rail }) => rail.replace(`${plane}.`, '')).toSorted())
      const letters = new Map<string, string>()
      for (const rail of rails) {
        const mounts = (input.mounts?.values.mounts ?? [])
          .filter((mount) => mount.rail === rail.id)
          .map((mount) => mount.x_in)
          .toSorted((a, b) => a - b)
        const [letter, , length, ends, places = ''] =
          rows.find(([, names = '']) => names.replaceAll(' ', '').includes(rail.id.replace(`${plane}.`, ''))) ?? []
        const eighth = (lengthIn: number): number => Math.round(lengthIn * 8) / 8
        const read12 = (text: string | undefined): number => 12 * feetOf(text ?? '')
        expect(read12(length)).toBeCloseTo(eighth(rail.length_in), 9)
        expect(ends?.split(' / ').map(read12)).toEqual([eighth(rail.overhang_left_in), eighth(rail.overhang_right_in)])
        // `59", then 14 at 24" to 395"` names the first place, how many steps follow, how long they are, and the last place.
        const told = places.split(', ').reduce<number[]>((known, part) => {
          const steps = /^then (\d+) at (\S.*") to (\S.*")$/u.exec(part)
          if (steps === null) return [...known, read12(part)]
          const [count, step, from] = [Number(steps[1]), read12(steps[2]), known.at(-1) ?? 0]
          const next = Array.from({ length: count }, (__, index) => from + (index + 1) * step)
          expect(next.at(-1)).toBeCloseTo(read12(steps[3]), 1)
          return [...known, ...next]
        }, [])
        expect(told).toHaveLength(mounts.length)
        for (const [index, mount] of mounts.entries()) expect(Math.abs((told[index] ?? 0) - mount)).toBeLessThan(0.13)
        // Rails with the same stops share a letter, others do not; letters run a, b, c from the lowest rail.
        const stops = [rail.x_in, ...mounts, rail.x_in + rail.length_in].map((stop) => stop.toFixed(2)).join(' ')
        if (!letters.has(stops)) letters.set(stops, 'abcdefgh'.charAt(letters.size))
        expect(letter).toBe(letters.get(stops))
      }
      for (const letter of [...letters.values()].slice(0, 2))
        expect(read.said.filter(({ text }) => text === `MOUNTS ${letter}`).length, letter).toBeLessThanOrEqual(1)
    })

    test('the legend explains what is drawn, each mark beside its words', () => {
      const rows: readonly (readonly [string, (read: ReadSheet, at: Spot) => boolean])[] = [
        [
          'Module with its row and column (row 1 is the lowest)',
          ({ boxes }, at) => boxes.some((box) => boxAt(box, at) && box.fill === 'light' && box.pen === 'medium'),
        ],
        [
          'Rail',
          ({ paths }, at) => paths.some((path) => lineAt(path, at) && path.color === 'grey' && path.pen === 'heavy'),
        ],
        [
          'Mount on a rafter',
          ({ circles }, at) =>
            circles.some(
              ({ center, fill }) =>
                fill === 'black' && at.x - center.x > 10 && at.x - center.x < 36 && Math.abs(center.y - at.y) < 3,
            ),
        ],
        [
          'Rafter',
          ({ paths }, at) => paths.some((path) => lineAt(path, at) && path.dash === 'center' && path.color === 'grey'),
        ],
        [
          'Fire access pathway',
          ({ paths }, at) =>
            paths.some(({ dash, pen, points }) => dash === 'dashed' && pen === 'thin' && figureAt(points, at)),
        ],
        [
          'Strip that stays free',
          ({ paths }, at) =>
            paths.some(({ dash, pen, points }) => dash === 'dashed' && pen === 'thin' && figureAt(points, at)),
        ],
        [
          'Raceway, where shown',
          ({ paths }, at) => paths.some((path) => lineAt(path, at) && path.dash === 'dashed' && path.pen === 'heavy'),
        ],
      ]
      const legend = read.said.filter(({ middle, lines: [line] }) => !inDrawing(read, middle) && line?.face === 'plain')
      for (const [words, isDrawn] of rows) {
        const found = legend.filter(({ text }) => text === words)
        const wanted = words !== 'Fire access pathway' || arranged.pathways.length > 0
        expect([words, found.length]).toEqual([words, wanted ? 1 : 0])
        for (const { at, middle } of found)
          expect([words, isDrawn(read, { x: at.x, y: middle.y })]).toEqual([words, true])
      }
    })

    test('the notes say what stays free, and how rafters are found', () => {
      expect(read.words).toContain('Lengths are measured along the roof surface, up the slope is up on the sheet.')
      expect(read.words).toContain(
        'Pathways lie over framing that carries a firefighter, clear of vents, raceways and other things in the way.',
      )
      expect(read.words).toContain(
        'Locate each rafter before a hole is drilled; a hole that misses is sealed and flashed.',
      )
      expect(read.words).not.toContain('Rails and mounts are not shown')
      for (const { kind, name, clearanceIn } of arranged.keepOuts)
        expect(read.words.includes(`${clearanceIn}" stay free along ${name}:`)).toBe(kind === 'edge' && clearanceIn > 0)
    })
  })
})

describe('north on the plans', () => {
  // A plane that faces south lies on the sheet with its eave, south, at the bottom, so north is up; one that faces west
  // has west at the bottom and east up, so north is at the left hand.
  const cases: readonly (readonly [azimuth: number, dx: number, dy: number])[] = [
    [180, 0, -1],
    [90, 1, 0],
    [270, -1, 0],
    [0, 0, 1],
    [225, -Math.SQRT1_2, -Math.SQRT1_2],
  ]
  test.each(cases)('of a plane that faces %d: towards (%d, %d) on paper', (azimuth, dx, dy) => {
    const base = microHouse()
    const { south } = base.roof_planes
    if (south === undefined) throw new Error('no plane')
    const input = packetInput({ ...base, roof_planes: { south: { ...south, azimuth_deg: azimuth } } }, '11x17', true)
    const read = sheetOf(readPacket(input), 'A-101')
    expect(read.said.filter(({ text }) => text === 'N')).toHaveLength(1)
    expectNorth(read, dx, dy)
  })

  test.each([
    [0, 0, -1],
    [90, -1, 0],
    [180, 0, 1],
    [30, -0.5, -Math.sqrt(3) / 2],
  ])('of a lot whose plan has %d deg up: towards (%d, %d)', (up, dx, dy) => {
    const base = microHouse()
    if (base.site_plan === undefined) throw new Error('no plan')
    const input = packetInput({ ...base, site_plan: { ...base.site_plan, up_azimuth_deg: up } }, '11x17', true)
    const read = sheetOf(readPacket(input), 'C-101')
    expect(read.said.filter(({ text }) => text === 'N')).toHaveLength(1)
    expectNorth(read, dx, dy)
  })
})

/** The arrow: a black and a white half that share tip and notch; the letter lies beyond the tip. */
function expectNorth(read: ReadSheet, dx: number, dy: number): void {
  const halves = read.paths.filter(
    ({ closed, points, pen, fill }) => closed && points.length === 3 && pen === 'thin' && fill !== undefined,
  )
  expect(new Set(halves.map(({ fill }) => fill))).toEqual(new Set(['black', 'white']))
  expect(halves).toHaveLength(2)
  const letter = read.said.find(({ text }) => text === 'N')
  if (letter === undefined) throw new Error('no N')
  const [tip] = halves[0]?.points ?? []
  const ring = read.circles.find(
    ({ center }) => tip !== undefined && Math.hypot(center.x - tip.x, center.y - tip.y) < 26,
  )
  if (tip === undefined || ring === undefined) throw new Error('no arrow')
  expect(halves[1]?.points[0]).toEqual(tip)
  for (const point of [tip, letter.middle]) {
    const length = Math.hypot(point.x - ring.center.x, point.y - ring.center.y)
    expect((point.x - ring.center.x) / length).toBeCloseTo(dx, 1)
    expect((point.y - ring.center.y) / length).toBeCloseTo(dy, 1)
  }
  expect(Math.hypot(letter.middle.x - ring.center.x, letter.middle.y - ring.center.y)).toBeGreaterThan(
    Math.hypot(tip.x - ring.center.x, tip.y - ring.center.y) + 4,
  )
  // The barbs lie behind the tip, one on each side of it.
  const sides = halves.map(({ points: [, barb] }) => {
    const [bx, by] = [(barb?.x ?? 0) - ring.center.x, (barb?.y ?? 0) - ring.center.y]
    expect(bx * dx + by * dy).toBeLessThan(-5)
    return bx * dy - by * dx
  })
  expect((sides[0] ?? 0) + (sides[1] ?? 0)).toBeCloseTo(0, 2)
  expect(Math.abs(sides[0] ?? 0)).toBeGreaterThan(5)
}

describe('the scale bar', () => {
  test.each([
    ['11x17', 'A-101'],
    ['letter', 'A-101'],
    ['11x17', 'C-101'],
    ['A3', 'C-101'],
  ] as const)('on %s, sheet %s, its pieces are as long as their numbers at the scale', (size, id) => {
    const read = sheetOf(readPacket(packetInput(microHouse(), size)), id)
    const scale = ptPerFt(read.sheet.scaleNote)
    const pieces = read.boxes.filter(({ height, pen }) => Math.abs(height - 4 * unitOf(read)) < 0.002 && pen === 'thin')
    expect(pieces.map(({ fill }) => fill)).toEqual(['black', 'white', 'black', 'white'])
    const ends = [...pieces.map(({ x }) => x), (pieces[3]?.x ?? 0) + (pieces[3]?.width ?? 0)]
    const numbers = read.said.filter(
      ({ text, at }) => /^\d+(?: ft)?$/u.test(text) && Math.abs(at.y - (pieces[0]?.y ?? 0) - 11 * unitOf(read)) < 6,
    )
    expect(numbers.map(({ text }) => text.endsWith(' ft'))).toEqual([false, false, false, true])
    for (const { text, middle } of numbers) {
      const feet = Number.parseInt(text, 10)
      expect((middle.x - (ends[0] ?? 0)) / scale).toBeCloseTo(feet, 1)
      expect(Math.min(...ends.map((end) => Math.abs(end - middle.x)))).toBeLessThan(0.1)
    }
    expect(Number.parseInt(numbers[3]?.text ?? '', 10) * scale).toBeCloseTo((ends[4] ?? 0) - (ends[0] ?? 0), 1)
    // A piece is long enough to measure by.
    expect(pieces[0]?.width ?? 0).toBeGreaterThanOrEqual(15)
    expect(pieces[0]?.width ?? 0).toBeLessThan(24 * 2.5 + 1)
  })
})

describe('what stands in the way on a roof', () => {
  const input: PacketInput = packetInput(microHouse())
  const { read, toFt } = planOf(readPacket(input), 'A-101')

  test('a chimney is drawn with its cross, its name and its clearance', () => {
    const corners = (x: number, y: number, w: number, h: number): Spot[] => [
      { x, y },
      { x: x + w, y },
      { x: x + w, y: y + h },
      { x, y: y + h },
    ]
    const grey = read.paths.filter(({ closed, pen, fill }) => closed && pen === 'medium' && fill === 'mid')
    expect(grey.map((path) => path.points.map(toFt)).map((each) => isSame(each, corners(31.5, 12, 1, 2.5)))).toEqual([
      true,
    ])
    const clear = read.paths.filter(({ closed, pen, dash }) => closed && pen === 'hair' && dash === 'dashed')
    expect(clear.map((path) => path.points.map(toFt)).map((each) => isSame(each, corners(31, 11.5, 2, 3.5)))).toEqual([
      true,
    ])
    const hairs = read.paths.filter(
      ({ points, pen, dash }) => points.length === 2 && pen === 'hair' && dash === 'solid',
    )
    const diagonals = [
      [
        { x: 31.5, y: 12 },
        { x: 32.5, y: 14.5 },
      ],
      [
        { x: 32.5, y: 12 },
        { x: 31.5, y: 14.5 },
      ],
    ]
    expect(
      undrawn(
        diagonals,
        hairs.map((path) => path.points.map(toFt)),
      ),
    ).toEqual([])
    const name = read.said.filter(({ text }) => shown('CHIMNEY').test(text))
    expect(name).toHaveLength(1)
    const at = toFt(name[0]?.middle ?? { x: 0, y: 0 })
    expect(Math.hypot(at.x - 32, at.y - 13.25)).toBeLessThan(3)
  })

  test('raceway and box are where the site plan says', () => {
    const heavy = read.paths
      .filter(({ pen, dash }) => pen === 'heavy' && dash === 'dashed')
      .map((path) => path.points.map(toFt))
    const stated = [
      { x: 36.5, y: 7 },
      { x: 38, y: 7 },
      { x: 38, y: 0 },
    ]
    expect(undrawn([stated], heavy)).toEqual([])
    const name = read.said.find(({ text }) => text === 'RACEWAY')
    const at = toFt(name?.middle ?? { x: 0, y: 0 })
    // Beside the middle of its longest piece.
    expect(Math.hypot(at.x - 38, at.y - 3.5)).toBeLessThan(2)
    const box = read.boxes.filter(({ pen, fill, width }) => pen === 'medium' && fill === 'white' && width < 20)
    expect(box).toHaveLength(1)
    const corner = toFt({ x: box[0]?.x ?? 0, y: (box[0]?.y ?? 0) + (box[0]?.height ?? 0) })
    expect([corner.x, corner.y].map((each) => each.toFixed(2))).toEqual(['36.15', '6.65'])
    const mark = read.said.find(({ text }) => text === 'JB1')
    const beside = toFt(mark?.middle ?? { x: 0, y: 0 })
    expect(Math.hypot(beside.x - 36.5, beside.y - 7)).toBeLessThan(2)
  })

  test('lengths on the sheet are all written as feet and inches', () => {
    const lengths = read.said.filter(
      ({ text }) => text.endsWith('"') && !/[A-Za-z]/u.test(text) && !text.includes('/ '),
    )
    for (const { text } of lengths.filter(({ text: each }) => !/" /u.test(each)))
      expect(isLength(text), text).toBe(true)
  })
})

const isLevel = ({ from, to }: { from: { yFt: number }; to: { yFt: number } }): boolean =>
  Math.abs(from.yFt - to.yFt) < 1e-9
const isUpright = ({ from, to }: { from: { xFt: number }; to: { xFt: number } }): boolean =>
  Math.abs(from.xFt - to.xFt) < 1e-9

/** Whether a point lies in a convex figure that runs counter-clockwise, or within a hundredth of its edge. */
function insideOrOn(point: Spot, figure: readonly Spot[]): boolean {
  return figure.every((a, index) => {
    const b = figure[(index + 1) % figure.length] ?? a
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    return ((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / length > -0.01
  })
}

const boxAt = (box: { x: number; y: number; width: number; height: number }, at: Spot): boolean =>
  box.x < at.x &&
  at.x - box.x < 60 &&
  box.x + box.width < at.x &&
  box.y < at.y &&
  box.y + box.height > at.y &&
  box.height < 24
const lineAt = ({ points: [a, b, ...more] }: PathMark, at: Spot): boolean =>
  more.length === 0 &&
  a !== undefined &&
  b !== undefined &&
  a.y === b.y &&
  Math.abs(a.y - at.y) < 3 &&
  a.x < b.x &&
  b.x < at.x &&
  at.x - a.x < 60 &&
  b.x - a.x > 15
const figureAt = (points: readonly Spot[], at: Spot): boolean => {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  return (
    Math.max(...xs) < at.x &&
    at.x - Math.min(...xs) < 60 &&
    Math.min(...ys) < at.y &&
    Math.max(...ys) > at.y &&
    Math.max(...ys) - Math.min(...ys) < 24
  )
}
