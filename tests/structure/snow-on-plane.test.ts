import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { spaceMounts, type MountValues, type PlaneGeometry } from '../../src/structure/index.js'
import {
  mostSnowBetweenPsf,
  mostSnowPsf,
  planeSnowCases,
  snowAtPsf,
  type SnowCase,
  type SnowKind,
  type SnowOnPlane,
} from '../../src/structure/snow/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { RandomSource } from '../../src/values/index.js'
import { siteLoads } from '../../src/structure/loads/index.js'
import { snowOfPlane } from '../../src/structure/planes/plane-snow.js'
import { framingSpec } from '../../src/structure/rafters/index.js'
import { block, demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'

type Structure = NonNullable<Project['structure']>
type Snow = NonNullable<Structure['snow']>

interface Change {
  readonly loads?: 'ASCE 7-10' | 'ASCE 7-16' | 'ASCE 7-22'
  readonly snow?: Partial<Snow>
  readonly building?: Partial<Structure['building']>
  readonly framing?: object
}

function house({ loads = 'ASCE 7-16', snow, building, framing }: Change): Project {
  const project = demoProject()
  const s = project.structure ?? {}
  return {
    ...project,
    codes: { ...project.codes, loads },
    structure: {
      ...s,
      snow: { ...s.snow, ground_psf: 30, ...snow },
      building: { ...s.building, ...building },
      framing: { south: { ...s.framing?.['south'], ...framing } },
    },
  }
}

const solve = (change: Change, geometry = rectangle('south', 48, 16, 22), yFt = 2.2): Result<MountValues> =>
  spaceMounts(house(change), { planes: [geometry], modules: block(2, 6, 12, yFt) })
const cases = (result: Result<MountValues>) => result.values.snow.planes['south']?.cases ?? []
const names = (result: Result<MountValues>): string[] => cases(result).map(({ name }) => name)
const found = (result: Result<MountValues>, id: string) => result.findings.find((f) => f.id === id)

/** The demo plane with its upper edge at a wall. */
function porch(depthFt = 16): PlaneGeometry {
  const plane = rectangle('south', 48, depthFt, 22)
  return { ...plane, edges: plane.edges.map((edge) => (edge.kind === 'ridge' ? { ...edge, kind: 'wall' } : edge)) }
}
const roofAbove = {
  plane: 'south',
  end: 'top',
  step_ft: 9,
  upper_length_ft: 28,
  upper_slope_deg: 26.6,
  upper_eave_to_ridge_ft: 14,
  upper_slippery: false,
} as const

describe('a case of snow', () => {
  const ramp: SnowCase = {
    name: 'ramp',
    pieces: [
      { fromFt: 0, toFt: 6, fromPsf: 10, toPsf: 10 },
      { fromFt: 6, toFt: 10, fromPsf: 20, toPsf: 40 },
    ],
  }
  it('is read at a place, and at its most between places', () => {
    expect([0, 5, 6, 8, 10, 11].map((ft) => snowAtPsf(ramp, ft))).toEqual([10, 10, 20, 30, 40, 0])
    expect(mostSnowPsf(ramp)).toBe(40)
    expect(mostSnowBetweenPsf(ramp, 1, 6)).toBe(10)
    expect(mostSnowBetweenPsf(ramp, 1, 8)).toBe(30)
    expect(mostSnowBetweenPsf(ramp, 7, 9)).toBe(35)
  })
})

describe('a gable', () => {
  it('of short rafters takes the whole ground snow on the leeward side; the balanced case stays first and as it was', () => {
    const result = solve({})
    expect(names(result)).toEqual(['balanced', 'unbalanced, leeward', 'unbalanced, windward'])
    expect(cases(result).map(({ most_psf }) => most_psf)).toEqual([0.7 * 1.1 * 30, 30, 0])
    expect(result.values.snow).toMatchObject({ balanced_psf: 0.7 * 1.1 * 30, unbalanced_psf: 30, drift_psf: 0 })
    expect(result.values.snow.planes['south']).toMatchObject({ modules_psf: 30, modules_case: 'unbalanced, leeward' })
    expect(result.values.loads.planes['south']?.snow_psf).toBe(30)
  })

  it('has only balanced snow, of 0 psf, where there is none on the ground', () => {
    const result = solve({ snow: { ground_psf: 0 } })
    expect(cases(result).map(({ name, most_psf }) => [name, most_psf])).toEqual([['balanced', 0]])
    expect(result.findings.filter(({ id }) => id.startsWith('structure.snow'))).toEqual([])
    expect(Object.values(result.values.snow).filter((value) => Number.isNaN(value))).toEqual([])
  })

  it('over 20 ft takes a heap behind the ridge, by the other side of the ridge', () => {
    // Long rafters need a deep plane: 26 ft at 22 degrees is 24.1 ft in plan.
    const deep = rectangle('south', 48, 26, 22)
    const framing = { span_ft: 23 }
    const stated = solve({ framing, building: { opposite_eave_to_ridge_ft: 30 } }, deep)
    const heap = cases(stated).find(({ name }) => name.includes('heap'))
    const bottom = cases(stated)[0]?.most_psf ?? 0
    expect(names(stated)).toEqual(['balanced', 'unbalanced, heap behind the ridge', 'unbalanced, 0.3 of balanced'])
    // hd 1.860, gamma 17.9, S = 1 / tan 22.
    const run = 1 / Math.tan((22 * Math.PI) / 180)
    expect(heap?.most_psf).toBeCloseTo(bottom + (1.86 * 17.9) / Math.sqrt(run), 1)
    const depth = 26 * Math.cos((22 * Math.PI) / 180)
    expect(heap?.pieces[1]?.from_ft).toBeCloseTo(depth - (8 * Math.sqrt(run) * 1.86) / 3, 1)
    expect(heap?.pieces[0]).toMatchObject({ from_ft: 0, from_psf: bottom, to_psf: bottom })
    expect(found(stated, 'structure.snow-opposite-not-stated')).toBeUndefined()
    // The modules lie below the heap.
    expect(heap?.on_modules_psf).toBeCloseTo(bottom, 9)
    const high = cases(solve({ framing, building: { opposite_eave_to_ridge_ft: 30 } }, deep, 12))
    expect(high.find(({ name }) => name.includes('heap'))?.on_modules_psf).toBe(heap?.most_psf)
    const bound = solve({ framing }, deep)
    expect(found(bound, 'structure.snow-opposite-not-stated')).toMatchObject({ severity: 'warning' })
    expect(bound.values.snow.unbalanced_psf).toBeGreaterThan(heap?.most_psf ?? 0)
  })

  it('of trusses takes the heap, however short', () => {
    const project = house({ building: { opposite_eave_to_ridge_ft: 14 } })
    const [site, framing] = [siteLoads(project), framingSpec(project, 'south')]
    const truss = house({ framing: { kind: 'truss' } })
    const geometry = rectangle('south', 48, 16, 22)
    const kindsOf = (one: Project) =>
      snowOfPlane(one, site, geometry, framing, block(1, 4, 12, 3)).cases.map(({ snowCase }) => snowCase.name)
    expect(kindsOf(project)).toContain('unbalanced, leeward')
    expect(kindsOf(truss)).toEqual(['balanced', 'unbalanced, heap behind the ridge', 'unbalanced, 0.3 of balanced'])
  })

  it('of rafters over a purlin takes both', () => {
    const result = solve({ framing: { span_ft: 7, further_spans_ft: [7], supports: [{ kind: 'bearing_wall' }] } })
    expect(names(result)).toContain('unbalanced, leeward')
    expect(names(result)).toContain('unbalanced, heap behind the ridge')
  })

  it('needs W2 for the heap in 7-22, and the whole ground snow stays', () => {
    const snow = { ground_basis: 'strength', ground_psf: 45 } as const
    const short = solve({ loads: 'ASCE 7-22', snow })
    expect(found(short, 'structure.snow-winter-wind')).toBeUndefined()
    const framing = { span_ft: 7, further_spans_ft: [7], supports: [{ kind: 'bearing_wall' }] }
    const without = solve({ loads: 'ASCE 7-22', snow, framing })
    expect(found(without, 'structure.snow-winter-wind')).toMatchObject({ severity: 'error' })
    expect(without.values.snow.unbalanced_psf).toBe(45)
    const withWind = solve({ loads: 'ASCE 7-22', snow: { ...snow, winter_wind_parameter: 0.5 }, framing })
    expect(found(withWind, 'structure.snow-winter-wind')).toBeUndefined()
    expect(withWind.values.snow.unbalanced_psf).toBeGreaterThan(45)
  })

  it('steeper than 7 in 12 has no unbalanced snow, at 7 in 12 it has', () => {
    expect(names(solve({}, rectangle('south', 48, 16, 31)))).not.toContain('unbalanced, leeward')
    expect(names(solve({}, rectangle('south', 48, 16, 30.25)))).toContain('unbalanced, leeward')
  })

  it('and a hip alike, a monoslope not', () => {
    const hip = spaceMounts(house({ building: { roof_kind: 'hip' } }), {
      planes: [hipPlane('south', 60, 18, 24, 22)],
      modules: block(1, 4, 20, 4),
    })
    expect(names(hip)).toContain('unbalanced, leeward')
    expect(names(solve({}, porch()))).not.toContain('unbalanced, leeward')
  })

  it('below 15 degrees has a uniform case', () => {
    const low = cases(solve({}, rectangle('south', 48, 16, 10)))
    expect(low.find(({ name }) => name === 'minimum of low slopes')?.most_psf).toBe(20)
    const snow = { ground_basis: 'strength', ground_psf: 35 } as const
    const later = cases(solve({ loads: 'ASCE 7-22', snow }, rectangle('south', 48, 16, 10)))
    expect(later.find(({ name }) => name === 'minimum of low slopes')?.most_psf).toBe(30)
  })

  it('on a warm roof has ice dams on the overhang alone, not on the modules', () => {
    const warm = solve({ snow: { thermal: 'heated' } })
    const dam = cases(warm).find(({ kind }) => kind === 'ice dam')
    expect(dam?.pieces).toEqual([
      { from_ft: 0, to_ft: 1, from_psf: 42, to_psf: 42 },
      { from_ft: 1, to_ft: 16 * Math.cos((22 * Math.PI) / 180), from_psf: 0, to_psf: 0 },
    ])
    expect(dam?.on_modules_psf).toBe(0)
    const kinds = (snow: Partial<Snow>) => cases(solve({ snow })).map(({ kind }) => kind)
    expect(kinds({ thermal: 'heated', roof_insulation_r: 29 })).toContain('ice dam')
    expect(kinds({ thermal: 'heated', roof_insulation_r: 30 })).not.toContain('ice dam')
    expect(kinds({ thermal: 'heated', roof_insulation_r: 20, roof_ventilated: true })).not.toContain('ice dam')
    expect(kinds({ thermal: 'cold_ventilated' })).not.toContain('ice dam')
    expect(kinds({ thermal: 'unheated' })).not.toContain('ice dam')
  })

  it('steeper than unbalanced snow has partial snow on rafters over a purlin', () => {
    const steep = rectangle('south', 48, 16, 35)
    const one = cases(solve({}, steep)).filter(({ kind }) => kind === 'partial')
    expect(one).toEqual([])
    const result = solve(
      { framing: { span_ft: 6, further_spans_ft: [6], supports: [{ kind: 'bearing_wall' }] } },
      steep,
    )
    const partial = cases(result).filter(({ kind }) => kind === 'partial')
    const ps = cases(result)[0]?.most_psf ?? 0
    expect(partial.map(({ pieces }) => pieces.map(({ from_psf }) => from_psf / ps))).toEqual([
      [1, 0.5],
      [0.5, 1],
      [0.5, 1],
      [1, 0.5],
    ])
    expect(partial[0]?.pieces[1]?.from_ft).toBe(7)
  })
})

describe('a plane below something higher', () => {
  it('that is shallow cuts the drift off where it ends, and keeps what the authority asks for at least', () => {
    const shallow = solve({ snow: { ground_psf: 35, higher_roofs: { house: roofAbove } } }, porch(16), 2.2)
    const [low, high] = cases(shallow).find(({ kind }) => kind === 'drift')?.pieces ?? []
    expect(low?.to_psf).toBeCloseTo(high?.from_psf ?? 0, 9)
    const on: SnowOnPlane = {
      plane: 'porch',
      snow: {
        edition: 'ASCE 7-16',
        groundPsf: 40,
        exposure: 'B',
        roofExposure: 'partially_exposed',
        thermalFactor: 1,
        tiltDeg: 20,
        minimumPsf: 0,
      },
      mapsOverStated: 1,
      winterWind: undefined,
      depthFt: 6,
      ridge: undefined,
      higherRoofs: [],
      parapets: [{ id: 'wall', end: 'top', heightFt: 20, lengthFt: 30, fetchFt: 100 }],
      overhangFt: 0,
      iceDams: false,
      spansFt: [6],
    }
    // 0.75 hd = 2.855 ft, 11.42 ft wide; 6 ft below the wall 5.42 / 11.42 of it is left.
    const heightFt = 0.75 * (0.43 * 100 ** (1 / 3) * 50 ** (1 / 4) - 1.5)
    const drift = planeSnowCases(on).cases.find(({ kind }) => kind === 'drift')?.snowCase.pieces ?? []
    expect(drift).toHaveLength(1)
    expect(drift[0]?.fromPsf).toBeCloseTo(28 + 19.2 * heightFt * (1 - 6 / (4 * heightFt)), 9)
    expect(drift[0]?.toPsf).toBeCloseTo(28 + 19.2 * heightFt, 9)
    // A local minimum of 35 psf lies under the drift too, and leaves less of the wall free, which here is far higher.
    const least = planeSnowCases({ ...on, snow: { ...on.snow, minimumPsf: 35 } })
    const raised = least.cases.find(({ kind }) => kind === 'drift')?.snowCase.pieces ?? []
    expect(raised[0]?.toPsf).toBeCloseTo(35 + 19.2 * heightFt, 9)
  })

  it('with a wall that is not stated is an error where it snows', () => {
    const finding = found(solve({}, porch()), 'structure.snow-wall-drift')
    expect(finding).toMatchObject({ severity: 'error' })
    expect(finding?.message).toMatch(/upper edge/)
    expect(found(solve({ snow: { ground_psf: 0 } }, porch()), 'structure.snow-wall-drift')).toBeUndefined()
    const parapet = { plane: 'south', end: 'top', height_ft: 3, length_ft: 48, fetch_ft: 30 } as const
    for (const stated of [{ higher_roofs: { house: roofAbove } }, { parapets: { wall: parapet } }])
      expect(found(solve({ snow: stated }, porch()), 'structure.snow-wall-drift')).toBeUndefined()
    // A wall at the side is not the one above.
    const side = { ...roofAbove, end: 'side' } as const
    expect(
      found(solve({ snow: { higher_roofs: { house: side } } }, porch()), 'structure.snow-wall-drift'),
    ).toBeDefined()
  })

  it('gets the drift from the wall down and what slides, each on balanced snow', () => {
    const result = solve({ snow: { ground_psf: 35, higher_roofs: { house: roofAbove } } }, porch(14))
    const ps = 0.7 * 1.1 * 35
    const drift = cases(result).find(({ kind }) => kind === 'drift')
    // gamma 18.55, hd 1.882: 34.91 psf over 7.53 ft.
    expect(drift?.name).toBe('drift below roof house, leeward')
    expect(drift?.most_psf).toBeCloseTo(ps + 34.91, 1)
    const depth = 14 * Math.cos((22 * Math.PI) / 180)
    expect(drift?.pieces[1]?.from_ft).toBeCloseTo(depth - 7.53, 1)
    expect(drift?.pieces[1]?.from_psf).toBeCloseTo(ps, 9)
    // The modules end 2 rows of 67.8 in and a gap above 2.2 ft, in plan.
    const endFt = (2.2 + (2 * 67.8 + 0.5) / 12) * Math.cos((22 * Math.PI) / 180)
    const { from_ft: startFt = 0 } = drift?.pieces[1] ?? {}
    expect(drift?.on_modules_psf).toBeCloseTo(
      ps + (((drift?.most_psf ?? 0) - ps) * (endFt - startFt)) / (depth - startFt),
      6,
    )
    const sliding = cases(result).find(({ kind }) => kind === 'sliding')
    expect(sliding?.most_psf).toBeCloseTo(ps + (0.4 * ps * 14) / 15, 9)
    // 13 ft of roof are narrower than the 15 ft: the pressure stays, the rest falls off.
    expect(sliding?.pieces).toHaveLength(1)
    expect(result.values.snow.drift_psf).toBe(drift?.most_psf)
    expect(result.values.snow.sliding_psf).toBe(sliding?.most_psf)
    expect(result.values.loads.planes['south']?.snow_psf).toBeGreaterThan(ps + 10)
    expect(result.worksheet.map(({ id }) => id)).toContain('structure.south.snow-case.drift-below-roof-house-leeward')
  })

  it('takes the longer of the stated and its own length for the wind that drives snow up to the wall', () => {
    const fetch = (lower_length_ft: number) => {
      const snow = { ground_psf: 35, higher_roofs: { house: { ...roofAbove, upper_length_ft: 20, lower_length_ft } } }
      const { worksheet } = solve({ snow }, porch())
      return worksheet
        .filter(({ id }) => id.startsWith('structure.south.snow-case.drift'))
        .map(({ id, inputs }) => [id.split('-').at(-1), inputs.find(({ symbol }) => symbol === 'lu')?.value])
    }
    expect(fetch(4)).toEqual([['leeward', 20]])
    expect(fetch(200)).toEqual([['windward', 200]])
  })

  it('does not get what does not slide: a gable end, a rough roof of 2 in 12, a far one', () => {
    const kinds = (change: object) =>
      cases(solve({ snow: { higher_roofs: { house: { ...roofAbove, ...change } } } }, porch())).map(({ kind }) => kind)
    expect(kinds({})).toContain('sliding')
    expect(kinds({ upper_slope_deg: 0, upper_eave_to_ridge_ft: 0 })).not.toContain('sliding')
    expect(kinds({ upper_slope_deg: 9 })).not.toContain('sliding')
    expect(kinds({ upper_slope_deg: 9, upper_slippery: true })).toContain('sliding')
    expect(kinds({ gap_ft: 15 })).not.toContain('sliding')
  })

  it('at its side carries the drift all over', () => {
    const result = solve({ snow: { higher_roofs: { house: { ...roofAbove, end: 'side' } } } })
    const drift = cases(result).find(({ kind }) => kind === 'drift')
    expect(drift?.pieces).toHaveLength(1)
    expect(drift?.on_modules_psf).toBe(drift?.most_psf)
  })

  it('at its lower edge has the heap there', () => {
    const parapet = { plane: 'south', end: 'eave', height_ft: 4, length_ft: 48, fetch_ft: 40 } as const
    const drift = cases(solve({ snow: { parapets: { wall: parapet } } })).find(({ kind }) => kind === 'drift')
    expect(drift?.pieces[0]?.from_psf).toBe(drift?.most_psf)
    expect(drift?.pieces[0]?.to_psf).toBeLessThan(drift?.most_psf ?? 0)
    // The modules begin 2.2 ft up the slope.
    const { from_psf = 0, to_psf = 0, to_ft = 0 } = drift?.pieces[0] ?? {}
    const beginFt = 2.2 * Math.cos((22 * Math.PI) / 180)
    expect(drift?.on_modules_psf).toBeCloseTo(from_psf + (beginFt / to_ft) * (to_psf - from_psf), 9)
    const short = cases(solve({ snow: { parapets: { wall: { ...parapet, length_ft: 14 } } } })).find(
      ({ kind }) => kind === 'drift',
    )
    expect(short?.name).toBe('no drift at parapet wall')
  })

  it('says what is not covered: valleys in snow, long boxes', () => {
    const plane = rectangle('south', 48, 16, 22)
    const valley: PlaneGeometry = {
      ...plane,
      edges: plane.edges.map((edge, index) => (index === 1 ? { ...edge, kind: 'valley' } : edge)),
    }
    expect(found(solve({}, valley), 'structure.snow-valley')).toMatchObject({ severity: 'error' })
    expect(found(solve({ snow: { ground_psf: 20 } }, valley), 'structure.snow-valley')).toBeUndefined()
    // 18 psf at allowable level are 25.7 at that of the maps.
    const allowable = { ground_psf: 18, ground_basis: 'allowable' } as const
    expect(found(solve({ loads: 'ASCE 7-22', snow: allowable }, valley), 'structure.snow-valley')).toBeDefined()
    const project = house({})
    const box = { x_ft: 1, y_ft: 13, width_ft: 15, length_ft: 1, height_ft: 2 }
    project.roof_planes = { south: { azimuth_deg: 180, tilt_deg: 22, obstructions: { box } } }
    expect(found(spaceMounts(project, demoArrangement()), 'structure.snow-projection')).toBeDefined()
    project.roof_planes = { south: { azimuth_deg: 180, tilt_deg: 22, obstructions: { box: { ...box, width_ft: 14 } } } }
    const short = spaceMounts(project, demoArrangement())
    expect(found(short, 'structure.snow-projection')).toBeUndefined()
    expect(short.worksheet.find(({ id }) => id === 'structure.south.snow-boxes')?.inputs[0]?.value).toBe(14)
  })
})

describe('glass', () => {
  it('is slippery on a warm roof of 7-16 only where it is known to be insulated', () => {
    const step = (snow: Partial<Snow>) => {
      const result = solve({ snow: { slippery_modules: true, ...snow } })
      const balanced = result.worksheet.find(({ id }) => id === 'structure.south.snow')?.result.value
      return [Number(balanced) < 0.7 * 30 - 1e-9, found(result, 'structure.snow-not-slippery')?.severity]
    }
    expect(step({ thermal: 'heated' })).toEqual([false, 'warning'])
    expect(step({ thermal: 'heated', roof_insulation_r: 29 })).toEqual([false, 'warning'])
    expect(step({ thermal: 'heated', roof_insulation_r: 30 })).toEqual([true, undefined])
    expect(step({ thermal: 'heated', roof_insulation_r: 20, roof_ventilated: true })).toEqual([true, undefined])
    expect(step({ thermal: 'heated', roof_insulation_r: 20 })).toEqual([false, 'warning'])
  })

  it('lightens modules, rails and mounts only of the balanced case', () => {
    const at = (tiltDeg: number, slippery_modules: boolean) =>
      solve({ snow: { slippery_modules } }, rectangle('south', 48, 16, tiltDeg)).values.loads.planes['south']?.snow_psf
    // Past 7 in 12 only balanced snow is left: Ct 1.1, 1 - (35 - 10) / 60 of it on glass.
    expect(at(35, false)).toBeCloseTo(0.77 * 30, 9)
    expect(at(35, true)).toBeCloseTo((1 - 25 / 60) * 0.77 * 30, 9)
    expect([at(22, false), at(22, true)]).toEqual([30, 30])
  })

  it('throws snow onto a lower roof, which is told', () => {
    expect(found(solve({}), 'structure.snow-lower-roof-not-stated')).toMatchObject({ severity: 'note' })
    const above = found(solve({ snow: { planes_above_lower_roofs: ['south'] } }), 'structure.snow-onto-lower-roof')
    const depth = 16 * Math.cos((22 * Math.PI) / 180)
    expect(above?.severity).toBe('warning')
    expect(above?.message).toContain(`${(0.4 * 0.77 * 30 * depth).toFixed(0)} lb per ft`)
    const none = solve({ snow: { planes_above_lower_roofs: [] } })
    expect(found(none, 'structure.snow-onto-lower-roof')).toBeUndefined()
    expect(found(none, 'structure.snow-lower-roof-not-stated')).toBeUndefined()
  })

  it('may fill a narrow strip below it', () => {
    expect(found(solve({}), 'structure.snow-strip-below-array')?.message).toMatch(/2\.2 ft below/)
    expect(found(solve({}, rectangle('south', 48, 16, 22), 3), 'structure.snow-strip-below-array')).toBeUndefined()
  })
})

describe('7-22', () => {
  it('takes Ct of a heated roof from its insulation', () => {
    const at = (snow: Partial<Snow>) =>
      solve({ loads: 'ASCE 7-22', snow: { ground_basis: 'strength', ground_psf: 45, ...snow } }).values.snow
    expect(at({ thermal: 'heated', roof_insulation_r: 30 })).toMatchObject({ thermal_factor: 1.125, level: 'strength' })
    expect(at({ thermal: 'heated', roof_insulation_r: 30 }).balanced_psf).toBeCloseTo(0.7 * 1.125 * 45, 9)
    expect(at({ thermal: 'cold_ventilated' }).thermal_factor).toBe(1.2)
    expect(at({ thermal: 'heated', roof_ventilated: true }).thermal_factor).toBe(1.2)
    expect(at({ thermal: 'heated', roof_insulation_r: 30, thermal_factor: 1.2 }).thermal_factor).toBe(1.2)
  })

  it('takes that Ct at strength level, and says where it comes from', () => {
    const snow = { ground_basis: 'allowable', ground_psf: 31.5, thermal: 'heated', roof_insulation_r: 30 } as const
    const result = solve({ loads: 'ASCE 7-22', snow })
    const step = result.worksheet.find(({ id }) => id === 'structure.thermal-factor')
    expect(step?.result.value).toBeCloseTo(1.125, 9)
    expect(step?.inputs.map(({ value }) => value)).toEqual([30, expect.closeTo(45, 9)])
    expect(solve({}).worksheet.some(({ id }) => id === 'structure.thermal-factor')).toBe(false)
  })

  it('gives allowable ground snow the heights of its strength level and 0.7 of the pressures', () => {
    const framing = { span_ft: 7, further_spans_ft: [7], supports: [{ kind: 'bearing_wall' }] }
    const building = { opposite_eave_to_ridge_ft: 30 }
    const at = (ground_basis: 'strength' | 'allowable', ground_psf: number) =>
      solve({
        loads: 'ASCE 7-22',
        framing,
        building,
        snow: { ground_basis, ground_psf, thermal: 'heated', roof_insulation_r: 30, winter_wind_parameter: 0.5 },
      })
    const [strength, allowable] = [cases(at('strength', 50)), cases(at('allowable', 35))]
    expect(allowable.map(({ name }) => name)).toEqual(strength.map(({ name }) => name))
    allowable.forEach((one, index) => {
      expect(one.most_psf).toBeCloseTo(0.7 * (strength[index]?.most_psf ?? 0), 9)
      expect(one.pieces.at(-1)?.from_ft).toBeCloseTo(strength[index]?.pieces.at(-1)?.from_ft ?? 0, 9)
    })
    // So the mounts feel the same: the factor of 0.7 is taken once.
    const down = (result: Result<MountValues>) => result.values.mounts.map((mount) => mount.along_lb)
    const [a, b] = [down(at('strength', 50)), down(at('allowable', 35))]
    a.forEach((lb, index) => expect(lb).toBeCloseTo(b[index] ?? 0, 6))
  })
})

describe('harder snow never gets less', () => {
  const random = new RandomSource(20_261_128)
  const draw = (least: number, most: number): number => least + (most - least) * random.uniform()
  const editions = ['ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'] as const
  const any = (): SnowOnPlane => ({
    plane: 'south',
    snow: {
      edition: editions[Math.floor(draw(0, 3))] ?? 'ASCE 7-16',
      groundPsf: draw(5, 60),
      exposure: 'C',
      roofExposure: 'partially_exposed',
      thermalFactor: draw(1, 1.2),
      tiltDeg: draw(7.1, 44),
      minimumPsf: random.uniform() < 0.3 ? draw(5, 30) : 0,
    },
    mapsOverStated: 1,
    winterWind: draw(0.25, 0.65),
    depthFt: draw(8, 40),
    ridge: { framing: random.uniform() < 0.5 ? 'rafter' : 'continuous rafter', windwardFt: draw(8, 60) },
    // High enough that the snow never fills the step.
    higherRoofs: [
      {
        id: 'house',
        end: 'top',
        stepFt: draw(12, 30),
        upperLengthFt: draw(10, 80),
        lowerLengthFt: draw(10, 60),
        upperSlopeDeg: draw(10, 40),
        upperEaveToRidgeFt: draw(5, 30),
        upperSlippery: random.uniform() < 0.5,
        gapFt: 0,
      },
    ],
    parapets: [{ id: 'wall', end: 'eave', heightFt: draw(8, 12), lengthFt: 30, fetchFt: draw(10, 80) }],
    overhangFt: draw(0, 2),
    iceDams: random.uniform() < 0.5,
    spansFt: [draw(5, 10), draw(5, 10)],
  })
  const kinds: readonly SnowKind[] = ['balanced', 'minimum', 'unbalanced', 'drift', 'sliding', 'ice dam', 'partial']
  /** Largest pressure of each kind. */
  const most = (on: SnowOnPlane): number[] => {
    const { cases: all, findings } = planeSnowCases(on)
    expect(findings).toEqual([])
    return kinds.map((kind) => Math.max(0, ...all.filter((c) => c.kind === kind).map((c) => mostSnowPsf(c.snowCase))))
  }
  const compare = (harden: (on: SnowOnPlane) => SnowOnPlane, left: readonly SnowKind[] = []): string[] =>
    Array.from({ length: 300 }, any).flatMap((on) => {
      const [easy, hard] = [most(on), most(harden(on))]
      return kinds.filter((kind, i) => !left.includes(kind) && (hard[i] ?? 0) < (easy[i] ?? 0) - 1e-9)
    })

  it('with more ground snow, in every kind of case', () => {
    expect(compare((on) => ({ ...on, snow: { ...on.snow, groundPsf: on.snow.groundPsf + draw(1, 30) } }))).toEqual([])
  })
  it('with more winter wind, a longer fetch or a larger roof above', () => {
    expect(
      compare((on) => ({
        ...on,
        winterWind: 0.65,
        ridge: { framing: on.ridge?.framing ?? 'rafter', windwardFt: (on.ridge?.windwardFt ?? 0) + draw(1, 20) },
        higherRoofs: on.higherRoofs.map((roof) => ({
          ...roof,
          upperLengthFt: roof.upperLengthFt + draw(1, 40),
          upperEaveToRidgeFt: roof.upperEaveToRidgeFt + draw(1, 10),
        })),
      })),
    ).toEqual([])
  })
  it('and past 7 in 12 a steeper roof never gets more', () => {
    const steep = (on: SnowOnPlane, tiltDeg: number): SnowOnPlane => ({ ...on, snow: { ...on.snow, tiltDeg } })
    const more = Array.from({ length: 300 }, any).flatMap((on) => {
      const tilt = draw(30.3, 44)
      const [easy, hard] = [most(steep(on, tilt + draw(0.1, 15))), most(steep(on, tilt))]
      // With less balanced snow more of a wall stands out of it.
      return kinds.filter((kind, i) => kind !== 'drift' && (easy[i] ?? 0) > (hard[i] ?? 0) + 1e-9)
    })
    expect(more).toEqual([])
  })
  it('and every case covers the plane without gaps', () => {
    for (const on of Array.from({ length: 300 }, any)) {
      for (const { snowCase } of planeSnowCases(on).cases) {
        const { pieces } = snowCase
        expect(pieces[0]?.fromFt).toBe(0)
        expect(pieces.at(-1)?.toFt).toBeCloseTo(on.depthFt, 9)
        pieces.slice(1).forEach((piece, i) => expect(piece.fromFt).toBe(pieces[i]?.toFt))
        for (const piece of pieces) expect(Math.min(piece.fromPsf, piece.toPsf)).toBeGreaterThanOrEqual(0)
      }
    }
  })
})
