import { describe, expect, test } from 'vitest'
import type { PacketInput } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import {
  dimensionLines,
  factsOf,
  feetOf,
  ptPerFt,
  readPacket,
  sheetOf,
  tableOf,
  unitOf,
  type ReadSheet,
  type Spot,
} from './read-sheet.js'

const input = packetInput(microHouse())
const read = sheetOf(readPacket(input), 'S-501')
const sixteenth = (lengthIn: number): number => Math.round(lengthIn * 16) / 16
const trim = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))

/** A detail by its number: its name, its scale, and what stands in its part of the sheet. */
interface Detail {
  readonly name: string
  readonly ptPerIn: number
  readonly isIn: (spot: Spot) => boolean
}

const isBalloon = (sheet: ReadSheet, radius: number): boolean => Math.abs(radius - 10 * unitOf(sheet)) < 0.002

function detailOf(sheet: ReadSheet, number: number): Detail {
  const balloon = sheet.circles.find(
    ({ center, radius }) =>
      isBalloon(sheet, radius) &&
      sheet.said.some(
        ({ text, middle }) => text === String(number) && Math.hypot(middle.x - center.x, middle.y - center.y) < 1,
      ),
  )
  if (balloon === undefined) throw new Error(`no detail ${number}`)
  const { x, y } = balloon.center
  const beside = sheet.said.filter(
    ({ at }) => at.x > x && at.x < x + 20 * unitOf(sheet) && Math.abs(at.y - y) < 15 * unitOf(sheet),
  )
  const scale = beside.find(({ text }) => text.startsWith('SCALE '))
  const name = beside.find(({ text }) => !text.startsWith('SCALE '))
  const { box } = sheet.sheet.viewports[number - 1] ?? raise()
  return {
    name: name?.text ?? '',
    ptPerIn: ptPerFt((scale?.text ?? '').replace('SCALE ', '').replace(/ \(.*\)$/u, '')) / 12,
    isIn: (spot) => spot.y > box.y && spot.y < y && spot.x > box.x && spot.x < box.x + box.width,
  }
}

/** Sizes of the closed figures of a detail, in, with their look. */
const figuresOf = (sheet: ReadSheet, { isIn, ptPerIn }: Detail) =>
  sheet.paths
    .filter(({ closed, points }) => closed && points.length === 4 && points.every(isIn))
    .map(({ points, pen, fill }) => {
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
      return {
        pen,
        fill,
        left: Math.min(...xs) / ptPerIn,
        top: Math.min(...ys) / ptPerIn,
        width: (Math.max(...xs) - Math.min(...xs)) / ptPerIn,
        height: (Math.max(...ys) - Math.min(...ys)) / ptPerIn,
      }
    })

/** Lengths of the dimension lines of a detail, in, with the words nearest to them. */
const dimensionsOf = (sheet: ReadSheet, { isIn, ptPerIn }: Detail) =>
  dimensionLines(sheet)
    .filter(({ from, to }) => isIn(from) && isIn(to))
    .map(({ from, to }) => {
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
      const [nearest] = sheet.said
        .filter(({ text }) => /^(?:\d+ )?\d+(?:\/\d+)?"(?: of thread)?$/u.test(text))
        .toSorted(
          (a, b) =>
            Math.hypot(a.middle.x - middle.x, a.middle.y - middle.y) -
            Math.hypot(b.middle.x - middle.x, b.middle.y - middle.y),
        )
      return { lengthIn: Math.hypot(to.x - from.x, to.y - from.y) / ptPerIn, text: nearest?.text ?? '' }
    })

describe('the section at a mount', () => {
  const detail = detailOf(read, 1)
  const figures = figuresOf(read, detail)
  const withSize = (width: number, height: number) =>
    figures.filter((each) => Math.abs(each.width - width) < 0.02 && Math.abs(each.height - height) < 0.02)

  test('has its name, and is cut across the rafter', () => {
    expect(detail.name).toBe('SECTION ACROSS THE RAFTER, LOOKING UP THE SLOPE')
  })

  test('rafter, sheathing, covering, rail and module have their sizes and lie on each other', () => {
    // A 2x6 is 1-1/2 by 5-1/2 in. @source NDS Supplement 2018 table 1A
    const [rafter] = withSize(1.5, 5.5)
    const [sheathing] = withSize(16, 0.5)
    const [covering] = withSize(16, 0.25)
    const [module] = withSize(16, 1.38)
    const [rail] = withSize(16, 1.6)
    for (const each of [rafter, sheathing, covering, module, rail]) expect(each).toBeDefined()
    const bottom = (each: typeof rafter): number => (each?.top ?? 0) + (each?.height ?? 0)
    expect(bottom(sheathing)).toBeCloseTo(rafter?.top ?? 0, 2)
    expect(bottom(covering)).toBeCloseTo(sheathing?.top ?? 0, 2)
    expect(bottom(module)).toBeCloseTo(rail?.top ?? 0, 2)
    // The module stands off the covering by what the array states: 4 in.
    expect((covering?.top ?? 0) - bottom(module)).toBeCloseTo(4, 2)
    // The rafter lies in the middle.
    expect((rafter?.left ?? 0) + 0.75).toBeCloseTo((sheathing?.left ?? 0) + 8, 2)
    expect([rafter?.pen, module?.fill, covering?.fill]).toEqual(['heavy', 'light', 'mid'])
  })

  test('the screw goes through the middle of the rafter as deep as it is long, without a tip in the air', () => {
    const screw = read.paths.filter(({ points, closed }) => closed && points.length === 5 && points.every(detail.isIn))
    expect(screw).toHaveLength(1)
    const points = screw[0]?.points ?? []
    const [top, tip] = [Math.min(...points.map(({ y }) => y)), Math.max(...points.map(({ y }) => y))]
    expect((tip - top) / detail.ptPerIn).toBeCloseTo(5, 2)
    const xs = points.map(({ x }) => x)
    expect((Math.max(...xs) - Math.min(...xs)) / detail.ptPerIn).toBeCloseTo(5 / 16, 2)
    const [rafter] = withSize(1.5, 5.5)
    expect((Math.max(...xs) + Math.min(...xs)) / 2 / detail.ptPerIn).toBeCloseTo((rafter?.left ?? 0) + 0.75, 2)
    // Its head lies a base of 1/4 in above the covering.
    expect((rafter?.top ?? 0) - 0.75 - 0.25).toBeCloseTo(top / detail.ptPerIn, 2)
    const threads = read.paths.filter(
      ({ points: [a, b, ...more], pen }) =>
        more.length === 0 &&
        pen === 'hair' &&
        a !== undefined &&
        b !== undefined &&
        detail.isIn(a) &&
        Math.abs(b.x - a.x - 1.3 * (5 / 16) * detail.ptPerIn) < 0.05,
    )
    expect(threads.length).toBeGreaterThanOrEqual(13)
    for (const { points: each } of threads)
      for (const { y } of each) expect(y > top - 0.01 && y < tip + 0.01).toBe(true)
  })

  test('each dimension says how far apart its ends are', () => {
    const thread = input.mounts?.values.lag?.thread_in_rafter_in ?? 0
    const dimensions = dimensionsOf(read, detail)
    expect(dimensions.map(({ lengthIn }) => Math.round(lengthIn * 100) / 100).toSorted((a, b) => a - b)).toEqual(
      [1.38, 1.5, 4, 5.5, thread].map((each) => Math.round(each * 100) / 100).toSorted((a, b) => a - b),
    )
    for (const { lengthIn, text } of dimensions)
      expect([text, 12 * feetOf(text.replace(' of thread', ''))]).toEqual([text, sixteenth(lengthIn)])
    expect(dimensions.filter(({ text }) => text.endsWith(' of thread'))).toHaveLength(1)
  })

  test('each note points at what it names', () => {
    const notes: readonly (readonly [string, (from: { x: number; y: number }) => boolean])[] = [
      ['Module Invented M410, frame 1 3/8" high', inside(withSize(16, 1.38)[0], detail)],
      ['Rail Invented rail 40; profile by its maker', inside(withSize(16, 1.6)[0], detail)],
      [
        'Bolt of the rail maker, tightened as its sheet says',
        inside(
          figures.find(({ width }) => Math.abs(width - 1) < 0.01),
          detail,
        ),
      ],
      [
        'Mount Invented flashed foot',
        inside(
          figures.find(({ width }) => Math.abs(width - 0.28) < 0.01),
          detail,
        ),
      ],
      [
        'Flashing, its upper edge under the course above, sealed at the hole',
        inside(
          figures.find(({ width }) => Math.abs(width - 10) < 0.01),
          detail,
        ),
      ],
      ['asphalt shingle, 1/4"', inside(withSize(16, 0.25)[0], detail)],
      ['Sheathing 1/2"', inside(withSize(16, 0.5)[0], detail)],
      [
        '1 lag screw 5/16 x 5" in the middle of the rafter, lead hole 3/16"',
        inside({ ...(withSize(1.5, 5.5)[0] ?? raise()), width: 1.5 }, detail),
      ],
      ['Rafter 2x6 at 24" on centre, Douglas Fir-Larch, No. 2', inside(withSize(1.5, 5.5)[0], detail)],
    ]
    for (const [words, isAt] of notes) {
      const note = read.said.filter(({ text }) => text === words)
      expect([words, note.length]).toEqual([words, 1])
      const [first] = note
      // A leader of three points ends beside the words; its other end is a dot on the thing.
      const leader = read.paths.find(
        ({ points: [, knee, end, ...more], pen }) =>
          more.length === 0 &&
          pen === 'hair' &&
          knee !== undefined &&
          end !== undefined &&
          Math.abs(end.y - knee.y) < 0.01 &&
          Math.abs(end.y - (first?.middle.y ?? 0)) < 1 &&
          Math.abs((first?.at.x ?? 0) - end.x - 3 * unitOf(read)) < 0.6,
      )
      const tip = leader?.points[0]
      expect([words, tip === undefined ? undefined : isAt(tip)]).toEqual([words, true])
      expect(
        read.circles.some(
          ({ center, radius, fill }) =>
            Math.abs(radius - 1.3 * unitOf(read)) < 0.002 &&
            fill === 'black' &&
            center.x === tip?.x &&
            center.y === tip.y,
        ),
      ).toBe(true)
    }
  })
})

describe('the clamps', () => {
  test('between two modules: the gap of the arrangement, the clamp over both frames', () => {
    const detail = detailOf(read, 2)
    expect(detail.name).toBe('BETWEEN TWO MODULES')
    const figures = figuresOf(read, detail)
    const frames = figures.filter(({ width, height }) => Math.abs(width - 4) < 0.01 && Math.abs(height - 1.38) < 0.01)
    expect(frames).toHaveLength(2)
    const [left, right] = frames.toSorted((a, b) => a.left - b.left)
    expect((right?.left ?? 0) - (left?.left ?? 0) - 4).toBeCloseTo(0.5, 2)
    const rail = figures.find(({ width, height }) => Math.abs(width - 8.5) < 0.01 && Math.abs(height - 1.6) < 0.01)
    expect(rail?.left).toBeCloseTo(left?.left ?? 0, 2)
    expect(rail?.top).toBeCloseTo((left?.top ?? 0) + 1.38, 2)
    // The clamp lies on top of both frames and over the gap.
    const clamp = figures.find(({ height, fill }) => Math.abs(height - 0.16) < 0.01 && fill === 'mid')
    expect((clamp?.top ?? 0) + 0.16).toBeCloseTo(left?.top ?? 0, 2)
    expect(clamp?.left ?? Infinity).toBeLessThan((left?.left ?? 0) + 4 - 0.2)
    expect((clamp?.left ?? 0) + (clamp?.width ?? 0)).toBeGreaterThan((right?.left ?? 0) + 0.2)
    const bolt = figures.find(({ width, height }) => Math.abs(width - 0.26) < 0.01 && height > 2)
    expect(bolt?.left).toBeCloseTo((left?.left ?? 0) + 4 + 0.25 - 0.13, 2)
    expect((bolt?.top ?? 0) + (bolt?.height ?? 0)).toBeGreaterThan((rail?.top ?? 0) + 0.5)
    expect(dimensionsOf(read, detail).map(({ lengthIn, text }) => [trim(lengthIn), text])).toEqual([['0.5', '1/2"']])
  })

  test('at the end of a row: the rail goes past the last frame as far as its maker wants', () => {
    const detail = detailOf(read, 3)
    expect(detail.name).toBe('END OF A ROW')
    const figures = figuresOf(read, detail)
    const frame = figures.find(({ width, height }) => Math.abs(width - 5) < 0.01 && Math.abs(height - 1.38) < 0.01)
    const rail = figures.find(({ width, height }) => Math.abs(width - 6.5) < 0.01 && Math.abs(height - 1.6) < 0.01)
    expect(rail?.left).toBeCloseTo(frame?.left ?? 0, 2)
    expect(rail?.top).toBeCloseTo((frame?.top ?? 0) + 1.38, 2)
    const clamp = figures.find(
      ({ height, width, fill }) => Math.abs(height - 0.16) < 0.01 && width > 0.5 && fill === 'mid',
    )
    expect(clamp?.left ?? Infinity).toBeLessThan((frame?.left ?? 0) + 5)
    expect((clamp?.left ?? 0) + (clamp?.width ?? 0)).toBeGreaterThan((frame?.left ?? 0) + 5)
    expect((clamp?.top ?? 0) + 0.16).toBeCloseTo(frame?.top ?? 0, 2)
    expect(dimensionsOf(read, detail).map(({ lengthIn, text }) => [trim(lengthIn), text])).toEqual([['1.5', '1 1/2"']])
  })

  test('say what they are', () => {
    for (const words of [
      'Clamp between two modules, listed for this rail and this frame',
      'Clamp at the end of a row',
      'Module frame; clamps within the zones of its sheet',
      'Rail past the last frame',
    ])
      expect(read.said.filter(({ text }) => text === words)).toHaveLength(1)
    expect(read.said.filter(({ text }) => text === 'Module frame')).toHaveLength(1)
  })
})

describe('the lips of frames and rails', () => {
  // A line across the whole of a module frame below its top, and across a rail.
  test.each([
    [1, 16, 1.38, 0.25],
    [1, 16, 1.6, 0.35 * 1.6],
    [2, 4, 1.38, 0.3],
    [2, 8.5, 1.6, 0.35 * 1.6],
    [3, 5, 1.38, 0.3],
    [3, 6.5, 1.6, 0.35 * 1.6],
  ])('detail %d, %d by %d in: level, %d in below its top, from side to side', (number, width, height, below) => {
    const detail = detailOf(read, number)
    const figures = figuresOf(read, detail).filter(
      (each) => Math.abs(each.width - width) < 0.01 && Math.abs(each.height - height) < 0.01,
    )
    expect(figures.length).toBeGreaterThan(0)
    const hairs = read.paths.filter(
      ({ points, pen }) => points.length === 2 && pen === 'hair' && points.every(detail.isIn),
    )
    for (const { left, top } of figures) {
      const across = hairs.filter(
        ({ points: [a, b] }) =>
          Math.abs((a?.x ?? 0) / detail.ptPerIn - left) < 0.005 &&
          Math.abs((b?.x ?? 0) / detail.ptPerIn - left - width) < 0.005 &&
          [a, b].every((end) => Math.abs((end?.y ?? 0) / detail.ptPerIn - top - below) < 0.005),
      )
      expect(across).toHaveLength(1)
    }
  })
})

describe('the numbers of the attachment', () => {
  test('are those of the project and of the stages', () => {
    const values = input.mounts?.values
    if (values === undefined) throw new Error('no mounts')
    const facts = factsOf(read)
    const inch = (text: string | undefined): number =>
      12 * feetOf((text ?? '').replace(/ without the tip|at most /gu, ''))
    expect(facts.get('Roof plane')).toBe('south (typical of all)')
    expect(facts.get('Mount')).toBe('Invented flashed foot; Flashed foot sheet rev 3 (invented)')
    expect(facts.get('Rail')).toBe('Invented rail 40; 6005A-T61; Rail 40 sheet rev 1 (invented)')
    expect(facts.get('Lag screw')).toBe('1 of 5/16 x 5" per mount')
    expect(facts.get('Lead hole')).toBe('3/16"')
    expect(inch(facts.get('Thread in the rafter'))).toBe(sixteenth(values.lag?.thread_in_rafter_in ?? 0))
    expect(facts.get('Thread in the rafter')?.endsWith(' without the tip')).toBe(true)
    const [least, most] = (facts.get('Lead hole allowed') ?? '').split(' to ').map(inch)
    expect(least).toBe(Math.round((values.lag?.lead_hole_least_in ?? 0) * 64) / 64)
    expect(most).toBe(Math.round((values.lag?.lead_hole_most_in ?? 0) * 64) / 64)
    expect(facts.get('From the middle of the rafter')?.startsWith('at most ')).toBe(true)
    expect(inch(facts.get('From the middle of the rafter'))).toBe(sixteenth(values.lag?.centring_tolerance_in ?? 0))
    const spans = (facts.get('Largest distance of mounts') ?? '').split('; ').map((each) => each.split(': '))
    expect(spans.map(([zone, span]) => [zone, inch(span)])).toEqual(
      Object.entries(values.max_span_in).map(([zone, span]) => [zone.replaceAll('_', ' '), sixteenth(span)]),
    )
    const { name, where, ratio } = values.weakest_link
    expect(facts.get('Weakest link')).toBe(`${name} at ${where}, ${(100 * ratio).toFixed(0)} % used`)
    expect(facts.get('Added dead load')).toBe(
      `${trim(values.added_dead_load_psf)} psf of module area; array ${values.array_weight_lb.toFixed(0)} lb`,
    )
  })

  test('every check with demand, limit and share', () => {
    const rows = readPacket(input)
      .filter(({ sheet, said }) => sheet.id.startsWith('S-501') && said.some(({ text }) => text === 'Limit is'))
      .flatMap((each) => tableOf(each, ['Part', 'Demand', 'Limit', 'Limit is', 'Used', 'Where']))
      // A name may be broken after its points.
      .map((row) => row.map((cell) => cell.replaceAll(/(?<=\w\.) (?=\w)/gu, '')))
    const checks = input.mounts?.values.checks ?? []
    expect(checks.length).toBeGreaterThan(3)
    expect(rows).toEqual(
      checks.map(({ name, demand, capacity, unit, limit_is: kind, ratio, where }) => [
        name,
        `${trim(demand)} ${unit}`.trim(),
        `${trim(capacity)} ${unit}`.trim(),
        kind,
        `${(100 * ratio).toFixed(0)} %`,
        where,
      ]),
    )
  })

  test('notes of the work, on the sheet or the one that goes on with it', () => {
    const notes = readPacket(input)
      .filter(({ sheet }) => sheet.id.startsWith('S-501'))
      .map((each) => each.words)
      .join(' ')
    for (const note of [
      '1. Drill the lead hole at right angles to the roof, fill it with sealant, and turn the screw in; never drive it with a hammer.',
      '2. A screw that does not bite is in no rafter: take it out, seal the hole, flash it, and find the rafter.',
      '3. Rail, clamp and foot profiles are drawn in general form; their sheets show their true shape and torque.',
      '4. The listing of rail, clamps and feet covers bonding of module frames and rails, or bonding jumpers are added.',
    ])
      expect(notes).toContain(note)
  })
})

describe('what is not stated is not drawn', () => {
  const without = (change: (project: Project) => Project): ReadSheet | undefined => {
    const project = change(microHouse())
    const { mounts: _, ...rest }: PacketInput = input
    return readPacket({ ...rest, project }).find(({ sheet }) => sheet.id === 'S-501')
  }
  test('no lag screw, no end allowance, no module height: no such dimension', () => {
    const sheet = without((project) => {
      const { m410 } = project.equipment.modules ?? {}
      const { foot } = project.equipment.mounts ?? {}
      const { rail40 } = project.equipment.rails ?? {}
      if (m410 === undefined || foot === undefined || rail40 === undefined) throw new Error('no equipment')
      const { lag: _, ...mount } = foot
      const { end_allowance_in: __, ...rail } = rail40
      return {
        ...project,
        equipment: { ...project.equipment, mounts: { foot: mount }, rails: { rail40: rail } },
      }
    })
    if (sheet === undefined) throw new Error('no sheet')
    expect(sheet.words).not.toContain('lag screw')
    expect(sheet.words).not.toContain('of thread')
    expect(dimensionsOf(sheet, detailOf(sheet, 3))).toEqual([])
    expect(dimensionsOf(sheet, detailOf(sheet, 1))).toHaveLength(4)
    expect(factsOf(sheet).has('Lag screw')).toBe(false)
    expect(factsOf(sheet).has('Weakest link')).toBe(false)
  })

  test('no rail: no sheet', () => {
    expect(
      without((project) => {
        const { rail: _, ...structure } = project.structure ?? {}
        return { ...project, structure }
      }),
    ).toBeUndefined()
  })
})

function inside(
  figure: { left: number; top: number; width: number; height: number } | undefined,
  { ptPerIn }: Detail,
): (spot: Spot) => boolean {
  return ({ x, y }) =>
    figure !== undefined &&
    x / ptPerIn >= figure.left - 0.01 &&
    x / ptPerIn <= figure.left + figure.width + 0.01 &&
    y / ptPerIn >= figure.top - 0.01 &&
    y / ptPerIn <= figure.top + figure.height + 0.01
}

function raise(): never {
  throw new Error('not drawn')
}

describe('sizes that are not the same under all arrays', () => {
  const make = DRAWN_HOUSES.find(([name]) => name === 'hip and valley')?.[1] ?? microHouse
  const [first = '', second = '', ...others] = Object.keys(make().arrays)
  const rows = (change: (project: Project) => void): Map<string, string> => {
    const project = make()
    for (const array of Object.values(project.arrays)) array.standoff_in = 4
    change(project)
    return factsOf(sheetOf(readPacket(packetInput(project)), 'S-501'))
  }
  test('there are none: the detail is typical of all', () => {
    const all = rows(() => undefined)
    expect(all.get('Roof plane')).toMatch(/ \(typical of all\)$/u)
    expect(all.has('Module frame above the roof')).toBe(false)
  })
  test('each is named with the arrays that have it, and the detail is not called typical', () => {
    const all = rows(({ arrays }) => {
      arrays[second]!.standoff_in = 5
    })
    expect(all.get('Roof plane')).toMatch(/; the others but for the sizes that stand below$/u)
    expect(all.get('Module frame above the roof')).toBe(`${[first, ...others].join(', ')}: 4"; ${second}: 5"`)
    expect(all.has('Sheathing')).toBe(false)
  })
})
