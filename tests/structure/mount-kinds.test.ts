import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { validate } from '../../src/project/project-validator.generated.js'
import type { Project } from '../../src/project/index.js'
import {
  combinedCapacityLb,
  lagCapacity,
  mountChecks,
  pressureCoefficient,
  screwThroughSheathingLb,
  sheathingNailLb,
  spaceMounts,
  type DeckMount,
  type SeamClampMount,
  type TileHookMount,
} from '../../src/structure/index.js'
import { demoArrangement } from './demo-house.js'
import {
  deckMount,
  deckRoof,
  houseWith,
  seamClamp,
  seamRoof,
  structuralScrew,
  tileHook,
  tileRoof,
} from './mount-kinds.js'
import { readTable } from './read-table.js'

const named = (checks: ReturnType<typeof mountChecks>) => Object.fromEntries(checks.map((c) => [c.name, c]))

/** Worked by hand from statics; withdrawal by NDS 2018 eq. 12.2-2 and 12.2-3 as tabulated by a secondary source. */
describe('a clamp on a standing seam', () => {
  // 4.0 ft x 2.833 ft = 11.33 ft2 at 24 psf: T 272 lb; clips at 24 in, clamp 8 in from one: R 181 lb; panel 16 in, 30 psf: 80 lb.
  const mount: SeamClampMount = {
    kind: 'standing_seam_clamp',
    upliftLb: 500,
    downLb: 900,
    lateralLb: 400,
    interactionExponent: 1,
    panelWidthIn: 16,
    clipSpacingIn: 24,
    clampFromClipIn: 8,
    clipSheetLb: undefined,
    clipScrewsLb: 2 * screwThroughSheathingLb('#10', 'plywood', 15 / 32),
    seamMomentLbIn: undefined,
    fixedPointLb: 800,
  }
  const T = 4 * 2.833 * 24

  it('fails at the clip though the clamp is at 0.54', () => {
    const checks = named(mountChecks(mount, T, 0, 1.6, 30))
    expect(T).toBeCloseTo(272, 0)
    expect(checks['mount uplift']?.ratio).toBeCloseTo(0.54, 2)
    expect(checks['seam clip']?.demandLb).toBeCloseTo(261, 0)
    expect(checks['seam clip']?.capacityLb).toBeCloseTo(143, 0)
    expect(named(mountChecks(mount, T, 0, 1.6, 0))['seam clip']?.demandLb).toBeCloseTo(181, 0)
  })

  it('is pulled and pushed at once: a straight line, or a curve of the sheet', () => {
    const straight = named(mountChecks(mount, 250, 200, 1.6, 0))['mount combined']
    expect(straight?.ratio).toBeCloseTo(250 / 500 + 200 / 400, 9)
    const round = named(mountChecks({ ...mount, interactionExponent: 2 }, 250, 200, 1.6, 0))['mount combined']
    expect(round?.ratio).toBeCloseTo(Math.sqrt(0.25 + 0.25), 9)
    expect(round?.demandLb).toBeCloseTo(Math.hypot(250, 200), 9)
  })

  it('the lower of panel test and screws counts, and the seam bends by T c / 4', () => {
    const both = { ...mount, clipSheetLb: 120, seamMomentLbIn: 1500 }
    const checks = named(mountChecks(both, 200, 0, 1.6, 0))
    expect(checks['seam clip']?.capacityLb).toBe(120)
    expect(checks['seam bending']?.ratio).toBeCloseTo((200 * 24) / 4 / 1500, 9)
  })

  it('a tested value grows with load duration only when its sheet says so', () => {
    expect(named(mountChecks(mount, 100, 0, 1.6, 0))['mount uplift']?.capacityLb).toBe(500)
    const told = { ...mount, timesDuration: true }
    expect(named(mountChecks(told, 100, 0, 1.6, 0))['mount uplift']?.capacityLb).toBe(800)
  })

  it('is pressed', () => {
    const checks = named(mountChecks(mount, -450, 100, 1.15, 0))
    expect(checks['mount down']?.ratio).toBe(0.5)
    expect(checks['mount lateral']?.ratio).toBe(0.25)
    expect(checks['seam clip']).toBeUndefined()
  })
})

describe('a tile hook', () => {
  // 48 x 34 in at 6 in 12, D 3 psf and 21 psf of snow on the horizontal: N 220.8, V 110.4 lb; e 3.5 in, Z 0.045 in3, 30 ksi.
  const areaFt2 = (48 * 34) / 144
  const slope = Math.atan(6 / 12)
  const vertical = 3 + 21 * Math.cos(slope)
  const N = areaFt2 * vertical * Math.cos(slope)
  const V = areaFt2 * vertical * Math.sin(slope)
  const screws = {
    lateralLb: 400,
    lagCount: 2,
    lag: { size: '5/16', lengthIn: 5, threadLengthIn: undefined, aboveRafterIn: 0.7, rafterDepthIn: 5.5 },
    specificGravity: 0.5,
    plate: 'steel_quarter_inch',
    wetFactor: 1,
    temperatureFactor: 1,
  } as const
  const hook: TileHookMount = {
    kind: 'tile_hook',
    upliftLb: 600,
    downLb: 500,
    lateralLb: 400,
    screws,
    armIn: 3.5,
    neckLb: (30_000 * 0.045) / 1.67 / 3.5,
    screwLeverIn: 2,
    heightIn: 2.5,
    tileContactLb: 400,
  }

  it('its neck is at 0.96, and half the width halves the load', () => {
    const neck = named(mountChecks(hook, -N, V, 1.15, 0))['hook neck']
    expect(N).toBeCloseTo(220.8, 0)
    expect(V).toBeCloseTo(110.4, 0)
    expect(neck?.ratio).toBeCloseTo(0.96, 2)
    // 772.8 lb-in over 0.045 in3 is 17.2 ksi against 18.0.
    expect((220.8 * 3.5) / 0.045 / 1000).toBeCloseTo(17.2, 1)
    expect(named(mountChecks(hook, -N / 2, V / 2, 1.15, 0))['hook neck']?.demandLb).toBeCloseTo(110.4, 0)
  })

  it('pries at its upper screw: N e / jd when pressed, N + N e / jd when pulled, V h / jd on top', () => {
    const pressed = named(mountChecks(hook, -100, 40, 1.15, 0))['lag withdrawal']
    expect(pressed?.demandLb).toBeCloseTo((100 * 3.5) / 2 + (40 * 2.5) / 2, 9)
    const pulled = named(mountChecks(hook, 100, 40, 1.6, 0))
    const tension = 100 + (100 * 3.5) / 2 + (40 * 2.5) / 2
    expect(pulled['lag withdrawal']?.demandLb).toBeCloseTo(tension, 9)
    const one = lagCapacity({ ...screws, lagCount: 1 }, 1.6)
    expect(pulled['lag withdrawal']?.capacityLb).toBeCloseTo(one.withdrawalLb, 9)
    const angle = (Math.atan2(tension, 20) * 180) / Math.PI
    expect(pulled['lag combined']?.capacityLb).toBeCloseTo(
      combinedCapacityLb(one.withdrawalLb, one.lateralLb, angle),
      6,
    )
    expect(pulled['lag combined']?.demandLb).toBeCloseTo(Math.hypot(tension, 20), 9)
  })

  it('without a steel plate the sheet is shared by the screws', () => {
    const other = { ...hook, screws: { ...screws, plate: undefined } }
    const check = named(mountChecks(other, 0, 100, 1.15, 0))['lag combined']
    const angle = (Math.atan2((100 * 2.5) / 2, 50) * 180) / Math.PI
    const one = lagCapacity({ ...screws, lagCount: 1 }, 1.15)
    expect(check?.capacityLb).toBeCloseTo(combinedCapacityLb(one.withdrawalLb, 200, angle), 6)
  })

  it('touches the tile below when pressed, not when pulled', () => {
    expect(named(mountChecks(hook, -200, 0, 1.15, 0))['hook on tile']?.ratio).toBe(0.5)
    expect(named(mountChecks(hook, 200, 0, 1.6, 0))['hook on tile']).toBeUndefined()
  })
})

describe('a mount on the sheathing', () => {
  // T 180 lb in the middle between rafters 16 in apart; 8d common nails at 6 in, SPF, through 7/16: 5 in 24 in; roof suction 30 psf.
  const W = sheathingNailLb('8d_common', 0.42, 7 / 16)
  const mount: DeckMount = {
    kind: 'deck',
    upliftLb: 300,
    downLb: 400,
    lateralLb: 300,
    interactionExponent: 1,
    rafterSpacingIn: 16,
    fromRafterIn: 8,
    nailsLb: 5 * W,
  }

  it('dry framing: two rafters hold 680 lb less 160 of suction, 0.35 used by the mount', () => {
    const nails = named(mountChecks(mount, 180, 0, 1.6, 30))['sheathing nails']
    expect(2 * (nails?.capacityLb ?? 0)).toBeCloseTo(680, -1)
    expect(2 * (nails?.demandLb ?? 0)).toBeCloseTo(180 + 160, 9)
    const left = 2 * (nails?.capacityLb ?? 0) - 160
    expect(Math.round((100 * 180) / 520) / 100).toBe(0.35)
    expect(left).toBeCloseTo(522, 0)
    expect(nails?.ratio).toBeLessThan(1)
  })

  it('framing that got wet: 170 less 160 leaves 10 lb, so it fails', () => {
    const wet = named(mountChecks({ ...mount, nailsLb: mount.nailsLb / 4 }, 180, 0, 1.6, 30))['sheathing nails']
    expect(2 * (wet?.capacityLb ?? 0) - 160).toBeCloseTo(10, -0.5)
    expect(wet?.ratio).toBeGreaterThan(1)
  })

  it('over a rafter its nails alone hold all', () => {
    const over = named(mountChecks({ ...mount, fromRafterIn: 0 }, 180, 0, 1.6, 30))['sheathing nails']
    expect(over?.demandLb).toBeCloseTo(180 + 80, 9)
  })

  it('the line of plausibility: four #14 in 7/16 OSB hold 483 lb', () => {
    expect(4 * 1.6 * screwThroughSheathingLb('#14', 'osb', 7 / 16)).toBeCloseTo(483, 0)
    expect(180 / (4 * 1.6 * screwThroughSheathingLb('#14', 'osb', 7 / 16))).toBeCloseTo(0.37, 2)
  })

  it('presses with at most 200 lb', () => {
    const checks = named(mountChecks(mount, -150, 0, 1.15, 0))
    expect(checks['sheathing point load']?.ratio).toBe(0.75)
    expect(checks['mount down']?.ratio).toBeCloseTo(150 / 400, 9)
    expect(checks['sheathing nails']).toBeUndefined()
  })
})

describe('withdrawal from sheathing', () => {
  const kinds = [
    ['OSB', 'osb'],
    ['plywood', 'plywood'],
    ['board', 'boards'],
  ] as const
  const rows = readTable('sheathing_fastener_withdrawal')

  it.each(rows.map((row) => [row['fastener'], row['substrate'], row] as const))(
    '%s in %s',
    (fastener, substrate, row) => {
      const [reference, thickness] = [Number(row['ref_withdrawal_lb']), Number(row['thickness_in'])]
      if (fastener?.startsWith('wood screw') === true) {
        const kind = kinds.find(([word]) => substrate?.includes(word))?.[1] ?? 'osb'
        const size = fastener.slice(-3) as '#10' | '#12' | '#14'
        expect(screwThroughSheathingLb(size, kind, thickness)).toBeCloseTo(reference, 1)
        expect(1.6 * screwThroughSheathingLb(size, kind, thickness)).toBeCloseTo(Number(row['x1.6_wind_lb']), 1)
        return
      }
      const nail =
        fastener?.includes('10d') === true ? '10d_common' : fastener?.includes('box') === true ? '8d_box' : '8d_common'
      // The table lets the nail reach 2.0625 in (8d) or 2.5625 in (10d) into the rafter, through 7/16 in.
      expect(sheathingNailLb(nail, Number(row['G']), 7 / 16)).toBeCloseTo(reference, 1)
    },
  )
})

const arrangement = demoArrangement()
const solved = (project: Project) => spaceMounts(project, arrangement)
const errorsOf = (project: Project) =>
  solved(project)
    .findings.filter((f) => f.severity === 'error')
    .map((f) => f.id)

describe.each([
  ['standing_seam_clamp', seamClamp, seamRoof, 'seam', ['seam clip', 'panel fixed point', 'mount combined']],
  ['tile_hook', tileHook, tileRoof, 'rafter', ['hook neck', 'hook on tile', 'lag withdrawal']],
  ['deck', deckMount, deckRoof, 'sheathing', ['sheathing nails', 'sheathing point load', 'mount combined']],
  ['rafter_screw', structuralScrew, {}, 'rafter', ['screw withdrawal', 'screw tension', 'screw combined']],
] as const)('a house with %s', (kind, mount, roof, into, names) => {
  const project = houseWith(mount, roof)
  const { values, findings, worksheet } = solved(project)

  it('is what the schema takes, and says its kind and fastener', () => {
    expect(validate(project)).toBe(true)
    expect(values.mount_kind).toBe(kind)
    expect(values.fastener).toMatchObject({ into, count: values.counts.mounts * values.fastener.each })
    expect(values.lag === null).toBe(kind !== 'tile_hook')
    expect(values.counts.lag_screws > 0).toBe(kind === 'tile_hook')
  })

  it('has its own checks, all with a source, and no error', () => {
    expect(values.checks.map((check) => check.name)).toEqual(expect.arrayContaining([...names]))
    expect(findings.filter((f) => f.severity === 'error')).toEqual([])
    for (const step of worksheet)
      expect(step.source.document === '' && step.source.standing === 'project file').toBe(false)
  })

  it('holds only finite numbers', () => {
    const walk = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk)
      else expect(value).not.toBeUndefined()
    }
    walk(values)
    walk(worksheet)
  })

  it('harder wind never makes a mount easier', () => {
    fc.assert(
      fc.property(fc.integer({ min: 90, max: 140 }), fc.integer({ min: 1, max: 30 }), (speed, more) => {
        const at = (mph: number) => {
          const house = structuredClone(project)
          Object.assign(house.structure?.wind ?? {}, { basic_speed_mph: mph })
          Object.assign(house.structure ?? {}, { mount_spacing_in: 48 })
          return spaceMounts(house, arrangement).values
        }
        const [low, high] = [at(speed), at(speed + more)]
        if (low.counts.mounts !== high.counts.mounts) return
        for (const check of low.checks) {
          const other = high.checks.find((c) => c.name === check.name)
          if (other !== undefined && !check.name.startsWith('rafter')) {
            expect(other.ratio).toBeGreaterThanOrEqual(check.ratio - 1e-9)
          }
        }
      }),
      { numRuns: 12 },
    )
  })
})

describe('places', () => {
  it('clamps stand on seams', () => {
    const { values } = solved(houseWith(seamClamp, seamRoof))
    for (const mount of values.mounts) expect((mount.x_in - 3) % 16).toBeCloseTo(0, 6)
  })

  it('deck mounts stand beside rafters by the stated distance', () => {
    const { values } = solved(houseWith(deckMount, deckRoof))
    for (const mount of values.mounts) expect((mount.x_in - 8 - 8) % 16).toBeCloseTo(0, 6)
  })
})

/** A copy of a house with one value changed by its path. */
function changed(project: Project, path: string, value: unknown): Project {
  const copy = structuredClone(project)
  const keys = path.split('.')
  const last = keys.pop() ?? ''
  let at: Record<string, unknown> = copy as unknown as Record<string, unknown>
  for (const key of keys) at = at[key] as Record<string, unknown>
  if (value === undefined) delete at[last]
  else at[last] = value
  return copy
}

const MOUNT = 'equipment.mounts.foot'
const ROOF = 'structure.framing.south'
const seamHouse = houseWith(seamClamp, seamRoof)
const hookHouse = houseWith(tileHook, tileRoof)
const deckHouse = houseWith(deckMount, deckRoof)
const screwHouse = houseWith(structuralScrew, {})

describe('what is missing or does not fit is refused', () => {
  it.each([
    [seamHouse, `${MOUNT}.capacity_uplift_lb`],
    [seamHouse, `${MOUNT}.capacity_lateral_lb`],
    [seamHouse, `${MOUNT}.test_report`],
    [seamHouse, `${MOUNT}.test_report.date`],
    [seamHouse, `${MOUNT}.seam_clamp.gauge`],
    [seamHouse, `${ROOF}.standing_seam`],
    [seamHouse, `${ROOF}.standing_seam.gauge`],
    [seamHouse, `${ROOF}.standing_seam.clip_spacing_in`],
    [seamHouse, `${ROOF}.standing_seam.clip_screws`],
    [seamHouse, `${ROOF}.standing_seam.clip_screw_size`],
    [seamHouse, `${ROOF}.standing_seam.fixed_point_capacity_lb`],
    [seamHouse, `${ROOF}.standing_seam.seam_spacing_in`],
    [seamHouse, `${ROOF}.standing_seam.first_seam_in`],
    [seamHouse, `${ROOF}.sheathing.kind`],
    [hookHouse, `${MOUNT}.hook`],
    [hookHouse, `${MOUNT}.hook.arm_in`],
    [hookHouse, `${MOUNT}.hook.yield_ksi`],
    [hookHouse, `${MOUNT}.hook.screw_lever_in`],
    [hookHouse, `${MOUNT}.hook.tile_gap_in`],
    [hookHouse, `${MOUNT}.hook.deflection_in`],
    [hookHouse, `${MOUNT}.lag`],
    [deckHouse, `${MOUNT}.deck.tests`],
    [deckHouse, `${MOUNT}.test_report.id`],
    [deckHouse, `${ROOF}.sheathing.kind`],
    [deckHouse, `${ROOF}.sheathing.damaged`],
    [deckHouse, `${ROOF}.sheathing.nail`],
    [deckHouse, `${ROOF}.sheathing.nail_spacing_in`],
    [screwHouse, `${MOUNT}.structural_screw.withdrawal_lb_per_in`],
    [screwHouse, `${MOUNT}.structural_screw.tested_specific_gravity`],
    [screwHouse, `${MOUNT}.structural_screw.tension_lb`],
    [screwHouse, `${MOUNT}.structural_screw.diameter_in`],
    [screwHouse, `${MOUNT}.structural_screw.sheet`],
  ])('without %#', (project, path) => {
    expect(() => solved(changed(project, path, undefined))).toThrowError(/not stated/u)
  })

  it.each([
    [seamHouse, `${MOUNT}.seam_clamp.gauge`, 26, /tested on gauge 26, the roof has 24/u],
    [seamHouse, `${MOUNT}.seam_clamp.profile`, 'Snap lock', /tested on profile Snap lock/u],
    [seamHouse, `${MOUNT}.seam_clamp.panel_metal`, 'aluminum', /tested on metal aluminum/u],
    [seamHouse, `${ROOF}.standing_seam.clamp_from_clip_in`, 13, /more than half the distance of the clips/u],
    [seamHouse, 'structure.mount_spacing_in', 12, /less than the seam spacing of 16 in/u],
    [deckHouse, `${ROOF}.sheathing.damaged`, true, /damaged/u],
    [deckHouse, `${ROOF}.sheathing_in`, 0.5, /no test of the mount is on osb of 0.5 in/u],
    [seamHouse, `${ROOF}.sheathing_in`, 0, /clips are screwed into sheathing/u],
    [deckHouse, `${ROOF}.sheathing.kind`, 'boards', /no test of the mount is on boards/u],
    [deckHouse, `${MOUNT}.deck.from_rafter_in`, 9, /more than half the rafter spacing/u],
    [deckHouse, `${MOUNT}.deck.tests.0.max_rafter_spacing_in`, 12, /does not cover rafters 16 in apart/u],
    [deckHouse, `${MOUNT}.deck.tests.0.max_rafter_spacing_in`, undefined, /within 6 in of a rafter|does not cover/u],
    [screwHouse, `${MOUNT}.structural_screw.tested_specific_gravity`, 0.55, /specific gravity 0.55 and more/u],
    [screwHouse, `${MOUNT}.structural_screw.least_thread_in`, 4, /asks for 4.00 in/u],
    [screwHouse, `${MOUNT}.structural_screw.edge_distance_in`, 0.8, /does not fit a rafter/u],
    [screwHouse, `${MOUNT}.lag`, { size: '5/16', length_in: 5, count: 1 }, /both lag screws and structural screws/u],
    [seamHouse, `${MOUNT}.capacity_basis`, 'ultimate', /factor between ultimate and allowable/u],
    [seamHouse, 'structure.module_support', 'shared_rails', /outside the method/u],
    [seamHouse, 'structure.module_support', 'rail_less', /outside the method/u],
  ] as const)('refused %#', (project, path, value, message) => {
    expect(() => solved(changed(project, path, value))).toThrowError(message)
  })

  it('an ultimate load is divided by its factor', () => {
    const tripled = structuredClone(seamHouse)
    const mount = tripled.equipment.mounts?.['foot'] ?? {}
    Object.assign(mount, {
      capacity_uplift_lb: 1500,
      capacity_down_lb: 2700,
      capacity_lateral_lb: 1200,
      capacity_basis: 'ultimate',
      safety_factor: 3,
    })
    expect(solved(tripled).values.checks).toEqual(solved(seamHouse).values.checks)
  })

  it.each([
    [seamHouse, `${MOUNT}.seam_clamp.hardware_metal`, 'zinc_plated', 'structure.seam-metals'],
    [seamHouse, `${MOUNT}.seam_clamp.clamp_metal`, undefined, 'structure.seam-metals-not-stated'],
    [seamHouse, `${ROOF}.standing_seam.clip_spacing_in`, 40, 'structure.seam-clamps-close'],
    [seamHouse, `${ROOF}.standing_seam.fixed_point_capacity_lb`, 5, 'structure.panel-fixed-point'],
    [seamHouse, `${ROOF}.standing_seam.clip_capacity_lb`, 40, 'structure.seam-clip'],
    [seamHouse, `${ROOF}.covering`, 'tile', 'structure.covering'],
    [hookHouse, `${ROOF}.covering`, 'asphalt_shingle', 'structure.covering'],
    [hookHouse, `${MOUNT}.hook.neck_section_modulus_in3`, 0.005, 'structure.hook-neck'],
    [hookHouse, `${MOUNT}.slope_range_deg`, [30, 45], 'structure.mount-sheet-range'],
    [hookHouse, `${MOUNT}.max_module_height_in`, 5, 'structure.mount-sheet-range'],
    [hookHouse, `${MOUNT}.max_roof_height_ft`, 10, 'structure.mount-sheet-range'],
    [deckHouse, `${ROOF}.sheathing.framing_dry_since_nailed`, undefined, 'structure.sheathing-nails'],
    [deckHouse, `${MOUNT}.deck.least_spacing_in`, 60, 'structure.deck-mounts-close'],
    [deckHouse, `${MOUNT}.deck.tests.0.uplift_lb`, 1600, 'structure.deck-test-suspect'],
    [deckHouse, `${MOUNT}.deck.screws`, undefined, 'structure.deck-test-not-compared'],
    [deckHouse, `${ROOF}.covering`, 'membrane', 'structure.covering'],
    [screwHouse, `${ROOF}.sheathing`, { damaged: true }, 'structure.sheathing-damaged'],
  ] as const)('error %#', (project, path, value, id) => {
    expect(errorsOf(changed(project, path, value))).toContain(id)
    expect(errorsOf(project)).not.toContain(id)
  })

  it('aluminum on copper', () => {
    const copper = changed(
      changed(seamHouse, `${MOUNT}.seam_clamp.panel_metal`, 'copper'),
      `${ROOF}.standing_seam.metal`,
      'copper',
    )
    expect(errorsOf(copper)).toContain('structure.seam-metals')
    expect(errorsOf(changed(copper, `${MOUNT}.seam_clamp.clamp_metal`, 'brass'))).not.toContain('structure.seam-metals')
  })

  it('values of another kind are told to be unused', () => {
    const findings = solved(changed(seamHouse, `${MOUNT}.lag`, { size: '5/16', length_in: 5, count: 1 })).findings
    expect(findings.find((f) => f.id === 'structure.mount-key-unused')?.where).toBe(`${MOUNT}.lag`)
    const factor = solved(changed(seamHouse, `${MOUNT}.safety_factor`, 3)).findings
    expect(factor.find((f) => f.id === 'structure.mount-key-unused')?.where).toBe(`${MOUNT}.safety_factor`)
    expect(solved(seamHouse).findings.map((f) => f.id)).not.toContain('structure.mount-key-unused')
  })

  it('loads that stand on no rafter are told; seam bending without a moment too', () => {
    const ids = solved(seamHouse).findings.map((f) => f.id)
    expect(ids).toContain('structure.load-not-on-rafter')
    expect(ids).toContain('structure.seam-float-not-checked')
    expect(solved(deckHouse).findings.map((f) => f.id)).toContain('structure.deck-panel-edges-not-checked')
    expect(solved(hookHouse).findings.map((f) => f.id)).not.toContain('structure.load-not-on-rafter')
    expect(ids).toContain('structure.seam-bending-not-checked')
    const stated = changed(seamHouse, `${ROOF}.standing_seam.seam_moment_lb_in`, 5000)
    expect(solved(stated).findings.map((f) => f.id)).not.toContain('structure.seam-bending-not-checked')
  })
})

describe('what the sheets and the roof give, on the house', () => {
  const checkOf = (project: Project, name: string) => {
    const found = solved(project).values.checks.find((check) => check.name === name)
    if (found === undefined) throw new Error(`no check ${name}`)
    return found
  }
  const W = (inches: number) => inches * 220 * 1.6

  it('structural screws: thread below base, covering and sheathing without the tip, times their number, moisture and heat', () => {
    // 3.5 in of thread, 5 - 0.25 - 0.75 = 4.0 in below the base: 3.5 - 0.3 hold.
    expect(checkOf(screwHouse, 'screw withdrawal').capacity).toBeCloseTo(W(3.2), 6)
    const shorter = changed(screwHouse, `${MOUNT}.structural_screw.length_in`, 4)
    expect(checkOf(shorter, 'screw withdrawal').capacity).toBeCloseTo(W(2.7), 6)
    const two = changed(screwHouse, `${MOUNT}.structural_screw`, {
      ...structuralScrew.structural_screw,
      count: 2,
      in_line_spacing_in: 3,
    })
    expect(checkOf(two, 'screw withdrawal').capacity).toBeCloseTo(2 * W(3.2), 6)
    expect(checkOf(two, 'screw tension').capacity).toBe(2400)
    expect(checkOf(screwHouse, 'screw tension').capacity).toBe(1200)
    const wet = changed(screwHouse, `${ROOF}.wet_service`, true)
    expect(checkOf(wet, 'screw withdrawal').capacity).toBeCloseTo(0.7 * W(3.2), 6)
    const hot = changed(screwHouse, `${ROOF}.sustained_temperature`, 'up_to_125_f')
    expect(checkOf(hot, 'screw withdrawal').capacity).toBeCloseTo(0.8 * W(3.2), 6)
  })

  it('structural screws: two need their distance', () => {
    const two = changed(screwHouse, `${MOUNT}.structural_screw.count`, 2)
    expect(() => solved(two)).toThrowError(/distance along the rafter/u)
  })

  it('hooks: neck over arm, gap over deflection, and screws that pass no tile', () => {
    expect(checkOf(hookHouse, 'hook neck').capacity).toBeCloseTo((30_000 * 0.09) / 1.67 / 2.5, 6)
    expect(checkOf(hookHouse, 'hook on tile').capacity).toBeCloseTo((500 * 0.25) / 0.2, 6)
    const thick = changed(hookHouse, `${ROOF}.covering_in`, 6)
    expect(checkOf(thick, 'lag withdrawal').capacity).toBe(checkOf(hookHouse, 'lag withdrawal').capacity)
  })

  it('deck: nails at 6 in are five in 24 in, a quarter of them where the wood stays wet, fewer farther apart', () => {
    const one = 1.6 * sheathingNailLb('8d_common', 0.5, 0.4375)
    expect(checkOf(deckHouse, 'sheathing nails').capacity).toBeCloseTo(5 * one, 6)
    expect(checkOf(changed(deckHouse, `${ROOF}.wet_service`, true), 'sheathing nails').capacity).toBeCloseTo(
      1.25 * one,
      6,
    )
    const wide = changed(deckHouse, `${ROOF}.sheathing.nail_spacing_in`, 12)
    expect(checkOf(wide, 'sheathing nails').capacity).toBeCloseTo(3 * one, 6)
  })

  /** ASD suction on the roof itself at a mount: 0.6 qh (|GCp| + 0.18), eq. 30.3-1 of ASCE 7-16. */
  const suction = (values: ReturnType<typeof solved>['values'], zone: string): number => {
    const shape = { edition: 'ASCE 7-16', roofKind: 'gable', tiltDeg: 22, heightOverWidth: 15 / 28 } as const
    const size = Math.abs(pressureCoefficient(shape, zone, 10, 'uplift')?.value ?? 0) + 0.18
    return 0.6 * (values.loads.planes['south']?.velocity_pressure_psf ?? 0) * size
  }

  it('seam: a clip holds its share of the clamp, the wind on its panel, and what the next clamp gives to it', () => {
    const wide = changed(
      changed(seamHouse, `${ROOF}.standing_seam.clip_spacing_in`, 36),
      'structure.mount_layout',
      'aligned',
    )
    const far = changed(wide, `${ROOF}.standing_seam.clamp_from_clip_in`, 12)
    const { values } = solved(far)
    const area = (16 / 12) * (36 / 12)
    const each = values.mounts.map((mount) => {
      const seam = values.mounts.filter((m) => m.x_in === mount.x_in)
      const above = seam.filter((m) => m.y_in > mount.y_in).toSorted((a, b) => a.y_in - b.y_in)[0]
      const below = seam.filter((m) => m.y_in < mount.y_in).toSorted((a, b) => b.y_in - a.y_in)[0]
      const given = [above, below].map((next) => {
        const apart = Math.abs((next?.y_in ?? Infinity) - mount.y_in)
        return Math.max(0, (36 - Math.abs(apart - 12)) / 36) * (next?.uplift_lb ?? 0)
      })
      return (mount.uplift_lb * 24) / 36 + suction(values, mount.zone) * area + Math.max(...given)
    })
    const check = values.checks.find(({ name }) => name === 'seam clip')
    expect(check?.demand).toBeCloseTo(Math.max(...each), 3)
    const alone = Math.max(...values.mounts.map((m) => (m.uplift_lb * 24) / 36 + suction(values, m.zone) * area))
    expect(check?.demand).toBeGreaterThan(alone + 1)
  })

  it('seam: the fixed point of a panel holds the sum of its clamps', () => {
    const { values } = solved(changed(seamHouse, 'structure.mount_layout', 'aligned'))
    const sums = new Map<number, number>()
    for (const mount of values.mounts) sums.set(mount.x_in, (sums.get(mount.x_in) ?? 0) + mount.along_lb)
    const check = values.checks.find(({ name }) => name === 'panel fixed point')
    expect(check?.demand).toBeCloseTo(Math.max(...sums.values()), 6)
    expect(Math.max(...sums.values())).toBeGreaterThan(1.5 * Math.max(...values.mounts.map((m) => m.along_lb)))
  })

  it('deck: mounts less than 24 in apart along a rafter pull on the same nails', () => {
    const zone = 'equipment.modules.m410.clamp_zone_from_corner_in'
    const near = changed(changed(deckHouse, zone, [4, 10]), 'structure.mount_layout', 'aligned')
    const { values } = solved(changed(near, `${ROOF}.sheathing.nail_spacing_in`, 3))
    const each = values.mounts.map((mount) => {
      const group = values.mounts.filter((m) => Math.abs(m.y_in - mount.y_in) < 24)
      const pull = group.reduce(
        (sum, m) => sum + m.uplift_lb * Math.max(0, 1 - Math.abs(m.x_in - mount.x_in + 8) / 16),
        0,
      )
      return pull + Math.max(...group.map((m) => suction(values, m.zone))) * (16 / 12) * 2
    })
    const check = values.checks.find(({ name }) => name === 'sheathing nails')
    expect(check?.demand).toBeCloseTo(Math.max(...each), 3)
    const alone = Math.max(...values.mounts.map((m) => m.uplift_lb / 2 + (suction(values, m.zone) * 16 * 2) / 12))
    expect(check?.demand).toBeGreaterThan(alone + 10)
  })

  it('seam: the wind on the panel counts where mounts are spaced and where each is checked', () => {
    const clip = { ...seamRoof.standing_seam, clip_screws: undefined, clip_screw_size: undefined }
    let governed = 0
    for (let clip_capacity_lb = 150; clip_capacity_lb <= 450; clip_capacity_lb += 25) {
      const house = changed(
        seamHouse,
        `${ROOF}.standing_seam`,
        JSON.parse(JSON.stringify({ ...clip, clip_capacity_lb })),
      )
      const { values } = solved(house)
      const onPanel = (zone: string) => suction(values, zone) * (16 / 12) * 2
      for (const [zone, loads] of Object.entries(values.loads.planes['south']?.zones ?? {})) {
        if (values.max_span_in[zone] === 0) continue
        const pull = 1.25 * loads.area_ft2 * loads.uplift_psf
        expect((pull * 16) / 24 + onPanel(zone)).toBeLessThanOrEqual(clip_capacity_lb + 1e-6)
      }
      for (const mount of values.mounts.filter(({ governs }) => governs === 'seam clip')) {
        governed += 1
        expect(mount.ratio * mount.capacity_lb).toBeCloseTo((mount.uplift_lb * 16) / 24 + onPanel(mount.zone), 6)
      }
    }
    expect(governed).toBeGreaterThan(20)
  })
})

describe('the load of a clamp between two rafters', () => {
  it('goes to both: all of it to one that it stands on, half to each from the middle', () => {
    const at = (first_seam_in: number) => {
      const seams = { ...seamRoof.standing_seam, seam_spacing_in: 16, first_seam_in }
      const house = houseWith(seamClamp, { ...seamRoof, standing_seam: seams, spacing_in: 16, first_offset_in: 8 })
      const { values } = solved(house)
      return Math.max(...values.rafters.filter(({ check }) => check === 'bending').map(({ ratio }) => ratio))
    }
    const [on, quarter, middle] = [at(8), at(12), at(16)]
    expect(middle).toBeLessThan(0.8 * on)
    expect(quarter).toBeLessThan(on)
    expect(quarter).toBeGreaterThan(middle)
  })
})
