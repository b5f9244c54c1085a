import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { cutRail, spaceMounts } from '../../src/structure/index.js'
import { block, demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'

type Obstructions = NonNullable<Project['roof_planes'][string]['obstructions']>

const house = (obstructions: Obstructions, change: (project: Project) => void = () => undefined): Project => {
  const project = structuredClone(demoProject())
  project.roof_planes = { south: { azimuth_deg: 180, tilt_deg: 22, obstructions } }
  change(project)
  return project
}

const plane = rectangle('south', 48, 16, 22)
/** Two modules with a gap between them, the left edge of the gap at 12 ft + 44.6 in. */
const pair = (gapIn: number, xFt = 12) => [
  ...block(1, 1, xFt, 3),
  ...block(1, 1, xFt + (44.6 + gapIn) / 12, 3).map((m) => ({ ...m, id: 'south.main.r1c2', column: 2 })),
]
/** A pipe of 3 in in the middle of a gap, up the slope from y to y + length. */
const vent = (gapIn: number, yFt: number, lengthFt: number): Obstructions => ({
  vent: { x_ft: 12 + (44.6 + gapIn / 2 - 1.5) / 12, y_ft: yFt, width_ft: 0.25, length_ft: lengthFt, height_ft: 1 },
})
const solve = (project: Project, modules = pair(10)) => spaceMounts(project, { planes: [plane], modules })
const ids = ({ values }: ReturnType<typeof solve>): string[] => values.rails.map((rail) => rail.id)
const found = ({ findings }: ReturnType<typeof solve>, id: string) => findings.filter((f) => f.id === `structure.${id}`)

describe('rails and obstructions', () => {
  it('a vent in a gap between two modules ends both rails before it and starts them anew behind it', () => {
    expect(ids(solve(house({})))).toEqual(['south.main.row1.lower', 'south.main.row1.upper'])
    const around = solve(house(vent(10, 3, 5)))
    expect(around.values.rails).toHaveLength(4)
    expect(found(around, 'rail-on-obstruction')).toEqual([])
    const gapFrom = 12 * 12 + 44.6
    for (const rail of around.values.rails) {
      const [from, to] = [rail.x_in, rail.x_in + rail.length_in]
      expect(to <= gapFrom + 3.5 + 1e-6 || from >= gapFrom + 6.5 - 1e-6).toBe(true)
    }
  })

  it('a vent that no rail meets leaves the rails whole', () => {
    // The lower rail lies at 50 in up the slope, the upper at 90 in.
    expect(solve(house(vent(10, 5.2, 1))).values.rails).toHaveLength(2)
  })

  it('a gap too narrow for vent and end clamps is an error with what is missing', () => {
    const [finding] = found(solve(house(vent(4, 3, 5)), pair(4)), 'rail-on-obstruction')
    // 0.5 in between frame and vent, 1.5 in of rail.
    expect(finding).toMatchObject({ severity: 'error', where: 'arrays.south.arrangement' })
    expect(finding?.message).toMatch(/lies over 1\.0 in of obstruction 'vent' of plane 'south'$/)
    const wide = { vent: { ...vent(10, 3, 5)['vent'], clearance_in: 6 } } as Obstructions
    expect(found(solve(house(wide)), 'rail-on-obstruction')[0]?.message).toMatch(/with the 6 in to keep free/)
  })
})

describe('rails and the edge of the roof', () => {
  const bare = (project: Project): void => {
    Object.assign(project.structure?.framing?.['south'] ?? {}, { rake_overhang_in: 0 })
  }

  it('a rail that passes the edge is an error with how far', () => {
    const tight = solve(house({}, bare), block(1, 4, 0.5 / 12, 3))
    const [finding] = found(tight, 'rail-past-edge')
    expect(finding).toMatchObject({ severity: 'error', where: 'arrays.south.arrangement' })
    expect(finding?.message).toMatch(/reaches 1\.0 in past the edge of plane 'south'/)
    expect(found(solve(house({}, bare), block(1, 4, 1.6 / 12, 3)), 'rail-past-edge')).toEqual([])
  })

  it('a hip is an edge too', () => {
    const hip = hipPlane('south', 56, 16, 26, 22)
    const project = house({}, (p) => Object.assign(p.structure?.building ?? {}, { roof_kind: 'hip' }))
    // The upper corner touches the hip at 8.646 ft up the slope, 8.105 ft in; the upper rail lies 14 in lower.
    const xAt = (yFt: number) => (15 * yFt) / 16
    const place = (xFt: number) => spaceMounts(project, { planes: [hip], modules: block(1, 5, xFt, 3) })
    expect(found(place(xAt(3 + 67.8 / 12) + 0.01), 'rail-past-edge')).toEqual([])
  })
})

describe('pieces of rail', () => {
  const cut = {
    startIn: 0,
    endIn: 240,
    mountsIn: [10, 74, 138, 202, 230],
    stockLengthsIn: [180],
    minFromMountIn: 6,
    maxFromMountOfSpan: 0.5,
    allowedInEndSpan: true,
  }
  const least = (pieces: ReturnType<typeof cutRail>): number => {
    const bounds = [0, ...(pieces?.splicesIn ?? []), cut.endIn]
    return Math.min(
      ...bounds.slice(1).map((to, i) => cut.mountsIn.filter((x) => x >= (bounds[i] ?? 0) && x <= to).length),
    )
  }

  it('stand on two mounts each', () => {
    expect(least(cutRail(cut))).toBeGreaterThanOrEqual(2)
    // Without the rule a piece of 180 in would leave one with less waste.
    const wide = { ...cut, mountsIn: [10, 90, 170, 230], stockLengthsIn: [200] }
    const pieces = cutRail(wide)
    const bounds = [0, ...(pieces?.splicesIn ?? []), 240]
    for (const [i, to] of bounds.slice(1).entries()) {
      expect(wide.mountsIn.filter((x) => x >= (bounds[i] ?? 0) && x <= to).length).toBeGreaterThanOrEqual(2)
    }
  })

  it('that cannot are an error, not a silent joint', () => {
    const project = house({}, (p) => {
      Object.assign(p.equipment.rails?.['rail40'] ?? {}, {
        stock_lengths_in: [60],
        max_cantilever_in: 20,
        splice: { min_from_mount_in: 6, allowed_in_end_span: true, hinge: true },
      })
    })
    const result = spaceMounts(project, demoArrangement(), { spacingIn: 64 })
    const [finding] = found(result, 'rail-piece-mounts')
    expect(finding?.severity).toBe('error')
    expect(finding?.message).toMatch(/each piece stands on two mounts; a piece of \d+\.\d in stands on fewer/)
  })
})

describe('staggered rails', () => {
  const shared = (result: ReturnType<typeof solve>, above: string, below: string): number => {
    const on = (rail: string) => result.values.mounts.filter((m) => m.rail === rail).map((m) => m.rafter)
    return on(above).filter((rafter) => on(below).includes(rafter)).length
  }

  it('keep off the rafters of the rail below them, not of the rail beside it', () => {
    // Two runs in one row: the upper rail of the left run lies above the lower rail of the left run.
    const modules = block(1, 9, 6, 3).filter((m) => m.column !== 5)
    const result = spaceMounts(house({}), { planes: [plane], modules }, { spacingIn: 32 })
    expect(result.values.rails).toHaveLength(4)
    for (const run of ['row1', 'row1.part2']) {
      expect(shared(result, `south.main.${run}.upper`, `south.main.${run}.lower`)).toBeLessThanOrEqual(2)
    }
  })

  it('take turns: the third rail is back on the rafters of the first', () => {
    const result = spaceMounts(house({}), demoArrangement(), { spacingIn: 32 })
    expect(shared(result, 'south.main.row2.lower', 'south.main.row1.upper')).toBeLessThanOrEqual(2)
    expect(shared(result, 'south.main.row2.lower', 'south.main.row1.lower')).toBeGreaterThan(5)
    expect(found(result, 'stagger-not-possible')).toEqual([])
  })

  it('over two rails leave the rafters of both free where the spacing allows it', () => {
    const over = (mount_stagger_rafters: number) => {
      const project = house({}, (p) => Object.assign(p.structure ?? {}, { mount_stagger_rafters }))
      return spaceMounts(project, demoArrangement(), { spacingIn: 64 })
    }
    const lower = 'south.main.row1.lower'
    // With one rail the third comes back to the rafters of the first, with two it does not.
    expect(shared(over(1), 'south.main.row2.lower', lower)).toBe(5)
    expect(found(over(2), 'stagger-not-possible')).toEqual([])
    expect(shared(over(2), 'south.main.row2.lower', 'south.main.row1.upper')).toBeLessThanOrEqual(2)
    expect(shared(over(2), 'south.main.row2.lower', lower)).toBeLessThanOrEqual(2)
  })

  it('that come out aligned are a warning that says so and how many mounts share a rafter', () => {
    // One module: mounts at 32 in on rafters 16 in apart have one choice.
    const single = spaceMounts(house({}), { planes: [plane], modules: block(1, 1, 4, 3) }, { spacingIn: 32 })
    const [finding] = found(single, 'stagger-not-possible')
    expect(finding?.severity).toBe('warning')
    expect(finding?.message).toMatch(/2 of its 2 mounts stand on rafters of the rail below.*aligned, not staggered/)
    expect(found(single, 'stagger-ends-shared')).toEqual([])
    // The same load as if aligned had been asked for.
    const asked = house({}, (p) => Object.assign(p.structure ?? {}, { mount_layout: 'aligned' }))
    const aligned = spaceMounts(asked, { planes: [plane], modules: block(1, 1, 4, 3) }, { spacingIn: 32 })
    const load = (r: typeof single) => r.values.checks.find((c) => c.name === 'rafter bending strength')?.demand
    expect(load(single)).toBeCloseTo(load(aligned) ?? 0, 9)
  })
})

describe('coverings', () => {
  const on = (covering: string | undefined, coverings?: readonly string[]) => {
    const project = house({}, (p) => {
      Object.assign(p.structure?.framing?.['south'] ?? {}, { covering })
      if (coverings !== undefined) Object.assign(p.equipment.mounts?.['foot'] ?? {}, { coverings })
    })
    return spaceMounts(project, demoArrangement()).findings.filter((f) => f.id.startsWith('structure.covering'))
  }

  it.each([
    ['standing_seam', 'error', /seam clamps of the maker/],
    ['metal', 'error', /bracket whose sheet shows this metal profile/],
    ['membrane', 'error', /roofer set and flash posts/],
    ['tile', 'error', /tile hook/],
    ['slate', 'error', /slate hook/],
    ['wood_shake', 'error', /made for this covering/],
  ] as const)('a lag screw mount on %s is an %s with what is right there', (covering, severity, fix) => {
    const [finding, ...others] = on(covering)
    expect(others).toEqual([])
    expect(finding).toMatchObject({ severity, where: 'structure.framing.south.covering' })
    expect(finding?.fix).toMatch(fix)
  })

  it('a mount whose sheet shows the covering passes, but not on standing seams', () => {
    for (const covering of ['metal', 'membrane', 'tile', 'slate', 'wood_shake']) {
      expect(on(covering, [covering])).toEqual([])
      expect(on(covering, ['asphalt_shingle'])).toHaveLength(1)
    }
    expect(on('standing_seam', ['metal'])).toHaveLength(1)
  })

  it('shingles pass, unless the mount is shown for other coverings only; no covering at all is told', () => {
    expect(on('asphalt_shingle')).toEqual([])
    expect(on('asphalt_shingle', ['tile']).map((f) => f.severity)).toEqual(['error'])
    expect(on(undefined).map((f) => f.id)).toEqual(['structure.covering-not-stated'])
  })
})
