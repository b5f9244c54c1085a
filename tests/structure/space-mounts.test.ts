import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { validate } from '../../src/project/project-validator.generated.js'
import type { Project } from '../../src/project/index.js'
import {
  spaceMounts,
  type MountValues,
  type RoofArrangement,
  type SpaceMountsOptions,
} from '../../src/structure/index.js'
import { finiteElementBeam } from './beam-independent.js'
import { block, demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'

type Structure = NonNullable<Project['structure']>

/** The demo project with parts of its structure replaced. */
function projectWith(
  change: {
    wind?: Partial<Structure['wind']>
    snow?: Partial<Structure['snow']>
    building?: Partial<Structure['building']>
    framing?: object
    structure?: Partial<Structure>
    loads?: 'ASCE 7-10' | 'ASCE 7-16' | 'ASCE 7-22'
  } = {},
): Project {
  const project = demoProject()
  const s = project.structure ?? {}
  return {
    ...project,
    codes: { ...project.codes, loads: change.loads ?? 'ASCE 7-16' },
    structure: {
      ...s,
      ...change.structure,
      wind: { ...s.wind, ...change.wind },
      snow: { ...s.snow, ...change.snow },
      building: { ...s.building, ...change.building },
      framing: { south: { ...s.framing?.['south'], ...change.framing } },
    },
  }
}

const run = (
  project: Project,
  arrangement: RoofArrangement = demoArrangement(),
  options: SpaceMountsOptions = {},
): MountValues => spaceMounts(project, arrangement, options).values

const fixed = { spacingIn: 48 } as const

describe('result', () => {
  const result = spaceMounts(demoProject(), demoArrangement())
  const { values } = result

  it('comes from a project that the schema accepts', () => {
    expect(validate(demoProject())).toBe(true)
  })

  it('has no errors on a sound design and passes every check', () => {
    expect(result.findings.filter((f) => f.severity === 'error')).toEqual([])
    for (const check of values.checks) expect(check.ratio).toBeLessThanOrEqual(1)
  })

  it('holds only finite numbers', () => {
    const walk = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk)
      else expect(value).not.toBeUndefined()
    }
    walk(values)
    walk(result.worksheet)
  })

  it('is the same every time', () => {
    expect(JSON.stringify(spaceMounts(demoProject(), demoArrangement()))).toBe(JSON.stringify(result))
  })

  it('names the weakest link first', () => {
    expect(values.checks.filter((c) => c.governs)).toHaveLength(1)
    expect(values.weakest_link.ratio).toBe(Math.max(...values.checks.map((c) => c.ratio)))
    expect(values.checks[0]?.ratio).toBe(values.weakest_link.ratio)
  })

  it('counts what it lists', () => {
    expect(values.counts).toMatchObject({
      modules: 12,
      mounts: values.mounts.length,
      lag_screws: values.mounts.length,
      rails: 4,
      rail_pieces: values.rails.flatMap((r) => r.pieces_in).length,
    })
  })

  it('weighs the array', () => {
    const railFt = values.rails.reduce((sum, r) => sum + r.length_in, 0) / 12
    const lb = 12 * 47.4 + railFt * 0.75 + values.mounts.length * 1.2
    expect(values.array_weight_lb).toBeCloseTo(lb, 6)
    expect(values.added_dead_load_psf).toBeCloseTo(lb / ((12 * 44.6 * 67.8) / 144), 6)
  })

  it('shows steps whose inputs give the result', () => {
    const step = (id: string) => result.worksheet.find((s) => s.id === id)
    const input = (id: string, symbol: string): number =>
      Number(step(id)?.inputs.find((i) => i.symbol === symbol)?.value)
    const qh =
      0.00256 *
      input('structure.qh', 'Kz') *
      input('structure.qh', 'Kzt') *
      input('structure.qh', 'Kd') *
      input('structure.qh', 'Ke') *
      input('structure.qh', 'V') ** 2
    expect(step('structure.qh')?.result.value).toBeCloseTo(qh, 9)
    const zone = 'structure.south.zone-2r.uplift'
    const p = input(zone, 'qh') * Math.abs(input(zone, 'GCp')) * input(zone, 'gammaE') * input(zone, 'gammaa')
    expect(step(zone)?.result.value).toBeCloseTo(Math.max(16, p), 9)
    const rail = 'structure.rail-moment'
    const stress = Math.min(input(rail, 'Fty') / 1.65, input(rail, 'Ftu') / 1.95)
    expect(step(rail)?.result.value).toBeCloseTo(1000 * stress * input(rail, 'Sx'), 6)
    const hardest = values.mounts.toSorted((a, b) => b.ratio - a.ratio)[0]
    expect(step('structure.hardest-mount')?.result.value).toBe(hardest?.uplift_lb)
    const lag = 'structure.south.lag.withdrawal'
    const w =
      input(lag, 'n') * input(lag, 'W') * input(lag, 'pt') * input(lag, 'CD') * input(lag, 'CM') * input(lag, 'Ct')
    expect(step(lag)?.result.value).toBeCloseTo(w, 9)
  })

  it('keeps the standing of values that rest on memory', () => {
    const standing = (id: string) => result.worksheet.find((s) => s.id === id)?.source.standing
    expect(standing('structure.south.lag.root-tension')).toBe('from memory')
    expect(standing('structure.rail-moment')).toBe('from memory')
    expect(standing('structure.check-rail-moment')).toBe('from memory')
    const later = spaceMounts(
      projectWith({ loads: 'ASCE 7-22', snow: { thermal_factor: 1.1, ground_basis: 'strength' } }),
      demoArrangement(),
    )
    expect(later.worksheet.find((s) => s.id === 'structure.kz')?.source.standing).toBe('from memory')
  })

  it('reproduces every mount of a row by an independent calculation', () => {
    // One row of four modules in the field of a tall house: zone 1 only, no exposed edge.
    const project = projectWith({
      wind: { mean_roof_height_ft: 60, ridge_is_roof_edge: true },
      framing: { first_offset_in: 6 },
    })
    const modules = block(1, 4, 15, 8)
    const values = run(project, { planes: [rectangle('south', 48, 24, 22)], modules }, fixed)
    const lower = values.mounts.filter((m) => m.rail.endsWith('lower'))
    expect(lower.map((m) => m.x_in)).toEqual([198, 246, 294, 342])
    expect(new Set(lower.map((m) => `${m.zone} ${m.edge_factor}`))).toEqual(new Set(['1 1']))
    const loads = modules.map((m) => ({ fromIn: m.xFt * 12, toIn: (m.xFt + m.widthFt) * 12, lbPerIn: 67.8 / 24 / 12 }))
    const beam = { startIn: 178.5, endIn: 180 + 4 * 44.6 + 1.5 + 1.5, supportsIn: lower.map((m) => m.x_in), loads }
    // lb for 1 psf on the half module height that the rail carries.
    const perPsf = finiteElementBeam(beam).reactionsLb
    const qh = 0.00256 * 2.01 * (60 / 900) ** (2 / 9.5) * 0.85 * 115 ** 2
    const dead = 47.4 / ((44.6 * 67.8) / 144)
    for (const [i, mount] of lower.entries()) {
      const from = i === 0 ? 178.5 : mount.x_in - 24
      const to = i === 3 ? beam.endIn : mount.x_in + 24
      const covered = loads.reduce((sum, l) => sum + Math.max(0, Math.min(to, l.toIn) - Math.max(from, l.fromIn)), 0)
      const area = (covered / 12) * (67.8 / 24)
      expect(mount.area_ft2).toBeCloseTo(area, 6)
      // Figure 30.3-2C, zone 1: -1.5 up to 20 ft2; 29.4-8: 1.2 - 0.4 log A from 10 ft2, 0.8 below.
      const equalisation = Math.min(0.8, 1.2 - 0.4 * Math.log10(area))
      const net = 0.6 * qh * 1.5 * equalisation - 0.6 * dead * Math.cos((22 * Math.PI) / 180)
      expect(mount.uplift_lb).toBeCloseTo(net * (perPsf[i] ?? 0), 6)
    }
  })
})

describe('layout', () => {
  const arrays = fc.record({
    rows: fc.integer({ min: 1, max: 2 }),
    columns: fc.integer({ min: 2, max: 7 }),
    x: fc.integer({ min: 40, max: 160 }),
    y: fc.integer({ min: 22, max: 32 }),
    spacing: fc.constantFrom(16, 19.2, 24),
    offset: fc.integer({ min: 0, max: 15 }),
    layout: fc.constantFrom('aligned' as const, 'staggered' as const),
    optimise: fc.boolean(),
    obstacle: fc.record({ x: fc.integer({ min: 5, max: 35 }), y: fc.integer({ min: 3, max: 12 }) }),
  })

  it('puts every mount on a rafter, within limits, off obstructions, and every module on two rails', () => {
    fc.assert(
      fc.property(arrays, ({ rows, columns, x, y, spacing, offset, layout, optimise, obstacle }) => {
        const base = projectWith({
          framing: { spacing_in: spacing, first_offset_in: offset },
          structure: { mount_layout: layout },
        })
        const vent = { x_ft: obstacle.x, y_ft: obstacle.y, width_ft: 0.5, length_ft: 0.5, height_ft: 1 }
        const project: Project = {
          ...base,
          roof_planes: { south: { azimuth_deg: 180, tilt_deg: 22, obstructions: { vent } } },
        }
        const modules = block(rows, columns, x / 10, y / 10)
        fc.pre(modules.every((m) => m.xFt + m.widthFt < 45))
        const plane = rectangle('south', 48, 16, 22)
        const { values, findings } = spaceMounts(project, { planes: [plane], modules }, { optimise })
        const kept = !findings.some((f) => f.id === 'structure.no-mount-layout')
        for (const mount of values.mounts) {
          expect(mount.x_in).toBeCloseTo(offset + (mount.rafter - 1) * spacing, 9)
          expect(mount.y_in > 3 && mount.y_in < 16 * 12 - 3 && mount.x_in > 3 && mount.x_in < 48 * 12 - 3).toBe(true)
          const [dx, dy] = [mount.x_in - vent.x_ft * 12, mount.y_in - vent.y_ft * 12]
          expect(dx > -6 && dx < 12 && dy > -6 && dy < 12).toBe(false)
        }
        for (const rail of values.rails) {
          const xs = values.mounts.filter((m) => m.rail === rail.id).map((m) => m.x_in)
          expect(xs.length).toBeGreaterThanOrEqual(2)
          if (kept) {
            expect(rail.overhang_in).toBeLessThanOrEqual(20 + 1e-6)
            for (const [i, right] of xs.slice(1).entries()) expect(right - (xs[i] ?? 0)).toBeLessThanOrEqual(96 + 1e-6)
          }
          expect(rail.pieces_in.reduce((a, b) => a + b, 0)).toBeCloseTo(rail.length_in, 6)
        }
        for (const module of modules) {
          const under = values.rails.filter(
            (r) =>
              r.x_in <= module.xFt * 12 &&
              r.x_in + r.length_in >= (module.xFt + module.widthFt) * 12 &&
              r.y_in > module.yFt * 12 &&
              r.y_in < (module.yFt + module.heightFt) * 12,
          )
          expect(under).toHaveLength(2)
          for (const rail of under) {
            const inset = Math.min(rail.y_in - module.yFt * 12, (module.yFt + module.heightFt) * 12 - rail.y_in)
            expect(inset).toBeGreaterThanOrEqual(10 - 1e-6)
            expect(inset).toBeLessThanOrEqual(20 + 1e-6)
          }
        }
      }),
      { numRuns: 25 },
    )
  })

  it('keeps the wished spacing and reports what it costs', () => {
    for (const spacing of [16, 32, 48, 64]) {
      const { mounts, rails } = run(projectWith(), demoArrangement(), { spacingIn: spacing })
      for (const rail of rails) {
        const xs = mounts.filter((m) => m.rail === rail.id).map((m) => m.x_in)
        for (const [i, x] of xs.slice(1).entries()) expect(x - (xs[i] ?? 0)).toBeLessThanOrEqual(spacing)
      }
    }
  })

  it('fails a check instead of hiding it when the wished spacing is too wide', () => {
    const result = spaceMounts(projectWith({ wind: { basic_speed_mph: 170, exposure: 'D' } }), demoArrangement(), {
      spacingIn: 96,
    })
    const failing = result.values.checks.filter((c) => c.ratio > 1)
    expect(failing.length).toBeGreaterThan(0)
    for (const check of failing) {
      const finding = result.findings.find((f) => f.id === `structure.${check.name.replaceAll(' ', '-')}`)
      expect(finding?.severity).toBe('error')
      expect(finding?.fix).toBeTruthy()
    }
  })

  it('uses no more mounts when optimising', () => {
    const plain = run(projectWith())
    const best = run(projectWith(), demoArrangement(), { optimise: true })
    expect(best.counts.mounts).toBeLessThanOrEqual(plain.counts.mounts)
    for (const mount of best.mounts) expect(mount.ratio).toBeLessThanOrEqual(1)
  })

  it('staggers neighbouring rails away from their ends, or puts a row on the same rafters', () => {
    const rafters = (values: MountValues, rail: string): number[] =>
      values.mounts.filter((m) => m.rail === `south.main.${rail}`).map((m) => m.rafter)
    const staggered = run(projectWith())
    for (const [a, b] of [
      ['row1.lower', 'row1.upper'],
      ['row1.upper', 'row2.lower'],
      ['row2.lower', 'row2.upper'],
    ] as const) {
      const shared = rafters(staggered, a)
        .slice(1, -1)
        .filter((r) => rafters(staggered, b).slice(1, -1).includes(r))
      expect(shared).toEqual([])
    }
    const aligned = run(projectWith({ structure: { mount_layout: 'aligned' } }))
    expect(rafters(aligned, 'row1.lower')).toEqual(rafters(aligned, 'row1.upper'))
  })

  it('splits the rails where a module is left out', () => {
    const modules = block(1, 7, 8, 2.2).filter((m) => m.column !== 4)
    const values = run(projectWith(), { planes: [rectangle('south', 48, 16, 22)], modules })
    expect(values.rails.map((r) => r.id)).toEqual([
      'south.main.row1.lower',
      'south.main.row1.part2.lower',
      'south.main.row1.upper',
      'south.main.row1.part2.upper',
    ])
  })

  it('reports rafters that cannot serve the ends', () => {
    const project = projectWith({ framing: { spacing_in: 48, first_offset_in: 40 } })
    const result = spaceMounts(project, { planes: [rectangle('south', 48, 16, 22)], modules: block(1, 4, 11, 2.2) })
    expect(result.findings.some((f) => f.severity === 'error' && f.id === 'structure.no-mount-layout')).toBe(true)
  })
})

describe('more load is never less demand', () => {
  /** Mounts whose demand falls although the load grows, and zones whose span grows; [] when all is well. */
  function easier(
    less: MountValues,
    more: MountValues,
    what: readonly ('uplift_lb' | 'down_lb' | 'ratio')[],
  ): readonly string[] {
    if (less.mounts.length !== more.mounts.length) return ['another layout']
    return less.mounts.flatMap((a, i) => {
      const b = more.mounts[i]
      return what.filter((key) => b?.id !== a.id || b[key] < a[key] - 1e-9).map((key) => `${a.id} ${key}`)
    })
  }

  function longer(less: MountValues, more: MountValues): readonly string[] {
    return Object.entries(less.max_span_in).flatMap(([zone, span]) =>
      (more.max_span_in[zone] ?? Infinity) > span ? [zone] : [],
    )
  }

  const editions = fc.constantFrom('ASCE 7-10' as const, 'ASCE 7-16' as const, 'ASCE 7-22' as const)
  const snow22 = { thermal_factor: 1.1, ground_basis: 'strength' } as const
  const basisFor = (loads: string) => (loads === 'ASCE 7-22' ? snow22 : {})

  it('with wind', () => {
    fc.assert(
      fc.property(
        editions,
        fc.integer({ min: 90, max: 180 }),
        fc.integer({ min: 1, max: 40 }),
        (loads, speed, step) => {
          const at = (v: number) => projectWith({ loads, wind: { basic_speed_mph: v }, snow: basisFor(loads) })
          expect(
            easier(run(at(speed), demoArrangement(), fixed), run(at(speed + step), demoArrangement(), fixed), [
              'uplift_lb',
              'down_lb',
            ]),
          ).toEqual([])
          expect(longer(run(at(speed)), run(at(speed + step)))).toEqual([])
        },
      ),
      { numRuns: 8 },
    )
  })

  it('with snow', () => {
    fc.assert(
      fc.property(editions, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 10 }), (loads, ground, step) => {
        const at = (psf: number) => projectWith({ loads, snow: { ground_psf: psf, ...basisFor(loads) } })
        expect(
          easier(run(at(ground), demoArrangement(), fixed), run(at(ground + step), demoArrangement(), fixed), [
            'uplift_lb',
            'down_lb',
          ]),
        ).toEqual([])
        expect(longer(run(at(ground)), run(at(ground + step)))).toEqual([])
      }),
      { numRuns: 8 },
    )
  })

  it('with height and exposure', () => {
    // From 30 ft up, half the height exceeds every distance to a roof edge here, so the edge factor does not change.
    const at = (h: number, exposure: 'B' | 'C' | 'D') =>
      projectWith({ wind: { mean_roof_height_ft: h, exposure, ridge_is_roof_edge: true } })
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 55 }),
        fc.integer({ min: 1, max: 5 }),
        fc.constantFrom('B' as const, 'C' as const, 'D' as const),
        (h, step, exposure) => {
          expect(
            easier(
              run(at(h, exposure), demoArrangement(), fixed),
              run(at(h + step, exposure), demoArrangement(), fixed),
              ['uplift_lb', 'down_lb', 'ratio'],
            ),
          ).toEqual([])
        },
      ),
      { numRuns: 8 },
    )
    for (const [mild, rough] of [
      ['B', 'C'],
      ['C', 'D'],
    ] as const) {
      expect(
        easier(run(at(30, mild), demoArrangement(), fixed), run(at(30, rough), demoArrangement(), fixed), [
          'uplift_lb',
          'down_lb',
          'ratio',
        ]),
      ).toEqual([])
      expect(longer(run(at(30, mild)), run(at(30, rough)))).toEqual([])
    }
  })

  it('with softer wood, wet or hot wood', () => {
    const wood = (framing: object) => projectWith({ framing })
    const dry = run(wood({ species: 'Southern Pine' }), demoArrangement(), fixed)
    for (const worse of [
      { species: 'Spruce-Pine-Fir' },
      { species: 'Southern Pine', wet_service: true },
      { species: 'Southern Pine', sustained_temperature: 'up_to_125_f' },
    ]) {
      expect(easier(dry, run(wood(worse), demoArrangement(), fixed), ['ratio'])).toEqual([])
      expect(longer(run(wood({ species: 'Southern Pine' })), run(wood(worse)))).toEqual([])
    }
  })

  it('with wider spacing', () => {
    let before = 0
    for (const spacing of [16, 32, 48, 64, 80]) {
      const { mounts } = run(projectWith({ structure: { mount_layout: 'aligned' } }), demoArrangement(), {
        spacingIn: spacing,
      })
      const worst = Math.max(...mounts.map((m) => m.uplift_lb))
      expect(worst).toBeGreaterThanOrEqual(before)
      before = worst
    }
  })

  it('sums to the load', () => {
    // With heavy snow D + S governs every mount: reactions add up to the load at right angles to the roof.
    const values = run(
      projectWith({ snow: { ground_psf: 65 }, wind: { basic_speed_mph: 90 } }),
      demoArrangement(),
      fixed,
    )
    const cos = Math.cos((22 * Math.PI) / 180)
    const area = (12 * 44.6 * 67.8) / 144
    const { snow_psf: snow, array_dead_psf: dead } = values.loads.planes['south'] ?? { snow_psf: 0, array_dead_psf: 0 }
    // Unbalanced, leeward: the whole ground snow, over the 0.7 Ct pg of the balanced case.
    expect(snow).toBe(65)
    const sum = values.mounts.reduce((total, m) => total + m.down_lb, 0)
    expect(sum).toBeCloseTo(area * (dead * cos + snow * cos * cos), 6)
    const along = values.mounts.reduce((total, m) => total + m.along_lb, 0)
    expect(along).toBeCloseTo(area * (dead + snow * cos) * Math.sin((22 * Math.PI) / 180), 6)
  })

  it('mirrors with the roof', () => {
    // Every rafter is used, so that the layout is unique.
    const options = { spacingIn: 16 }
    const [width, x] = [48, 9]
    const modules = block(2, 5, x, 2.2)
    const mirrored = modules.map((m) => ({ ...m, xFt: width - m.xFt - m.widthFt, column: 6 - m.column }))
    const plane = rectangle('south', width, 16, 22)
    // Joints as strong as the rail: where they lie does not matter, as the cut begins at the left end either way.
    const strong = (offset: number): Project => {
      const project = projectWith({ framing: { first_offset_in: offset } })
      Object.assign(project.equipment.rails?.['rail40']?.splice ?? {}, { moment_lb_in: 20_000 })
      return project
    }
    const a = run(strong(5), { planes: [plane], modules }, options)
    const b = run(strong((width * 12 - 5) % 16), { planes: [plane], modules: mirrored }, options)
    expect(b.mounts).toHaveLength(a.mounts.length)
    for (const mount of a.mounts) {
      const twin = b.mounts.find((m) => m.rail === mount.rail && Math.abs(m.x_in - (width * 12 - mount.x_in)) < 1e-6)
      expect(twin?.uplift_lb).toBeCloseTo(mount.uplift_lb, 5)
      expect(twin?.down_lb).toBeCloseTo(mount.down_lb, 5)
      expect(twin?.zone).toBe(mount.zone)
    }
  })
})

describe('rows that lie different ways', () => {
  it('weigh what the lower rows do, whichever comes first', () => {
    const upright = block(1, 4, 12, 2.2)
    const [w, h] = [67.8 / 12, 44.6 / 12]
    const lying = upright.map((m, i) => ({
      ...m,
      id: `south.main.r2c${i + 1}`,
      row: 2,
      orientation: 'landscape' as const,
      xFt: 12 + i * (w + 0.5 / 12),
      yFt: 2.2 + 67.8 / 12 + 0.5 / 12,
      widthFt: w,
      heightFt: h,
    }))
    const plane = rectangle('south', 48, 16, 22)
    const deadOf = (modules: typeof upright): number =>
      run(projectWith(), { planes: [plane], modules }).loads.planes['south']?.array_dead_psf ?? 0
    expect(deadOf(lying)).toBeGreaterThan(deadOf(upright))
    expect(deadOf([...upright, ...lying])).toBeCloseTo(deadOf(lying), 9)
  })
})

describe('editions and roofs', () => {
  it('runs every edition on gable and hip', () => {
    for (const loads of ['ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'] as const) {
      for (const roofKind of ['gable', 'hip'] as const) {
        const snow =
          loads === 'ASCE 7-22'
            ? ({ thermal_factor: 1.1, ground_basis: 'strength', ground_psf: 30 } as const)
            : { ground_psf: 20 }
        const plane = roofKind === 'hip' ? hipPlane('south', 56, 16, 26, 22) : rectangle('south', 48, 16, 22)
        const values = run(projectWith({ loads, building: { roof_kind: roofKind }, snow }), {
          planes: [plane],
          modules: block(1, 5, 18, 3),
        })
        expect(values.edition).toBe(loads)
        for (const { uplift_psf, down_psf } of Object.values(values.loads.zones)) {
          expect(uplift_psf).toBeGreaterThan(0)
          expect(down_psf).toBeGreaterThan(0)
        }
      }
    }
  })

  it('takes 0.7 of strength-level snow in 7-22 and all of allowable snow', () => {
    const down = (ground_basis: 'strength' | 'allowable') =>
      run(
        projectWith({
          loads: 'ASCE 7-22',
          wind: { basic_speed_mph: 90 },
          snow: { ground_psf: 65, thermal_factor: 1.1, ground_basis },
        }),
        demoArrangement(),
        fixed,
      )
    const snow = down('strength').loads.planes['south']?.snow_psf ?? 0
    const difference =
      (down('allowable').loads.zones['1']?.down_psf ?? 0) - (down('strength').loads.zones['1']?.down_psf ?? 0)
    expect(difference).toBeCloseTo(0.3 * snow * Math.cos((22 * Math.PI) / 180) ** 2, 6)
  })

  it('uses less snow on slippery modules only when told so', () => {
    const snow = (slippery_modules: boolean) =>
      spaceMounts(projectWith({ snow: { ground_psf: 40, slippery_modules } }), demoArrangement()).worksheet.find(
        ({ id }) => id === 'structure.south.snow',
      )?.result.value
    expect(snow(false)).toBeCloseTo(0.7 * 1.1 * 40, 9)
    // Ct 1.1, slippery: 1 - (22 - 10) / 60 = 0.8.
    expect(snow(true)).toBeCloseTo(0.8 * 0.7 * 1.1 * 40, 9)
  })

  it('warns that snow concentrates on few rafters, less where mounts are staggered', () => {
    const heavy = { snow: { ground_psf: 50 }, structure: { mount_layout: 'aligned' as const } }
    const plain = spaceMounts(projectWith(heavy), demoArrangement(), { spacingIn: 48 })
    const finding = plain.findings.find((f) => f.id === 'structure.rafter-bending-strength')
    expect(finding?.severity).toBe('error')
    const load = (layout: 'aligned' | 'staggered') =>
      run(projectWith({ snow: { ground_psf: 50 }, structure: { mount_layout: layout } }), demoArrangement(), {
        spacingIn: 48,
      }).checks.find((c) => c.name === 'rafter bending strength')?.demand ?? 0
    expect(load('staggered')).toBeLessThan(load('aligned'))
  })
})
