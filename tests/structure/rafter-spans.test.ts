import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  checkRafters,
  cutRafters,
  raftersAt,
  spaceMounts,
  worstCheck,
  type PlaneGeometry,
} from '../../src/structure/index.js'
import { block, demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'
import { framingOf, inputOf, point } from './rafter-kit.js'

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
  Math.max(...result.values.checks.filter((c) => c.name === 'rafter bending strength').map((c) => c.ratio))

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
    const purlin = solve({ span_ft: 2, further_spans_ft: [10], supports: [{ kind: 'bearing_wall' }] })
    expect(purlin.findings.some((f) => f.id === 'structure.rafter-span-not-stated')).toBe(false)
    expect(ratio(whole)).toBeGreaterThan(1)
    const bending = purlin.values.checks.find((c) => c.name === 'rafter bending strength')
    expect(bending?.where).toMatch(/in span 2,/)
    expect(bending?.ratio ?? 0).toBeGreaterThan(1)
  })

  it('a purlin in the middle helps, and bending over it is checked too', () => {
    const halves = solve({ span_ft: 6, further_spans_ft: [6.5], supports: [{ kind: 'bearing_wall' }] })
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
      { lowIn: 0, highIn: 192, supportsIn: [12, 84, 168], lowKind: 'eave', highKind: 'ridge' },
    ])
  })

  it('end at the hip for a shorter rafter, which rests on it', () => {
    // 13 ft deep, hips run 13 ft inwards: 4 ft from the corner the rafter is 4 ft long.
    const [jack] = raftersAt(hipPlane('a', 40, 13, 14, 0), framing, 48)
    expect(jack?.highIn).toBeCloseTo(48, 4)
    expect(jack?.supportsIn[0]).toBe(12)
    expect(jack?.supportsIn.at(-1)).toBeCloseTo(48, 4)
    expect(jack?.highKind).toBe('hip')
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
    const framing = framingOf({ spansFt: [10, 10] })
    const at = [18, 102, 138, 222]
    const input = inputOf(framing, {
      points: at.map((yIn) => point(yIn, { deadLb: 300 })),
      coveredIn: () => [{ fromIn: 0, toIn: 240 }],
    })
    const { codePath, rafters } = checkRafters(input)
    expect(codePath?.place).toEqual({ kind: 'support', number: 1 })
    // 0.191 P L from the mounts and w L^2 / 8 from 10 psf on 16 in, against 30 psf before.
    const plf = (psf: number): number => (psf * 16) / 12
    expect(codePath?.momentLbFt).toBeCloseTo(0.19125 * 300 * 10 + (plf(10) * 100) / 8, 0)
    expect(codePath?.momentBeforeLbFt).toBeCloseTo((plf(30) * 100) / 8, 6)
    const dead = rafters[0]?.lines.find(({ name }) => name === 'D')
    expect(Math.abs(dead?.momentLbIn ?? 0) / 12).toBeCloseTo(codePath?.momentLbFt ?? 0, 6)
  })

  it('is left out where each piece ends at the purlin, and alone counts where rafters are of one piece', () => {
    const bent = (continuous: boolean | undefined) => {
      const framing = framingOf({ spansFt: [8, 8], continuous, existingDeadPsf: 30 })
      return worstCheck(checkRafters(inputOf(framing, { livePsf: 0 })).rafters, 'bending')?.check
    }
    const whole = (30 * 16 * 64) / 12 / 8
    expect(bent(false)?.action ?? 0).toBeCloseTo(12 * whole, 6)
    expect(bent(true)?.action ?? 0).toBeCloseTo(-12 * whole, 6)
    // Not known: the worse, which for two equal spans is the same.
    expect(Math.abs(bent(undefined)?.action ?? 0)).toBeCloseTo(12 * whole, 6)
  })
})

describe('a support between spans', () => {
  const purlin = {
    kind: 'purlin',
    nominal_size: '2x6',
    brace_size: '2x4',
    brace_spacing_ft: 4,
    brace_length_ft: 6,
    brace_angle_deg: 60,
    onto: 'bearing_wall',
  } as const
  const spans = { span_ft: 6, further_spans_ft: [6.5] }
  const told = (supports: readonly object[] | undefined) =>
    solve({ ...spans, ...(supports === undefined ? {} : { supports }) }).findings.filter(
      ({ id }) => id === 'structure.rafter-support-not-counted',
    )

  it('counts with its size, braces and bearing wall', () => {
    expect(told([purlin])).toEqual([])
    expect(told([{ kind: 'bearing_wall' }])).toEqual([])
    expect(
      told([
        { kind: 'knee_wall', nominal_size: '2x4', brace_spacing_ft: 1.33, brace_length_ft: 4, onto: 'bearing_wall' },
      ]),
    ).toEqual([])
  })

  it.each([
    [undefined, /is not stated under supports/],
    [[{ kind: 'purlin' }], /its size is not stated; .*braces.*; what it stands on is not known/],
    [[{ ...purlin, nominal_size: '2x4' }], /a 2x4 is not as deep as the rafter/],
    [[{ ...purlin, brace_spacing_ft: 4.5 }], /distance of its braces is 4\.5 ft, over 4 ft/],
    [[{ ...purlin, brace_length_ft: 8.5 }], /length of its braces is 8\.5 ft, over 8 ft/],
    [[{ ...purlin, brace_angle_deg: 44 }], /44 degrees, less than 45/],
    [[{ ...purlin, onto: 'ceiling_joists' }], /stands on ceiling joists, not on a bearing wall/],
    [[{ kind: 'knee_wall', onto: 'bearing_wall' }], /size of its studs is not stated/],
  ] as const)('%# does not count, and the spans beside it are one', (supports, says) => {
    const [finding] = told(supports)
    expect(finding?.severity).toBe('warning')
    expect(finding?.message).toMatch(says)
    const result = solve({ ...spans, ...(supports === undefined ? {} : { supports }) })
    const one = solve({ span_ft: 12.5 })
    expect(ratio(result)).toBeCloseTo(ratio(one), 9)
  })
})

describe('a hip that jack rafters rest on', () => {
  it('is told as not checked, as a warning, where they carry mounts', () => {
    const told = (plane: PlaneGeometry, xFt: number) => {
      const modules = block(1, 6, xFt, 2.2)
      return spaceMounts(house({ span_ft: 12 }), { planes: [plane], modules }).findings.filter(
        ({ id }) => id === 'structure.hip-not-checked',
      )
    }
    const [finding] = told(hipPlane('south', 48, 14, 22, 22), 9)
    expect(finding?.severity).toBe('warning')
    expect(finding?.message).toMatch(/rafters? with mounts rests? on a hip/)
    expect(told(rectangle('south', 48, 16, 22), 12)).toEqual([])
  })
})

describe('cut rafters', () => {
  it('take no mount: those that are named, and those under a chimney, skylight or dormer', () => {
    const framing = { spacingIn: 16, firstOffsetIn: 8, breadthIn: 1.5, cutRafters: [2] }
    // Rafters at 8, 24, 40, 56, 72 in; an opening from 30 to 60 in.
    const opening = { x_ft: 2.5, y_ft: 4, width_ft: 2.5, length_ft: 3, height_ft: 1 }
    expect([...cutRafters(framing, [{ kind: 'skylight', ...opening }])].toSorted((a, b) => a - b)).toEqual([2, 3, 4])
    expect([...cutRafters(framing, [{ kind: 'vent', ...opening }])]).toEqual([2])
    // Half its breadth reaches under the edge at 24.5 in.
    expect(
      [...cutRafters(framing, [{ kind: 'chimney', ...opening, x_ft: 24.5 / 12, width_ft: 1 }])].toSorted(
        (a, b) => a - b,
      ),
    ).toEqual([2])
    const free = solve({}).values.mounts.map((mount) => mount.rafter)
    const taken = free[Math.floor(free.length / 2)] ?? 0
    expect(solve({ cut_rafters: [taken] }).values.mounts.map((mount) => mount.rafter)).not.toContain(taken)
  })
})
