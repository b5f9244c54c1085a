import { describe, expect, test } from 'vitest'
import { seismicSections } from '../../src/cli/commands/seismic-sections.js'
import { snowSections } from '../../src/cli/commands/snow-sections.js'
import { spaceMounts, type MountValues } from '../../src/structure/index.js'
import { demoArrangement, demoProject } from '../structure/demo-house.js'

function values(snow: object, seismic: object): MountValues {
  const project = demoProject()
  const s = project.structure ?? {}
  const structure = { ...s, snow: { ...s.snow, ...snow }, seismic }
  return spaceMounts({ ...project, structure }, demoArrangement()).values
}

describe('snow in the report of the mounts', () => {
  test('is a row a case, and none without ground snow', () => {
    const [table] = snowSections(values({ ground_psf: 30 }, {}))
    if (table?.kind !== 'table') throw new Error('no table')
    expect(table.heading).toMatch(/allowable stress level; ground snow 30 psf$/u)
    expect(table.rows.map((row) => row.slice(0, 5))).toEqual([
      ['south', 'balanced', expect.closeTo(23.1, 9), expect.closeTo(23.1, 9), expect.closeTo(23.1, 9)],
      ['south', 'unbalanced, leeward', 30, 30, 30],
      ['south', 'unbalanced, windward', 0, 0, 0],
    ])
    expect(table.rows[1]?.[5]).toEqual({ value: 30, tone: 'strong' })
    expect(snowSections(values({ ground_psf: 0 }, {}))).toEqual([])
  })

  test('says where a heap begins', () => {
    const higher_roofs = {
      house: {
        plane: 'south',
        end: 'top',
        step_ft: 9,
        upper_length_ft: 28,
        upper_slope_deg: 0,
        upper_eave_to_ridge_ft: 0,
        upper_slippery: false,
      },
    }
    const [table] = snowSections(values({ ground_psf: 35, higher_roofs }, {}))
    if (table?.kind !== 'table') throw new Error('no table')
    const row = table.rows.find((one) => one[1] === 'drift below roof house, leeward')
    // 16 ft at 22 degrees less the 7.53 ft of the drift.
    expect(row?.[6]).toBe((16 * Math.cos((22 * Math.PI) / 180) - 7.53).toFixed(1))
  })
})

describe('earthquake in the report of the mounts', () => {
  const labels = (seismic: object) =>
    seismicSections(values({}, seismic)).flatMap((one) => (one.kind === 'facts' ? one.facts.map((f) => f.label) : []))
  test('says why it is not checked, or what it is', () => {
    expect(labels({})).toEqual(['Earthquake'])
    expect(labels({ design_category: 'B', sds_g: 0.2 })).toEqual(['Earthquake', 'Force on the array'])
    const weights = { roof_area_ft2: 600, roof_psf: 5 }
    const shaken = { design_category: 'D', sds_g: 1, weights }
    expect(labels(shaken)).toEqual([
      'Earthquake',
      'Force on the array',
      'On one mount at most',
      'Sideways load of the house',
    ])
    const [facts] = seismicSections(values({}, shaken))
    if (facts?.kind !== 'facts') throw new Error('no facts')
    expect(facts.facts[3]?.value).toMatchObject({ tone: 'bad' })
  })
})
