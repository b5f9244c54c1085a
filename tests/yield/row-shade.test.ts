import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { planArray } from '../../src/yield/array-plan.js'
import { estimateYield, runYield, sweepAngle } from '../../src/yield/index.js'
import { buildScene, isOnRacks } from '../../src/scene/index.js'
import { domeShares, faceShadow } from '../../src/yield/shade/index.js'

const RAD = Math.PI / 180
const LENGTH_FT = 68 / 12

function racks(
  tiltDeg: number,
  rowGapIn: number,
  rows = 3,
  change: (project: Project) => void = () => {},
  columns = 41,
): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'racks',
    site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500 },
    roof_planes: { flat: { azimuth_deg: 180, tilt_deg: 0 } },
    arrays: {
      racks: {
        roof_plane: 'flat',
        module: 'm',
        inverter: 'i',
        mounting: 'free_rack',
        standoff_in: 6,
        module_tilt_deg: tiltDeg,
        arrangement: {
          blocks: {
            a: { orientation: 'portrait', rows, columns, x_ft: 0, y_ft: 0, row_gap_in: rowGapIn, gap_in: 0 },
          },
        },
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68, width_in: 45, thickness_in: 1.4 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
  change(project)
  return project
}

/** What the middle module of a row of a plan sees, rows from 1. */
function middleOfRow(project: Project, row: number) {
  const placements = placeModules(project, new Worksheet())
  const plan = planArray(project, 'racks', placements, buildScene(project, placements))
  return plan.views[plan.modules.findIndex(({ id }) => id.endsWith(`r${row}c21`))]!
}

const towards = (azimuthDeg: number, elevationDeg: number) => ({
  east: Math.sin(azimuthDeg * RAD) * Math.cos(elevationDeg * RAD),
  north: Math.cos(azimuthDeg * RAD) * Math.cos(elevationDeg * RAD),
  up: Math.sin(elevationDeg * RAD),
})

describe('rows on racks', () => {
  // Profile angle p of the sun, tan p = tan(elevation) / cos(azimuth difference); of a row of slant length L and tilt b
  // at pitch P behind another on level ground the share 1 - P sin p / (L sin(b + p)) is shaded from below (from memory:
  // Passias & Kallback 1984, Solar Cells 11:281; follows from the law of sines).
  const cases = [15, 30, 45].flatMap((tilt) =>
    [6, 24, 60].flatMap((gap) =>
      [
        [180, 8],
        [180, 15],
        [180, 25],
        [200, 12],
        [150, 18],
        [225, 10],
        [180, 50],
      ].map(([azimuth, elevation]) => [tilt, gap, azimuth!, elevation!] as const),
    ),
  )
  it('shade the row behind by the profile angle of the sun', () => {
    let partly = 0
    for (const [tilt, gap, azimuth, elevation] of cases) {
      const project = racks(tilt, gap)
      const profile = Math.atan2(Math.tan(elevation * RAD), Math.cos((azimuth - 180) * RAD))
      const pitch = LENGTH_FT + gap / 12
      const shaded = 1 - (pitch * Math.sin(profile)) / (LENGTH_FT * Math.sin(tilt * RAD + profile))
      const expected = Math.max(0, shaded)
      const shade = faceShadow(middleOfRow(project, 2), towards(azimuth, elevation))
      // Eight points up the module.
      expect(Math.abs(1 - shade.lit - expected)).toBeLessThan(1 / 16 + 1e-9)
      if (expected > 1 / 16) expect(shade.sections).toBe(0)
      if (expected > 0.1 && expected < 0.9) partly++
      const front = faceShadow(middleOfRow(project, 1), towards(azimuth, elevation))
      expect(front.lit).toBe(1)
    }
    expect(partly).toBeGreaterThan(15)
  })

  // From a point s up the row the row before reaches to the angle g above level, tan g = (L - s) sin b / (P - (L - s)
  // cos b); the sky above it counts (1 + cos(b + g)) / 2 on the plane, an unhidden one (1 + cos b) / 2 (two-dimensional
  // view factors, as Passias & Kallback; from memory).
  it.each([
    [15, 6],
    [30, 24],
    [45, 24],
  ])('hide the sky from the row behind by its view: tilt %d deg, gap %d in', (tilt, gap) => {
    const project = racks(tilt, gap)
    const pitch = LENGTH_FT + gap / 12
    let seen = 0
    for (let point = 0; point < 100; point++) {
      const rest = LENGTH_FT * (1 - (point + 0.5) / 100)
      const mask = Math.atan2(rest * Math.sin(tilt * RAD), pitch - rest * Math.cos(tilt * RAD))
      seen += (1 + Math.cos(tilt * RAD + mask)) / (1 + Math.cos(tilt * RAD)) / 100
    }
    const { sky } = domeShares(middleOfRow(project, 2))
    expect(Math.abs(sky[0]! - seen)).toBeLessThan(0.005)
    expect(sky[0]).toBeLessThan(0.995)
  })

  const energy = (project: Project): number => estimateYield(project).values.annual.ac_kwh
  const small = (gap: number, rows = 3, change?: (project: Project) => void): Project => racks(30, gap, rows, change, 6)

  it('cost energy, more of it close together, and none in one row', () => {
    const perModule = (gap: number, rows: number): number => energy(small(gap, rows)) / (6 * rows)
    const free = perModule(6, 1)
    expect(perModule(600, 3)).toBeGreaterThan(0.99 * free)
    expect(perModule(36, 3)).toBeLessThan(0.99 * free)
    expect(perModule(6, 3)).toBeLessThan(0.97 * perModule(36, 3))
  })

  it('are free of row shade where they lie in the plane of the roof', () => {
    const flush = small(6, 3, (project) => {
      project.roof_planes['flat']!.tilt_deg = 30
    })
    expect(isOnRacks(flush, 'racks')).toBe(false)
    expect(
      estimateYield(flush).values.arrays['racks']!.by_module.every((one) => Math.abs(one.light_pct - 100) < 1e-9),
    ).toBe(true)
  })

  it('shade each other in a sweep of their angle, but not where the roof carries the modules', () => {
    const files = new Map<string, string>()
    const onRacks = small(6)
    const flush = small(6, 3, (project) => {
      delete project.arrays['racks']!.module_tilt_deg
    })
    const at = (project: Project): number =>
      sweepAngle(project, files, runYield(project, files), 'racks', 'tilt').points.find((one) => one.angle_deg === 30)!
        .ac_kwh
    expect(at(onRacks)).toBeCloseTo(energy(onRacks), 6)
    expect(at(flush)).toBeGreaterThan(1.05 * at(onRacks))
  })

  it('say that their shade is not counted, and widen the range, where modules have no places', () => {
    const unplaced = small(6, 3, (project) => {
      project.arrays['racks']!.modules = 18
      delete project.arrays['racks']!.arrangement
    })
    const { values, findings } = estimateYield(unplaced)
    expect(findings.find((one) => one.id === 'yield.row-shade-without-places')?.message).toContain(
      'at worst all direct light',
    )
    expect(values.uncertainty.find(({ term }) => term === 'shade of row on row')?.percent).toBe(5)
    const placed = estimateYield(small(6))
    expect(placed.findings.map((one) => one.id)).not.toContain('yield.row-shade-without-places')
    expect(placed.values.uncertainty.map(({ term }) => term)).not.toContain('shade of row on row')
  })
})
