import { describe, expect, test } from 'vitest'
import { arrangeModules } from '../../src/roof/index.js'
import type { Outline, Project, RoofPlane } from '../../src/project/index.js'
import { FIRE_ACCESS_RULES } from '../../src/tables/fire-access/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { roofProject } from '../roof/roof-project.js'

type Edition = 'IFC 2012' | 'IFC 2015' | 'IRC 2018' | 'IRC 2021'
const EDITIONS: Edition[] = ['IFC 2012', 'IFC 2015', 'IRC 2018', 'IRC 2021']
const GABLE: Outline = { shape: 'rectangle', width_ft: 30, depth_ft: 16 }
const HIP: Outline = { shape: 'hip', width_ft: 40, depth_ft: 16, ridge_ft: 16 }

function fit(outline: Outline, edition: Edition, access: Project['roof_access'] = {}, plane: Partial<RoofPlane> = {}) {
  const arrangement = { fit: { orientation: 'portrait' as const, gap_in: 0 } }
  return arrangeModules(
    roofProject(
      { outline, ...plane },
      { arrangement },
      { codes: { residential: edition }, roof_access: { required_fire_class: 'none', ...access } },
    ),
  )
}

function blocks(
  edition: Edition,
  columns: number,
  xFt: number,
  access: Project['roof_access'] = {},
  plane: Partial<RoofPlane> = {},
) {
  const main = { orientation: 'portrait' as const, rows: 2, columns, x_ft: xFt, y_ft: 1, gap_in: 0 }
  return arrangeModules(
    roofProject(
      { outline: GABLE, ...plane },
      { arrangement: { blocks: { main } } },
      { codes: { residential: edition }, roof_access: { required_fire_class: 'none', ...access } },
    ),
  )
}

const ids = (result: ReturnType<typeof arrangeModules>, severity = 'error') =>
  result.findings.filter((finding) => finding.severity === severity).map(({ id }) => id)

describe('numbers of the rules', () => {
  // IFC 2012 605.11.3.2.1 and .2, IFC 2015 605.11.1.2.2, IRC 2018 and 2021 R324.6.1: 36 in wide pathways.
  test.each(EDITIONS)('%s: pathways are 36 in wide', (edition) => {
    expect(FIRE_ACCESS_RULES[edition].pathwayIn.value).toBe(36)
  })

  // IFC 2012 605.11.3.2.4, IFC 2015 605.11.1.2.5: modules no higher than 36 in below the ridge.
  test.each(['IFC 2012', 'IFC 2015'] as const)('%s: 36 in below the ridge whatever the coverage', (edition) => {
    expect(fit(GABLE, edition, { total_roof_area_ft2: 10_000 }).values.planes['south']?.ridgeSetbackIn).toBe(36)
  })

  // IRC 2018 and 2021 R324.6.2: 18 in each side of a ridge up to 33 % of the plan-view roof, 36 in above.
  test.each(['IRC 2018', 'IRC 2021'] as const)('%s: 18 in up to 33 %% of the whole roof, 36 in above', (edition) => {
    const planAreaFt2 = 12 * 15 * Math.cos(Math.PI / 6)
    const strip = (roofFt2: number) =>
      blocks(edition, 6, 3, { total_roof_area_ft2: roofFt2 }).values.planes['south']?.ridgeSetbackIn
    expect(strip(planAreaFt2 / 0.329)).toBe(18)
    expect(strip(planAreaFt2 / 0.331)).toBe(36)
  })

  // IRC 2018 and 2021 R324.6.2.1 (unverified): with sprinklers 18 in up to 66 %.
  test.each(['IRC 2018', 'IRC 2021'] as const)('%s: with sprinklers up to 66 %% (unverified)', (edition) => {
    const access = { total_roof_area_ft2: (12 * 15 * Math.cos(Math.PI / 6)) / 0.65 }
    const strip = (sprinklered: boolean) =>
      blocks(edition, 6, 3, { ...access, sprinklered }).values.planes['south']?.ridgeSetbackIn
    expect([strip(true), strip(false)]).toEqual([18, 36])
    expect(FIRE_ACCESS_RULES[edition].ridge.sprinkleredLimitPct?.source.standing).toBe('from memory')
  })

  // IFC 2012 605.11.3.2.1: one pathway on each slope of a hip roof; .2: two on each slope of a single-ridge roof.
  // IRC R324.6.1: one for each plane with modules.
  test.each<[Edition, number, number]>([
    ['IFC 2012', 2, 1],
    ['IFC 2015', 2, 1],
    ['IRC 2018', 1, 1],
    ['IRC 2021', 1, 1],
  ])('%s: %d pathways on a gable plane, %d on a hip plane', (edition, gable, hip) => {
    expect(fit(GABLE, edition).values.planes['south']?.pathways).toHaveLength(gable)
    expect(fit(HIP, edition).values.planes['south']?.pathways).toHaveLength(hip)
  })

  // IFC 2012 605.11.3.2.3: 18 in from hips and valleys with modules on both sides, 0 with one side only.
  test('IFC 2012: 18 in along hips, as an assumption that can be replaced', () => {
    const result = fit(HIP, 'IFC 2012')
    expect(result.assumptions.map(({ path, value }) => [path, value])).toContainEqual([
      'roof_access.hip_valley_setback_in',
      18,
    ])
    const clearance = (more: Project['roof_access']) =>
      fit(HIP, 'IFC 2012', more).values.planes['south']?.keepOuts.find((item) => item.name === 'the hip')?.clearanceIn
    expect(clearance({})).toBe(18)
    expect(clearance({ hip_valley_setback_in: 0, waiver_note: 'Invented letter' })).toBe(0)
  })

  // IFC 2012/2015 hip roof row and IRC R324.6.1: slopes above 2:12 only.
  test.each(EDITIONS)('%s: 2 in 12 or flatter is exempt', (edition) => {
    const at = (pitch_in_12: number) => {
      const project = roofProject(
        { outline: GABLE },
        { arrangement: { fit: { orientation: 'portrait', gap_in: 0 } } },
        { codes: { residential: edition }, roof_planes: { south: { azimuth_deg: 180, pitch_in_12, outline: GABLE } } },
      )
      return arrangeModules(project)
    }
    expect(at(2).values.modules).toHaveLength(30)
    expect(ids(at(2), 'note')).toContain('roof.fire-access-exempt')
    expect(at(2.01).values.modules.length).toBeLessThan(30)
  })

  // IRC 2018 R324.6.2.2, 2021 R324.6.3: no modules below an emergency escape opening, 36 in to it.
  test('IRC: the roof below a rescue opening stays free, at least 36 in wide', () => {
    const rescue_openings = { bedroom: { x_ft: 14, y_ft: 11, width_ft: 2 } }
    const result = blocks('IRC 2021', 6, 12, { total_roof_area_ft2: 5000 }, { rescue_openings })
    const found = result.findings.filter(({ id }) => id === 'roof.module-below-rescue-opening')
    // The strip runs from 13.5 to 16.5 ft: columns 12-15 and 15-18 in both rows.
    expect(found.map(({ message }) => message.split(' lies')[0])).toEqual([
      'south r1c1',
      'south r1c2',
      'south r2c1',
      'south r2c2',
    ])
    expect(found.every(({ severity }) => severity === 'error')).toBe(true)
    const fitted = fit(GABLE, 'IRC 2021', {}, { rescue_openings }).values.modules
    expect(
      fitted.every((module) => module.xFt >= 16.5 - 1e-6 || module.xFt + 3 <= 13.5 + 1e-6 || module.yFt >= 11),
    ).toBe(true)
  })
})

describe('ridge strip and coverage agree', () => {
  test('as many as 33 % allows with 18 in, when that is more than 36 in leaves', () => {
    // 16 ft deep: with 36 in 13 ft stay (2 rows), with 18 in 14.5 ft (2 rows): the large case holds 18 modules.
    expect(fit(GABLE, 'IRC 2021', { total_roof_area_ft2: 600 }).values.modules).toHaveLength(18)
    // 11.6 ft deep: with 36 in one row of 9, with 18 in two rows of 9, of which 33 % of 620 sq ft allows 15.
    const result = fit({ ...GABLE, depth_ft: 11.6 }, 'IRC 2021', { total_roof_area_ft2: 620 })
    expect(Math.floor((0.33 * 620) / (15 * Math.cos(Math.PI / 6)))).toBe(15)
    expect(result.values.modules).toHaveLength(15)
    expect(result.values.planes['south']?.ridgeSetbackIn).toBe(18)
    expect(result.values.roofCoverageShare).toBeLessThanOrEqual(0.33)
    // On a smaller roof 33 % allows fewer than the one row does.
    const small = fit({ ...GABLE, depth_ft: 11.6 }, 'IRC 2021', { total_roof_area_ft2: 320 })
    expect(small.values.modules).toHaveLength(9)
    expect(small.values.planes['south']?.ridgeSetbackIn).toBe(36)
  })

  test('without the area of the whole roof the planes are summed, and that is told', () => {
    const result = fit(GABLE, 'IRC 2018')
    expect(result.assumptions).toMatchObject([{ path: 'roof_access.total_roof_area_ft2', unit: 'ft2' }])
    expect(result.values.planes['south']?.ridgeSetbackIn).toBe(36)
  })
})

describe('pathways of placed blocks', () => {
  test('free side, blocked sides, and by how much', () => {
    expect(ids(blocks('IRC 2021', 9, 0, { total_roof_area_ft2: 5000 }))).toEqual([])
    const narrow = blocks('IRC 2021', 9, 1, { total_roof_area_ft2: 5000 })
    expect(narrow.findings[0]).toMatchObject({
      id: 'roof.pathway-missing',
      message:
        'plane south needs a pathway 36 in wide from the lowest roof edge to the ridge; the widest free is 24 in (12 in too narrow)',
      where: 'roof_planes.south',
      source: { place: 'R324.6.1' },
    })
    expect(ids(blocks('IFC 2012', 8, 3))).toEqual([])
    expect(ids(blocks('IFC 2012', 8, 2))).toEqual(['roof.pathway-missing'])
  })

  test('IRC: on the adjacent plane or straddling; IFC: not', () => {
    const access = { total_roof_area_ft2: 5000 }
    expect(ids(blocks('IRC 2021', 10, 0, access, { fire_pathway: 'adjacent' }))).toEqual([])
    expect(ids(blocks('IRC 2021', 9, 1.5, access, { fire_pathway: 'straddling' }))).toEqual([])
    expect(ids(blocks('IRC 2021', 10, 0, access, { fire_pathway: 'straddling' }))).toEqual(['roof.pathway-missing'])
    const ifc = blocks('IFC 2012', 10, 0, access, { fire_pathway: 'adjacent' })
    expect(ids(ifc)).toEqual(['roof.pathway-missing'])
    expect(ids(ifc, 'warning')).toEqual(['roof.pathway-adjacent-not-allowed'])
  })

  test('a vent in the pathway blocks it', () => {
    const vent = { x_ft: 28, y_ft: 5, width_ft: 0.5, length_ft: 0.5, height_ft: 1 }
    const access = { total_roof_area_ft2: 5000 }
    expect(ids(blocks('IRC 2021', 9, 0, access, { obstructions: { vent } }))).toEqual(['roof.pathway-missing'])
  })

  // IRC R324.6.1: two pathways on separate planes, one on the street or driveway side.
  test('what the file cannot show about the building is asked', () => {
    expect(ids(fit(GABLE, 'IRC 2021'), 'warning')).toEqual(['roof.pathways-of-building', 'roof.street-side-pathway'])
    expect(ids(fit(GABLE, 'IRC 2021', { other_pathways: 1 }, { street_side: true }), 'warning')).toEqual([])
    expect(ids(fit(GABLE, 'IFC 2012'), 'warning')).toEqual([])
  })
})

describe('replaced and unknown rules', () => {
  test('a value of the authority holds, and is told with its note', () => {
    const result = fit(GABLE, 'IFC 2012', { pathways_per_plane: 0, waiver_note: 'Invented letter of the marshal' })
    expect(result.values.modules).toHaveLength(20)
    expect(result.findings).toMatchObject([
      {
        severity: 'note',
        id: 'roof.fire-access-override',
        message: expect.stringMatching(/0 stands instead.*Invented letter/),
      },
    ])
  })

  test('without a note it is refused', () => {
    expect(() => fit(GABLE, 'IFC 2012', { ridge_setback_in: 12 })).toThrow(StageError)
    expect(() => fit(GABLE, 'IFC 2012', { ridge_setback_in: 12 })).toThrow(/waiver_note/)
  })

  test('no edition: told, and only the clearances of the person hold', () => {
    const project = roofProject({ outline: GABLE }, { arrangement: { fit: { orientation: 'portrait', gap_in: 0 } } })
    const result = arrangeModules(project)
    expect(result.values.modules).toHaveLength(30)
    expect(ids(result, 'note')).toEqual(['roof.fire-access-not-checked'])
  })
})
