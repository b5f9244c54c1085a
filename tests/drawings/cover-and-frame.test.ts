import { describe, expect, test } from 'vitest'
import { documentStamps, drawPacket, flattenSheet, type PacketInput } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { hipHouse, longNames, microHouse, packetInput, stringHouse } from './demo-packet.js'
import { factsOf, flatText, readPacket, readSheet, sheetOf, stripOf, tableOf, type ReadSheet } from './read-sheet.js'

const draftOf = (project: Project): PacketInput => packetInput(project, '11x17', true)
const trim = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))

describe.each([
  ['branches on a combiner', microHouse, false],
  ['strings on the supply side', stringHouse, true],
  ['three planes', hipHouse, false],
] as const)('cover of %s', (_, make, supply) => {
  const input = packetInput(make())
  const packet = readPacket(input)
  const cover = sheetOf(packet, 'G-001')
  const { project } = input
  const wiring = input.wire?.values
  const facts = factsOf(cover)

  test('the scope counts modules, power and planes, and says how it is connected', () => {
    const { modules } = input.arrangement.values
    const planes = [...new Set(modules.map(({ roofPlane }) => roofPlane))]
    const where = planes.length === 1 ? 'one roof plane' : `${planes.length} roof planes`
    const link = supply
      ? 'It is connected on the supply side of the service disconnect.'
      : 'It is connected to the main panel by a backfed breaker.'
    expect(cover.words).toContain(
      `Installation of a grid-tied photovoltaic system on the roof of a dwelling at 12 Lark Hollow, Sampletown: ${modules.length} modules, ${trim((modules.length * 410) / 1000)} kW DC, ${trim(((wiring?.panel.inverter_a ?? 0) * 240) / 1000)} kW AC, on ${where} (${planes.join(', ')}), parallel to the roof. ${link} No batteries, and no change of the structure of the building.`,
    )
  })

  test('the project data are those of the file and of the stages', () => {
    const panel = wiring?.panel
    const wanted: Readonly<Record<string, string | undefined>> = {
      Site: '12 Lark Hollow, Sampletown',
      Owner: 'A. Lindqvist (invented)',
      Installer: undefined,
      Authority: 'Sampletown Building Office (invented)',
      Utility: 'Sampletown Light Cooperative (invented)',
      'Electrical code': 'NEC 2020',
      'Residential or fire code': 'IRC 2021',
      Loads: 'ASCE 7-16',
      Wood: 'NDS 2018',
      Wind: '107 mph, exposure B, mean roof height 15 ft',
      'Ground snow': '10 psf',
      Service: '200 A, 120/240 V, single phase',
      'Main panel': '200 A bus, 200 A main breaker',
      Connection: `${panel?.rule}, NEC 2020 ${panel?.section}: ${trim(panel?.inverter_a ?? 0)} A of ${trim(panel?.max_inverter_a ?? 0, 1)} A allowed`,
      'Added dead load': `${trim(input.mounts?.values.added_dead_load_psf ?? 0)} psf`,
    }
    for (const [name, value] of Object.entries(wanted)) expect([name, facts.get(name)]).toEqual([name, value])
  })

  test('the index lists every sheet with its number and title, in order, and each sheet bears them', () => {
    // Sheets of a series are one row, which names the first and the end of the last of them: `S-601 to -6`.
    const listed = tableOf(cover, ['Sheet', 'Title']).flatMap(([ids = '', title]) => {
      const [first = '', last] = ids.split(' to ')
      const count = last === undefined ? 1 : Number(last.slice(1))
      return Array.from({ length: count }, (__, index) =>
        index === 0 ? [first, title] : [`${first}-${index + 1}`, `${title}, continued`],
      )
    })
    expect(listed).toEqual(packet.map(({ sheet }) => [sheet.id, sheet.title]))
    for (const { sheet, said } of packet) {
      const number = said.filter(({ text }) => text === sheet.id)
      // The number in the lower right corner is the largest type on the sheet.
      const corner = number.filter(
        ({ middle }) => middle.x > 0.9 * sheet.size.widthPt && middle.y > 0.85 * sheet.size.heightPt,
      )
      expect([sheet.id, corner.length]).toEqual([sheet.id, 1])
    }
    const first = packet.map(({ sheet }) => sheet.id.replace(/-\d+$/u, (each) => (each.length > 3 ? each : '')))
    const planes = new Set(input.arrangement.values.modules.map(({ roofPlane }) => roofPlane)).size
    expect([...new Set(first)]).toEqual([
      'G-001',
      'C-101',
      ...Array.from({ length: planes }, (__, index) => `A-10${index + 1}`),
      'S-501',
      'S-502',
      'S-601',
      'E-601',
      'E-602',
      'E-603',
      'E-604',
    ])
  })

  test('the title strip of every sheet says whose, where, by what codes, when and in which revision', () => {
    for (const [index, read] of packet.entries()) {
      const { sheet } = read
      const strip = stripOf(read)
      const low = strip.map(({ text }) => text)
      expect(low).toContain(`SHEET ${index + 1} OF ${packet.length}`)
      for (const [name, value] of [
        ['SITE', '12 Lark Hollow, Sampletown'],
        ['OWNER', 'A. Lindqvist (invented)'],
        ['PREPARED BY', 'the owner'],
        ['CODES', 'NEC 2020, IRC 2021, ASCE 7-16, NDS 2018'],
        ['AUTHORITY', 'Sampletown Building Office (invented)'],
        ['UTILITY', 'Sampletown Light Cooperative (invented)'],
        ['SHEET', sheet.title.toUpperCase()],
        ['DATE', '2026-03-02'],
        ['REVISION', 'A'],
        ['SCALE', sheet.scaleNote],
        ['SHEET NUMBER', sheet.id],
      ] as const) {
        expect([sheet.id, name, low[low.indexOf(name) + 1]]).toEqual([sheet.id, name, value])
        // The name stands over its value in the same cell.
        const [head, text] = [name, value].map((words) => strip.find((each) => each.text === words))
        expect(head?.at.y ?? Infinity).toBeLessThan(text?.at.y ?? 0)
      }
      expect(low).toContain(project.title)
      expect(low).toContain('People, places and equipment are invented.')
      expect(low).toContain('11x17 sheet')
      expect(low.some((text) => text.includes('DRAFT') || text === 'INSTALLER')).toBe(false)
    }
  })

  test('general notes, legend and a place for the approval', () => {
    for (const note of [
      '1. All work follows NEC 2020, the codes named on this sheet and the local amendments; the authority having jurisdiction decides.',
      '2. Equipment is listed for its use and installed as its instructions and listing say.',
      '3. Breakers that are backfed are suitable for it and carry no LINE or LOAD mark.',
      '4. Metal parts of modules, rails, boxes and raceways are bonded; fittings outdoors are rain-tight.',
      '5. Raceways on the roof stand clear of its surface as the conductor schedule says, and keep the fire access pathways free.',
      '6. Penetrations are flashed and sealed; cut roofing is made good.',
      '7. Work at height is secured against falls. Modules make voltage whenever there is light on them, and the line side of the main breaker stays live with the main off.',
      '8. A licensed electrician makes or checks the final connection where the law asks for it.',
      'PERMIT DRAWINGS: PHOTOVOLTAIC SYSTEM',
    ])
      expect(cover.words).toContain(note)
    expect(cover.words).not.toContain('Data sheets of the makers')
    const approval = cover.said.find(({ text }) => text === 'APPROVAL')
    expect(
      cover.boxes.some(
        ({ x, y, width, height }) =>
          height > 100 &&
          width > 200 &&
          x < (approval?.at.x ?? 0) &&
          y < (approval?.at.y ?? 0) &&
          y + 20 > (approval?.at.y ?? 0),
      ),
    ).toBe(true)
  })
})

/** The line that stands before some words of a legend. */
const markBefore = (read: ReadSheet, words: string) => {
  const text = read.said.find((each) => each.text === words)
  if (text === undefined) throw new Error(`no ${words}`)
  return read.paths.find(
    ({ points: [a, b, ...more] }) =>
      more.length === 0 &&
      a !== undefined &&
      b !== undefined &&
      a.y === b.y &&
      Math.abs(a.y - text.middle.y) < 1 &&
      b.x < text.at.x &&
      text.at.x - a.x < 45 &&
      b.x - a.x > 20,
  )
}

describe('the legend of the cover', () => {
  const packet = readPacket(packetInput(microHouse()))
  const cover = sheetOf(packet, 'G-001')

  test.each([
    ['Outline, wire', 'medium', 'solid'],
    ['Cut or main outline', 'heavy', 'solid'],
    ['Raceway on a plan', 'heavy', 'dashed'],
    ['Equipment ground on the diagram', 'thin', 'dashed'],
    ['Centre line, lot line', 'thin', 'center'],
  ])('%s', (words, pen, dash) => {
    const mark = markBefore(cover, words)
    expect([mark?.pen, mark?.dash]).toEqual([pen, dash])
  })

  test('Number of a conductor or raceway', () => {
    const text = cover.said.find((each) => each.text === 'Number of a conductor or raceway')
    expect(
      cover.circles.filter(
        ({ center, fill }) =>
          fill === undefined && Math.abs(center.y - (text?.middle.y ?? 0)) < 1 && center.x < (text?.at.x ?? 0),
      ),
    ).toHaveLength(1)
  })
})

describe('who and what a packet names', () => {
  const low = (input: PacketInput): string =>
    flatText(
      readPacket(input)
        .slice(0, 1)
        .flatMap(stripOf)
        .map(({ text }) => text)
        .join(' | '),
    )

  test('an installer with a licence, an electrician, a preparer, local amendments', () => {
    const base = microHouse()
    const { prepared_by_owner: _, ...parties } = base.parties ?? {}
    const project: Project = {
      ...base,
      parties: {
        ...parties,
        installer: { name: 'Invented Roofs', license: 'R-1' },
        electrician: { name: 'Invented Wires', license: 'W-2' },
        preparer: { name: 'Invented Pen', license: 'P-3' },
      },
      codes: { ...base.codes, local_amendments: ['Sampletown 12.4', 'Sampletown 12.5'] },
    }
    const house = { storeys: 2, occupancy: 'R-3', construction_type: 'V-B' }
    const input = draftOf({ ...project, existing_house: house })
    const facts = factsOf(sheetOf(readPacket(input), 'G-001'))
    expect(facts.get('Building')).toBe('2 storeys, occupancy R-3, construction type V-B')
    expect(factsOf(sheetOf(readPacket(draftOf(project)), 'G-001')).get('Building')).toBeUndefined()
    expect(facts.get('Installer')).toBe('Invented Roofs, licence R-1')
    expect(facts.get('Electrician')).toBe('Invented Wires, licence W-2')
    expect(facts.get('Local amendments')).toBe('Sampletown 12.4; Sampletown 12.5')
    const words = low(input)
    expect(words).toContain('INSTALLER | Invented Roofs, licence R-1')
    expect(words).toContain('PREPARED BY | Invented Pen, licence P-3')
    expect(words).toContain('NEC 2020, IRC 2021, ASCE 7-16, NDS 2018')
  })

  test('what is not stated is a blank to fill in, or says so', () => {
    const { document: _, codes: __, parties: ___, ...bare } = microHouse()
    const words = low({ ...draftOf(microHouse()), project: bare })
    expect(words).toContain('PREPARED BY | Name and licence: ____________________')
    expect(words).toContain('DATE | not dated | REVISION | - | SCALE | None')
    expect(words).toContain('CODES | none stated')
    for (const none of ['OWNER', 'INSTALLER', 'AUTHORITY', 'UTILITY', 'invented.']) expect(words).not.toContain(none)
  })

  test('documents are in the index, each with its pages, title and date, and in the notes', () => {
    const documents = [
      { path: 'sheets/module.pdf', pages: 2 },
      { path: 'letter.pdf', pages: 1, title: 'Letter about the rafters', date: '2026-02-20' },
    ]
    const cover = sheetOf(readPacket({ ...packetInput(microHouse()), documents }), 'G-001')
    const rows = tableOf(cover, ['Sheet', 'Title'])
    expect(rows.slice(-2)).toEqual([
      ['X-001 to X-002', 'module.pdf'],
      ['X-003', 'Letter about the rafters, 2026-02-20'],
    ])
    expect(cover.words).toContain('9. Data sheets of the makers follow the drawings, each page with its sheet number.')
  })

  test('a draft says so on every sheet, twice in the title strip, and lists what fails', () => {
    const input = draftOf(microHouse())
    const finding = {
      severity: 'error' as const,
      id: 'wire.x',
      where: 'electrical.panel',
      message: 'the bus is too small',
      source: { document: 'NEC', edition: '2020', place: '705.12', standing: 'read' as const },
    }
    const note = { ...finding, severity: 'warning' as const, message: 'only a warning' }
    for (const read of readPacket({ ...input, findings: [finding, note] })) {
      const stamps = read.said.filter(({ text }) => text === 'DRAFT - NOT FOR PERMIT')
      expect([read.sheet.id, stamps.length]).toEqual([read.sheet.id, 2])
      // At the top of the title strip, in a box of its own, instead of the room for stamps.
      const { frame, body } = read.sheet
      const top = stamps.find(({ at }) => at.y < frame.y + frame.height / 4)
      const ground = read.boxes.find(
        ({ x, y, width, height, fill, pen }) =>
          fill === 'white' &&
          pen === 'medium' &&
          Math.abs(x + width / 2 - (top?.middle.x ?? 0)) < 0.6 &&
          Math.abs(y + height / 2 - (top?.middle.y ?? 0)) < 3,
      )
      expect(ground?.x ?? 0).toBeGreaterThan((body?.x ?? 0) + (body?.width ?? 0))
      for (const line of top?.lines ?? []) expect(line.widthPt + 4).toBeLessThan(ground?.width ?? 0)
      expect(read.words).not.toContain('ROOM FOR STAMPS')
    }
    const cover = sheetOf(readPacket({ ...input, findings: [finding, note] }), 'G-001')
    expect(cover.words).toContain('DRAFT: not for permit 1. the bus is too small (electrical.panel); NEC, 2020, 705.12')
    expect(cover.words).not.toContain('only a warning')
    const clean = sheetOf(readPacket({ ...input, findings: [] }), 'G-001')
    expect(clean.words).toContain('DRAFT: not for permit Drawn as a draft; no check fails.')
  })
})

describe('paper', () => {
  test.each([
    ['11x17', 17 * 72, 11 * 72],
    ['letter', 11 * 72, 8.5 * 72],
    ['A3', (420 / 25.4) * 72, (297 / 25.4) * 72],
  ] as const)('%s is %d by %d pt; its frame leaves more room at the left, where it is bound', (size, width, height) => {
    for (const sheet of drawPacket(packetInput(microHouse(), size))) {
      expect([sheet.size.widthPt, sheet.size.heightPt]).toEqual([width, height])
      const { x, y, width: wide, height: high } = sheet.frame
      expect(x).toBeGreaterThan(width - x - wide)
      expect(width - x - wide).toBeCloseTo(y, 6)
      expect(height - y - high).toBeCloseTo(y, 6)
      // Printers reach to a quarter of an inch from the edge; binding wants half an inch.
      expect(y).toBeGreaterThanOrEqual(18)
      expect(x).toBeGreaterThanOrEqual(36)
      const outlines = flattenSheet(sheet).marks.filter(
        (mark) => mark.kind === 'rectangle' && mark.pen === 'heavy' && Math.abs(mark.width - wide) < 0.01,
      )
      expect(outlines).toHaveLength(1)
      expect(outlines[0]).toMatchObject({ x, y })
    }
  })
})

describe('the stamp on pages of documents', () => {
  test('says the project and the number of the page, counted over all documents', () => {
    const stamps = documentStamps(3, 'Lark Hollow', false).map(readSheet)
    expect(stamps.map(({ words }) => words)).toEqual(['Lark Hollow X-001', 'Lark Hollow X-002', 'Lark Hollow X-003'])
    expect(stamps.map(({ sheet }) => sheet.id)).toEqual(['X-001', 'X-002', 'X-003'])
    expect(documentStamps(1, 'Lark Hollow', true).map(readSheet)[0]?.words).toBe('Lark Hollow - DRAFT X-001')
  })

  test.each(['Lark Hollow', 'A house with a name of some words, long', longNames().title])(
    'keeps %s in its part of the stamp, at most two lines',
    (title) => {
      const [stamp] = documentStamps(1, title, false).map(readSheet)
      if (stamp === undefined) throw new Error('no stamp')
      const { frame, size } = stamp.sheet
      const [name, number] = stamp.said
      const split = stamp.paths.find(({ points: [a, b] }) => a?.x === b?.x)?.points[0]?.x ?? 0
      expect(name?.lines.length).toBeLessThanOrEqual(2)
      for (const line of name?.lines ?? []) {
        expect(line.at.x).toBeGreaterThan(frame.x)
        expect(line.at.x + line.widthPt).toBeLessThan(split)
        expect(line.at.y).toBeGreaterThan(frame.y + 4)
        expect(line.at.y).toBeLessThan(frame.y + frame.height)
      }
      const [id] = number?.lines ?? []
      expect(id?.at.x).toBeGreaterThan(split)
      expect((id?.at.x ?? 0) + (id?.widthPt ?? 0)).toBeLessThan(size.widthPt)
      expect(Math.abs((number?.middle.y ?? 0) - size.heightPt / 2)).toBeLessThan(0.5)
      const said = name?.text ?? ''
      if (said.endsWith('…')) expect(title.startsWith(said.slice(0, -1).trim())).toBe(true)
      else expect(said).toBe(title)
      expect(said.endsWith('…')).toBe(title.length > 70)
      expect(stamp.boxes[0]).toMatchObject({ fill: 'white', pen: 'medium', x: 0.5, y: 0.5 })
    },
  )
})
