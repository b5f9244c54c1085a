import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { manyBranches, microHouse, noCombiner, packetInput, stringHouse } from './demo-packet.js'
import { readPacket, type ReadSheet } from './read-sheet.js'
import { knownService, subpanelHouse, supplyTree, tapHouse, threeLevels } from './tree-houses.js'

/** The diagram with its legend and tables, over as many sheets as they take. */
const oneLineSheets = (project: Project): ReadSheet[] =>
  readPacket(packetInput(project, '11x17', true)).filter(({ sheet }) => /^E-601(?:-\d+)?$/u.test(sheet.id))

const firstSheet = (project: Project): ReadSheet => {
  const found = oneLineSheets(project).find(({ sheet }) => sheet.id === 'E-601')
  if (found === undefined) throw new Error('no E-601')
  return found
}

const withShutdown = (base: Project, change: object): Project => ({
  ...base,
  electrical: { ...base.electrical, rapid_shutdown: { ...base.electrical?.rapid_shutdown, ...change } },
})

const units = (base: Project): Project =>
  withShutdown(base, { equipment: { name: 'Invented cutoff 1', modules_per_unit: 2, listed: true, transmitters: 1 } })

/** Pieces of the control line above the legend: short dashes with the thin pen; those of 6.5 pt are in the symbol of an inverter. */
function controlOf(read: ReadSheet): { x: number; y: number }[][] {
  const legend = read.said.find(({ text }) => text === 'Symbols')?.at.y ?? Infinity
  return read.paths
    .filter(({ dash, pen, points }) => dash === 'hidden' && pen === 'thin' && points.every(({ y }) => y < legend))
    .map(({ points }) => points.map(({ x, y }) => ({ x, y })))
    .filter(([a, b, ...more]) => more.length > 0 || Math.abs(Math.abs((b?.x ?? 0) - (a?.x ?? 0)) - 6.5) > 0.01)
}

const ends = (read: ReadSheet) => controlOf(read).flatMap((points) => [points[0]!, points.at(-1)!])
const onSide = (read: ReadSheet, x: number, y: number): boolean =>
  read.boxes.some(
    (box) => Math.abs(box.x - x) < 0.1 && y >= box.y - 0.1 && y <= box.y + box.height + 0.1 && box.pen === 'medium',
  )

describe('rapid shutdown on the one-line', () => {
  test.each([
    ['module-level inverters', microHouse, 2],
    ['breakers in the panel', noCombiner, 3],
    ['units behind the modules of strings', () => units(stringHouse()), 2],
  ] as const)('with %s its line reaches every source', (_, make, rows) => {
    const read = firstSheet(make())
    const sources = read.said.filter(({ text, middle }) => text === 'PV' && middle.x < 400)
    const reached = sources.filter(({ middle }) =>
      ends(read).some(
        ({ x, y }) => Math.abs(y - middle.y) < 1 && onSide(read, x, y) && middle.x - x < 30 && middle.x > x,
      ),
    )
    expect(reached).toHaveLength(rows)
  })

  test('without units it ends at the string inverter, whose own shutdown it is', () => {
    const read = firstSheet(stringHouse())
    const inverter = read.said.find(({ text }) => text === 'INVERTER garage')
    const box = read.boxes.find(({ width, x }) => width === 66 && Math.abs(x - (inverter?.at.x ?? 0)) < 0.1)
    if (box === undefined) throw new Error('no inverter')
    expect(ends(read).some(({ x, y }) => Math.abs(x - box.x) < 0.1 && y > box.y && y < box.y + box.height)).toBe(true)
    // At the inverter, and in the legend, which may stand on the sheet that follows.
    expect(read.said.some(({ text, at }) => text === 'RS' && at.x > box.x && at.x < box.x + box.width)).toBe(true)
    const all = oneLineSheets(stringHouse()).flatMap(({ said }) => said)
    expect(all.filter(({ text }) => text === 'RS')).toHaveLength(2)
  })

  test.each([
    ['pv_disconnect', 'OUTSIDE'],
    ['service_disconnect', 'MAIN PANEL'],
  ] as const)('it starts at the %s', (initiator, name) => {
    const read = firstSheet(withShutdown(microHouse(), { initiator }))
    const title = read.said.find(({ text }) => text === name)
    const starts = ends(read).filter(({ x, y }) => onSide(read, x, y) && Math.abs(x - (title?.at.x ?? 0)) < 2)
    expect(starts).toHaveLength(1)
    expect(read.words).toContain('to SHUTDOWN INITIATOR')
  })

  test('a switch of its own is drawn, and stands in the legend', () => {
    const read = firstSheet(withShutdown(microHouse(), { initiator: 'switch' }))
    expect(read.words).toContain('SHUTDOWN INITIATOR: SWITCH')
    expect(read.words).toContain('Shutdown initiator, a switch of its own')
  })

  test('a project without shutdown has no such line', () => {
    const { rapid_shutdown: _, ...electrical } = microHouse().electrical ?? {}
    const read = firstSheet({ ...microHouse(), electrical })
    expect(controlOf(read)).toEqual([])
    expect(read.words).not.toContain('control line')
  })

  test('units are counted: modules of a string by modules of a unit, rounded up', () => {
    const { words } = firstSheet(units(stringHouse()))
    expect(words.match(/4 shutdown units Invented cutoff 1/gu)).toHaveLength(2)
    expect(words).toContain('1 transmitter')
  })
})

describe('the legend', () => {
  /** A symbol by how it is drawn, found anew on the diagram: whether it is there. */
  const signs: readonly [string, (read: ReadSheet, bottom: number) => boolean][] = [
    [
      'Fused disconnect',
      ({ boxes }, bottom) => boxes.some(({ width, height, y }) => width === 14 && height === 6 && y < bottom),
    ],
    [
      'Disconnect switch',
      ({ paths, boxes }, bottom) => {
        const blades = paths.filter(
          ({ points: [a, b], pen }) =>
            a !== undefined &&
            b !== undefined &&
            pen === 'medium' &&
            a.y < bottom &&
            Math.abs(Math.abs(a.y - b.y) - 7) < 0.01 &&
            a.x !== b.x,
        )
        const fuses = boxes.filter(({ width, height, y }) => width === 14 && height === 6 && y < bottom)
        return blades.length > fuses.length
      },
    ],
    ['Neutral bar', ({ said }, bottom) => said.some(({ text, at }) => text === 'N' && at.y < bottom)],
    ['Generator', ({ said }, bottom) => said.some(({ text, at }) => text === 'G' && at.y < bottom)],
    [
      'Storage',
      ({ paths }, bottom) => {
        // A long plate with a short thick one 4 pt beside it.
        const upright = paths.filter(
          ({ points: [a, b] }) => a !== undefined && b !== undefined && a.x === b.x && a.y < bottom,
        )
        const long = upright.filter(({ points: [a, b] }) => Math.abs(Math.abs((a?.y ?? 0) - (b?.y ?? 0)) - 16) < 0.01)
        const short = upright.filter(({ points: [a, b] }) => Math.abs(Math.abs((a?.y ?? 0) - (b?.y ?? 0)) - 8) < 0.01)
        return long.some((each) =>
          short.some((other) => Math.abs((other.points[0]?.x ?? 0) - (each.points[0]?.x ?? 0) - 4) < 0.01),
        )
      },
    ],
    ['RS: listed', ({ said }, bottom) => said.some(({ text, at }) => text === 'RS' && at.y < bottom)],
    [
      'Goes on at the same letter',
      ({ paths }, bottom) => paths.some(({ points, closed }) => closed && points.length === 5 && points[0]!.y < bottom),
    ],
  ]

  test.each([
    ['branches', microHouse],
    ['strings', stringHouse],
    ['many branches', manyBranches],
    ['a known service', knownService],
    ['a subpanel', subpanelHouse],
    ['a tap', tapHouse],
    ['three levels', threeLevels],
    ['strings ahead of two panels', supplyTree],
  ] as const)('of %s lists what the diagram shows and nothing else', (_, make) => {
    const sheets = readPacket(packetInput(make(), '11x17', true)).filter(({ sheet }) => sheet.id.startsWith('E-601'))
    const legends = sheets.filter(({ words }) => words.includes('Symbols'))
    expect(legends).toHaveLength(1)
    const bottomOf = (read: ReadSheet): number => {
      const from = read.said.find(({ text }) => text === 'Symbols' || text === 'Ratings')
      return from?.at.y ?? Infinity
    }
    for (const [says, isDrawn] of signs)
      expect([says, legends[0]?.words.includes(says)]).toEqual([
        says,
        sheets.some((read) => isDrawn(read, bottomOf(read))),
      ])
  })
})
