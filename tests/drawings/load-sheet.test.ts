import { describe, expect, test } from 'vitest'
import { drawLoadSheet, drawPacket } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { readSheet, tableOf } from './read-sheet.js'

/** The demo house on trusses of 2x4 top chords, with what their drawing says. */
function onTrusses(): Project {
  const project = microHouse()
  const south = project.structure?.framing?.['south'] ?? {}
  const truss = {
    top_chord_live_psf: 30,
    top_chord_dead_psf: 10,
    bottom_chord_dead_psf: 7.5,
    panel_length_ft: 6,
    drawing: 'T-04 of 2009-05-12 (invented)',
  }
  return {
    ...project,
    structure: {
      ...project.structure,
      framing: { south: { ...south, kind: 'truss', nominal_size: '2x4', truss } },
    },
  }
}

const number = (cell: string | undefined): number => Number(cell?.replaceAll(',', ''))

describe('the load sheet for the engineer', () => {
  const input = packetInput(microHouse(), 'letter')
  const sheets = drawLoadSheet(input).map(readSheet)
  const words = sheets.map((each) => each.words).join(' ')
  const mounts = input.mounts?.values.mounts ?? []

  test('has the loads first, then the roof plans with their rafters', () => {
    const ids = sheets.map(({ sheet }) => sheet.id)
    expect(ids[0]).toBe('L-101')
    expect(ids.slice(1).every((id) => /^(?:L-101-|A-1|A-601)/u.test(id))).toBe(true)
    expect(ids).toContain('A-101')
  })

  test('has a line for each mount with its loads before they are combined', () => {
    const headings = [
      'Mount',
      'Rafter',
      'x in',
      'y in',
      'Zone',
      'Dead lb',
      'Snow lb',
      'Wind down',
      'Wind up',
      'ASD down',
      'ASD up',
    ]
    const rows = sheets
      .filter(({ sheet, words: own }) => sheet.id.startsWith('L-101') && own.includes('ASD down'))
      .flatMap((each) => tableOf(each, headings))
    expect(rows.map((row) => row[0])).toEqual(mounts.map(({ id }) => id))
    for (const [index, row] of rows.entries()) {
      const mount = mounts[index]
      expect(row.slice(1, 2)).toEqual([String(mount?.rafter)])
      expect(row.slice(5).map(number)).toEqual(
        [mount?.dead_lb, mount?.snow_lb, mount?.wind_down_lb, mount?.wind_up_lb, mount?.down_lb, mount?.uplift_lb].map(
          (value) => Math.round(value ?? 0),
        ),
      )
    }
  })

  test('sums them rafter by rafter', () => {
    const rows = tableOf(sheets[0] ?? readSheet(drawLoadSheet(input)[0]!), [
      'Rafter',
      'Mounts',
      'Dead lb',
      'Snow lb',
      'D + S lb',
      'Wind down lb',
      'Wind up lb',
    ])
    expect(rows.length).toBe(new Set(mounts.map(({ rafter }) => rafter)).size)
    for (const [rafter, count, dead, snow, both] of rows) {
      const own = mounts.filter((mount) => String(mount.rafter) === rafter)
      expect(number(count)).toBe(own.length)
      const sum = (of: (mount: (typeof own)[number]) => number): number => own.reduce((total, m) => total + of(m), 0)
      expect(number(dead)).toBe(Math.round(sum((m) => m.dead_lb)))
      expect(number(snow)).toBe(Math.round(sum((m) => m.snow_lb)))
      expect(number(both)).toBe(Math.round(sum((m) => m.dead_lb + m.snow_lb)))
    }
  })

  test('says what was taken for granted, what nobody saw, and leaves room for the engineer', () => {
    expect(words).toContain('structure.framing.south.seat_in: 1.5 in')
    expect(words).toMatch(/Photographs from the attic/)
    expect(words).toContain('Name, licence, date')
    expect(words).toContain('hardest rafter by the wood standard')
  })

  test('of trusses has what their drawing says and no verdict on them', () => {
    const trusses = packetInput(onTrusses(), 'letter')
    const text = drawLoadSheet(trusses)
      .map(readSheet)
      .map((each) => each.words)
      .join(' ')
    expect(text).toContain('Plane south: trusses')
    expect(text).toContain('T-04 of 2009-05-12 (invented)')
    expect(text).toContain('top chord live 30, dead 10, bottom chord dead 7.5 psf')
    expect(text).toMatch(/P L \/ 4 = [\d,]+ lb-ft in a panel of 6 ft/)
    expect(text).not.toContain('hardest rafter by the wood standard')
    expect(trusses.mounts?.values.rafters).toEqual([])
    const told = trusses.mounts?.findings.find(({ id }) => id === 'structure.truss-not-checked')
    expect(told?.severity).toBe('error')
    expect(told?.fix).toMatch(/--load-sheet/)
  })
})

test('the other sheets call trusses trusses', () => {
  const input = packetInput(onTrusses())
  const words = drawPacket(input)
    .map(readSheet)
    .map((each) => each.words)
    .join(' ')
  expect(words).toContain('Trusses')
  expect(words).toContain('Top chord of a truss 2x4')
})
