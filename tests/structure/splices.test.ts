import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  beamExtremes,
  beamForcesAt,
  hingedBeam,
  holdsThere,
  railGrowthIn,
  railRangeF,
  solveContinuousBeam,
  spaceMounts,
  type BeamModel,
} from '../../src/structure/index.js'
import { block, demoProject, rectangle } from './demo-house.js'

/** Three spans of 48 in under 25 lb per ft: the worked example of the rail with splices. */
const three: BeamModel = {
  startIn: 0,
  endIn: 144,
  supportsIn: [0, 48, 96, 144],
  loads: [{ fromIn: 0, toIn: 144, lbPerIn: 25 / 12 }],
}
const momentFt = (beam: BeamModel, xFt: number): number =>
  beamForcesAt(beam, solveContinuousBeam(beam), 12 * xFt).momentLbIn / 12

describe('worked example: three spans of 48 in, 25 lb/ft', () => {
  it('has the moments of the textbook', () => {
    expect(momentFt(three, 1.6)).toBeCloseTo(32, 6)
    expect(momentFt(three, 4)).toBeCloseTo(-40, 6)
    expect(momentFt(three, 6)).toBeCloseTo(10, 6)
    expect(momentFt(three, 3.2)).toBeCloseTo(0, 6)
    expect(momentFt(three, 4 + 1.106)).toBeCloseTo(0, 1)
    expect(momentFt(three, 3.5)).toBeCloseTo(-13.1, 1)
    expect(momentFt(three, 2.8)).toBeCloseTo(14, 6)
    expect(momentFt(three, 2)).toBeCloseTo(30, 6)
  })

  it('takes a splice of 15 lb-ft where the example says, and not in the middle fifth nor at mid end span', () => {
    const solution = solveContinuousBeam(three)
    const holds = (xFt: number, momentLbFt = 15): boolean => {
      const { momentLbIn, shearLb } = beamForcesAt(three, solution, 12 * xFt)
      const forces = { xIn: 12 * xFt, momentLbIn: Math.abs(momentLbIn), shearLb: Math.abs(shearLb) }
      return holdsThere(forces, { momentLbIn: 12 * momentLbFt, shearLb: undefined }, three.supportsIn, 12 * 40)
    }
    const within = [0.43, 2.8, 3.2, 3.5, 4.6, 5, 5.59, 6.41, 7, 7.4, 8.5, 9.2]
    const outside = [0, 0.45, 1.6, 2, 2.7, 3.6, 4, 4.55, 5.61, 6, 6.39, 7.45, 8, 10]
    expect(within.filter((x) => !holds(x))).toEqual([])
    expect(outside.filter((x) => holds(x))).toEqual([])
    // Shear at 2.8 ft: 0.4 * 25 * 4 - 25 * 2.8 = -30 lb.
    const at = { xIn: 33.6, momentLbIn: 168, shearLb: 30 }
    const takes = (shearLb: number): boolean => holdsThere(at, { momentLbIn: 180, shearLb }, three.supportsIn, 480)
    expect([takes(30.1), takes(29.9)]).toEqual([true, false])
    // Where the sheet keeps it 20 in from the mounts, nothing but the middle is left of 48 in.
    const middle = { xIn: 72, momentLbIn: 120, shearLb: 0 }
    const inMiddle = (leastFromMountIn: number): boolean =>
      holdsThere(middle, { momentLbIn: 180, shearLb: undefined, leastFromMountIn }, three.supportsIn, 480)
    expect([inMiddle(19), inMiddle(20)]).toEqual([false, true])
    // As strong as the rail it may lie anywhere.
    expect([0, 2, 4, 6].filter((x) => !holds(x, 40))).toEqual([])
  })
})

describe('a beam with hinges', () => {
  it('of two pieces has no moment at the hinge, and the overhang carries it as a cantilever', () => {
    // Gerber beam: two spans, the hinge 12 in past the middle support, so that the far piece is a simple beam of 36 in.
    const beam = hingedBeam(
      { startIn: 0, endIn: 96, supportsIn: [0, 48, 96], loads: [{ fromIn: 0, toIn: 96, lbPerIn: 2 }] },
      [60],
    )
    const solution = solveContinuousBeam(beam)
    const hinge = (2 * 36) / 2
    expect(solution.reactionsLb[2]).toBeCloseTo(hinge, 6)
    expect(beamForcesAt(beam, solution, 60).momentLbIn).toBeCloseTo(0, 6)
    expect(beamForcesAt(beam, solution, 48).momentLbIn).toBeCloseTo(-((2 * 12 ** 2) / 2 + hinge * 12), 6)
    // The deflection of the far piece is that of a simple beam and half of what its hinge sinks, more than either alone.
    const far = beamExtremes(beam, solution).deflections[1]?.timesStiffness ?? 0
    expect(far).toBeGreaterThan((5 * 2 * 36 ** 4) / 384)
  })

  const cases = fc.record({
    spans: fc.array(fc.integer({ min: 24, max: 80 }), { minLength: 3, maxLength: 7 }),
    at: fc.array(fc.double({ min: 0.1, max: 0.9, noNaN: true }), { minLength: 2, maxLength: 2 }),
    loads: fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 4, maxLength: 4 }),
    free: fc.integer({ min: 0, max: 20 }),
  })

  it('is in balance, without moment at hinges, and still at every support', () => {
    fc.assert(
      fc.property(cases, ({ spans, at: [a = 0.5, b = 0.5], loads, free }) => {
        const supportsIn = [free]
        for (const span of spans) supportsIn.push((supportsIn.at(-1) ?? 0) + span)
        const endIn = (supportsIn.at(-1) ?? 0) + free
        const lines = loads.map((lbPerIn, i) => ({ fromIn: (endIn * i) / 4, toIn: (endIn * (i + 1)) / 4, lbPerIn }))
        const [s1, s2, y1, y2] = [
          supportsIn[1] ?? 0,
          supportsIn[2] ?? 0,
          supportsIn.at(-3) ?? 0,
          supportsIn.at(-2) ?? 0,
        ]
        const hinges = spans.length < 5 ? [s1 + a * (s2 - s1)] : [s1 + a * (s2 - s1), y1 + b * (y2 - y1)]
        const beam = hingedBeam({ startIn: 0, endIn, supportsIn, loads: lines }, hinges)
        const solution = solveContinuousBeam(beam)
        const total = lines.reduce((sum, l) => sum + l.lbPerIn * (l.toIn - l.fromIn), 0)
        expect(solution.reactionsLb.reduce((sum, r) => sum + r, 0)).toBeCloseTo(total, 5)
        for (const x of hinges) expect(beamForcesAt(beam, solution, x).momentLbIn).toBeCloseTo(0, 4)
        // Twice integrated by small steps, with the kinks in the slope, all supports lie on one line.
        const sags = new Map<number, number>()
        let [slope, sag, x] = [0, 0, 0]
        const points: { x: number; sag: number }[] = []
        const marks = [...new Set([...supportsIn, ...hinges, ...lines.map((l) => l.toIn)])].sort((p, q) => p - q)
        for (const mark of marks) {
          const steps = 200
          const h = (mark - x) / steps
          for (let i = 0; i < steps; i++) {
            const moment = beamForcesAt(beam, solution, x + (i + 0.5) * h).momentLbIn
            sag += slope * h + (moment * h * h) / 2
            slope += moment * h
            points.push({ x: x + (i + 1) * h, sag })
          }
          x = mark
          for (const kink of beam.kinks ?? []) if (Math.abs(kink.xIn - x) < 1e-9) slope += kink.timesStiffness
          if (supportsIn.includes(x)) sags.set(x, sag)
        }
        const [first, ...rest] = [...sags]
        const second = rest.at(-1)
        if (first === undefined || second === undefined) return
        const tilt = (second[1] - first[1]) / (second[0] - first[0])
        const most = Math.max(...points.map((p) => Math.abs(p.sag - first[1] - tilt * (p.x - first[0]))))
        expect(Math.max(...beamExtremes(beam, solution).deflections.map((d) => d.timesStiffness)) / most).toBeCloseTo(
          1,
          1,
        )
        const scale = Math.max(1, ...beamExtremes(beam, solution).deflections.map((d) => d.timesStiffness))
        for (const [at, sagAt] of rest)
          expect(Math.abs(sagAt - first[1] - tilt * (at - first[0])) / scale).toBeLessThan(2e-3)
      }),
      { numRuns: 60 },
    )
  })
})

describe('worked example: growth of a rail', () => {
  it('of 40 ft by 100 F is 0.624 in, 0.312 in at each end; 32 ft keep to slots of 0.25 in', () => {
    expect(railGrowthIn(480, 100)).toBeCloseTo(0.624, 9)
    expect(railGrowthIn(480, 100) / 2).toBeGreaterThan(0.25)
    expect(railGrowthIn(384, 100) / 2).toBeCloseTo(0.25, 3)
  })

  it('over the range from Phoenix to the northern plains is 0.81 to 1.03 in for 40 ft', () => {
    expect(railGrowthIn(480, 130)).toBeCloseTo(0.81, 2)
    expect(railGrowthIn(480, 165)).toBeCloseTo(1.03, 2)
    // 30 K of air are 54 F, and 10 and 50 F beyond.
    expect(railRangeF(0, 30)).toBeCloseTo(114, 9)
  })
})

type Splice = NonNullable<NonNullable<Project['equipment']['rails']>[string]['splice']>

/** A row of twelve modules, 45 ft of rail without a limit, which the stock lengths do not reach. */
function long(splice: Partial<Splice> = {}, mount = {}) {
  const project = demoProject()
  const rules = { min_from_mount_in: 6, allowed_in_end_span: true, max_continuous_ft: 60 }
  Object.assign(project.equipment.rails?.['rail40'] ?? {}, { splice: { ...rules, ...splice } })
  Object.assign(project.equipment.mounts?.['foot'] ?? {}, mount)
  return spaceMounts(project, { planes: [rectangle('south', 60, 16, 22)], modules: block(1, 12, 6, 3) })
}
const ids = (result: ReturnType<typeof long>): string[] => result.findings.map((f) => f.id)

describe('joints of a rail', () => {
  it('are hinges without a stated moment, which is said, and near a place without moment', () => {
    const result = long()
    expect(result.values.splices.length).toBeGreaterThan(3)
    for (const splice of result.values.splices) {
      expect(splice).toMatchObject({ method: 'hinge', moment_capacity_lb_in: null, ratio: null })
      expect(splice.moment_lb_in).toBeLessThan(1e-6)
    }
    expect(result.assumptions.map((a) => a.path)).toContain('equipment.rails.rail40.splice.moment_lb_in')
    expect(ids(result)).toContain('structure.splice-shear-not-checked')
    const stated = long({ hinge: true, shear_lb: 900, moment_lb_in: 5000 })
    expect(stated.assumptions.map((a) => a.path)).not.toContain('equipment.rails.rail40.splice.moment_lb_in')
    expect(stated.values.splices[0]).toMatchObject({ method: 'hinge', shear_capacity_lb: 900 })
    expect(ids(stated)).not.toContain('structure.splice-shear-not-checked')
  })

  it('that are hinges change the loads of the mounts, but not their sum', () => {
    const [hinged, stiff] = [long({ hinge: true }), long({ moment_lb_in: 20_000 })]
    const on = (result: ReturnType<typeof long>) => result.values.mounts.filter((m) => m.rail.endsWith('lower'))
    const loads = on(hinged).map((m, i) => [m.down_lb, on(stiff)[i]?.down_lb ?? 0] as const)
    expect(loads.some(([a, b]) => Math.abs(a - b) > 0.01)).toBe(true)
    const sum = (k: 0 | 1): number => loads.reduce((total, pair) => total + pair[k], 0)
    // Wind is read at areas that do not change; of a mount between two zones another combination may govern.
    expect(sum(0)).toBeCloseTo(sum(1), 1)
  })

  it('with bending strength lie where moment and shear are within it, each with its ratio', () => {
    const { values, findings } = long({ moment_lb_in: 1500, shear_lb: 500 })
    for (const splice of values.splices) {
      expect(splice.method).toBe('moment splice')
      expect(splice.moment_lb_in).toBeLessThanOrEqual(1500)
      expect(splice.ratio).toBeCloseTo(Math.max(splice.moment_lb_in / 1500, splice.shear_lb / 500), 9)
      const mounts = values.mounts.filter((m) => m.rail === splice.rail).map((m) => m.x_in)
      const left = Math.max(...mounts.filter((x) => x <= splice.x_in))
      const right = Math.min(...mounts.filter((x) => x >= splice.x_in))
      expect(Math.abs(splice.x_in - (left + right) / 2)).toBeGreaterThanOrEqual(0.1 * (right - left) - 1e-6)
    }
    expect(findings.filter((f) => f.severity === 'error')).toEqual([])
    expect(values.checks.map((c) => c.name)).toEqual(expect.arrayContaining(['splice moment', 'splice shear']))
  })

  it('that no place suits are an error', () => {
    const weak = long({ moment_lb_in: 1500, shear_lb: 1 })
    const errors = weak.findings.filter((f) => f.severity === 'error').map((f) => f.id)
    expect(errors).toEqual(expect.arrayContaining(['structure.splice-not-held', 'structure.splice-shear']))
    expect(weak.values.splices.some((splice) => (splice.ratio ?? 0) > 1)).toBe(true)
  })

  it('more strength never makes a worse joint', () => {
    const worst = [500, 1000, 2000, 4000, 8000].map((moment_lb_in) =>
      Math.max(...long({ moment_lb_in, shear_lb: 900 }).values.splices.map((splice) => splice.ratio ?? 0)),
    )
    for (const [i, ratio] of worst.slice(1).entries())
      if ((worst[i] ?? 0) > 1) expect(ratio).toBeLessThanOrEqual(worst[i] ?? 0)
    expect(worst.at(-1)).toBeLessThan(1)
  })
})

describe('expansion breaks', () => {
  const row = (gapIn: number) =>
    block(1, 12, 4, 3).map((m) => ({ ...m, xFt: m.column > 6 ? m.xFt + gapIn / 12 : m.xFt }))
  const solve = (gapIn: number, change: (project: Project) => void = () => undefined) => {
    const project = demoProject()
    change(project)
    return spaceMounts(project, { planes: [rectangle('south', 60, 16, 22)], modules: row(gapIn) })
  }

  it('lie in the gap that has room for two end clamps, and no module lies across', () => {
    // 1.5 in of rail for each end clamp and 1 in between, of which half an inch is the gap of the block.
    const broken = solve(3.5)
    expect(broken.values.rails.map((rail) => rail.id)).toContain('south.main.row1.part2.lower')
    expect(ids(broken)).not.toContain('structure.rail-expansion')
    for (const rail of broken.values.rails) expect(rail.length_in).toBeLessThanOrEqual(480)
    const whole = solve(3.4)
    expect(whole.values.rails).toHaveLength(2)
    expect(whole.findings.find((f) => f.id === 'structure.rail-expansion')?.severity).toBe('warning')
    const stated = solve(3.4, (p) =>
      Object.assign(p.equipment.rails?.['rail40']?.splice ?? {}, { max_continuous_ft: 36 }),
    )
    expect(stated.findings.find((f) => f.id === 'structure.rail-expansion')?.severity).toBe('error')
  })

  it('are not made in a rail that is short enough', () => {
    const longer = solve(3.5, (p) =>
      Object.assign(p.equipment.rails?.['rail40']?.splice ?? {}, { max_continuous_ft: 60 }),
    )
    expect(longer.values.rails).toHaveLength(2)
  })
})

describe('movement of the rail ends', () => {
  it('is held against what the mounts allow, where they say so', () => {
    const site = (low: number, high: number) => ({ extreme_low_c: low, high_0p4pct_c: high })
    const at = (travel_in: number) => {
      const project = demoProject()
      Object.assign(project.equipment.mounts?.['foot'] ?? {}, { travel_in })
      Object.assign(project.site, { design_temperatures: site(-10, 30) })
      return spaceMounts(project, { planes: [rectangle('south', 60, 16, 22)], modules: block(1, 8, 6, 3) })
    }
    const check = at(0.2).values.checks.find((c) => c.name === 'rail movement')
    // 8 modules of 44.6 in with gaps and ends of 1.5 in are 363.3 in; 40 K are 72 F and 60 F beyond the air.
    expect(check?.demand).toBeCloseTo((13e-6 * 363.3 * 132) / 2, 6)
    expect(ids(at(0.2))).toContain('structure.rail-movement')
    expect(ids(at(0.4))).not.toContain('structure.rail-movement')
  })
})
