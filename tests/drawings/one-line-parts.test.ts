import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  hipHouse,
  manyBranches,
  microHouse,
  noCombiner,
  packetInput,
  stringHouse,
  withSmallLetters,
} from './demo-packet.js'
import { readPacket, type PathMark, type ReadSheet, type Said, type Spot } from './read-sheet.js'

const stringsOnBreaker = (): Project => {
  const house = stringHouse()
  const { s6000 } = house.equipment.inverters ?? {}
  if (s6000 === undefined) throw new Error('no inverter')
  return {
    ...house,
    equipment: { ...house.equipment, inverters: { s6000: { ...s6000, dc_disconnect: false } } },
    electrical: {
      ...house.electrical,
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end', breaker_marked_line_load: false },
      disconnects: {
        outside: { kind: 'pv_system', rating_a: 60, breaker: true },
        roof_top: { kind: 'dc', rating_a: 30 },
      },
    },
  }
}

const houses = [
  ['branches on a combiner', microHouse],
  ['breakers in the panel', noCombiner],
  ['strings on the supply side', stringHouse],
  ['strings on a breaker', stringsOnBreaker],
  ['four branches', hipHouse],
] as const

const figure = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))
const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`

/** Straight pieces of a drawn wire or box, and how far a point is from them. */
function farFrom(point: Spot, read: ReadSheet, besides: PathMark): number {
  const pieces: [Spot, Spot][] = [
    ...read.paths
      .filter((path) => path !== besides && path.dash !== 'dotted')
      .flatMap(({ points, closed }) =>
        points.flatMap((a, index): [Spot, Spot][] => {
          const b = points[index + 1] ?? (closed ? points[0] : undefined)
          return b === undefined ? [] : [[a, b]]
        }),
      ),
    ...read.boxes.flatMap(({ x, y, width, height }): [Spot, Spot][] => {
      const corners = [
        { x, y },
        { x: x + width, y },
        { x: x + width, y: y + height },
        { x, y: y + height },
      ]
      return corners.map((a, index) => [a, corners[(index + 1) % 4] ?? a])
    }),
  ]
  const lines = pieces.map(([a, b]) => {
    const length2 = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
    const share =
      length2 === 0
        ? 0
        : Math.max(0, Math.min(1, ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / length2))
    return Math.hypot(point.x - a.x - share * (b.x - a.x), point.y - a.y - share * (b.y - a.y))
  })
  const circles = read.circles.map(({ center, radius, fill }) => {
    const out = Math.hypot(point.x - center.x, point.y - center.y) - radius
    return fill === undefined ? Math.abs(out) : Math.max(0, out)
  })
  return Math.min(...lines, ...circles)
}

/** Tags of conductors, one or several in a box. */
const TAGS = /^(?:\d+[a-z]*|[FTSG]\d+)(?:, (?:\d+[a-z]*|[FTSG]\d+))*$/u

const isWire = ({ points: [a, b, ...more], pen, dash, closed }: PathMark): boolean =>
  a !== undefined &&
  b !== undefined &&
  more.length === 0 &&
  !closed &&
  ((dash === 'solid' && pen === 'medium' && a.y === b.y) || (dash === 'dashed' && (pen === 'thin' || pen === 'hair')))

/** The bars of a connection to earth, 16, 10 and 4 pt long. */
const isEarthBar = ({ points: [a, b] }: PathMark): boolean =>
  [16, 10, 4].some((length) => Math.abs(Math.abs((b?.x ?? 0) - (a?.x ?? 0)) - length) < 0.01)

/** Everything above the tables of the sheet: the diagram. */
function diagramOf(read: ReadSheet): ReadSheet {
  const table = read.said.find(({ text }) => text === 'Conductors by tag')
  const bottom = (table?.at.y ?? Infinity) - 20
  const above = (y: number): boolean => y < bottom && y > 20
  return {
    ...read,
    said: read.said.filter(({ at }) => above(at.y)),
    paths: read.paths.filter(({ points }) => points.every(({ y }) => above(y))),
    boxes: read.boxes.filter(({ y, height }) => above(y) && above(y + height)),
    circles: read.circles.filter(({ center }) => above(center.y)),
  }
}

const at = (said: Said | undefined): Spot => said?.middle ?? { x: Number.NaN, y: Number.NaN }

describe.each(houses)('one-line diagram of %s', (_, make) => {
  const project = make()
  const input = packetInput(withSmallLetters(project), '11x17', true)
  const wiring = input.wire?.values
  if (wiring === undefined) throw new Error('no wiring')
  const read = readPacket(input).find(({ sheet }) => sheet.id === 'E-601')
  if (read === undefined) throw new Error('no E-601')
  const diagram = diagramOf(read)
  const { said, boxes, circles, paths } = diagram
  const texts = said.map(({ text }) => text)
  const named = (text: string): Said => {
    const found = said.filter((each) => each.text === text)
    expect([text, found.length]).toEqual([text, 1])
    return found[0] as Said
  }
  const supply = project.electrical?.connection?.kind === 'supply_side'
  const sources = wiring.circuits.filter(({ kind }) => kind === 'dc_string' || kind === 'ac_branch')
  const micro = project.inverter_units === undefined
  const combined = wiring.circuits.find(({ kind }) => kind === 'ac_combined_output')
  const units = Object.keys(project.inverter_units ?? {})
  const tagged = wiring.conductors.filter(({ tag }) => /^\d/u.test(tag))
  const tagsOf = (circuit: string) => tagged.filter(({ circuits }) => circuits.includes(circuit))

  /** Height on paper of the wire of a source: the middle of its PV symbol is nearest to its words. */
  const rowOf = (id: string): number => {
    const title = named(`${micro ? 'BRANCH' : 'STRING'} ${id}`)
    const symbols = said.filter(({ text }) => text === 'PV').toSorted((a, b) => a.middle.y - b.middle.y)
    const titles = sources
      .map((source) => named(`${micro ? 'BRANCH' : 'STRING'} ${source.id}`))
      .toSorted((a, b) => a.middle.y - b.middle.y)
    return symbols[titles.indexOf(title)]?.middle.y ?? Number.NaN
  }

  test('every source is told: modules, inverters, currents, voltages', () => {
    for (const circuit of sources) {
      named(`${micro ? 'BRANCH' : 'STRING'} ${circuit.id}`)
      const modules = Object.entries(circuit.modules)
      const words = micro
        ? [
            ...modules.map(([array, number]) => `${count(number, 'module')} Invented M410, 410 W (array ${array})`),
            `${count(circuit.inverters, 'inverter')} Invented micro 366, 366 W, 1.53 A each`,
            `${figure(1.53 * circuit.inverters)} A at 240 V`,
          ]
        : [
            `${count(modules[0]?.[1] ?? 0, 'module')} in series, Invented M410, 410 W`,
            `Isc 13.87 A; ${figure(circuit.continuous_a)} A highest current`,
            `${figure(wiring.strings.find(({ id }) => id === circuit.id)?.voc_cold_v ?? 0, 0)} V highest, of 600 V`,
          ]
      expect(texts).toContain(words.join(' '))
      const lines = said.find((each) => each.text === words.join(' ') && Math.abs(at(each).y - rowOf(circuit.id)) < 22)
      expect([circuit.id, lines?.text]).toEqual([circuit.id, words.join(' ')])
      // Beside its own symbol, not over it.
      expect((lines?.at.x ?? 0) + Math.max(...(lines?.lines.map(({ widthPt }) => widthPt) ?? []))).toBeLessThan(
        Math.min(...said.filter(({ text }) => text === 'PV').map(({ middle }) => middle.x)) - 15,
      )
    }
  })

  test('every source has a PV symbol, a junction box and, on its module, an inverter, with the words in their middle', () => {
    const inMiddle = (text: string, width: number, height: number): Spot[] =>
      boxes
        .filter((box) => box.width === width && box.height === height && box.fill === 'white')
        .filter((box) =>
          said.some(
            (each) =>
              each.text === text &&
              Math.abs(each.middle.y - box.y - box.height / 2) < 0.6 &&
              Math.abs(each.middle.x - box.x - box.width / 2) < 6,
          ),
        )
        .map(({ x, y }) => ({ x, y: y + height / 2 }))
    const rows = sources.map(({ id }) => rowOf(id))
    for (const [text, width, height] of [
      ['PV', 26, 18],
      ['JB', 18, 14],
    ] as const) {
      const found = inMiddle(text, width, height)
      expect(found).toHaveLength(sources.length)
      for (const row of rows) expect(found.filter(({ y }) => Math.abs(y - row) < 0.6)).toHaveLength(1)
    }
    const inverters = boxes.filter(({ width, height, fill }) => width === 20 && height === 20 && fill === 'white')
    expect(inverters).toHaveLength(micro ? sources.length : units.length)
    for (const { x, y } of inverters) {
      // From corner to corner; direct current, solid over dashed, above it and a wave below it.
      const inside = paths.filter(({ points }) =>
        points.every(
          (point) => point.x >= x - 0.01 && point.x <= x + 20.01 && point.y >= y - 0.01 && point.y <= y + 20.01,
        ),
      )
      expect(inside.map(({ points: [a, b] }) => [a, b])).toContainEqual([
        { x: expect.closeTo(x, 2) as number, y: expect.closeTo(y + 20, 2) as number },
        { x: expect.closeTo(x + 20, 2) as number, y: expect.closeTo(y, 2) as number },
      ])
      const level = inside.filter(
        ({ points: [a, b, ...more] }) => more.length === 0 && a?.y === b?.y && (a?.x ?? 0) > x + 1,
      )
      const bars = level.filter(({ points: [a, b] }) => (b?.x ?? 0) < x + 10 && (a?.y ?? 0) < y + 10)
      expect(bars.map(({ dash }) => dash).toSorted()).toEqual(['hidden', 'solid'])
      const waves = inside.filter(({ points }) => points.length > 8)
      expect(waves).toHaveLength(1)
      const [wave] = waves
      for (const point of wave?.points ?? []) {
        expect(point.x).toBeGreaterThan(x + 10)
        expect(point.y).toBeGreaterThan(y + 10)
      }
      // One whole wave: above and below its middle.
      const ys = wave?.points.map((point) => point.y) ?? []
      const [start = 0] = ys
      expect(Math.min(...ys)).toBeCloseTo(start - 2.2, 1)
      expect(Math.max(...ys)).toBeCloseTo(start + 2.2, 1)
      expect(ys.at(-1)).toBeCloseTo(start, 1)
    }
  })

  test('no wire ends in the air', () => {
    const loose = paths
      .filter((path) => isWire(path) && !isEarthBar(path))
      .flatMap((wire) => {
        const [a, b] = wire.points
        // The ground of all boxes begins at the first of them.
        const begins = wire.dash === 'dashed' && wire.pen === 'thin' && a?.y === b?.y
        return [begins ? undefined : a, b].flatMap((end) =>
          end !== undefined && farFrom(end, diagram, wire) > 1.2
            ? [`${end.x} ${end.y} of ${JSON.stringify(wire.points)}`]
            : [],
        )
      })
    expect(loose).toEqual([])
  })

  test('numbers of conductors stand on the wires of their circuits, from the array to the panel', () => {
    /** Numbers on a wire, from left to right: in circles, or several in a box. */
    const numbersAt = (y: number, fromX = 0, toX = Infinity): string[] =>
      said
        .filter(
          ({ text, middle }) => TAGS.test(text) && Math.abs(middle.y - y) < 0.6 && middle.x > fromX && middle.x < toX,
        )
        .filter(
          ({ middle }) =>
            circles.some(
              ({ center, radius }) => radius === 6.6 && Math.hypot(center.x - middle.x, center.y - middle.y) < 0.8,
            ) || boxes.some((box) => box.height === 13.2 && Math.abs(box.x + box.width / 2 - middle.x) < 0.8),
        )
        .toSorted((a, b) => a.middle.x - b.middle.x)
        .flatMap(({ text }) => text.split(', '))
    const junction = Math.min(...said.filter(({ text }) => text === 'JB').map(({ middle }) => middle.x))
    const end = micro ? 660 : 480
    for (const circuit of sources) {
      const own = tagsOf(circuit.id)
      const array = wiring.raceways.filter(({ location }) => location === 'array').map((each) => each.length_ft)
      const inArray = own
        .filter(
          ({ method, length_ft: length }) =>
            method === 'listed trunk cable' || (method === 'free air' && array.includes(length ?? 0)),
        )
        .map(({ tag }) => tag)
      const all = own.map(({ tag }) => tag)
      const y = rowOf(circuit.id)
      expect(numbersAt(y, 0, junction)).toEqual(inArray)
      if (units.length === 0) expect(numbersAt(y, junction, end)).toEqual(all.filter((tag) => !inArray.includes(tag)))
    }
    const told = said.flatMap(({ text }) => (TAGS.test(text) ? text.split(', ') : []))
    // Every tag of the list stands on the diagram once, and no other.
    expect(told.toSorted()).toEqual(wiring.conductors.map(({ tag }) => tag).toSorted())
  })

  test('each wire into a panel passes a breaker with its rating', () => {
    const arcs = paths.filter(({ points, pen }) => pen === 'medium' && points.length > 15)
    const breakers = arcs.map(({ points }) => ({
      x: ((points[0]?.x ?? 0) + (points.at(-1)?.x ?? 0)) / 2,
      y: points[0]?.y ?? 0,
    }))
    for (const { x, y } of breakers) {
      const dots = circles.filter(({ center, radius }) => radius === 1.3 && Math.abs(center.y - y) < 0.1)
      expect(dots.filter(({ center }) => Math.abs(Math.abs(center.x - x) - 7) < 0.1).map(({ fill }) => fill)).toEqual([
        'black',
        'black',
      ])
    }
    const breakerNear = (x: number, y: number, reach: number): boolean =>
      breakers.some((each) => Math.abs(each.x - x) < reach && Math.abs(each.y - y) < 1)
    if (combined !== undefined) {
      for (const circuit of sources) {
        const y = rowOf(circuit.id)
        const rating = said.filter(
          ({ text, middle }) => text === `${circuit.breaker_a} A` && middle.y < y && y - middle.y < 14,
        )
        expect(rating.some(({ middle }) => breakerNear(middle.x, y, 1))).toBe(true)
      }
      const name = (project.electrical?.combiner?.name ?? 'AC combiner').toUpperCase()
      named(name)
      const bus = wiring.combiner?.bus_a
      named(`${bus === null ? '' : `${bus} A bus`}, ${figure(combined.continuous_a)} A out`)
    }
    // The main breaker, and two of the loads that are there already.
    const panelX = at(named((project.electrical?.panel?.name ?? 'Main panel').toUpperCase())).x
    const main = said.filter(({ text, middle }) => text === `${wiring.panel.main_a} A` && middle.x > panelX)
    expect(
      main.some(({ middle }) => breakerNear(middle.x, middle.y + 9, 4) || breakerNear(middle.x, middle.y + 11, 4)),
    ).toBe(true)
    const pv = said.filter(({ text, middle }) => /^PV(?: \d+ A)?$/u.test(text) && middle.x > panelX)
    const inPanel = supply
      ? []
      : combined === undefined
        ? wiring.circuits.filter(({ kind }) => kind === 'ac_branch' || kind === 'ac_inverter_output')
        : [combined]
    expect(pv.map(({ text }) => text)).toEqual(inPanel.map(({ breaker_a: rating }) => `PV ${rating} A`))
    for (const each of pv) expect(breakerNear(each.middle.x - 27, each.middle.y, 20)).toBe(true)
  })

  test('panel, meter and utility are named with their ratings', () => {
    const facts = [
      `${wiring.panel.bus_a} A bus`,
      `${wiring.panel.main_a} A main breaker`,
      `service ${project.electrical?.service?.rating_a} A, 120/240 V, single phase`,
      ...(supply ? [] : ['PV breaker at the end of the bus opposite the main']),
      ...(wiring.conductors.some(({ tag }) => tag === 'S1') ? [] : ['service conductors: size not stated']),
    ].join(' ')
    named(facts)
    named('METER')
    const letter = named('M')
    const meter = circles.filter(({ radius }) => radius === 11)
    expect(meter).toHaveLength(1)
    expect(Math.hypot(at(letter).x - (meter[0]?.center.x ?? 0), at(letter).y - (meter[0]?.center.y ?? 0))).toBeLessThan(
      1,
    )
    expect(at(named('METER')).y).toBeLessThan((meter[0]?.center.y ?? 0) - 12)
    named('TO Sampletown Light Cooperative (invented)')
    named('existing loads')
    // Panel, meter, utility from left to right on one wire; the arrow points away from the house.
    const arrow = paths.find(({ points, closed, fill }) => closed && points.length === 3 && fill === 'black')
    const [tail, tip] = arrow?.points ?? []
    expect(tip?.x ?? 0).toBeGreaterThan(tail?.x ?? Infinity)
    expect(tip?.y).toBeCloseTo(meter[0]?.center.y ?? 0, 2)
    expect(tip?.x ?? 0).toBeGreaterThan((meter[0]?.center.x ?? Infinity) + 11)
  })

  test('the PV disconnect is named with what is stated of it', () => {
    const stated = Object.entries(project.electrical?.disconnects ?? {}).filter(([, each]) => each.kind === 'pv_system')
    const [id, first] = stated[0] ?? []
    const outputs = combined ?? wiring.circuits.find(({ kind }) => kind === 'ac_inverter_output')
    if (id === undefined || first === undefined) throw new Error('no disconnect')
    const box = named(id.toUpperCase())
    const words = [
      'PV system disconnect',
      `${first.rating_a} A`,
      ...(first.lockable === true ? ['lockable'] : []),
      ...(first.service_rated === true ? ['service rated'] : []),
      ...(supply ? [`overcurrent device ${outputs?.breaker_a} A`] : []),
    ].join(', ')
    expect(Math.abs((named(words).at.x ?? 0) - box.at.x)).toBeLessThan(0.1)
    expect(at(named(words)).y).toBeGreaterThan(at(box).y)
  })

  test('a string inverter is told with its inputs and what is in it', () => {
    for (const unit of units) {
      named(`INVERTER ${unit}`)
      const circuit = wiring.circuits.find(({ id }) => id === unit)
      const inside = project.equipment.inverters?.['s6000']?.dc_disconnect === true
      named(
        `Invented string 6000, 6000 W, ${figure(circuit?.continuous_a ?? 0)} A at ${figure(circuit?.voltage_v ?? 0, 0)} V${inside ? ', with DC disconnect' : ''}`,
      )
      for (const [index, source] of sources.entries()) {
        const input = named(`in ${index + 1}`)
        const y = rowOf(source.id)
        expect(Math.abs(at(input).y - y)).toBeLessThan(9)
        const dot = circles.filter(
          ({ center, radius, fill }) => radius === 1.5 && fill === 'black' && Math.abs(center.y - y) < 0.5,
        )
        expect(dot).toHaveLength(1)
        // A blade hangs open in the input where the inverter has a switch of its own.
        const blades = paths.filter(
          ({ points: [a, b, ...more], pen }) =>
            more.length === 0 &&
            pen === 'medium' &&
            a !== undefined &&
            b !== undefined &&
            Math.abs(a.y - y + 1) < 0.1 &&
            Math.abs(b.y - y + 8) < 0.1 &&
            a.x > (dot[0]?.center.x ?? 0) - 30 &&
            a.x < (dot[0]?.center.x ?? 0),
        )
        expect(blades).toHaveLength(inside ? 1 : 0)
      }
    }
    const outside = Object.entries(project.electrical?.disconnects ?? {}).filter(([, each]) => each.kind === 'dc')
    const words = said.filter(({ text }) => text.startsWith('DC '))
    expect(words.map(({ text }) => text)).toEqual(
      outside.flatMap(([id, each]) => sources.map(() => `DC ${id.replaceAll('_', ' ')} ${each.rating_a} A`)),
    )
  })

  test('grounding is told, and drawn from the boxes to the electrode of the house', () => {
    const sizes = [...new Set(wiring.grounding.equipment.map(({ size_awg: size }) => `${size} AWG`))]
    named(
      `Equipment grounding conductor with each circuit (${sizes.join(', ') || 'see schedule'}); rails and frames bonded with ${wiring.grounding.array.size_awg} AWG ${wiring.grounding.array.material}, unspliced along the array`,
    )
    named('existing grounding electrode system')
    const electrode = wiring.grounding.electrode.size_awg
    expect(texts.includes(`array electrode: ${electrode} AWG`)).toBe(electrode !== null)
    // Three bars, shorter and shorter downwards.
    const bars = paths.filter(
      ({ points: [a, b, ...more], pen }) =>
        more.length === 0 &&
        pen === 'medium' &&
        a?.y === b?.y &&
        [16, 10, 4].includes(Math.round(Math.abs((b?.x ?? 0) - (a?.x ?? 0)))),
    )
    const earth = bars.filter(({ points: [a] }) => (a?.y ?? 0) > Math.max(...sources.map(({ id }) => rowOf(id))))
    const lengths = earth
      .toSorted((one, other) => (one.points[0]?.y ?? 0) - (other.points[0]?.y ?? 0))
      .map(({ points: [a, b] }) => Math.round((b?.x ?? 0) - (a?.x ?? 0)))
    expect(lengths.slice(-3)).toEqual([16, 10, 4])
    const dashed = paths.filter(({ dash, points }) => dash === 'dashed' && points.length === 2)
    // From each box down to the line, along it, and down from the panel or the switch.
    expect(dashed).toHaveLength(sources.length + 2)
  })
})

describe('a diagram that is too long for one sheet', () => {
  const input = packetInput(manyBranches())
  const sheets = readPacket(input).filter(({ sheet }) => sheet.id.startsWith('E-601'))

  const breaker = input.wire?.values.circuits.find(({ kind }) => kind === 'ac_branch')?.breaker_a

  test('goes on, with every source once, and says where', () => {
    const branches = sheets.flatMap(({ said }) => said.flatMap(({ text }) => /^BRANCH (\S+)$/u.exec(text)?.[1] ?? []))
    expect(branches).toEqual(Array.from({ length: 15 }, (_, index) => `branch_${index + 1}`))
    expect(sheets.map(({ sheet }) => sheet.id)).toEqual(
      sheets.map((_, index) => (index === 0 ? 'E-601' : `E-601-${index + 1}`)),
    )
    expect(sheets.map(({ sheet }) => sheet.title)).toEqual(
      sheets.map((_, index) => (index === 0 ? 'One-line diagram' : 'One-line diagram, continued')),
    )
    let from = 1
    for (const [index, { said, words }] of sheets.entries()) {
      const here = said.filter(({ text }) => text.startsWith('BRANCH ')).length
      if (here === 0) continue
      expect(words).toContain(`Sources ${from} to ${from + here - 1} of 15; sheets E-601 and following are one diagram`)
      const further = said.filter(({ text }) => text === `and ${15 - here} further circuits, on the sheets that follow`)
      expect(further).toHaveLength(index === 0 ? 1 : 0)
      // Each wire that leaves the sheet says its breaker and where it goes.
      const leaving = said.filter(({ text }) => text === `${breaker} A BREAKER, TO AC COMBINER, SHEET E-601`)
      expect(leaving).toHaveLength(index === 0 ? 0 : here)
      from += here
    }
    expect(from).toBe(16)
  })
})
