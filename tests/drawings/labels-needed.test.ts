import { describe, expect, test } from 'vitest'
import { labelsToAsk, requiredLabels, type LabelAsk, type RequiredLabel } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { readFixture } from '../electrical/read-fixture.js'
import { hipHouse, microHouse, noCombiner, packetInput, stringHouse } from './demo-packet.js'
import { readPacket, unitOf } from './read-sheet.js'

const EDITIONS = ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023'] as const
type Edition = (typeof EDITIONS)[number]
/** Sections by label and edition: a copy of the published table. */
const published = readFixture('labels')

const by = (base: Project, electrical: Edition): Project => ({ ...base, codes: { ...base.codes, electrical } })
function labelsOf(project: Project): { readonly labels: RequiredLabel[]; readonly asked: LabelAsk[] } {
  const { wire: wiring } = packetInput(project, '11x17', true)
  if (wiring === undefined) throw new Error('no wiring')
  return { labels: requiredLabels(project, wiring.values), asked: labelsToAsk(project, wiring.values) }
}

/** A house whose strings stay live within the array after a shutdown. */
const stayLive = (): Project => {
  const house = stringHouse()
  return {
    ...house,
    electrical: {
      ...house.electrical,
      rapid_shutdown: { inside_boundary: 'no_exposed_parts', initiator: 'pv_disconnect', initiator_outdoors: true },
    },
  }
}

/** Where each label goes; written here from the places that its section names. */
type Places = Readonly<Record<string, readonly string[]>>
const always: Places = {
  PV_DISC: ['pv_disconnect'],
  AC_POI: ['pv_disconnect'],
  RSD_PLACARD: ['main_panel'],
  RSD_SWITCH: ['pv_disconnect'],
  DIRECTORY: ['main_panel', 'pv_disconnect'],
}
const loadSide: Places = {
  SOURCES_PRESENT: ['main_panel'],
  DISC_PURPOSE: ['main_panel'],
  BACKFED_BREAKER: ['main_panel'],
}
const ofStrings: Places = {
  LINE_LOAD: ['dc_disconnect'],
  DC_RACEWAY: ['dc_raceway'],
  DC_SOURCE: ['dc_disconnect'],
  GFP_WARNING: ['inverter'],
}

describe.each([
  ['branches on a combiner', microHouse, { ...always, ...loadSide }],
  ['breakers in the panel', noCombiner, { ...always, ...loadSide }],
  ['strings on the supply side', stringHouse, { ...always, ...ofStrings }],
  ['strings that stay live', stayLive, { ...always, ...ofStrings }],
] as const)('labels of %s', (_, make, places: Places) => {
  test.each(EDITIONS)('by %s: those that the edition asks for, at their places, with their sections', (edition) => {
    const project = by(make(), edition)
    const { labels } = labelsOf(project)
    const asks = published.filter((row) => {
      const cell = row[`nec${edition.slice(4)}`] ?? ''
      // In 2011 the breakers count, not the inverters: 200 + 3 x 15 A are above 120 % of the bus, so no rule governs.
      const fails = row['id'] === 'BACKFED_BREAKER' && edition === 'NEC 2011' && make === noCombiner
      return !['', '-', 'removed', 'deleted'].includes(cell) && (row['id'] ?? '') in places && !fails
    })
    expect(labels.map(({ id, places: at }) => [id, [...at]])).toEqual(
      asks.map((row) => [row['id'], [...(places[row['id'] ?? ''] ?? [])]]),
    )
    expect(labels.map(({ number }) => number)).toEqual(labels.map((__, index) => index + 1))
    for (const [index, { source, id }] of labels.entries()) {
      const section = (asks[index]?.[`nec${edition.slice(4)}`] ?? '').replace(' memory, unverified', '')
      expect(source.startsWith(`NEC, ${edition.slice(4)}, ${section}`), `${id}: ${source}`).toBe(true)
      // What the table has from memory says so, wherever it is printed.
      if ((asks[index]?.[`nec${edition.slice(4)}`] ?? '').includes('memory'))
        expect(source.endsWith('(from memory, unverified)')).toBe(true)
    }
  })

  test('each counts one at each place; along raceways and at breakers as they are', () => {
    const { labels } = labelsOf(make())
    for (const { id, count, counted, places: at, along, spacingFt } of labels) {
      if (id === 'DC_RACEWAY') {
        // 20 ft of raceway on the roof: at 0, 10 and 20 ft, and the cover of the box where it begins.
        expect([count, along.map(({ atFt }) => atFt), spacingFt]).toEqual([4, [[0, 10, 20]], 10])
        expect(counted).toBe(
          '3 along 20 ft of raceway, at both ends of a section and between them, and 1 on the cover of the box where each begins',
        )
      } else if (id === 'DISC_PURPOSE') {
        expect([count, counted]).toEqual([
          make().electrical?.combiner === undefined ? 3 : 1,
          'one at each PV breaker in the panel',
        ])
      } else expect([id, count, counted, along, spacingFt]).toEqual([id, at.length, 'one at each place', [], undefined])
    }
  })
})

describe('labels that hang on what the project file does not tell', () => {
  const EMERGENCY =
    'the service is new or replaced, or the PV disconnect serves as the emergency disconnect: one of these, by the kind of device'
  const METER = 'a meter disconnect switch is set ahead of the service disconnect'
  const ISOLATION = 'there is an emergency disconnect and the PV disconnect is not next to it'
  const NO_BREAK = 'connectors or a fuse holder without an interrupting rating serve as the isolating device'
  const UNGROUNDED =
    'the array is not grounded, as with inverters without a transformer: at its boxes and disconnects, instead of the ground-fault warning'
  const FIRE = 'the fire code in force is that of 2012 or 2015: these words, which satisfy the electrical code as well'

  // 230.85 and 230.82(3) since 2020, 230.85(D) since 2023, 690.15 since 2017, 690.35(F) until 2014.
  test.each([
    ['NEC 2011', [], [UNGROUNDED, FIRE]],
    ['NEC 2014', [], [UNGROUNDED]],
    ['NEC 2017', [], [NO_BREAK]],
    ['NEC 2020', [EMERGENCY, METER], [EMERGENCY, METER, NO_BREAK, FIRE]],
    ['NEC 2023', [EMERGENCY, ISOLATION, METER], [EMERGENCY, ISOLATION, METER, NO_BREAK, FIRE]],
  ] as const)('by %s', (edition, micro, strings) => {
    expect(labelsOf(by(microHouse(), edition)).asked.map(({ when }) => when)).toEqual(micro)
    expect(labelsOf(by(stringHouse(), edition)).asked.map(({ when }) => when)).toEqual(strings)
  })

  test('their words, letters and sections', () => {
    const of = (edition: Edition, when: string) =>
      labelsOf(by(stringHouse(), edition)).asked.find((each) => each.when === when)
    const devices = [
      'EMERGENCY DISCONNECT, SERVICE DISCONNECT',
      'EMERGENCY DISCONNECT, METER DISCONNECT, NOT SERVICE EQUIPMENT',
      'EMERGENCY DISCONNECT, NOT SERVICE EQUIPMENT',
    ]
    // 230.85 (2020, read) sets no letters; 230.85(E)(1) (2023, read): white on red, 1/2 in.
    expect(of('NEC 2020', EMERGENCY)).toMatchObject({
      when: EMERGENCY,
      phrases: devices,
      look: '',
      source: 'NEC, 2020, 230.85(1); NEC, 2020, 230.85(2); NEC, 2020, 230.85(3)',
    })
    expect(of('NEC 2023', EMERGENCY)).toMatchObject({
      when: EMERGENCY,
      phrases: devices,
      look: 'white on red, capitals at least 1/2"',
      source: 'NEC, 2023, 230.85(E)(1)',
    })
    expect(of('NEC 2023', METER)).toMatchObject({
      phrases: ['METER DISCONNECT NOT SERVICE EQUIPMENT'],
      source: 'NEC, 2023, 230.82(3)',
    })
    expect(of('NEC 2017', NO_BREAK)).toMatchObject({
      phrases: ['Do Not Disconnect Under Load', 'Not for Current Interrupting'],
      source: 'NEC, 2017, 690.15(C)',
    })
    expect(of('NEC 2020', FIRE)).toMatchObject({
      phrases: ['WARNING: PHOTOVOLTAIC POWER SOURCE'],
      look: 'REFLECTIVE, white on red, capitals at least 3/8"',
    })
  })
})

describe('words that the code leaves to us', () => {
  const textOf = (project: Project, id: string): string =>
    labelsOf(project).labels.find((each) => each.id === id)?.text ?? ''
  // 8 modules of 37.4 V at -12 deg C; 13.87 A by 1.25 (690.8(A)(1)); 31.5 V and 13.02 A at the maximum power point.
  const highest = Math.ceil(8 * 37.4 * (1 - 0.0027 * (-12 - 25)))

  test('ratings of the dc source: four until 2014, two in 2017, one since 2020', () => {
    const { wire: wiring } = packetInput(stringHouse(), '11x17', true)
    const string = wiring?.values.circuits.find(({ id, kind }) => kind === 'dc_string' && id.endsWith('_s1'))
    const current = `MAXIMUM CIRCUIT CURRENT ${string?.continuous_a.toFixed(1)} A`
    for (const edition of ['NEC 2011', 'NEC 2014'] as const)
      expect(textOf(by(stringHouse(), edition), 'DC_SOURCE')).toBe(
        `RATED MAXIMUM POWER-POINT CURRENT 13.0 A RATED MAXIMUM POWER-POINT VOLTAGE ${string?.voltage_v.toFixed(0)} V MAXIMUM VOLTAGE ${highest} V DC ${current}`,
      )
    expect(textOf(by(stringHouse(), 'NEC 2017'), 'DC_SOURCE')).toBe(`MAXIMUM VOLTAGE ${highest} V DC ${current}`)
    for (const edition of ['NEC 2020', 'NEC 2023'] as const)
      expect(textOf(by(stringHouse(), edition), 'DC_SOURCE')).toBe(`MAXIMUM DC VOLTAGE OF PV SYSTEM ${highest} V`)
  })

  test('the point of connection, the sources and the purpose of breakers', () => {
    expect(textOf(microHouse(), 'AC_POI')).toBe(
      // 15 inverters of 1.53 A: 22.95 A.
      'POWER SOURCE: PHOTOVOLTAIC RATED AC OUTPUT CURRENT 23.0 A NOMINAL AC VOLTAGE 240 V',
    )
    expect(textOf(microHouse(), 'SOURCES_PRESENT')).toBe(
      'THIS PANEL IS SUPPLIED BY TWO SOURCES: UTILITY AND PHOTOVOLTAIC SYSTEM',
    )
    const { wire: wiring } = packetInput(microHouse())
    const breaker = wiring?.values.circuits.find(({ id }) => id === 'output')?.breaker_a
    expect(textOf(microHouse(), 'DISC_PURPOSE')).toBe(`PV SYSTEM BREAKER ${breaker} A`)
    const ratings = packetInput(noCombiner()).wire?.values.circuits.map(({ breaker_a: each }) => `${each} A`)
    expect(textOf(noCombiner(), 'DISC_PURPOSE')).toBe(`PV SYSTEM BREAKER ${[...new Set(ratings)].join(', ')}`)
  })

  test('the directory names each disconnect, or the breaker in the panel', () => {
    expect(textOf(microHouse(), 'DIRECTORY')).toContain(
      'LOCATION OF POWER SOURCE DISCONNECTS SERVICE DISCONNECT: MAIN PANEL, OUTDOORS PV SYSTEM DISCONNECT: OUTSIDE, OUTDOORS',
    )
    const bare = microHouse()
    const { disconnects: _, panel, ...electrical } = bare.electrical ?? {}
    const { location: __, name: ___, ...rest } = panel ?? {}
    const none = { ...bare, electrical: { ...electrical, panel: rest } }
    expect(textOf(none, 'DIRECTORY')).toContain(
      'SERVICE DISCONNECT: MAIN PANEL PV SYSTEM DISCONNECT: BACKFED BREAKER IN THIS PANEL',
    )
    expect(textOf(none, 'RSD_PLACARD')).toMatch(/RAPID SHUTDOWN SWITCH: PV SYSTEM BREAKER IN THE MAIN PANEL$/u)
    expect(labelsOf(none).labels.find(({ id }) => id === 'PV_DISC')?.places).toEqual(['main_panel'])
    const supply = stringHouse()
    const { disconnects: ____, ...withoutAny } = supply.electrical ?? {}
    const ahead = { ...supply, electrical: withoutAny }
    expect(textOf(ahead, 'DIRECTORY')).toContain('PV SYSTEM DISCONNECT: AHEAD OF THE SERVICE DISCONNECT')
    expect(labelsOf(ahead).labels.find(({ id }) => id === 'PV_DISC')?.places).toEqual(['pv_disconnect'])
  })
})

describe.each([
  ['branches on a combiner', microHouse],
  ['breakers in the panel', noCombiner],
  ['strings on the supply side', stringHouse],
  ['strings in 2011', () => by(stringHouse(), 'NEC 2011')],
  ['four branches', hipHouse],
] as const)('the sheet of labels of %s', (_, make) => {
  const project = make()
  const { labels, asked } = labelsOf(project)
  const sheets = readPacket(packetInput(project, '11x17', true)).filter(({ sheet }) => sheet.id.startsWith('E-604'))
  const words = sheets.map((read) => read.words).join(' ')
  const [first] = sheets
  if (first === undefined) throw new Error('no sheet')
  const unit = unitOf(first)
  const isRadius = (radius: number, wanted: number): boolean => Math.abs(radius - wanted * unit) < 0.002

  test('says by which edition, and that it is drawn at true size', () => {
    expect(words).toContain(`Labels by ${project.codes?.electrical}`)
    for (const note of [
      '• Drawn at true size. Colours are named in words, so that a copy in black and white says the same.',
      '• Fixed for good, not written by hand, of a material that lasts where they are.',
      '• Words that the code does not fix may be worded otherwise by the authority.',
      '• REFLECTIVE beside a label: the code asks for reflective material.',
    ])
      expect(words).toContain(note)
    expect(sheets.map(({ sheet }) => sheet.title)).toEqual(
      sheets.map((__, index) => `Labels and placards${index === 0 ? '' : ', continued'}`),
    )
    expect(new Set(sheets.map(({ sheet }) => sheet.scaleNote))).toEqual(new Set(['Labels at true size']))
  })

  test('every label stands beside its number, with its note under it', () => {
    const balloons = sheets.flatMap((read) =>
      read.circles.filter(({ radius }) => isRadius(radius, 9)).map((circle) => ({ read, circle })),
    )
    expect(balloons).toHaveLength(labels.length)
    for (const [index, { read, circle }] of balloons.entries()) {
      const label = labels[index]
      if (label === undefined) throw new Error('no label')
      const number = read.said.find(
        ({ text, middle }) =>
          text === String(label.number) && Math.hypot(middle.x - circle.center.x, middle.y - circle.center.y) < 1,
      )
      expect([label.id, number?.text]).toEqual([label.id, String(label.number)])
      const outline = read.boxes.find(
        ({ pen, x, y, fill }) =>
          pen === 'heavy' &&
          fill === undefined &&
          Math.abs(x - circle.center.x - 16 * unit) < 0.1 &&
          Math.abs(y - circle.center.y + 14 * unit) < 0.1,
      )
      if (outline === undefined) throw new Error(`no outline of ${label.id}`)
      // Grounds of its parts fill the outline from top to bottom.
      const grounds = read.boxes
        .filter(
          ({ x, y, width, fill, pen }) =>
            fill !== undefined &&
            pen === 'thin' &&
            x === outline.x &&
            width === outline.width &&
            y >= outline.y - 0.01 &&
            y < outline.y + outline.height - 0.01,
        )
        .toSorted((a, b) => a.y - b.y)
      expect(grounds.map(({ fill }) => fill)).toEqual(label.parts.map(({ ground }) => ground))
      let top = outline.y
      for (const ground of grounds) {
        expect(ground.y).toBeCloseTo(top, 2)
        top += ground.height
      }
      expect(top).toBeCloseTo(outline.y + outline.height, 1)
      for (const part of label.parts.filter(({ figure }) => figure === undefined)) {
        const text = read.said.find(
          (each) =>
            each.text === part.text.replaceAll('\n', ' ') &&
            each.at.y > outline.y &&
            each.at.y < outline.y + outline.height &&
            Math.abs(each.middle.x - outline.x - outline.width / 2) < 0.5,
        )
        expect([label.id, text?.text]).toEqual([label.id, part.text.replaceAll('\n', ' ')])
        for (const line of text?.lines ?? []) {
          expect([line.face, line.color]).toEqual(['bold', part.ink])
          // Capitals of the font are 1493 of 2048 units high.
          expect((line.sizePt * 1493) / 2048 / 72).toBeGreaterThanOrEqual(part.capsIn)
          expect((line.sizePt * 1493) / 2048 / 72).toBeLessThan(part.capsIn + 0.001)
          expect(line.at.x).toBeGreaterThan(outline.x + 6.9)
          expect(line.at.x + line.widthPt).toBeLessThan(outline.x + outline.width - 6.9)
        }
      }
      const note = read.said.find(
        ({ at }) =>
          Math.abs(at.x - outline.x) < 0.1 &&
          at.y > outline.y + outline.height &&
          at.y < outline.y + outline.height + 15 * unit,
      )
      const { onSheet } = label
      const wording = onSheet.wording.charAt(0).toUpperCase() + onSheet.wording.slice(1)
      expect(note?.text).toBe(
        `${label.count} needed: ${label.counted}. Make: ${onSheet.look}. ${wording}. Where: ${label.where}. Source: ${onSheet.source}.`,
      )
    }
  })

  test('a placard with the roof shows the house with its array', () => {
    const placard = labels.find(({ parts }) => parts.some(({ figure }) => figure !== undefined))
    const arrays = sheets.flatMap((read) =>
      read.paths.filter(
        ({ closed, points, fill }) => closed && points.length === 4 && (fill === 'mid' || fill === 'red'),
      ),
    )
    expect(arrays).toHaveLength(placard === undefined ? 0 : 1)
    // Before 2017 there is no figure.
    expect(placard === undefined).toBe(['NEC 2011', 'NEC 2014'].includes(project.codes?.electrical ?? ''))
    if (placard !== undefined) expect(arrays[0]?.fill).toBe('mid')
  })

  test('the wall shows each piece of equipment from the array to the meter, with the numbers of its labels', () => {
    const names: Readonly<Record<string, string>> = {
      dc_raceway: 'DC RACEWAY',
      dc_disconnect: 'DC DISCONNECT',
      inverter: 'INVERTER',
      combiner: 'AC COMBINER',
      pv_disconnect: 'PV DISCONNECT',
      shutdown_switch: 'SHUTDOWN SWITCH',
      main_panel: 'MAIN PANEL',
      meter: 'METER',
    }
    const used = Object.entries(names).filter(
      ([place]) =>
        place === 'meter' ||
        (place === 'combiner' && project.electrical?.combiner !== undefined) ||
        labels.some(({ places }) => places.some((each) => each === place)),
    )
    const row = first.said
      .filter(({ text }) => Object.values(names).includes(text))
      .toSorted((a, b) => a.middle.x - b.middle.x)
    expect(row.map(({ text }) => text)).toEqual(used.map(([, name]) => name))
    const step = (row[1]?.middle.x ?? 0) - (row[0]?.middle.x ?? 0)
    for (const [index, [place, name]] of used.entries()) {
      const middle = row[index]?.middle ?? { x: 0, y: 0 }
      expect(middle.x).toBeCloseTo((row[0]?.middle.x ?? 0) + index * step, 1)
      const balloons = first.circles.filter(
        ({ center, radius }) =>
          isRadius(radius, 5.8) &&
          Math.abs(center.x - middle.x) < step / 2 &&
          center.y < middle.y &&
          middle.y - center.y < 140 * unit,
      )
      const numbers = balloons.map(
        ({ center }) =>
          first.said.find(
            ({ text, middle: at }) => /^\d+$/u.test(text) && Math.hypot(at.x - center.x, at.y - center.y) < 0.8,
          )?.text,
      )
      expect([name, new Set(numbers)]).toEqual([
        name,
        new Set(
          labels.filter(({ places }) => places.some((each) => each === place)).map(({ number }) => String(number)),
        ),
      ])
      // No balloon lies over another, and each stands above its piece.
      for (const [at, one] of balloons.entries())
        for (const other of balloons.slice(at + 1))
          expect(Math.hypot(one.center.x - other.center.x, one.center.y - other.center.y)).toBeGreaterThan(
            11.6 * unit - 0.01,
          )
    }
    expect(words).toContain('From the array to the meter, not to scale; numbers are those of the labels.')
    expect(first.said.filter(({ text }) => text === 'ARRAY')).toHaveLength(1)
  })

  test('what is asked stands at the end', () => {
    expect(words.includes('Labels to ask the authority about')).toBe(asked.length > 0)
    for (const { when, phrases, look, onSheet } of asked)
      expect(words).toContain(
        `• If ${when}: ${phrases.join('; ')}${look === '' ? '' : ` (${look})`}. Source: ${onSheet.source}.`,
      )
  })
})
