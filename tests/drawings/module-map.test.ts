import { describe, expect, it } from 'vitest'
import { moduleMap } from '../../src/drawings/index.js'
import { flattenSheet } from '../../src/drawings/model/index.js'
import { lossClass, wholeLossPct } from '../../src/drawings/pictures/loss-shade.js'
import { northOnPaperDeg } from '../../src/drawings/pictures/map-plane.js'
import type { Arrangement, ArrangedPlane, ModulePlacement } from '../../src/roof/index.js'

const place = (column: number): ModulePlacement => ({
  id: `south.r1c${column}`,
  array: 'south',
  roofPlane: 'south',
  block: 'main',
  row: 1,
  column,
  orientation: 'portrait',
  xFt: 2 + (column - 1) * 3.8,
  yFt: 3,
  widthFt: 3.7,
  heightFt: 5.6,
})
const PLANE: ArrangedPlane = {
  id: 'south',
  azimuthDeg: 180,
  tiltDeg: 30,
  corners: [
    { xFt: 0, yFt: 0 },
    { xFt: 30, yFt: 0 },
    { xFt: 30, yFt: 15 },
    { xFt: 0, yFt: 15 },
  ],
  edges: [],
  areaFt2: 450,
  planAreaFt2: 390,
  keepOuts: [],
  pathways: [],
  ridgeSetbackIn: 0,
  usableShare: 1,
  modules: 2,
  coveredShare: 0.1,
}
const ARRANGEMENT: Arrangement = { modules: [place(1), place(2)], planes: { south: PLANE }, roofCoverageShare: null }
const module = (id: string, array: string, kwh: number, light: number, mismatch: number) => ({
  id,
  array,
  ac_kwh: kwh,
  light_loss_pct: light,
  mismatch_loss_pct: mismatch,
})

describe('the picture of the modules', () => {
  const sheet = moduleMap({
    arrangement: ARRANGEMENT,
    modules: [
      module('south.r1c1', 'south', 612.4, 0.2, 0),
      module('south.r1c2', 'south', 402.6, 21.3, 12.5),
      module('shed.m1', 'shed', 500, 3, 0),
      module('shed.m2', 'shed', 500, 3, 0),
    ],
  })
  const { marks } = flattenSheet(sheet)
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))

  it('tells energy and losses of each module, and of arrays without places in a list', () => {
    for (const text of [
      'r1c1',
      '612 kWh',
      'r1c2',
      '403 kWh',
      'light -21.3 %',
      'light -0.2 %',
      'mism. 0.0 %',
      'mism. -12.5 %',
    ])
      expect(texts).toContain(text)
    expect(texts).toContain('shed: 2 modules, 500 kWh a year each; light -3.0 %, mismatch 0.0 %')
  })

  it('draws modules to one scale where they lie, the darker the more they lose', () => {
    const boxes = marks.flatMap((mark) =>
      mark.kind === 'rectangle' && Math.abs(mark.width - 3.7 * 12) < 0.01 ? [mark] : [],
    )
    expect(boxes).toHaveLength(1)
    expect(boxes[0]).toMatchObject({ fill: 'white', height: 67.2, x: 36 + 24 })
    // From the ridge at the top: 15 - 3 - 5.6 ft.
    expect(boxes[0]!.y).toBeCloseTo(82 + 66 + 6.4 * 12, 2)
    expect(wholeLossPct(21.3, 12.5)).toBeCloseTo(100 * (1 - 0.787 * 0.875), 9)
    expect([0.9, 1, 14.9, 15, 31].map((pct) => lossClass(pct).says)).toEqual([
      'less than 1 %',
      '1 to 5 %',
      '5 to 15 %',
      '15 to 30 %',
      '30 % and more',
    ])
  })

  it('turns north with the plane', () => {
    // Up the paper is up the slope: behind a plane that faces south lies north; north of one that faces west is on its right... as walked uphill (east), on the left.
    expect([180, 270, 90, 0].map(northOnPaperDeg)).toEqual([0, 270, 90, 180])
  })

  it('makes room for all that it draws', () => {
    for (const mark of marks) {
      if (mark.kind !== 'text') continue
      expect(mark.at.x + mark.widthPt).toBeLessThanOrEqual(sheet.size.widthPt)
      expect(mark.at.y).toBeLessThan(sheet.size.heightPt)
    }
    expect(
      flattenSheet(moduleMap({ arrangement: { ...ARRANGEMENT, modules: [], planes: {} }, modules: [] })).marks.length,
    ).toBeGreaterThan(5)
  })
})
