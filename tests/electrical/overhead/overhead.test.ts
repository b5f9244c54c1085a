import { describe, expect, it } from 'vitest'
import type { OverheadLine, Project } from '../../../src/project/index.js'
import { checkOverhead } from '../../../src/electrical/overhead/index.js'
import { sagOf } from '../../../src/electrical/overhead/span.js'
import type { Job, OverheadValues } from '../../../src/electrical/system/index.js'
import { necSource } from '../../../src/tables/nec/index.js'
import { Worksheet } from '../../../src/worksheet/index.js'

/** An invented roof plane that faces south, 40 ft wide, its run 15 ft, eave 10 ft high along y = 0. */
function house(tiltDeg: number, line: Partial<OverheadLine>, change: (project: Project) => void = () => {}): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'overhead',
    site: {
      latitude_deg: 40,
      longitude_deg: -90,
      overhead_lines: {
        drop: {
          kind: 'service_drop',
          cable: 'multiplex',
          to_ground_v: 120,
          between_v: 240,
          sag_ft: 0,
          points: [
            { x_ft: -20, y_ft: 5, height_ft: 30 },
            { x_ft: 60, y_ft: 5, height_ft: 30 },
          ],
          ...line,
        },
      },
    },
    roof_planes: {
      south: {
        azimuth_deg: 180,
        tilt_deg: tiltDeg,
        eave_height_ft: 10,
        eave_left: { x_ft: 0, y_ft: 0 },
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 15 / Math.cos((tiltDeg * Math.PI) / 180) },
      },
    },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 4.6,
        arrangement: { blocks: { main: { orientation: 'portrait', rows: 1, columns: 2, x_ft: 4, y_ft: 2 } } },
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 72, width_in: 48, thickness_in: 1.4 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
  }
  change(project)
  return project
}

function judge(project: Project): { values: OverheadValues[]; found: string[] } {
  const worksheet = new Worksheet()
  const job = { project, edition: 'NEC 2023', worksheet, nec: () => necSource('NEC 2023', '') } as unknown as Job
  const values = checkOverhead(job)
  return { values, found: worksheet.result(0).findings.map(({ severity, id }) => `${severity} ${id}`) }
}

const to = (project: Project, path: string): OverheadValues => {
  const value = judge(project).values.find((each) => each.to === path)
  if (value === undefined) throw new Error(`nothing about ${path}`)
  return value
}

const along = (y: number, height: number, toHeight = height) => ({
  points: [
    { x_ft: -20, y_ft: y, height_ft: height },
    { x_ft: 60, y_ft: y, height_ft: toHeight },
  ],
})

describe('a line over a roof', () => {
  it('hangs plumb above a level roof and needs 8 ft', () => {
    const value = to(house(0, along(5, 18)), 'roof_planes.south')
    expect(value).toMatchObject({ required_ft: 8, section: '230.24(A)', complies: true })
    expect(value.clearance_ft).toBeCloseTo(8, 9)
    expect(to(house(0, along(5, 17.99)), 'roof_planes.south').complies).toBe(false)
  })
  it('is lowest in the middle by its sag', () => {
    expect(to(house(0, { ...along(5, 21), sag_ft: 2.5 }), 'roof_planes.south').clearance_ft).toBeCloseTo(8.5, 6)
  })
  it('is judged at the place where the roof below it is highest', () => {
    // At y = 5 a roof of 30 degrees is 5 tan 30 = 2.887 ft above its eave.
    const points = [
      { x_ft: 10, y_ft: 5, height_ft: 18 },
      { x_ft: 30, y_ft: 5, height_ft: 18 },
    ]
    const value = to(house(30, { points }), 'roof_planes.south')
    expect(value.clearance_ft).toBeCloseTo(8 - 5 * Math.tan(Math.PI / 6), 9)
    // Beside the rake the edge counts within 3 ft in all directions: up to 8 ft from the eave.
    const beside = to(house(30, along(5, 18)), 'roof_planes.south')
    expect(beside.clearance_ft).toBeCloseTo(8 - 8 * Math.tan(Math.PI / 6), 1)
    expect(beside.clearance_ft).toBeLessThanOrEqual(8 - 8 * Math.tan(Math.PI / 6))
    expect(value).toMatchObject({ required_ft: 3, section: '230.24(A) Exception 2', complies: true })
  })
  it('keeps its height 3 ft beyond the edges, in all directions', () => {
    expect(to(house(0, along(-2.9, 17)), 'roof_planes.south').complies).toBe(false)
    expect(judge(house(0, along(-3.1, 17))).values.map((each) => each.to)).not.toContain('roof_planes.south')
    // 3 ft beyond the ridge of a slope counts from the ridge, not from the sheet that goes on rising.
    const beyond = to(house(30, along(17, 25)), 'roof_planes.south')
    expect(beyond.clearance_ft).toBeCloseTo(25 - (10 + 15 * Math.tan(Math.PI / 6)), 6)
  })
  it('may be at 3 ft from 4 in 12 and up to 300 V only', () => {
    const tilt = (in12: number): number => (Math.atan(in12 / 12) * 180) / Math.PI
    expect(to(house(tilt(4), along(5, 18)), 'roof_planes.south').required_ft).toBe(3)
    expect(to(house(tilt(3.9), along(5, 18)), 'roof_planes.south').required_ft).toBe(8)
    expect(to(house(tilt(4), { ...along(5, 18), between_v: 300 }), 'roof_planes.south').required_ft).toBe(3)
    expect(to(house(tilt(4), { ...along(5, 18), between_v: 301 }), 'roof_planes.south').required_ft).toBe(8)
    expect(to(house(tilt(4), { ...along(5, 18), kind: 'line' }), 'roof_planes.south').required_ft).toBe(8)
  })
  it('is held against the faces of modules too', () => {
    // 4.6 in + 1.4 in = 0.5 ft above a level roof.
    const project = house(0, along(5, 18.2))
    expect(to(project, 'arrays.south')).toMatchObject({ required_ft: 8, complies: false })
    expect(to(project, 'arrays.south').clearance_ft).toBeCloseTo(7.7, 9)
    expect(to(project, 'roof_planes.south').complies).toBe(true)
    expect(judge(project).found).toContain('error wire.overhead-clearance')
  })
})

describe('a drop that ends at the house', () => {
  const mast = (y: number, height: number, ends_at?: OverheadLine['ends_at']) =>
    house(0, {
      points: [
        { x_ft: 20, y_ft: -40, height_ft: height },
        { x_ft: 20, y_ft: y, height_ft: height },
      ],
      ...(ends_at === undefined ? {} : { ends_at }),
    })
  it('may be at 18 in over a short piece of overhang', () => {
    expect(to(mast(3.9, 11.5, 'overhang_mast'), 'roof_planes.south')).toMatchObject({
      required_ft: 1.5,
      complies: true,
    })
    expect(to(mast(3.9, 11.4, 'overhang_mast'), 'roof_planes.south').complies).toBe(false)
    expect(to(mast(4.1, 11.5, 'overhang_mast'), 'roof_planes.south').required_ft).toBe(8)
    expect(to(mast(3.9, 11.5, 'mast'), 'roof_planes.south').required_ft).toBe(8)
    expect(to(mast(3.9, 11.5), 'roof_planes.south').required_ft).toBe(8)
  })
  it('counts the conductor along its way, 6 ft of it', () => {
    // Over 3.6 ft of roof, rising 4.8 ft in it: 6 ft of conductor; a little more is too much.
    const steep = (rise: number) =>
      house(0, {
        ends_at: 'overhang_mast',
        points: [
          { x_ft: 20, y_ft: -3.6, height_ft: 14 },
          { x_ft: 20, y_ft: 3.6, height_ft: 14 + 2 * rise },
        ],
      })
    expect(to(steep(4.7), 'roof_planes.south').required_ft).toBe(1.5)
    expect(to(steep(4.9), 'roof_planes.south').required_ft).toBe(8)
  })
  it('need not keep the 3 ft beyond the edge on its last span to a wall', () => {
    const paths = (project: Project): string[] => judge(project).values.map((each) => each.to)
    expect(paths(mast(-0.5, 9, 'wall'))).not.toContain('roof_planes.south')
    expect(to(mast(-0.5, 9), 'roof_planes.south').clearance_ft).toBeCloseTo(-1, 9)
    // A roof that it only passes on its way is not spared.
    const passing = house(0, {
      ends_at: 'wall',
      points: [
        { x_ft: -40, y_ft: -2, height_ft: 17 },
        { x_ft: 60, y_ft: -2, height_ft: 17 },
      ],
    })
    expect(to(passing, 'roof_planes.south')).toMatchObject({ required_ft: 8, complies: false })
  })
})

describe('a line over the ground', () => {
  const plan: Project['site_plan'] = {
    lot: [
      { x_ft: -50, y_ft: -60 },
      { x_ft: 90, y_ft: -60 },
      { x_ft: 90, y_ft: 60 },
      { x_ft: -50, y_ft: 60 },
    ],
    street: { name: 'Invented Row', lot_line: 1 },
    driveway: [
      { x_ft: 50, y_ft: -60 },
      { x_ft: 60, y_ft: -60 },
      { x_ft: 60, y_ft: -20 },
      { x_ft: 50, y_ft: -20 },
    ],
  }
  const drop = (line: Partial<OverheadLine> = {}) =>
    house(
      0,
      {
        ends_at: 'wall',
        points: [
          { x_ft: 55, y_ft: -80, height_ft: 18 },
          { x_ft: 55, y_ft: -10, height_ft: 11 },
        ],
        ...line,
      },
      (project) => {
        project.site_plan = plan
      },
    )
  it('is judged by what lies below it and by its voltage', () => {
    // One foot lower for each 10 ft: 16 ft at the lot line, 12 ft where the driveway ends.
    expect(to(drop(), 'site_plan.street')).toMatchObject({ required_ft: 18, complies: false })
    expect(to(drop(), 'site_plan.street').clearance_ft).toBeCloseTo(16, 1)
    expect(to(drop(), 'site_plan.driveway')).toMatchObject({ required_ft: 12 })
    expect(to(drop(), 'site_plan.driveway').clearance_ft).toBeCloseTo(12, 1)
    expect(to(drop(), 'ground')).toMatchObject({ required_ft: 12, complies: false, clearance_ft: 11 })
    expect(to(drop({ pedestrians_only: true }), 'ground')).toMatchObject({ required_ft: 10, complies: true })
    expect(to(drop({ to_ground_v: 301 }), 'ground').required_ft).toBe(15)
    expect(to(drop({ to_ground_v: 300 }), 'ground').required_ft).toBe(12)
  })
  it('has a drip loop of at least 10 ft, of open conductors 12 ft', () => {
    expect(to(drop(), 'service entrance')).toMatchObject({ required_ft: 10, complies: true, clearance_ft: 11 })
    expect(to(drop({ drip_loop_ft: 9.9 }), 'service entrance').complies).toBe(false)
    expect(to(drop({ cable: 'open' }), 'service entrance').required_ft).toBe(12)
    expect(to(drop({ to_ground_v: 151 }), 'service entrance').required_ft).toBe(12)
  })
})

describe('people near a line', () => {
  it('reach 8 ft up from the roof at the modules', () => {
    // Modules lie from y = 2 to 8 on a level roof at 10 ft: hands at 18 ft.
    expect(to(house(0, along(5, 28)), 'arrays.south').to).toBe('arrays.south')
    const work = (project: Project) => judge(project).values.find(({ kind }) => kind === 'work')
    expect(work(house(0, along(5, 28.1)))).toMatchObject({ required_ft: 10, complies: true })
    expect(work(house(0, along(5, 28)))?.clearance_ft).toBeCloseTo(10, 4)
    expect(work(house(0, along(-4, 26)))?.clearance_ft).toBeCloseTo(10, 3)
    expect(work(house(0, along(12, 14)))?.clearance_ft).toBeCloseTo(4, 3)
    expect(judge(house(0, along(5, 27.9))).found).toContain('warning wire.overhead-work')
    expect(work(house(0, { ...along(5, 40), kind: 'line', between_v: 80_000 }))?.required_ft).toBeCloseTo(11, 9)
  })
  it('stand on ladders', () => {
    const project = house(0, along(-3, 13), (each) => {
      each.site_plan = {
        lot: [
          { x_ft: -50, y_ft: -60 },
          { x_ft: 90, y_ft: -60 },
          { x_ft: 90, y_ft: 60 },
        ],
        ground_access: [{ x_ft: 20, y_ft: -2.5 }],
      }
    })
    // The ladder leans in the plane x = 20 with a rise of 4 in 1 from (-2.5, 0) to (0.75, 13); the line is at (-3, 13):
    // 3.75 ft level from its top, sin(atan 4) of that at right angles.
    expect(to(project, 'site_plan.ground_access.0').clearance_ft).toBeCloseTo(3.75 * Math.sin(Math.atan(4)), 2)
  })
})

describe('what is told', () => {
  it('asks where nothing is stated, and is content with none', () => {
    const silent = (lines?: 'none') =>
      house(0, {}, (project) => {
        if (lines === undefined) delete project.site.overhead_lines
        else project.site.overhead_lines = lines
      })
    expect(judge(silent()).found).toEqual(['note wire.overhead-not-stated'])
    expect(judge(silent('none'))).toEqual({ values: [], found: [] })
  })
  it('says when a roof stands nowhere', () => {
    const project = house(0, {}, (each) => {
      delete each.roof_planes['south']!.eave_left
    })
    expect(judge(project).found).toContain('error wire.overhead-unjudged')
  })
  it('sends lines of the utility to the utility', () => {
    expect(judge(house(0, { kind: 'line', between_v: 7200 })).found).toContain('warning wire.overhead-utility-line')
  })
})

describe('sag from the lowest height', () => {
  it('is the drop in the middle of a level span, and gives its lowest height back on a slope', () => {
    expect(sagOf(20, 20, 17)).toBeCloseTo(3, 12)
    const sag = sagOf(24, 18, 15)
    const heights = Array.from({ length: 10_001 }, (_, i) => 24 - (6 * i) / 1e4 - 4 * sag * (i / 1e4) * (1 - i / 1e4))
    expect(Math.min(...heights)).toBeCloseTo(15, 6)
  })
})
