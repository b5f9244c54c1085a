import { describe, expect, it } from 'vitest'
import { compareEditions, editionConsequences } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { context, demoSegments, microProject, stringProject } from './demo.js'

const between = (project: Project, ...editions: string[]) =>
  editionConsequences(compareEditions(project, editions, context()).results)
const row = (rows: ReturnType<typeof between>, what: string) => rows.filter((each) => each.what === what)

describe('consequences of an edition', () => {
  it('a low raceway on the roof: smaller conductors where 2023 adds no heat, all branches in one row', () => {
    const roof = { location: 'roof', height_above_roof_in: 0.8, length_ft: 20, raceway: 'EMT' } as const
    const project = microProject(
      {
        runs: {
          ...microProject().electrical?.runs,
          home: { carries: ['branches'], segments: { ...demoSegments, roof } },
        },
      },
      36,
    )
    const rows = between(project, 'NEC 2020', 'NEC 2023')
    const results = compareEditions(project, ['NEC 2020', 'NEC 2023'], context()).results
    const sizes = Object.values(results).map(({ values }) => values.circuits[0]?.segments[1]?.size_awg)
    expect(sizes[0]).not.toBe(sizes[1])
    expect(
      row(rows, 'conductor').map(({ where, values }) => [where.split(', ').length, Object.values(values)]),
    ).toEqual([[expect.any(Number), sizes.map((size) => `${size} AWG copper THWN-2`)]])
    expect(row(rows, 'conductor')[0]?.where).toContain('south_1 in home.roof, south_1 in home.wall, south_2 in')
  })

  it('a supply-side device too far away: an error in 2020 and 2026, none in 2023', () => {
    const project = microProject({ connection: { kind: 'supply_side', overcurrent_device_distance_ft: 14 } })
    const rows = between(project, 'NEC 2020', 'NEC 2023', 'NEC 2026')
    const message = 'the overcurrent device is 14 ft from the connection, 10 ft is the limit'
    expect(row(rows, 'error: supply side distance')[0]?.values).toEqual({
      'NEC 2020': message,
      'NEC 2023': null,
      'NEC 2026': message,
    })
  })

  it('a connection that one edition allows comes first, with what the panel takes', () => {
    // 25 x 1.25 A: three branches of 15 A are above the 40 A that 2011 leaves for breakers; 39.1 A of current are not.
    const { combiner: _, runs, ...electrical } = microProject().electrical ?? {}
    const { to_panel: __, ...branches } = runs ?? {}
    const project = { ...microProject({}, 25), electrical: { ...electrical, runs: branches } }
    const rows = between(project, 'NEC 2011', 'NEC 2023')
    expect(rows[0]).toEqual({
      what: 'connection',
      where: 'main panel',
      values: { 'NEC 2011': 'NOT allowed', 'NEC 2023': 'allowed' },
    })
    expect(rows.some(({ what, values }) => what.startsWith('error: panel busbar') && values['NEC 2023'] === null)).toBe(
      true,
    )
  })

  it('sections and words of rules alone are no consequence', () => {
    for (const project of [microProject(), stringProject()])
      for (const { what, values } of between(project, 'NEC 2017', 'NEC 2020')) {
        expect(new Set(Object.values(values)).size).toBeGreaterThan(1)
        expect(`${what} ${JSON.stringify(values)}`).not.toMatch(/705\.12|690\.8|310\.15/)
      }
    expect(between(microProject(), 'NEC 2023')).toEqual([])
  })
})
