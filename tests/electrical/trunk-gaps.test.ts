import { describe, expect, it } from 'vitest'
import { sizeWire, trunkGapsFt, wiringOf } from '../../src/electrical/index.js'
import { loadProject } from '../../src/project/index.js'
import type { ModulePlacement } from '../../src/roof/index.js'
import { context, microProject } from './demo.js'

function rowOf(row: number, columns: number, array = 'south'): ModulePlacement[] {
  return Array.from({ length: columns }, (_, index) => ({
    id: `${array}.r${row}c${index + 1}`,
    array,
    roofPlane: 'south',
    block: 'main',
    row,
    column: index + 1,
    orientation: 'portrait' as const,
    xFt: 2 + 4 * index,
    yFt: 6 * (row - 1),
    widthFt: 4,
    heightFt: 6,
  }))
}

describe('equipment grounding conductor of a trunk cable', () => {
  // NEC table 250.122: 12 AWG copper behind a device of 20 A.
  it.each([
    [true, true, '12'],
    [true, false, null],
    [false, true, null],
    [false, false, null],
  ])('cable with one: %s, inverters that need one: %s', (hasOne, needsOne, size) => {
    const project = structuredClone(microProject())
    const { trunk_cables: cables = {}, inverters = {} } = project.equipment
    Object.assign(cables['trunk12'] ?? {}, { has_egc: hasOne })
    Object.assign(inverters['micro'] ?? {}, { needs_egc: needsOne })
    const trunks = sizeWire(project, context()).values.circuits.filter(({ kind }) => kind === 'ac_branch')
    expect(trunks.map(({ segments }) => segments[0]?.egc_awg)).toEqual([size, size])
  })
})

describe('way of the trunk past the modules', () => {
  it('goes along the row from the box at the edge of the first module', () => {
    expect(trunkGapsFt(rowOf(1, 4))).toEqual({ south: [2, 4, 4, 4] })
  })

  it('comes back along the next row', () => {
    expect(trunkGapsFt([...rowOf(1, 3), ...rowOf(2, 3)])).toEqual({ south: [2, 4, 4, 6, 4, 4] })
  })

  it('is the length of the trunk where it is longer than the cable between the connectors', () => {
    const gaps = Array.from({ length: 24 }, () => 9)
    const lengths = (trunk: Record<string, number[]> | undefined): number[] =>
      sizeWire(microProject(), { ...context(), arrangement: { trunkGapsFt: trunk } })
        .values.circuits.filter((circuit) => circuit.kind === 'ac_branch')
        .map((circuit) => circuit.segments[0]?.length_ft ?? 0)
    const short = lengths(undefined)
    const long = lengths({ south: gaps })
    expect(long.every((length, index) => length >= (short[index] ?? 0))).toBe(true)
    expect(long[0]).toBe(9 * (long.length === 1 ? 24 : Math.ceil(24 / long.length)))
    expect(lengths({ south: gaps.map(() => 0.1) })).toEqual(short)
  })

  it('is the same for every output: packet, bill, work plan and table take wiringOf', () => {
    const { project } = loadProject({ path: new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname })
    const spread = structuredClone(project)
    const array = spread.arrays['south']
    if (array !== undefined) {
      array.arrangement = {
        blocks: { lower: { orientation: 'portrait', rows: 2, columns: 7, x_ft: 3.2, y_ft: 1.5, gap_in: 14 } },
      }
    }
    const trunk = (of: typeof project): number =>
      wiringOf(of).values.circuits.find((circuit) => circuit.id === 'b1')?.segments[0]?.length_ft ?? 0
    // Seven inverters at 4.3 ft between connectors; with 14 in between modules the way past them is longer than that.
    expect(trunk(project)).toBeCloseTo(7 * 4.3, 9)
    expect(trunk(spread)).toBeCloseTo(44.6 / 12 / 2 + 6 * ((44.6 + 14) / 12), 6)
    expect(trunk(spread)).toBeGreaterThan(trunk(project))
  })
})
