import { describe, expect, test } from 'vitest'
import {
  changesSince,
  drawPacket,
  flattenSheet,
  markChanges,
  recordPacket,
  type Sheet,
} from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import type { Box } from '../../src/drawings/model/index.js'
import { readSheet } from './read-sheet.js'

const draw = (project: Project): Sheet[] => drawPacket(packetInput(project))
const first = draw(microHouse())
const record = recordPacket(first, 'Invented', 'A')

/** The house with its vent a foot further along the eave. */
function chimneyMoved(): Project {
  const base = microHouse()
  const south = base.roof_planes['south']
  const chimney = south?.obstructions?.['chimney']
  if (south === undefined || chimney === undefined) throw new Error('no chimney')
  return { ...base, roof_planes: { south: { ...south, obstructions: { chimney: { ...chimney, y_ft: 12.5 } } } } }
}

const idsOf = (sheets: readonly Sheet[]): string[] => changesSince(record, sheets).map(({ id }) => id)

describe('what changed since an earlier issue', () => {
  test('nothing on the same sheets', () => expect(changesSince(record, first)).toEqual([]))

  test('the date and the revision of the strip are no change of the drawing', () => {
    expect(idsOf(draw(microHouse({ document: { date: '2027-05-05', revision: 'Z' } })))).toEqual([])
  })

  test('a chimney that moved is found where it is drawn, and only there', () => {
    const sheets = draw(chimneyMoved())
    const changes = changesSince(record, sheets)
    const plan = changes.find(({ id }) => id === 'A-101')
    const sheet = sheets.find(({ id }) => id === 'A-101')
    if (plan === undefined || sheet === undefined) throw new Error('no A-101')
    expect(changes.some(({ id }) => id.startsWith('E-'))).toBe(false)
    const word = readSheet(sheet).said.find(({ text }) => text === 'CHIMNEY')
    const within = plan.places.some(
      ({ x, y, width, height }) =>
        word !== undefined &&
        word.middle.x > x - 30 &&
        word.middle.x < x + width + 30 &&
        word.middle.y > y - 30 &&
        word.middle.y < y + height + 30,
    )
    expect(within).toBe(true)
    const area = plan.places.reduce((sum, { width, height }) => sum + width * height, 0)
    expect(area).toBeLessThan(0.1 * sheet.frame.width * sheet.frame.height)
    expect(plan.gone).toBeGreaterThan(0)
  })

  test('a text that is another is found on the sheets that say it', () => {
    const base = microHouse()
    const changed = {
      ...base,
      electrical: { ...base.electrical, panel: { ...base.electrical?.panel, name: 'House panel' } },
    }
    const changes = changesSince(record, draw(changed))
    expect(changes.map(({ id }) => id)).toContain('E-601')
    for (const { places, gone } of changes) expect(places.length + gone).toBeGreaterThan(0)
  })

  test('what moves to the continuation of a sheet is no change', () => {
    const moved = first.map((sheet) => (sheet.id === 'E-603' ? { ...sheet, id: 'E-603-9' } : sheet))
    expect(idsOf(moved)).toEqual([])
  })

  test('a sheet that was not there is new', () => {
    const added = { ...(first[2] as Sheet), id: 'C-199' }
    expect(changesSince(record, [...first, added])).toEqual([{ id: 'C-199', kind: 'new', places: [], gone: 0 }])
  })

  test('texts of the table of revisions are not counted', () => {
    const sheets = draw(
      microHouse({
        document: { date: '2026-03-02', revisions: [{ number: 'A', date: '2026-03-02', text: 'For permit' }] },
      }),
    )
    const own = new Set(['Revisions', 'Rev', 'Date', 'What', 'A', '2026-03-02', 'For permit'])
    expect(changesSince(record, sheets).map(({ id }) => id)).toEqual(['G-001'])
    expect(changesSince(record, sheets, own)).toEqual([])
  })
})

describe('clouds and deltas', () => {
  const sheets = draw(chimneyMoved())
  const changes = changesSince(record, sheets)
  const marked = markChanges(sheets, changes, 'B')

  test('every place has a closed cloud and a triangle with the mark; no text of the drawing moves', () => {
    for (const [index, sheet] of marked.entries()) {
      const change = changes.find(({ id }) => id === sheet.id)
      const before = flattenSheet(sheets[index] as Sheet).marks
      const after = flattenSheet(sheet).marks
      expect(after.slice(0, before.length)).toEqual(before)
      const added = after.slice(before.length)
      const deltas = added.filter((mark) => mark.kind === 'text' && mark.text === 'B')
      expect(deltas.length).toBe(change === undefined ? 0 : change.places.length + 1)
      expect(added.filter((mark) => mark.kind === 'path' && mark.points.length > 10).length).toBe(
        change?.places.length ?? 0,
      )
      for (const mark of added)
        if (mark.kind === 'path')
          for (const { x, y } of mark.points) {
            expect(x).toBeGreaterThanOrEqual(sheet.frame.x)
            expect(x).toBeLessThanOrEqual(sheet.frame.x + sheet.frame.width)
            expect(y).toBeGreaterThanOrEqual(sheet.frame.y)
            expect(y).toBeLessThanOrEqual(sheet.frame.y + sheet.frame.height)
          }
    }
  })

  // Drafting practice: a triangle on its base holds the mark, the arcs of a cloud bulge outwards; no source.
  test('a triangle stands on its base about its mark, and arcs bulge outwards', () => {
    const overlay = marked.flatMap((sheet) => sheet.overlay ?? [])
    const paths = overlay.flatMap((each) => (each.kind === 'path' ? [each.points] : []))
    const texts = overlay.flatMap((each) => (each.kind === 'text' ? [each.at] : []))
    const triangles = paths.filter(({ length }) => length === 3)
    expect(triangles).toHaveLength(texts.length)
    for (const [index, points] of triangles.entries()) {
      const [apex, one, two] = points.toSorted((a, b) => a.y - b.y)
      expect(one?.y).toBeCloseTo(two?.y ?? 0, 6)
      expect(texts[index]?.x).toBeCloseTo(apex?.x ?? 0, 6)
      expect(texts[index]?.y).toBeGreaterThan(apex?.y ?? Infinity)
      expect(texts[index]?.y).toBeLessThan(one?.y ?? 0)
    }
    const clouds = paths.filter(({ length }) => length > 10)
    expect(clouds.length).toBeGreaterThan(0)
    for (const points of clouds) {
      // Each fourth point lies on the box itself.
      const box = points.filter((_, index) => index % 4 === 0)
      for (const axis of ['x', 'y'] as const) {
        expect(Math.min(...points.map((each) => each[axis]))).toBeLessThan(Math.min(...box.map((each) => each[axis])))
        expect(Math.max(...points.map((each) => each[axis]))).toBeGreaterThan(
          Math.max(...box.map((each) => each[axis])),
        )
      }
    }
  })

  test('a cloud holds what changed', () => {
    const change = changes.find(({ id }) => id === 'A-101')
    const sheet = marked.find(({ id }) => id === 'A-101')
    if (change === undefined || sheet === undefined) throw new Error('no A-101')
    const clouds = (sheet.overlay ?? []).filter((each) => each.kind === 'path' && each.points.length > 10)
    for (const [index, place] of change.places.entries()) {
      const cloud = clouds[index]
      if (cloud?.kind !== 'path') throw new Error('no cloud')
      expect(Math.min(...cloud.points.map(({ x }) => x))).toBeLessThan(place.x)
      expect(Math.max(...cloud.points.map(({ x }) => x))).toBeGreaterThan(place.x + place.width)
      expect(Math.min(...cloud.points.map(({ y }) => y))).toBeLessThan(place.y)
      expect(Math.max(...cloud.points.map(({ y }) => y))).toBeGreaterThan(place.y + place.height)
    }
  })

  test('the record of marked sheets is that of the sheets', () => {
    expect(recordPacket(marked, 'Invented', 'A')).toEqual(recordPacket(sheets, 'Invented', 'A'))
  })
})

/** The sheet with its diagram changed by hand. */
const withPaper = (id: string, change: (paper: Sheet['paper']) => Sheet['paper']): Sheet[] =>
  first.map((sheet) => (sheet.id === id ? { ...sheet, paper: change(sheet.paper) } : sheet))

const holds = (cloud: Box, box: Box): boolean =>
  cloud.x <= box.x + 0.1 &&
  cloud.y <= box.y + 0.1 &&
  cloud.x + cloud.width >= box.x + box.width - 0.1 &&
  cloud.y + cloud.height >= box.y + box.height - 0.1

describe('what is gone', () => {
  test('a chimney that is no more has a cloud where it stood', () => {
    const base = microHouse()
    const { obstructions: _, ...south } = base.roof_planes['south']!
    const sheets = draw({ ...base, roof_planes: { south } })
    const plan = sheets.find(({ id }) => id === 'A-101')!
    const change = changesSince(record, sheets).find(({ id }) => id === 'A-101')
    const { originPt, scalePtPerFt: scale } = plan.viewports[0]!
    const stood = base.roof_planes['south']!.obstructions!['chimney']!
    const box = {
      x: originPt.x + stood.x_ft * scale,
      y: originPt.y - (stood.y_ft + stood.length_ft) * scale,
      width: stood.width_ft * scale,
      height: stood.length_ft * scale,
    }
    expect(change?.gone).toBeGreaterThan(0)
    expect(change?.places.some((place) => holds(place, box))).toBe(true)
  })

  const lineOf = (paper: Sheet['paper']) =>
    paper.findIndex((each) => each.kind === 'path' && each.layer === 'oneLine' && each.points.length === 2)

  test('a line of the one-line diagram that is no more, or is new, has a cloud where it runs', () => {
    const e601 = first.find(({ id }) => id === 'E-601')!
    const at = lineOf(e601.paper)
    const line = e601.paper[at]
    if (line?.kind !== 'path') throw new Error('no line')
    const without = withPaper('E-601', (paper) => paper.filter((_, index) => index !== at))
    const xs = line.points.map(({ x }) => x)
    const ys = line.points.map(({ y }) => y)
    const box = {
      x: Math.min(...xs),
      y: Math.min(...ys),
      width: Math.max(...xs) - Math.min(...xs),
      height: Math.max(...ys) - Math.min(...ys),
    }
    const removed = changesSince(record, without)
    expect(removed.map(({ id, gone, places }) => [id, gone, places.length])).toEqual([['E-601', 1, 1]])
    expect(holds(removed[0]!.places[0]!, box)).toBe(true)
    const before = recordPacket(without, 'Invented', 'A')
    const added = changesSince(before, first)
    expect(added.map(({ id, gone, places }) => [id, gone, places.length])).toEqual([['E-601', 0, 1]])
    expect(holds(added[0]!.places[0]!, box)).toBe(true)
  })

  test('lines that only move are no change', () => {
    const moved = withPaper('E-601', (paper) =>
      paper.map((each) =>
        each.kind === 'path' && each.layer === 'oneLine'
          ? { ...each, points: each.points.map(({ x, y }) => ({ x: x + 9, y })) }
          : each,
      ),
    )
    expect(idsOf(moved)).toEqual([])
  })

  test('of an issue on other paper only the count is told of what has no scale; so is all of a record without places', () => {
    const at = lineOf(first.find(({ id }) => id === 'E-601')!.paper)
    const without = withPaper('E-601', (paper) => paper.filter((_, index) => index !== at))
    const told = (since: typeof record) =>
      changesSince(since, without).map(({ id, places, gone }) => [id, places.length, gone])
    const onLetter = { ...record, sheets: record.sheets.map((each) => ({ ...each, paper: 'letter' })) }
    expect(told(onLetter)).toEqual([['E-601', 0, 1]])
    const counts = (of: (typeof record.sheets)[number]['texts']) =>
      Object.fromEntries(
        Object.entries(of).map(([key, places]) => [key, typeof places === 'number' ? places : places.length]),
      )
    const old = {
      ...record,
      format: 'gablewatt-packet/1' as const,
      sheets: record.sheets.map(({ id, title, texts, figures }) => ({
        id,
        title,
        texts: counts(texts),
        figures: counts(figures),
      })),
    }
    // The first format tells no lines of diagrams: they are not compared.
    expect(told(old)).toEqual([])
  })
})
