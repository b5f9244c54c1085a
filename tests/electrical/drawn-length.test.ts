import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { DrawnWay, Project, SitePlan, WiringSegment } from '../../src/project/index.js'
import { context, microProject } from './demo.js'

const degrees = (radians: number): number => (radians * 180) / Math.PI
const point = (x: number, y: number) => ({ x_ft: x, y_ft: y })

/** A raceway of 7 + 8 ft on the south plane, and a line of 3 + 4 and 12 ft on the plan. */
const plan: SitePlan = {
  lot: [point(0, 0), point(90, 0), point(90, 90)],
  roof_planes: { south: { eave_left: point(10, 10), raceway: [point(32, 8), point(39, 8), point(39, 0)] } },
  raceway_route: [point(0, 0), point(3, 0), point(3, 4), point(15, 4)],
}

const sized = (
  lengthFt: WiringSegment['length_ft'],
  change: Partial<WiringSegment> = {},
  site_plan: SitePlan | null = plan,
  roof: Partial<Project['roof_planes'][string]> = {},
) => {
  const project = microProject()
  const home = {
    carries: ['branches'],
    segments: {
      roof: {
        location: 'roof' as const,
        height_above_roof_in: 1,
        raceway: 'EMT' as const,
        length_ft: lengthFt,
        ...change,
      },
    },
  }
  const whole: Project = {
    ...project,
    ...(site_plan === null ? {} : { site_plan }),
    roof_planes: { south: { ...(project.roof_planes['south'] ?? { azimuth_deg: 180 }), ...roof } },
    electrical: { ...project.electrical, runs: { ...project.electrical?.runs, home } },
  }
  return sizeWire(whole, context())
}

const found = (result: ReturnType<typeof sized>): string[] =>
  result.findings.filter(({ id }) => id.startsWith('wire.length')).map(({ severity, id }) => `${severity} ${id}`)

const lengthOf = (result: ReturnType<typeof sized>): number | undefined => result.values.raceways[0]?.length_ft

describe('length_ft: drawn', () => {
  it('takes the line on the one roof plane that shows a raceway, along its slope', () => {
    const result = sized('drawn')
    expect(lengthOf(result)).toBe(15)
    expect(result.worksheet.find(({ id }) => id === 'wire.home.roof.drawn-length')).toMatchObject({
      result: { value: 15, unit: 'ft' },
      inputs: [
        { value: 15, from: 'site_plan.roof_planes.south.raceway' },
        { value: 0, from: 'drawn on the slope, nothing to add' },
      ],
    })
    // The same length stated gives the same rise.
    expect(result.values.circuits[0]?.voltage_rise_pct).toBe(sized(15).values.circuits[0]?.voltage_rise_pct)
  })

  it('takes points of the line on the site plan and what climbs or falls', () => {
    const drawn: DrawnWay = { from_point: 2, to_point: 4, vertical_ft: 9 }
    expect(lengthOf(sized('drawn', { location: 'outdoor_wall', drawn }))).toBe(4 + 12 + 9)
    expect(
      lengthOf(sized('drawn', { location: 'outdoor_wall', drawn: { ...drawn, from_point: 4, to_point: 2 } })),
    ).toBe(25)
    expect(lengthOf(sized('drawn', { location: 'outdoor_wall', drawn: { ...drawn, vertical_ft: 0 } }))).toBe(16)
  })

  it('takes what climbs or falls from the heights of the points, stated or of the roof below them', () => {
    // On the plane south (eave 10 ft up, 6 in 12): 8 ft level up the slope are 4 ft higher; then over the eave, down a wall of 10 ft
    // and 6 ft along it to a panel 5 ft up.
    const way: SitePlan = {
      ...plan,
      raceway_route: [
        point(20, 18),
        point(20, 10),
        { ...point(20, 10), height_ft: 0 },
        { ...point(26, 10), height_ft: 5 },
      ],
    }
    const roof = {
      tilt_deg: degrees(Math.atan(0.5)),
      eave_height_ft: 10,
      outline: { shape: 'rectangle' as const, width_ft: 40, depth_ft: 18 },
    }
    const slope = Math.hypot(8, 4)
    const home = (from: number, to: number) =>
      lengthOf(sized('drawn', { location: 'outdoor_wall', drawn: { from_point: from, to_point: to } }, way, roof))
    expect(home(1, 2)).toBeCloseTo(slope, 6)
    expect(home(2, 3)).toBeCloseTo(10, 6)
    expect(home(3, 4)).toBeCloseTo(6 + 5, 6)
    expect(home(4, 1)).toBeCloseTo(slope + 10 + 11, 6)
    const loose: SitePlan = { ...way, raceway_route: [point(20, 18), point(20, 80)] }
    expect(() => sized('drawn', { drawn: { from_point: 1, to_point: 2 } }, loose, roof)).toThrow(
      'point 2 of site_plan.raceway_route lies on no roof plane',
    )
  })

  it.each([
    [{ location: 'outdoor_wall' }, 'no way is named for it'],
    [{ drawn: { roof_plane: 'north' } }, 'site_plan.roof_planes.north shows no raceway'],
    [{ drawn: { roof_plane: 'constructor' } }, 'shows no raceway'],
    [{ drawn: { from_point: 1, to_point: 5, vertical_ft: 0 } }, 'has 4 points, not 5'],
    [{ drawn: { from_point: 2, to_point: 2, vertical_ft: 0 } }, 'the drawn length is 0'],
  ] as const)('%j: %s', (change, message) => {
    expect(() => sized('drawn', change)).toThrow(message)
  })

  it('says what to state where nothing is drawn', () => {
    const { roof_planes: _, raceway_route: __, ...bare } = plan
    expect(() => sized('drawn', {}, bare)).toThrow('no roof plane of site_plan shows a raceway')
    expect(() => sized('drawn', { drawn: { from_point: 1, to_point: 2, vertical_ft: 1 } }, bare)).toThrow(
      'is not drawn',
    )
    const two: SitePlan = {
      ...plan,
      roof_planes: { ...plan.roof_planes, north: plan.roof_planes?.['south'] ?? { eave_left: point(0, 0) } },
    }
    expect(() => sized('drawn', {}, two)).toThrow('2 roof planes show a raceway')
    expect(lengthOf(sized('drawn', { drawn: { roof_plane: 'north' } }, two))).toBe(15)
  })

  it('a wall does not lie on a roof plane', () => {
    expect(() => sized(15, { location: 'outdoor_wall', drawn: { roof_plane: 'south' } })).toThrow(
      'does not lie on a roof plane',
    )
  })
})

describe('a stated length beside a drawn one', () => {
  it.each([
    [13.4, ['warning wire.length-below-drawn']],
    [13.5, []],
    [15, []],
    [22.5, []],
    [22.6, ['note wire.length-above-drawn']],
  ] as const)('%d ft against 15 ft: %j', (lengthFt, expected) => {
    expect(found(sized(lengthFt))).toEqual(expected)
  })

  it('a named way that is not drawn is refused', () => {
    expect(() => sized(15, { drawn: { roof_plane: 'north' } })).toThrow('shows no raceway')
  })

  it('the whole way is at least as long as the line on the plan', () => {
    // 15 ft to the combiner and 15 ft on to the panel; the line is 19 ft.
    const longer: SitePlan = { ...plan, raceway_route: [point(0, 0), point(0, 33.4)] }
    expect(found(sized(15))).toEqual([])
    expect(found(sized(15, {}, { ...plan, raceway_route: [point(0, 0), point(0, 33.3)] }))).toEqual([])
    expect(found(sized(15, {}, longer))).toEqual(['warning wire.length-below-drawn'])
  })

  it('without drawings nothing is compared', () => expect(found(sized(1, {}, null))).toEqual([]))
})
