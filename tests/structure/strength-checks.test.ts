import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  allowableShearKsi,
  checkRafters,
  lagCapacity,
  mountChecks,
  spaceMounts,
  type MountStrength,
  type MountValues,
  type RafterInput,
} from '../../src/structure/index.js'
import { even, framingOf, inputOf, point } from './rafter-kit.js'
import { finiteElementBeam } from './beam-independent.js'
import { block, demoProject, rectangle } from './demo-house.js'

/** One row of four modules in the field of a tall house: zone 1 only, no exposed edge, mounts at 198, 246, 294 and 342 in. */
function fieldRow(change: (project: Project) => void = () => undefined): MountValues {
  const project = structuredClone(demoProject())
  const { wind, framing } = project.structure ?? {}
  if (wind !== undefined) Object.assign(wind, { mean_roof_height_ft: 60, ridge_is_roof_edge: true })
  Object.assign(framing?.['south'] ?? {}, { first_offset_in: 6 })
  Object.assign(project.structure ?? {}, { mount_layout: 'aligned' })
  change(project)
  return spaceMounts(project, { planes: [rectangle('south', 48, 24, 22)], modules }, { spacingIn: 48 }).values
}
const modules = block(1, 4, 15, 8)
const check = (values: MountValues, name: string) => values.checks.find((c) => c.name === name)

const cos = Math.cos((22 * Math.PI) / 180)
const sin = Math.sin((22 * Math.PI) / 180)
const moduleFt2 = (44.6 * 67.8) / 144
const leastDead = 47.4 / moduleFt2
const qh = 0.00256 * 2.01 * (60 / 900) ** (2 / 9.5) * 0.85 * 115 ** 2
/** Net uplift in zone 1 at an area up to 20 ft2, ASD, psf: figure 30.3-2C, -1.5; 29.4-8. */
const upliftPsf = (area: number): number =>
  0.6 * qh * 1.5 * Math.min(0.8, 1.2 - 0.4 * Math.log10(area)) - 0.6 * leastDead * cos

describe('rail', () => {
  it('has moment, shear and deflection of the continuous beam under dead load and snow', () => {
    const values = fieldRow((project) => {
      if (project.structure?.snow !== undefined) project.structure.snow.ground_psf = 65
      if (project.structure?.wind !== undefined) project.structure.wind.basic_speed_mph = 85
    })
    const { snow_psf: snow, array_dead_psf: dead } = values.loads.planes['south'] ?? { snow_psf: 0, array_dead_psf: 0 }
    const lbPerIn = ((dead * cos + snow * cos * cos) * (67.8 / 24)) / 12
    const loads = modules.map((m) => ({ fromIn: m.xFt * 12, toIn: (m.xFt + m.widthFt) * 12, lbPerIn }))
    const supportsIn = [198, 246, 294, 342]
    const beam = { startIn: 178.5, endIn: 361.4, supportsIn, loads }
    const { reactionsLb } = finiteElementBeam(beam)
    let [moment, shear] = [0, 0]
    for (let x = 178.6; x < 361.4; x += 0.1) {
      let [m, v] = [0, 0]
      for (const l of loads) {
        const to = Math.min(l.toIn, x)
        if (to > l.fromIn)
          [m, v] = [m - lbPerIn * (to - l.fromIn) * (x - (to + l.fromIn) / 2), v - lbPerIn * (to - l.fromIn)]
      }
      for (const [i, s] of supportsIn.entries())
        if (s < x) [m, v] = [m + (reactionsLb[i] ?? 0) * (x - s), v + (reactionsLb[i] ?? 0)]
      ;[moment, shear] = [Math.max(moment, Math.abs(m)), Math.max(shear, Math.abs(v))]
    }
    // Samples lie up to a tenth of an inch off the peak.
    expect(Math.abs((check(values, 'rail moment')?.demand ?? 0) / moment - 1)).toBeLessThan(0.012)
    expect(Math.abs((check(values, 'rail shear')?.demand ?? 0) / shear - 1)).toBeLessThan(0.006)
    // Both ways: along the slope the same beam carries (D + S cos) sin.
    const share = ((dead + snow * cos) * sin) / (dead * cos + snow * cos * cos)
    const both = check(values, 'rail moment both ways')?.demand ?? 0
    const byHand = moment / (0.36 * 1000 * (38 / 1.95)) + (moment * share) / (0.2 * 1000 * (38 / 1.95))
    expect(Math.abs(both / byHand - 1)).toBeLessThan(0.012)
    // Deflection over a fine net of nodes (loads of nothing make them), judged by the span or twice the free end.
    const bounds = [178.5, ...supportsIn, 361.4]
    const ratios = bounds.slice(1).flatMap((to, i) => {
      const from = bounds[i] ?? 0
      const xs = Array.from({ length: 9 }, (_, k) => from + ((to - from) * k) / 8)
      const nodes = xs.map((x) => ({ fromIn: x, toIn: 361.4, lbPerIn: 0 }))
      const solved = finiteElementBeam({ ...beam, loads: [...loads, ...nodes] })
      const length = (i === 0 || i === bounds.length - 2 ? 2 : 1) * (to - from)
      return xs.map((x) => Math.abs(solved.deflectionAt(x)) / (10.1e6 * 0.45) / (length / 180))
    })
    expect(Math.abs((check(values, 'rail deflection')?.ratio ?? 0) / Math.max(...ratios) - 1)).toBeLessThan(0.01)
  })

  it('takes 0.6 of yield over 1.65 in shear', () => {
    expect(allowableShearKsi('6005A-T61')).toBeCloseTo((0.6 * 35) / 1.65, 9)
  })
})

describe('largest spacing', () => {
  it('ends where 1.25 times the tributary load reaches the mount', () => {
    const area = (48 / 12) * (67.8 / 24)
    const limit = 1.25 * area * upliftPsf(area)
    const span = (capacity: number): number | undefined =>
      fieldRow((project) => {
        const mount = project.equipment.mounts?.['foot']
        if (mount !== undefined) mount.capacity_uplift_lb = capacity
      }).max_span_in['1']
    expect(span(limit + 1)).toBe(48)
    expect(span(limit - 1)).toBe(32)
  })

  it('ends where the rail deflects too much, and says so', () => {
    const values = fieldRow((project) => {
      const rail = project.equipment.rails?.['rail40']
      if (rail !== undefined) rail.moment_of_inertia_x_in4 = 0.1
    })
    expect(values.max_span_governs['1']).toBe('rail deflection')
    const [net, width] = [(s: number) => upliftPsf((s / 12) * (67.8 / 24)), 67.8 / 24 / 12]
    const ratio = (s: number): number => ((5 / 384) * net(s) * width * s ** 4) / (10.1e6 * 0.1) / (s / 180)
    const span = values.max_span_in['1'] ?? 0
    expect(ratio(span)).toBeLessThanOrEqual(1)
    expect(ratio(span + 16)).toBeGreaterThan(1)
  })

  it('is at most what the rail sheet allows', () => {
    const values = fieldRow((project) => {
      const rail = project.equipment.rails?.['rail40']
      if (rail !== undefined) Object.assign(rail, { max_span_in: 40, moment_of_inertia_x_in4: 5 })
    })
    expect(values.max_span_in['1']).toBe(32)
    expect(values.max_span_governs['1']).toBe('rail sheet')
  })
})

describe('modules and clamps', () => {
  it('carry a whole module, half of one at a middle clamp, a quarter at an end clamp', () => {
    const values = fieldRow()
    // Above 20 ft2 zone 1 falls towards -0.8 at 300 ft2; the module has 21 ft2.
    const gcp = 1.5 - 0.7 * (Math.log10(moduleFt2 / 20) / Math.log10(15))
    const whole = 0.6 * qh * gcp * (1.2 - 0.4 * Math.log10(moduleFt2)) - 0.6 * leastDead * cos
    expect(check(values, 'module uplift')?.demand).toBeCloseTo(whole, 6)
    expect(check(values, 'middle clamp uplift')?.demand).toBeCloseTo((upliftPsf(moduleFt2 / 2) * moduleFt2) / 2, 6)
    expect(check(values, 'end clamp uplift')?.demand).toBeCloseTo((upliftPsf(moduleFt2 / 4) * moduleFt2) / 4, 6)
  })
})

describe('mount', () => {
  const mount: MountStrength = {
    upliftLb: 900,
    downLb: 1400,
    lateralLb: 400,
    lagCount: 1,
    lag: { size: '5/16', lengthIn: 5, threadLengthIn: undefined, aboveRafterIn: 1, rafterDepthIn: 5.5 },
    specificGravity: 0.5,
    plate: 'steel_10_ga',
    wetFactor: 1,
    temperatureFactor: 1,
  }
  const named = (normal: number, along: number) =>
    Object.fromEntries(mountChecks(mount, normal, along, 1.6, 0).map((c) => [c.name, c]))

  it('is pulled: sheet, withdrawal, root, and both directions together', () => {
    const checks = named(300, 100)
    expect(checks['mount uplift']).toMatchObject({ demandLb: 300, capacityLb: 900 })
    // 266 lb/in x 2.8125 in x 1.6, and the root of 0.227 in at 30 ksi.
    expect(checks['lag withdrawal']?.capacityLb).toBeCloseTo(265.995 * 2.8125 * 1.6, 0)
    expect(checks['lag root tension']?.capacityLb).toBeCloseTo(30000 * (Math.PI / 4) * 0.227 ** 2, 6)
    const { withdrawalLb: W, lateralLb: Z } = lagCapacity(mount, 1.6)
    const R = Math.hypot(300, 100)
    expect(checks['lag combined']?.demandLb).toBeCloseTo(R, 9)
    expect(checks['lag combined']?.capacityLb).toBeCloseTo((W * Z) / (W * (100 / R) ** 2 + Z * (300 / R) ** 2), 6)
    expect(checks['mount lateral']).toMatchObject({ demandLb: 100, capacityLb: 400 })
    expect(checks['mount down']).toBeUndefined()
  })

  it('is pressed: sheet and lateral', () => {
    const checks = named(-700, 150)
    expect(checks['mount down']).toMatchObject({ demandLb: 700, capacityLb: 1400, ratio: 0.5 })
    expect(checks['lag lateral']?.demandLb).toBe(150)
    expect(checks['lag withdrawal']).toBeUndefined()
  })

  it('keeps all of its lateral value from 8 diameters on, less before', () => {
    const full = lagCapacity(mount, 1).lateralLb
    const short = lagCapacity({ ...mount, lag: { ...mount.lag, lengthIn: 3.0625 } }, 1).lateralLb
    expect(short / full).toBeCloseTo((3.0625 - 1 - 3 / 16) / 2.5, 9)
    expect(lagCapacity({ ...mount, plate: undefined }, 1).lateralLb).toBe(400)
    expect(lagCapacity({ ...mount, lagCount: 2 }, 1).lateralLb).toBeCloseTo(2 * full, 9)
  })
})

describe('the rule for existing buildings', () => {
  const framing = framingOf({
    species: undefined,
    grade: undefined,
    spacingIn: 24,
    firstOffsetIn: 12,
    spansFt: [12],
    eaveOverhangIn: 12,
  })
  const c = Math.cos(Math.PI / 6)
  // Middle of the span, in plan 12 in + 72 in from the eave.
  const middle = point(84 / c, { deadLb: 200 })
  const input = inputOf(framing, {
    tiltDeg: 30,
    points: [middle],
    coveredIn: () => [{ fromIn: 0, toIn: 1000 }],
  })
  const path = (change: Partial<RafterInput> = {}) => {
    const found = checkRafters({ ...input, ...change }).codePath
    if (found === undefined) throw new Error('no rafter was checked')
    return found
  }

  it('adds a mount in the middle to the dead load, live load only beside the modules', () => {
    const all = path()
    const dead = ((10 / c) * 2 * 144) / 8
    expect(all.momentLbFt).toBeCloseTo(dead + (200 * 12) / 4, 1)
    expect(all.momentBeforeLbFt).toBeCloseTo(((10 / c + 20) * 2 * 144) / 8, 6)
    expect(all.changePct).toBeCloseTo(100 * (all.momentLbFt / all.momentBeforeLbFt - 1), 9)
    expect(all.deadChangePct).toBeCloseTo((100 * 600) / dead, 1)
    expect(all.passes).toBe(all.changePct <= 5)
    expect(all.rafter).toBe(3)
    const bare = path({ coveredIn: () => [] })
    expect(bare.momentLbFt - all.momentLbFt).toBeCloseTo((20 * 2 * 144) / 8, 1)
  })

  it('takes snow instead of live load where it is more', () => {
    expect(path({ snow: [even('balanced', 35)] }).momentBeforeLbFt).toBeCloseTo(((10 / c + 35) * 2 * 144) / 8, 6)
  })

  it('lets 5 percent pass and no more', () => {
    const before = ((10 / c + 20) * 2 * 144) / 8
    const dead = ((10 / c) * 2 * 144) / 8
    // P L / 4 that brings the sum to 1.05 times of what was.
    const lb = ((1.05 * before - dead) * 4) / 12
    expect(path({ points: [point(84 / c, { deadLb: lb - 1 })] }).passes).toBe(true)
    expect(path({ points: [point(84 / c, { deadLb: lb + 1 })] }).passes).toBe(false)
  })
})
