import fc from 'fast-check'
import dxfParser, { type IDxf } from 'dxf-parser'
import { describe, expect, test } from 'vitest'
import { drawPacket, flattenSheet, renderDxf, type PaperName, type Sheet } from '../../src/drawings/index.js'
import { cutAway, maskOf } from '../../src/drawings/dxf/cut.js'
import { dxfFormatted, dxfText, realText } from '../../src/drawings/dxf/pairs.js'
import { cornersOf, LAYERS, xy, type XY } from '../../src/drawings/model/index.js'
import type { Project } from '../../src/project/index.js'
import { hipHouse, microHouse, packetInput, stringHouse } from './demo-packet.js'
import { all, blockEntities, numberOf, one, pointsOf, reachOf, readDxf, shown, tableNames } from './read-dxf.js'
import { threeLevels } from './tree-houses.js'

// The package names its class as a module's default, while Node gives the class itself.
const DxfParser = dxfParser as unknown as new () => { parseSync: (text: string) => IDxf | null }

const houses: readonly [string, () => Project, PaperName][] = [
  ['module-level inverters', microHouse, '11x17'],
  ['a string inverter', stringHouse, 'letter'],
  ['a hip roof', hipHouse, 'A3'],
  ['a tree of panels', threeLevels, '11x17'],
]

const gap = (a: XY, b: XY): number => Math.hypot(b.x - a.x, b.y - a.y)

/** Every sheet of a house as a file, drawn once. */
const drawn = new Map<string, { readonly id: string; readonly text: string }[]>()
function filesOf(
  name: string,
  house: () => Project,
  size: PaperName,
): { readonly id: string; readonly text: string }[] {
  const files =
    drawn.get(name) ?? drawPacket(packetInput(house(), size)).map((sheet) => ({ id: sheet.id, text: renderDxf(sheet) }))
  drawn.set(name, files)
  return files
}

describe.each(houses)('the DXF files of a house with %s', (name, house, size) => {
  const read = filesOf(name, house, size).map(({ id, text }) => ({ id, text, file: readDxf(text) }))

  test('are ASCII with the version of 2000 and inches', () => {
    for (const { text, file } of read) {
      expect(text).toMatch(/^[\n\x20-\x7e]*$/u)
      expect(file.header.get('$ACADVER')).toEqual([[1, 'AC1015']])
      expect(file.header.get('$INSUNITS')).toEqual([[70, '1']])
      expect(file.pairs.at(-1)).toEqual([0, 'EOF'])
    }
  })

  test('name only layers, lines, styles and blocks that their tables have', () => {
    for (const { file } of read) {
      const names = (type: string): Set<string> => new Set(tableNames(file, type))
      const [layers, lines, styles, dims, blocks] = ['LAYER', 'LTYPE', 'STYLE', 'DIMSTYLE', 'BLOCK_RECORD'].map(names)
      const drawnIn = blockEntities(file)
      expect(new Set(drawnIn.keys())).toEqual(blocks)
      for (const layer of Object.values(LAYERS)) expect(layers).toContain(layer.name)
      for (const record of [...file.entities, ...file.blocks]) {
        expect(layers).toContain(one(record, 8))
        for (const line of all(record, 6)) expect(lines).toContain(line)
        if (record.type === 'TEXT') expect(styles).toContain(one(record, 7))
        if (record.type === 'INSERT' || record.type === 'DIMENSION') expect(blocks).toContain(one(record, 2))
        if (record.type === 'DIMENSION') expect(dims).toContain(one(record, 3))
      }
      for (const record of file.tables.filter(({ type }) => type === 'LAYER')) expect(lines).toContain(one(record, 6))
      for (const [block, entities] of drawnIn)
        if (!/^\*(?:Model|Paper)_Space$/u.test(block)) expect(entities).not.toEqual([])
    }
  })

  test('number every record once, below the seed, and every owner and pointer is there', () => {
    for (const { file } of read) {
      const handles = file.pairs.flatMap(([code, value], at) =>
        (code === 5 && file.pairs[at - 1]?.[1] !== '$HANDSEED') || code === 105 ? [value] : [],
      )
      expect(new Set(handles).size).toBe(handles.length)
      const seed = Number.parseInt(file.header.get('$HANDSEED')?.[0]?.[1] ?? '', 16)
      expect(Math.max(...handles.map((each) => Number.parseInt(each, 16)))).toBeLessThan(seed)
      const known = new Set(['0', ...handles])
      for (const [code, value] of file.pairs)
        if ([330, 340, 350, 390].includes(code)) expect([code, value, known.has(value)]).toEqual([code, value, true])
      const records = new Set(file.tables.filter(({ type }) => type === 'BLOCK_RECORD').map((each) => one(each, 5)))
      for (const record of [...file.entities, ...file.blocks]) expect(records).toContain(one(record, 330))
    }
  })

  test('write numbers with a point, six decimals at most, and never minus zero', () => {
    const isReal = (code: number): boolean =>
      (code >= 10 && code <= 59) || (code >= 140 && code <= 149) || (code >= 210 && code <= 239)
    for (const { file } of read) {
      const odd = file.pairs.filter(
        ([code, value]) => isReal(code) && (!/^-?\d+\.\d{1,6}$/u.test(value) || /^-0\.0+$/u.test(value)),
      )
      expect(odd).toEqual([])
    }
  })

  test('close the loops of hatches and count the corners that they state', () => {
    for (const { file } of read) {
      for (const record of [...file.entities, ...file.blocks]) {
        if (record.type === 'LWPOLYLINE') expect(pointsOf(record, 10).length).toBe(numberOf(record, 90))
        if (record.type !== 'HATCH') continue
        expect(all(record, 92).length).toBe(numberOf(record, 91))
        expect(all(record, 73)).toEqual(all(record, 92).map(() => '1'))
        const corners = all(record, 93).reduce((sum, count) => sum + Number(count), 0)
        expect(pointsOf(record, 10).length - 1).toBe(corners)
        if (one(record, 2) !== 'SOLID') expect(all(record, 53).length).toBe(numberOf(record, 78))
      }
    }
  })

  test('reach as far as they state', () => {
    for (const { file } of read) {
      const blocks = blockEntities(file)
      const model = file.entities.filter((record) => all(record, 67).length === 0)
      expect(model.length).toBeGreaterThan(0)
      const points = model.flatMap((record) => reachOf(record, blocks))
      const corner = (name: string): number[] => file.header.get(name)?.map(([, value]) => Number(value)) ?? []
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
      for (const [found, stated] of [
        [Math.min(...xs), corner('$EXTMIN')[0]],
        [Math.min(...ys), corner('$EXTMIN')[1]],
        [Math.max(...xs), corner('$EXTMAX')[0]],
        [Math.max(...ys), corner('$EXTMAX')[1]],
      ])
        expect(Math.abs((found ?? 0) - (stated ?? Number.NaN))).toBeLessThan(2e-5)
    }
  })

  test('are read whole by a reader that knows nothing of this program', () => {
    for (const { text, file } of read) {
      const other = new DxfParser().parseSync(text)
      if (other === null) throw new Error('not read')
      const kinds = (types: readonly string[]): Record<string, number> => {
        const counts: Record<string, number> = {}
        for (const type of types) counts[type] = (counts[type] ?? 0) + 1
        return counts
      }
      // That reader passes over windows and hatches.
      const own = file.entities.map(({ type }) => type).filter((type) => type !== 'VIEWPORT' && type !== 'HATCH')
      expect(kinds(other.entities.map(({ type }) => type))).toEqual(kinds(own))
      expect(Object.keys(other.tables.layer.layers).toSorted()).toEqual(tableNames(file, 'LAYER').toSorted())
      expect(Object.keys(other.blocks).toSorted()).toEqual([...blockEntities(file).keys()].toSorted())
    }
  })

  test('are the same to the byte when drawn again', () => {
    const again = drawPacket(packetInput(house(), size)).map(renderDxf)
    expect(again).toEqual(read.map(({ text }) => text))
  })

  test('show each view at the scale that the sheet names', () => {
    for (const { file } of read) {
      const windows = file.entities.filter(({ type }) => type === 'VIEWPORT')
      expect(windows.length).toBeGreaterThan(1)
      expect(windows.map((each) => numberOf(each, 69))).toEqual(windows.map((_, index) => index + 1))
      const scales = windows.slice(1).map((each) => numberOf(each, 45) / numberOf(each, 41))
      const styles = tableNames(file, 'DIMSTYLE').filter((each) => each.startsWith('GW-'))
      expect(new Set(scales.map((scale) => `GW-${Math.round(scale * 1000) / 1000}`))).toEqual(new Set(styles))
    }
  })
})

describe('what lies where', () => {
  test.each(houses)('modules, rails and mounts of %s as the stages have them, within 0.01 in', (name, house, size) => {
    const input = packetInput(house(), size)
    const files = filesOf(name, house, size)
    const used = Object.keys(input.arrangement.values.planes).filter((id) =>
      input.arrangement.values.modules.some(({ roofPlane }) => roofPlane === id),
    )
    for (const [index, plane] of used.entries()) {
      const text = files.find(({ id }) => id === `A-1${String(index + 1).padStart(2, '0')}`)?.text
      if (text === undefined) throw new Error('no roof plan')
      const file = readDxf(text)
      const blocks = blockEntities(file)
      const placed = (like: string): { x: number; y: number; block: string }[] =>
        file.entities
          .filter((record) => record.type === 'INSERT' && one(record, 2).startsWith(like))
          .map((record) => ({ x: numberOf(record, 10), y: numberOf(record, 20), block: one(record, 2) }))
      const modules = input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane)
      const found = placed('PV-MODULE')
      expect(found.length).toBe(modules.length)
      for (const module of modules) {
        const at = found.find(({ x, y }) => Math.hypot(x - 12 * module.xFt, y - 12 * module.yFt) < 0.01)
        if (at === undefined) throw new Error(`no module at ${module.id}`)
        const corners = blocks.get(at.block)?.flatMap((each) => pointsOf(each, 10)) ?? []
        expect(Math.max(...corners.map(({ x }) => x))).toBeCloseTo(12 * module.widthFt, 2)
        expect(Math.max(...corners.map(({ y }) => y))).toBeCloseTo(12 * module.heightFt, 2)
      }
      const mounts = input.mounts?.values.mounts.filter((each) => each.plane === plane) ?? []
      expect(mounts.length).toBeGreaterThan(0)
      const feet = placed('PV-MOUNT')
      expect(feet.length).toBe(mounts.length)
      for (const mount of mounts)
        expect(feet.some(({ x, y }) => Math.hypot(x - mount.x_in, y - mount.y_in) < 0.01)).toBe(true)
      const lines = file.entities.filter((record) => record.type === 'LINE' && one(record, 8) === LAYERS.rail.name)
      for (const rail of input.mounts?.values.rails.filter((each) => each.plane === plane) ?? []) {
        const [from, to] = [rail.x_in, rail.x_in + rail.length_in]
        const line = lines.find((each) => {
          const [a, b] = [pointsOf(each, 10)[0], pointsOf(each, 11)[0]]
          return (
            a !== undefined &&
            b !== undefined &&
            Math.hypot(a.x - from, a.y - rail.y_in) + Math.hypot(b.x - to, b.y - rail.y_in) < 0.01
          )
        })
        expect([rail.id, line?.type]).toEqual([rail.id, 'LINE'])
      }
    }
  })

  test('dimensions measure what they say, with a picture of their own each', () => {
    const text =
      filesOf(
        ...(houses[0] ??
          (() => {
            throw new Error('no house')
          })()),
      ).find(({ id }) => id === 'A-101')?.text ?? ''
    const dimensions = readDxf(text).entities.filter(({ type }) => type === 'DIMENSION')
    expect(dimensions.length).toBeGreaterThan(8)
    const blocks = dimensions.map((each) => one(each, 2))
    expect(new Set(blocks).size).toBe(blocks.length)
    for (const each of dimensions) {
      expect(one(each, 2)).toMatch(/^\*D\d+$/u)
      const [a, b] = [pointsOf(each, 13)[0], pointsOf(each, 14)[0]]
      if (a === undefined || b === undefined) throw new Error('no points')
      expect(numberOf(each, 42)).toBeCloseTo(Math.hypot(a.x - b.x, a.y - b.y), 5)
      const said = /^(?:(\d+)'-)?(?:(\d+) )?(\d+)(?:\/(\d+))?"$/u.exec(one(each, 1))
      if (said === null) continue
      const [, feet = '0', whole = '0', over = '0', under = '1'] = said
      expect(
        Math.abs(Number(feet) * 12 + Number(whole) + Number(over) / Number(under) - numberOf(each, 42)),
      ).toBeLessThan(0.07)
    }
  })
})

describe('texts', () => {
  const nasty = fc.string({
    unit: fc.constantFrom(
      '%',
      '%%',
      'd',
      'c',
      '0',
      '6',
      '5',
      '\\',
      'U',
      '+',
      'M',
      'P',
      '{',
      '}',
      '^',
      ' ',
      'J',
      '<',
      '>',
      ';',
      '"',
      '°',
      '±',
      '⌀',
      '²',
      'é',
      'Ω',
      '–',
    ),
  })

  test('are shown as they were written', () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const written = dxfText(text)
        expect(written).toMatch(/^[\x20-\x7e]*$/u)
        expect(shown(written)).toBe(text)
      }),
      { numRuns: 3000 },
    )
  })

  test('are as high and as long as they were laid out', () => {
    const [sheet] = drawPacket(packetInput(microHouse())).filter(({ id }) => id === 'E-601')
    if (sheet === undefined) throw new Error('no diagram')
    const marks = flattenSheet(sheet).marks.flatMap((mark) =>
      mark.kind === 'text' && mark.part === undefined && mark.text.trim() !== '' ? [mark] : [],
    )
    const written = readDxf(renderDxf(sheet)).entities.filter(({ type }) => type === 'TEXT')
    expect(written.length).toBe(marks.length)
    for (const [index, mark] of marks.entries()) {
      const record = written[index]
      const [from, to] = record === undefined ? [] : [pointsOf(record, 10)[0], pointsOf(record, 11)[0]]
      if (record === undefined || from === undefined || to === undefined) throw new Error('no text')
      expect([shown(one(record, 1)), one(record, 72)]).toEqual([mark.text, '5'])
      expect(Math.hypot(to.x - from.x, to.y - from.y) * 72).toBeCloseTo(mark.widthPt, 2)
      // Capitals of the font are 1493 of 2048 units high (its table of metrics).
      expect(numberOf(record, 40) * 72).toBeCloseTo((mark.sizePt * 1493) / 2048, 3)
      expect([from.x * 72, 792 - from.y * 72]).toEqual([expect.closeTo(mark.at.x, 2), expect.closeTo(mark.at.y, 2)])
    }
  })

  test('cannot break a line or a group', () => {
    expect(dxfText('a\nb\r\u0000')).toBe('a b  ')
    expect(dxfText('36 % %%d \\U+0041 ^J 26.6°')).toBe('36 % %%%%%%d \\U+005CU+0041 ^ J 26.6%%d')
    expect(dxfFormatted('{\\P}')).toBe('\\{\\\\P\\}')
  })

  test('of a hostile project stand in the file as they are', () => {
    const title = '</text><script>alert(1)</script> ]]> %%c \\U+0041 {\\fArial;} ^J & "quoted"'
    const base = microHouse()
    const sheets = drawPacket(packetInput({ ...base, title }))
    const said = sheets.map((sheet) =>
      readDxf(renderDxf(sheet))
        .entities.filter(({ type }) => type === 'TEXT')
        .map((record) => shown(one(record, 1)))
        .join('')
        .replaceAll(/\s/gu, ''),
    )
    // The strip breaks it over lines, between signs; white space aside, all of it is there in one piece.
    for (const text of said) expect(text).toContain(title.replaceAll(/\s/gu, ''))
  })
})

describe('numbers', () => {
  test('have no minus zero, no exponent, and are finite', () => {
    expect([-0, -1e-9, 1e-7, 12, -3.5, 1e9, 0.1 + 0.2].map(realText)).toEqual([
      '0.0',
      '0.0',
      '0.0',
      '12.0',
      '-3.5',
      '1000000000.0',
      '0.3',
    ])
    expect(() => realText(Number.NaN)).toThrow('a DXF file cannot hold NaN')
  })
})

describe('lines under other things', () => {
  const box = maskOf(cornersOf({ x: 10, y: -5, width: 10, height: 10 }))

  test('are cut where something lies on them, and nowhere else', () => {
    expect(cutAway([xy(0, 0), xy(30, 0)], false, [box])).toEqual([
      { points: [xy(0, 0), xy(10, 0)], closed: false },
      { points: [xy(20, 0), xy(30, 0)], closed: false },
    ])
    expect(cutAway([xy(12, 0), xy(18, 0)], false, [box])).toEqual([])
    expect(cutAway([xy(0, 5), xy(30, 5)], false, [box])).toEqual([{ points: [xy(0, 5), xy(30, 5)], closed: false }])
    const ring = cornersOf({ x: 0, y: -20, width: 15, height: 40 })
    const pieces = cutAway(ring, true, [box])
    expect(pieces.map(({ closed }) => closed)).toEqual([false, false])
    expect(cutAway(ring, true, [maskOf(cornersOf({ x: 50, y: 0, width: 5, height: 5 }))])).toEqual([
      { points: ring, closed: true },
    ])
  })

  test('lose as much length as is hidden', () => {
    const coordinate = fc.integer({ min: -40, max: 60 })
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, coordinate, (ax, ay, bx, by) => {
        fc.pre(ax !== bx || ay !== by)
        const [a, b] = [xy(ax, ay), xy(bx, by)]
        const length = Math.hypot(bx - ax, by - ay)
        const kept = cutAway([a, b], false, [box]).reduce(
          (sum, { points: [from = a, to = a] }) => sum + Math.hypot(to.x - from.x, to.y - from.y),
          0,
        )
        // Walked in small steps; what runs along the edge, no deeper than a pen is wide, stays.
        const steps = 4000
        const under = Array.from({ length: steps }, (_, index) => (index + 0.5) / steps)
          .map((share) => xy(ax + share * (bx - ax), ay + share * (by - ay)))
          .filter(({ x, y }) => x > 10 && x < 20 && y > -5 && y < 5)
        const middle = under[Math.floor(under.length / 2)]
        const deep = middle === undefined ? 1 : Math.min(middle.x - 10, 20 - middle.x, middle.y + 5, 5 - middle.y)
        fc.pre(deep > 0.1)
        expect(Math.abs(length - kept - (length * under.length) / steps)).toBeLessThan(0.08)
      }),
      { numRuns: 60 },
    )
  })

  test('a section to scale hides what lies behind its parts, a plan does not', () => {
    const sheets = drawPacket(packetInput(microHouse()))
    const section = sheets.find(({ id }) => id === 'S-501')
    if (section === undefined) throw new Error('no section')
    expect(section.viewports.map(({ hides }) => hides)).toContain(true)
    const linesFt = (sheet: Sheet): number =>
      readDxf(renderDxf(sheet))
        .entities.filter(({ type }) => type === 'LINE' || type === 'LWPOLYLINE')
        .reduce((sum, each) => {
          const corners = each.type === 'LINE' ? [...pointsOf(each, 10), ...pointsOf(each, 11)] : pointsOf(each, 10)
          const isClosed = each.type === 'LWPOLYLINE' && (numberOf(each, 70) & 1) === 1
          const points = isClosed ? [...corners, ...corners.slice(0, 1)] : corners
          return sum + points.slice(1).reduce((length, to, index) => length + gap(points[index] ?? to, to), 0)
        }, 0)
    const shown = { ...section, viewports: section.viewports.map((each) => ({ ...each, hides: false })) }
    expect(linesFt(section)).toBeLessThan(linesFt(shown))
    for (const sheet of sheets.filter(({ id }) => id === 'C-101' || id === 'A-101'))
      expect(sheet.viewports.map(({ hides }) => hides)).toEqual([undefined])
  })

  test('symbols of a diagram that look alike are one block, however large the paper', () => {
    for (const size of ['11x17', 'letter', 'A3'] as const) {
      const sheets = drawPacket(packetInput(microHouse(), size)).filter(({ id }) => /^E-601(?:-\d)?$/u.test(id))
      expect(sheets.length).toBeGreaterThan(1)
      // Those of the legend lie on its layer and are others, so that they are not counted with the diagram's.
      const breakers = sheets.flatMap((sheet) =>
        readDxf(renderDxf(sheet))
          .entities.filter((each) => each.type === 'INSERT' && one(each, 8) !== LAYERS.legend.name)
          .map((each) => one(each, 2))
          .filter((block) => block.startsWith('BREAKER')),
      )
      expect(breakers.length).toBeGreaterThan(4)
      expect(new Set(breakers)).toEqual(new Set(['BREAKER']))
    }
  })

  test('a wire does not run through the gap of a breaker or a switch', () => {
    const text = filesOf('module-level inverters', microHouse, '11x17').find(({ id }) => id === 'E-601')?.text ?? ''
    const file = readDxf(text)
    const breakers = file.entities.filter((each) => each.type === 'INSERT' && one(each, 2) === 'BREAKER')
    expect(breakers.length).toBeGreaterThan(2)
    const lines = file.entities.filter(({ type }) => type === 'LINE')
    for (const breaker of breakers) {
      const [x, y] = [numberOf(breaker, 10), numberOf(breaker, 20)]
      const through = lines.filter((line) => {
        const [a, b] = [pointsOf(line, 10)[0], pointsOf(line, 11)[0]]
        if (a === undefined || b === undefined || Math.abs(a.y - y) > 1e-3 || Math.abs(b.y - y) > 1e-3) return false
        return Math.min(a.x, b.x) < x && Math.max(a.x, b.x) > x
      })
      expect(through).toEqual([])
    }
  })
})
