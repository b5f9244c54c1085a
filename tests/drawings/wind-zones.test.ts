import { describe, expect, test } from 'vitest'
import { stripLines, zoneAreas } from '../../src/drawings/sheets/wind-zone-figures.js'
import { zoneAt } from '../../src/structure/index.js'
import { hipHouse, microHouse, packetInput } from './demo-packet.js'
import { readPacket, sheetOf } from './read-sheet.js'

describe('the plan of wind zones', () => {
  // ASCE 7-16 figure 30.3-2 for gables over 7 degrees: 3e and 3r in the corners, 2e, 2n, 2r along the edges, 1 inside (secondary).
  test('names each part of a gable by the figure', () => {
    const input = packetInput(microHouse())
    const loads = input.mounts?.values.loads.planes['south']
    const plane = input.arrangement.values.planes['south']
    if (loads === undefined || plane === undefined) throw new Error('the house has a plane south with loads')
    const shape = { edition: 'ASCE 7-16', roofKind: 'gable' } as const
    const areas = zoneAreas(plane, (at) =>
      zoneAt({ id: 'south', tiltDeg: loads.slope_deg, edges: plane.edges }, at, loads.edge_strip_ft, shape),
    )
    const rows = areas.toSorted((a, b) => b.middle.yFt - a.middle.yFt || a.middle.xFt - b.middle.xFt)
    const named = [0, 3, 6].map((from) =>
      rows
        .slice(from, from + 3)
        .toSorted((a, b) => a.middle.xFt - b.middle.xFt)
        .map(({ zone }) => zone),
    )
    expect(named).toEqual([
      ['3r', '2r', '3r'],
      ['2n', '1', '2n'],
      ['3e', '2e', '3e'],
    ])
    const { said } = sheetOf(readPacket(input), 'S-502')
    const words = said.map(({ text }) => text)
    for (const { zone } of areas) expect(words).toContain(zone)
    expect(words).toContain(loads.zones['3r']?.uplift_psf.toFixed(1))
  })

  test.each(['11x17', 'letter', 'A3'] as const)('has the name of a zone in that zone, on %s', (size) => {
    const base = microHouse()
    // Modules that reach into the strip at the rake leave no room in its middle.
    const south = base.arrays['south']
    if (south === undefined) throw new Error('the house has an array south')
    const blocks = {
      main: { orientation: 'portrait', rows: 1, columns: 9, x_ft: 4.5, y_ft: 3, gap_in: 0.5 },
    } as const
    const input = packetInput({ ...base, arrays: { south: { ...south, arrangement: { blocks } } } }, size, true)
    const loads = input.mounts?.values.loads.planes['south']
    const plane = input.arrangement.values.planes['south']
    if (loads === undefined || plane === undefined) throw new Error('the house has a plane south with loads')
    const { sheet, said } = sheetOf(readPacket(input), 'S-502')
    const [view] = sheet.viewports
    if (view === undefined) throw new Error('no plan')
    const names = said.filter(
      ({ text, middle }) => /^[123][enr]?$/u.test(text) && middle.x < view.box.x + view.box.width,
    )
    expect(names).toHaveLength(9)
    for (const { text, middle } of names) {
      const at = {
        xFt: (middle.x - view.originPt.x) / view.scalePtPerFt,
        yFt: (view.originPt.y - middle.y) / view.scalePtPerFt,
      }
      const shape = { edition: 'ASCE 7-16', roofKind: 'gable' } as const
      const own = zoneAt({ id: 'south', tiltDeg: loads.slope_deg, edges: plane.edges }, at, loads.edge_strip_ft, shape)
      expect([text, at.xFt > 0 && at.xFt < 40 && at.yFt > 0]).toEqual([own, true])
    }
  })

  test('draws the strips at their width seen from above, cut to the plane', () => {
    const { planes } = packetInput(hipHouse()).arrangement.values
    for (const plane of Object.values(planes)) {
      const flatten = 0.894
      for (const { from, to } of stripLines(plane, 3, flatten)) {
        const apart = plane.edges.map(({ from: a, to: b }) => {
          const [dx, dy] = [b.xFt - a.xFt, (b.yFt - a.yFt) * flatten]
          const middle = { x: (from.xFt + to.xFt) / 2 - a.xFt, y: ((from.yFt + to.yFt) / 2 - a.yFt) * flatten }
          return (dx * middle.y - dy * middle.x) / Math.hypot(dx, dy)
        })
        expect(Math.min(...apart.map((distance) => Math.abs(distance - 3)))).toBeLessThan(1e-9)
        expect(Math.min(...apart)).toBeGreaterThan(-1e-9)
      }
    }
  })

  test('a part that is no wider than a step of the search is left out, others have their middle inside', () => {
    const corners = [
      { xFt: 0, yFt: 0 },
      { xFt: 20, yFt: 0 },
      { xFt: 20, yFt: 10 },
      { xFt: 0, yFt: 10 },
    ]
    const areas = zoneAreas({ corners }, ({ xFt, yFt }) =>
      yFt > 8 ? 'top' : xFt < 5 ? 'left' : xFt < 5.2 && yFt < 1 ? 'rim' : 'rest',
    )
    expect(areas.map(({ zone }) => zone).toSorted()).toEqual(['left', 'rest', 'top'])
    for (const { zone, middle } of areas) {
      expect(middle.yFt > 8 ? 'top' : middle.xFt < 5 ? 'left' : 'rest').toBe(zone)
    }
  })

  test('the points of a part are those farthest from its border', () => {
    const corners = [
      { xFt: 0, yFt: 0 },
      { xFt: 10, yFt: 0 },
      { xFt: 10, yFt: 3 },
      { xFt: 0, yFt: 3 },
    ]
    const [area] = zoneAreas({ corners }, () => '1')
    expect([...new Set(area?.along.map(({ yFt }) => yFt))].toSorted((a, b) => a - b)).toEqual([1.375, 1.625])
    expect(area?.along.length).toBe(60)
  })
})
