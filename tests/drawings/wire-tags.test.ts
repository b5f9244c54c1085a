import { describe, expect, test } from 'vitest'
import { numberedWays } from '../../src/drawings/diagram/wire-tags.js'
import { boxSection } from '../../src/cli/commands/box-section.js'
import { wiringSections } from '../../src/cli/commands/wiring-sections.js'
import { sizeWire, type WiringValues } from '../../src/electrical/index.js'
import type { WiringSegment } from '../../src/project/index.js'
import { context, microProject } from '../electrical/demo.js'

const roof: WiringSegment = {
  location: 'roof',
  height_above_roof_in: 1,
  length_ft: 10,
  raceway: 'EMT',
  box: { kind: 'box', splice: true, standard_box: '4 x 2-1/8 square' },
}

function wiring(attic: Partial<WiringSegment>, neutral = false): WiringValues {
  const segments = {
    roof,
    attic: { location: 'attic', ambient_c: 40, length_ft: 8, raceway: 'NM', ...attic } as const,
  }
  return sizeWire(
    microProject({
      runs: { ...microProject().electrical?.runs, home: { carries: ['branches'], neutral, segments } },
    }),
    context(),
  ).values
}

const tagOf = (values: WiringValues) => numberedWays(values).find(({ where }) => where.startsWith('home.attic'))

describe('cables on the schedules', () => {
  test('one cable for each circuit, named as it is bought', () => {
    expect(tagOf(wiring({}))).toMatchObject({
      conductors: '2 x NM-B 12/2 with ground',
      raceway: 'none, cable',
      fill: '',
      lengthFt: 8,
    })
    expect(tagOf(wiring({}, true))?.conductors).toBe('2 x NM-B 12/3 with ground')
  })

  test('insulation that was chosen, metal, and a ground of another size', () => {
    expect(tagOf(wiring({ raceway: 'MC', insulation: 'THHN' }))?.conductors).toBe('2 x MC 12/2 THHN with ground')
    expect(tagOf(wiring({ raceway: 'SE', material: 'aluminum' }))?.conductors).toMatch(
      /^2 x SE-R (?:10|8|6)\/2 aluminum with ground/,
    )
    expect(tagOf(wiring({ size_awg: '6' }))?.conductors).toMatch(/^2 x NM-B 6\/2 with ground/)
  })

  test('a raceway whose fill is open reads without it', () => {
    expect(tagOf(wiring({ raceway: 'FMC', trade_size: '3/4' }))).toMatchObject({ raceway: '3/4 in FMC', fill: '' })
  })
})

describe('cables and boxes in the report', () => {
  const sectionOf = (values: WiringValues, heading: string) =>
    wiringSections(values).find((section) => 'heading' in section && section.heading === heading)

  test('cables stand among the raceways, a fill that was not judged says so', () => {
    const cable = JSON.stringify(sectionOf(wiring({}), 'Raceways and cables'))
    expect(cable).toContain('"NM cable"')
    expect(cable).toContain('2 x NM-B 12/2 with ground')
    const open = JSON.stringify(sectionOf(wiring({ raceway: 'FMC', trade_size: '3/4' }), 'Raceways'))
    expect(open).toContain('not judged')
  })

  test('boxes with what they need, have, and the verdict', () => {
    const values = wiring({})
    const [box] = values.boxes
    if (box === undefined) throw new Error('no box')
    const row = (complies: boolean | null) => {
      const section = boxSection({ boxes: [{ ...box, complies }] })
      return section.kind === 'table' ? section.rows[0] : undefined
    }
    expect(row(true)).toEqual([
      'home.roof.box',
      '4 x 2-1/8 square',
      'spliced',
      10,
      22.5,
      30.3,
      null,
      null,
      '314.16',
      { value: 'passes', tone: 'good' },
    ])
    expect(row(false)?.at(-1)).toEqual({ value: 'FAILS', tone: 'bad' })
    expect(row(null)?.at(-1)).toEqual({ value: 'not checked', tone: 'warn' })
    expect(sectionOf(values, 'Boxes')).toBeDefined()
    expect(sectionOf(sizeWire(microProject(), context()).values, 'Boxes')).toBeUndefined()
  })
})
