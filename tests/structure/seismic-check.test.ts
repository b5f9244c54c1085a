import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { spaceMounts, type MountValues } from '../../src/structure/index.js'
import { mountForce, shakenCapacity, type ShakenMount } from '../../src/structure/seismic/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { demoArrangement, demoProject } from './demo-house.js'

type Seismic = NonNullable<NonNullable<Project['structure']>['seismic']>

const WEIGHTS = {
  roof_area_ft2: 1450,
  roof_psf: 10,
  ceiling_area_ft2: 1450,
  ceiling_psf: 5,
  wall_area_ft2: 620,
  wall_psf: 15,
  partition_area_ft2: 520,
  partition_psf: 6,
}

interface Change {
  readonly seismic?: Seismic | undefined
  readonly loads?: 'ASCE 7-10' | 'ASCE 7-16' | 'ASCE 7-22'
  readonly mount?: object
}

function solve({ seismic, loads = 'ASCE 7-16', mount = {} }: Change): Result<MountValues> {
  const project = demoProject()
  const { seismic: _none, ...s } = project.structure ?? {}
  const foot = project.equipment.mounts?.['foot']
  return spaceMounts(
    {
      ...project,
      codes: { ...project.codes, loads },
      equipment: { ...project.equipment, mounts: { foot: { ...foot, ...mount } } },
      structure: {
        ...s,
        snow: { ...s.snow, ground_basis: 'allowable' },
        ...(seismic === undefined ? {} : { seismic }),
      },
    },
    demoArrangement(),
  )
}

const found = (result: Result<MountValues>, id: string) => result.findings.find((finding) => finding.id === id)
const about = (result: Result<MountValues>): string[] =>
  result.findings.filter(({ id }) => id.includes('seismic')).map(({ severity, id }) => `${severity} ${id}`)
const check = (result: Result<MountValues>) => result.values.checks.find(({ name }) => name === 'mount seismic')

describe('what is not stated is told', () => {
  it('nothing at all', () => {
    const result = solve({})
    expect(about(result)).toEqual(['warning structure.seismic-not-stated'])
    expect(result.values.seismic).toEqual({
      status: 'not checked',
      reason: 'neither category nor shaking is stated',
      sds_g: null,
      fp_per_weight: null,
      fp_lb: null,
      per_mount_lb: null,
      lateral_change_pct: null,
      lateral_passes: null,
    })
    expect(check(result)).toBeUndefined()
  })

  it('the dwelling alone, or a mild Ss without the dwelling', () => {
    expect(about(solve({ seismic: { dwelling: 'one_two_family' } }))).toEqual(['warning structure.seismic-not-stated'])
    expect(about(solve({ seismic: { ss_g: 0.2 } }))).toEqual(['warning structure.seismic-not-stated'])
  })

  it.each([{ design_category: 'D1' }, { ss_g: 1.2 }, { ss_g: 1.2, site_class: 'D' }] as const)(
    'the shaking, where %o asks for it',
    (seismic) => {
      const result = solve({ seismic: { dwelling: 'one_two_family', weights: WEIGHTS, ...seismic } })
      expect(about(result)).toEqual(['error structure.seismic-sds-missing'])
      expect(result.values.seismic.status).toBe('not checked')
    },
  )

  it('the strength across the slope, and the weights of the house', () => {
    const result = solve({ seismic: { design_category: 'D', sds_g: 1 } })
    expect(about(result)).toEqual([
      'warning structure.seismic-weights-not-stated',
      'warning structure.seismic-across-not-checked',
      'note structure.seismic-clamps-not-checked',
    ])
    // 0.7 x 0.8 of a module of 47.4 lb.
    expect(found(result, 'structure.seismic-clamps-not-checked')?.message).toMatch(/ 27 lb a module/)
    const whole = solve({ seismic: { design_category: 'D', sds_g: 1, mount_lateral_across_lb: 300, weights: WEIGHTS } })
    expect(about(whole)).toEqual(['note structure.seismic-clamps-not-checked'])
    const { ceiling_psf: _psf, ...half } = WEIGHTS
    const incomplete = solve({ seismic: { design_category: 'B', weights: half } })
    expect(about(incomplete)).toEqual(['warning structure.seismic-weights-incomplete'])
  })

  it('a category that does not go with the shaking, and factors of another edition', () => {
    const low = solve({ seismic: { dwelling: 'one_two_family', design_category: 'B', sds_g: 0.6 } })
    expect(found(low, 'structure.seismic-category')).toMatchObject({ severity: 'warning' })
    expect(low.values.seismic.status).toBe('checked')
    const strong = { design_category: 'D', sds_g: 1, car: 1, rpo: 1.5 } as const
    expect(found(solve({ seismic: strong }), 'structure.seismic-factors-unused')).toBeDefined()
    expect(found(solve({ loads: 'ASCE 7-22', seismic: strong }), 'structure.seismic-factors-unused')).toBeUndefined()
    const { rpo: _rpo, ...one } = strong
    expect(found(solve({ loads: 'ASCE 7-22', seismic: one }), 'structure.seismic-factors-unused')).toBeDefined()
  })
})

describe('an exempt house', () => {
  it('says why, and what the force would be', () => {
    const result = solve({ seismic: { dwelling: 'one_two_family', design_category: 'C', sds_g: 0.33 } })
    expect(result.values.seismic).toMatchObject({ status: 'exempt', sds_g: 0.33, per_mount_lb: null })
    expect(result.values.seismic.fp_per_weight).toBeCloseTo(0.264, 9)
    expect(check(result)).toBeUndefined()
    expect(about(result)).toEqual([])
    expect(result.worksheet.map(({ id }) => id)).toContain('structure.seismic-exempt')
  })
})

describe('a house that shakes', () => {
  const stated = { design_category: 'D1', sds_g: 1.05, mount_lateral_across_lb: 300, weights: WEIGHTS } as const

  it('has the force on the array, and on each mount beside wind', () => {
    const { values, worksheet } = solve({ seismic: stated })
    expect(values.seismic.status).toBe('checked')
    expect(values.seismic.fp_per_weight).toBeCloseTo(0.84, 9)
    expect(values.seismic.fp_lb).toBeCloseTo(0.84 * values.array_weight_lb, 9)
    // The reaction areas add up to the array, at the heaviest dead load: a little more than its weight.
    const mean = (0.7 * 0.84 * values.array_weight_lb) / values.counts.mounts
    expect(values.seismic.per_mount_lb).toBeGreaterThan(mean)
    expect(values.seismic.per_mount_lb).toBeLessThan(2.5 * mean)
    expect(values.seismic.lateral_change_pct).toBeCloseTo((100 * values.array_weight_lb) / 34_170, 9)
    expect(values.seismic.lateral_passes).toBe(true)
    const step = worksheet.find(({ id }) => id === 'structure.seismic-mount')
    expect(step?.result.value).toBe(values.seismic.per_mount_lb)
    expect(step?.inputs.map(({ symbol }) => symbol)).toContain('wind, away from the roof')
    expect(values.checks.find(({ name }) => name === 'house lateral increase')?.limit_is).toBe('allowed increase')
  })

  it('meets the snow on the modules too', () => {
    const demand = (groundPsf: number) => {
      const project = demoProject()
      const s = project.structure ?? {}
      const snow = { ...s.snow, ground_psf: groundPsf }
      const result = spaceMounts({ ...project, structure: { ...s, snow, seismic: stated } }, demoArrangement(), {
        spacingIn: 48,
      })
      return check(result)?.demand ?? 0
    }
    expect(demand(40)).toBeGreaterThan(1.5 * demand(0))
  })

  it('takes SDS from Ss and Fa, with Fa at least 1.2 on soil of unknown class in 7-16', () => {
    const sds = (change: Seismic, loads?: 'ASCE 7-22') =>
      solve({ seismic: { design_category: 'D', ...change }, ...(loads === undefined ? {} : { loads }) }).values.seismic
        .sds_g
    expect(sds({ ss_g: 1.5, fa: 1, site_class: 'D' })).toBeCloseTo(1, 9)
    expect(sds({ ss_g: 1.5, fa: 1, site_class: 'default' })).toBeCloseTo(1.2, 9)
    expect(sds({ ss_g: 1.5, fa: 1 })).toBeCloseTo(1.2, 9)
    expect(sds({ ss_g: 1.5, fa: 1.4 })).toBeCloseTo(1.4, 9)
    // Of two statements the larger counts.
    expect(sds({ ss_g: 1.5, fa: 1, site_class: 'D', sds_g: 0.8 })).toBeCloseTo(1, 9)
    expect(sds({ ss_g: 1.5, fa: 1, site_class: 'D', sds_g: 1.1 })).toBe(1.1)
  })

  it('fails on a mount that is too weak along or across', () => {
    const ratioOf = (change: Change) => check(solve(change))?.ratio ?? 0
    expect(ratioOf({ seismic: stated })).toBeLessThan(1)
    const along = solve({ seismic: stated, mount: { capacity_lateral_lb: 20 } })
    expect(found(along, 'structure.mount-seismic')).toMatchObject({ severity: 'error' })
    const across = solve({ seismic: { ...stated, mount_lateral_across_lb: 15 } })
    expect(found(across, 'structure.mount-seismic')?.message).toMatch(/across the slope/)
    expect(check(across)?.capacity).toBe(15)
  })

  it('fails where the array is heavy beside the house', () => {
    const heavy = solve({ seismic: { ...stated, weights: { roof_area_ft2: 600, roof_psf: 8 } } })
    expect(heavy.values.seismic.lateral_passes).toBe(false)
    expect(found(heavy, 'structure.house-lateral-increase')).toMatchObject({ severity: 'error' })
  })

  it('warns of a roof over 15 psf of plan area in D0 to D2', () => {
    const warning = (category: 'D' | 'D1', dead: number) => {
      const project = demoProject()
      const s = project.structure ?? {}
      const framing = { south: { ...s.framing?.['south'], existing_dead_psf: dead } }
      const seismic = { ...stated, design_category: category }
      return found(
        spaceMounts({ ...project, structure: { ...s, framing, seismic } }, demoArrangement()),
        'structure.seismic-roof-dead',
      )
    }
    expect(warning('D1', 10)).toBeUndefined()
    expect(warning('D1', 14)?.message).toMatch(/over the 15 psf/)
    expect(warning('D', 14)).toBeUndefined()
  })

  it('never asks less with more shaking, in any edition', () => {
    for (const loads of ['ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'] as const) {
      let before = 0
      for (const sds_g of [0.5, 0.8, 1.2, 2]) {
        const demand = check(solve({ loads, seismic: { ...stated, sds_g } }))?.ratio ?? 0
        expect(demand).toBeGreaterThan(before)
        before = demand
      }
    }
  })
})

describe('one mount', () => {
  const mount: ShakenMount = {
    edition: 'ASCE 7-16',
    snowIsAllowable: true,
    sdsG: 1,
    perWeight: 0.8,
    tiltDeg: 30,
    weightLb: 100,
    areaFt2: 30,
    snowPsf: 0,
  }
  const [cos, sin] = [Math.cos(Math.PI / 6), 0.5]

  it('carries the force in the plane of the roof with its weight, by hand', () => {
    const force = mountForce(mount)
    expect(force.horizontalLb).toBeCloseTo(56, 9)
    const downLb = (100 + 0.7 * 20) * sin
    expect(force.alongLb).toBeCloseTo(downLb + 56 * cos, 9)
    expect(force.acrossLb).toBeCloseTo(Math.hypot(downLb, 56), 9)
    expect(force.upliftLb).toBe(0)
    // 0.7 (1.6 sin + 0.4 cos) - 0.6 cos of 100 lb at SDS 2.
    const hard = mountForce({ ...mount, sdsG: 2, perWeight: 1.6 })
    expect(hard.upliftLb).toBeCloseTo(100 * (0.7 * (1.6 * sin + 0.4 * cos) - 0.6 * cos), 9)
  })

  it('carries 0.75 of the snow with 0.525 E up to 7-16, 0.1 of strength-level snow in 7-22', () => {
    const along = (edition: ShakenMount['edition'], snowIsAllowable: boolean) =>
      mountForce({ ...mount, edition, snowIsAllowable, snowPsf: 40 }).alongLb
    const with40 = (share: number) => (100 + 0.525 * 20) * sin + share * 40 * 30 * cos * sin + 0.525 * 80 * cos
    expect(along('ASCE 7-10', true)).toBeCloseTo(with40(0.75), 9)
    expect(along('ASCE 7-16', true)).toBeCloseTo(with40(0.75), 9)
    expect(along('ASCE 7-22', false)).toBeCloseTo(Math.max(with40(0.1), mountForce(mount).alongLb), 9)
    expect(along('ASCE 7-22', true)).toBeCloseTo(with40(0.75), 9)
    const across = Math.hypot((100 + 0.525 * 20) * sin + 0.75 * 40 * 30 * cos * sin, 0.525 * 80)
    expect(mountForce({ ...mount, snowPsf: 40 }).acrossLb).toBeCloseTo(across, 9)
  })

  it('holds the smaller of sheet and screws, weaker across the grain', () => {
    const strength = {
      upliftLb: 900,
      downLb: 1400,
      lateralLb: 400,
      lagCount: 1,
      lag: { size: '5/16', lengthIn: 5, threadLengthIn: undefined, aboveRafterIn: 1, rafterDepthIn: 5.5 },
      specificGravity: 0.5,
      plate: 'steel_10_ga',
      wetFactor: 1,
      temperatureFactor: 1,
    } as const
    const screws = shakenCapacity({ ...strength, lateralLb: undefined }, undefined)
    expect(screws.acrossLb ?? 0).toBeLessThan(screws.alongLb ?? 0)
    const wet = shakenCapacity({ ...strength, lateralLb: undefined, wetFactor: 0.7, temperatureFactor: 0.8 }, undefined)
    expect(wet.acrossLb).toBeCloseTo(0.56 * (screws.acrossLb ?? 0), 9)
    expect(wet.alongLb).toBeCloseTo(0.56 * (screws.alongLb ?? 0), 9)
    expect(shakenCapacity(strength, 100)).toMatchObject({ acrossLb: 100 })
    expect(shakenCapacity({ ...strength, lateralLb: 50 }, 100)).toMatchObject({ alongLb: 50, acrossLb: 50 })
    const bare = shakenCapacity({ ...strength, plate: undefined }, undefined)
    expect(bare).toMatchObject({ alongLb: 400, acrossLb: undefined })
  })
})
