import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  checkRafters,
  rafterMoment,
  raftersAt,
  spaceMounts,
  type PlaneGeometry,
  type RafterInput,
} from '../../src/structure/index.js'
import { demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'

/** The demo house with snow that presses hard, and parts of its framing replaced. */
function house(framing: object, groundPsf = 30): Project {
  const project = demoProject()
  const s = project.structure ?? {}
  return {
    ...project,
    structure: {
      ...s,
      mount_layout: 'aligned',
      snow: { ...s.snow, ground_psf: groundPsf },
      framing: { south: { ...s.framing?.['south'], ...framing } },
    },
  }
}

const solve = (framing: object, groundPsf?: number) =>
  spaceMounts(house(framing, groundPsf), demoArrangement(), { spacingIn: 48 })
const ratio = (result: ReturnType<typeof solve>): number =>
  Math.max(...result.values.checks.filter((c) => c.name.startsWith('rafter bending')).map((c) => c.ratio))

/** Rafters of 2x6 Hem-Fir at 16 in. */
function framingOf(): RafterInput['framing'] {
  return {
    nominalSize: '2x6',
    species: 'Hem-Fir',
    grade: 'No. 2',
    specificGravity: 0.43,
    breadthIn: 1.5,
    depthIn: 5.5,
    spacingIn: 16,
    firstOffsetIn: 8,
    spansFt: [11],
    eaveOverhangIn: 0,
    rakeOverhangIn: 0,
    layersIn: 0.75,
    covering: undefined,
    existingDeadPsf: 10,
    wet: false,
    temperatureFactor: 1,
  }
}

describe('spans above the first', () => {
  it('mounts above the stated span are an error that asks for the spans above, not a pass', () => {
    const result = solve({ span_ft: 5 })
    const finding = result.findings.find((f) => f.id === 'structure.rafter-span-not-stated')
    expect(finding).toMatchObject({ severity: 'error', where: 'structure.framing.south.further_spans_ft' })
    // The overhang is 1 ft.
    expect(finding?.message).toMatch(/end 6\.0 ft/)
    expect(finding?.fix).toMatch(/further_spans_ft/)
  })

  it('a purlin below the array does not make the check of the rafter above it go away', () => {
    const whole = solve({ span_ft: 12 })
    const purlin = solve({ span_ft: 2, further_spans_ft: [10] })
    expect(purlin.findings.some((f) => f.id === 'structure.rafter-span-not-stated')).toBe(false)
    expect(ratio(whole)).toBeGreaterThan(1)
    const increase = purlin.values.checks.find((c) => c.name === 'rafter bending increase')
    expect(increase?.where).toMatch(/in span 2$/)
    expect(increase?.ratio ?? 0).toBeGreaterThan(1)
  })

  it('a purlin in the middle helps, and bending over it is checked too', () => {
    const halves = solve({ span_ft: 6, further_spans_ft: [6.5] })
    expect(halves.findings.filter((f) => f.id.startsWith('structure.rafter-span'))).toEqual([])
    expect(ratio(halves)).toBeLessThan(ratio(solve({ span_ft: 12.5 })))
  })

  it('a span longer than the plane is deep on the horizontal is an error with both figures', () => {
    const finding = solve({ span_ft: 40 }).findings.find((f) => f.id === 'structure.rafter-span-too-long')
    // 16 ft up a slope of 22 degrees.
    expect(finding).toMatchObject({ severity: 'error', where: 'structure.framing.south.span_ft' })
    expect(finding?.message).toMatch(/40 ft.*14\.8 ft/)
    const both = solve({ span_ft: 9, further_spans_ft: [9] }).findings
    expect(both.find((f) => f.id === 'structure.rafter-span-too-long')?.message).toMatch(/18 ft.*14\.8 ft/)
  })
})

describe('supports of a rafter', () => {
  const framing = { spansFt: [6, 7], eaveOverhangIn: 12 }

  it('are the wall, then the stated spans', () => {
    expect(raftersAt(rectangle('a', 40, 16, 0), framing, 100)).toEqual([
      { lowIn: 0, highIn: 192, supportsIn: [12, 84, 168] },
    ])
  })

  it('end at the hip for a shorter rafter, which rests on it', () => {
    // 13 ft deep, hips run 13 ft inwards: 4 ft from the corner the rafter is 4 ft long.
    const [jack] = raftersAt(hipPlane('a', 40, 13, 14, 0), framing, 48)
    expect(jack?.highIn).toBeCloseTo(48, 4)
    expect(jack?.supportsIn[0]).toBe(12)
    expect(jack?.supportsIn.at(-1)).toBeCloseTo(48, 4)
  })

  it('begin at the wall of a notch with an eave of its own', () => {
    const p = (xFt: number, yFt: number) => ({ xFt, yFt })
    const corners = [p(0, 0), p(20, 0), p(20, 4), p(40, 4), p(40, 14), p(0, 14)]
    const kinds = ['eave', 'rake', 'eave', 'rake', 'ridge', 'rake'] as const
    const plane: PlaneGeometry = {
      id: 'a',
      tiltDeg: 0,
      edges: corners.map((from, i) => ({ kind: kinds[i] ?? 'rake', from, to: corners[(i + 1) % 6] ?? from })),
    }
    expect(raftersAt(plane, framing, 360)[0]?.supportsIn).toEqual([60, 84, 168])
    // On the edge of the plane too.
    expect(raftersAt(plane, framing, 480)).toHaveLength(1)
    expect(raftersAt(plane, framing, 0)).toHaveLength(1)
  })
})

describe('bending over a purlin', () => {
  it('governs where the mounts stand near the supports of two equal spans', () => {
    const framing = {
      ...framingOf(),
      spansFt: [10, 10],
      eaveOverhangIn: 0,
    }
    const at = [18, 102, 138, 222]
    const { increase } = checkRafters(
      {
        framing,
        plane: rectangle('south', 40, 20, 0),
        snowPsf: 0,
        points: at.map((yIn) => ({ rafter: 3, yIn, deadLb: 300, snowLb: 0 })),
        coveredIn: () => [{ fromIn: 0, toIn: 240 }],
      },
      3,
    )
    expect(increase?.place).toEqual({ kind: 'support', number: 1 })
    // 0.191 P L from the mounts and w L^2 / 8 from 10 psf on 16 in, against 30 psf before.
    const plf = (psf: number): number => (psf * 16) / 12
    expect(increase?.momentLbFt).toBeCloseTo(0.19125 * 300 * 10 + (plf(10) * 100) / 8, 0)
    expect(increase?.momentBeforeLbFt).toBeCloseTo((plf(30) * 100) / 8, 6)
  })

  // Two spans under a uniform load: M = (w1 L1^3 + w2 L2^3) / (8 (L1 + L2)), statics.
  it.each([
    [7, 6, 46, 247.25],
    [9, 5, 60, 457.5],
    [8, 8, 50, 400],
  ])('%d + %d ft under %d plf: %d lb-ft', (a, b, plf, lbFt) => {
    const load = { deadLbPerIn: plf / 12, variableLbPerIn: 0, covered: [], mounts: [] }
    const over = rafterMoment(load, [0, a * 12, (a + b) * 12], { kind: 'support', number: 1 })
    expect(over / 12).toBeCloseTo(lbFt, 1)
  })
})
