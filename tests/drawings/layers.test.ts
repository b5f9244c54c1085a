import { describe, expect, test } from 'vitest'
import { changesSince, drawPacket, flattenSheet, markChanges, recordPacket } from '../../src/drawings/index.js'
import { LAYERS, onLayer, xy, type LayerKey, type Primitive } from '../../src/drawings/model/index.js'
import { hipHouse, microHouse, packetInput, stringHouse, wallHouse } from './demo-packet.js'
import { threeLevels } from './tree-houses.js'

/** Weights that a DXF file can state, hundredths of a millimetre. Source: the public DXF reference of its maker, group code 370. */
const WEIGHTS = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211]

/** Disciplines of the national CAD standard, one letter each. */
const FORM = /^[GHVBCLSAIQFPDMETRXZ]-[A-Z0-9]{4}(?:-[A-Z0-9]{4}){0,2}(?:-[NEDFTMX1-9])?$/u

describe('the table of layers', () => {
  test('names are of the form of the guideline, each once', () => {
    const names = Object.values(LAYERS).map(({ name }) => name)
    expect(names.filter((name) => !FORM.test(name))).toEqual([])
    expect(new Set(names).size).toBe(names.length)
  })

  test('weights and colours are such as a DXF file can state', () => {
    for (const { color, weightMm } of Object.values(LAYERS)) {
      expect(WEIGHTS).toContain(Math.round(weightMm * 100))
      expect(color).toBeGreaterThanOrEqual(1)
      expect(color).toBeLessThanOrEqual(255)
    }
  })
})

describe('putting things on layers', () => {
  const figure: Primitive = { kind: 'path', points: [xy(0, 0), xy(1, 1)], pen: 'thin' }
  const text: Primitive = { kind: 'text', at: xy(0, 0), text: 'A', sizePt: 8 }

  test('the inner layer stays, and texts do not go with a thing', () => {
    const [inner, word] = onLayer('module', [...onLayer('rail', [figure]), text])
    expect([inner?.layer, word?.layer]).toEqual(['rail', undefined])
    expect(onLayer('schedule', [text])[0]?.layer).toBe('schedule')
  })
})

describe('the layers of a packet', () => {
  const used = (of: Parameters<typeof packetInput>[0]): Map<string, Set<LayerKey>> =>
    new Map(
      drawPacket(packetInput(of)).map((sheet) => [
        sheet.id,
        new Set(flattenSheet(sheet).marks.map(({ layer }) => layer)),
      ]),
    )

  test.each<[string, readonly LayerKey[]]>([
    ['C-101', ['lotLine', 'building', 'roofOutline', 'module', 'roofPath', 'circuit', 'equipment', 'panel']],
    ['A-101', ['roofOutline', 'roofPath', 'rafter', 'module', 'rail', 'mount', 'roofObject', 'dimension', 'schedule']],
    ['S-501', ['rafter', 'rail', 'module', 'mount', 'detail', 'dimension', 'note', 'title']],
    ['E-601', ['oneLine', 'ground', 'legend', 'note', 'text']],
    // The tables of the diagram stand on the sheet after it.
    ['E-601-2', ['schedule', 'title']],
    ['E-604', ['warningLabel', 'equipment', 'note']],
  ])('sheet %s has what it is about on the layers for that', (id, layers) => {
    // Its tables may stand on the sheets that continue it.
    const on = [...used(microHouse())].flatMap(([of, all]) => (of === id || of.startsWith(`${id}-`) ? [...all] : []))
    for (const layer of layers) expect(on).toContain(layer)
  })

  test.each<[string, readonly LayerKey[]]>([
    ['E-605', ['oneLine', 'text']],
    ['E-606', ['equipment', 'text', 'dimension', 'schedule']],
  ])('sheet %s, drawn on request, has its figures and words on the layers for them', (id, layers) => {
    const sheet = drawPacket({ ...packetInput(wallHouse()), threeLine: true }).find((each) => each.id === id)
    if (sheet === undefined) throw new Error(`no ${id}`)
    const { marks } = flattenSheet(sheet)
    for (const layer of layers) expect(marks.map((mark) => mark.layer)).toContain(layer)
    // Words beside a thing do not vanish with it.
    expect(marks.filter((mark) => mark.kind === 'text' && ['oneLine', 'equipment'].includes(mark.layer))).toEqual([])
  })

  test('clouds of a revision lie on a layer of their own', () => {
    const first = drawPacket(packetInput(microHouse()))
    const drawn = drawPacket(packetInput(wallHouse()))
    const marked = markChanges(drawn, changesSince(recordPacket(first, 'Invented', 'A'), drawn), 'B')
    const withMarks = marked.filter(({ overlay }) => overlay !== undefined)
    expect(withMarks.length).toBeGreaterThan(1)
    for (const sheet of withMarks) {
      const on = flattenSheet(sheet).marks.filter(({ layer }) => layer === 'revision')
      expect(on.length).toBe(sheet.overlay?.length)
      expect(flattenSheet({ ...sheet, overlay: [] }).marks.filter(({ layer }) => layer === 'revision')).toEqual([])
    }
  })

  test('the modules of a roof plan, and nothing else, lie on their layer', () => {
    const input = packetInput(microHouse())
    const plan = drawPacket(input).find(({ id }) => id === 'A-101')
    if (plan === undefined) throw new Error('no roof plan')
    const on = flattenSheet({ ...plan, paper: [] }).marks.filter(({ layer }) => layer === 'module')
    const [plane] = Object.keys(input.arrangement.values.planes)
    expect(on.length).toBe(input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane).length)
  })

  test.each([hipHouse(), stringHouse(), threeLevels()])(
    'every sheet has its frame on the layer of the title block',
    (house) => {
      for (const layers of used(house).values()) expect(layers).toContain('titleBlock')
    },
  )
})
