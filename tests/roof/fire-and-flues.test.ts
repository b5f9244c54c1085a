import { describe, expect, test } from 'vitest'
import { arrangeModules, fireClassFindings } from '../../src/roof/index.js'
import type { Obstruction, Project } from '../../src/project/index.js'
import { roofProject } from './roof-project.js'

const GABLE = { shape: 'rectangle', width_ft: 30, depth_ft: 16 } as const
const BLOCK = {
  arrangement: { blocks: { main: { orientation: 'portrait', rows: 1, columns: 2, x_ft: 10, y_ft: 2 } } },
} as const

type Rack = NonNullable<NonNullable<NonNullable<Project['equipment']['rails']>[string]>['fire']>
const RACK: Rack = { class: 'A', module_types: [1, 2], least_slope_in_12: 2, listing: 'L-4411 (invented)' }

interface Case {
  readonly required?: 'A' | 'B' | 'C' | 'none' | undefined
  readonly residential?: 'IRC 2018' | 'IRC 2021' | 'IFC 2015' | undefined
  readonly fireType?: number | undefined
  readonly rack?: Rack | undefined
  readonly covering?: 'tile' | 'asphalt_shingle'
  readonly tiltDeg?: number
}

function fireFindings(given: Case) {
  const { required, residential, fireType, rack, covering, tiltDeg = 30 } = given
  const project = roofProject({ outline: GABLE, tilt_deg: tiltDeg }, BLOCK, {
    ...(residential === undefined ? {} : { codes: { residential } }),
    ...(required === undefined ? {} : { roof_access: { required_fire_class: required } }),
    equipment: {
      modules: {
        m: {
          pmax_w: 400,
          pmax_temp_coeff_pct_per_c: -0.34,
          length_in: 60,
          width_in: 36,
          ...(fireType === undefined ? {} : { fire_type: fireType }),
        },
      },
      rails: { r: rack === undefined ? {} : { fire: rack } },
    },
    structure: { rail: 'r', framing: { south: covering === undefined ? {} : { covering } } },
  })
  return fireClassFindings(project)
}

const sound: Case = { required: 'A', fireType: 1, rack: RACK }

describe('the fire class of modules and rack', () => {
  test('passes when the listing has class, module type and slope', () => {
    expect(fireFindings(sound)).toEqual([])
    expect(fireFindings({ ...sound, required: 'B' })).toEqual([])
    expect(fireFindings({ ...sound, required: 'C', rack: { ...RACK, class: 'C' } })).toEqual([])
  })

  test.each([
    ['a lower class', { rack: { ...RACK, class: 'B' } }, /listed with class B; the roof must have class A/u],
    ['the lowest class', { required: 'B', rack: { ...RACK, class: 'C' } }, /listed with class C/u],
    ['another module type', { fireType: 10 }, /does not cover modules of fire type 10/u],
    ['too flat a roof', { tiltDeg: 8 }, /starts at a slope of 2 in 12, the roof has 1.7 in 12/u],
    [
      'another covering',
      { rack: { ...RACK, roof_coverings: ['tile'] }, covering: 'asphalt_shingle' },
      /asphalt shingle/u,
    ],
  ] as const)('fails with %s', (_, change, message) => {
    const findings = fireFindings({ ...sound, ...change } as Case)
    expect(findings.map(({ id, severity }) => [id, severity])).toEqual([['roof.fire-class', 'error']])
    expect(findings[0]?.message).toMatch(message)
  })

  test('the slope and covering at the limit pass', () => {
    const atTwo = (Math.atan(2 / 12) * 180) / Math.PI
    expect(fireFindings({ ...sound, tiltDeg: atTwo })).toEqual([])
    expect(fireFindings({ ...sound, covering: 'tile', rack: { ...RACK, roof_coverings: ['tile'] } })).toEqual([])
  })

  test.each([
    ['fire type', { fireType: undefined }, 'equipment.modules.m.fire_type'],
    ['rack', { rack: undefined }, 'equipment.rails.r.fire'],
    ['class', { rack: { module_types: [1], listing: 'L' } }, 'equipment.rails.r.fire.class'],
    ['types', { rack: { class: 'A', listing: 'L' } }, 'equipment.rails.r.fire.module_types'],
    ['listing', { rack: { class: 'A', module_types: [1] } }, 'equipment.rails.r.fire.listing'],
    ['covering', { rack: { ...RACK, roof_coverings: ['tile'] } }, 'structure.framing.south.covering'],
  ] as const)('a missing %s is an error and nothing is taken for it', (_, change, where) => {
    const findings = fireFindings({ ...sound, ...change } as Case)
    expect(findings.map(({ id, severity, where: at }) => [id, severity, at])).toEqual([
      ['roof.fire-class-not-checked', 'error', where],
    ])
  })

  test('before a rail is chosen the rack is asked for, no more', () => {
    const project = roofProject({ outline: GABLE }, BLOCK, { roof_access: { required_fire_class: 'A' } })
    const found = fireClassFindings(project).filter(({ where }) => where === 'structure.rail')
    expect(found.map(({ id, severity }) => [id, severity])).toEqual([['roof.fire-class-not-checked', 'warning']])
  })

  test('a class that nobody stated: an error by the residential code, asked by the fire code, not asked without one', () => {
    const severities = (given: Case) => fireFindings(given).map(({ id, severity }) => [id, severity])
    for (const residential of ['IRC 2018', 'IRC 2021'] as const) {
      expect(severities({ residential })).toEqual([['roof.fire-class-not-stated', 'error']])
    }
    expect(severities({ residential: 'IFC 2015' })).toEqual([['roof.fire-class-not-stated', 'warning']])
    expect(severities({})).toEqual([])
    expect(severities({ residential: 'IRC 2021', required: 'none' })).toEqual([])
  })
})

const BOX: Obstruction = { x_ft: 20, y_ft: 3, width_ft: 1, length_ft: 1, height_ft: 2 }

/** Findings with one thing on the roof; the two modules lie from 10 to about 16 ft. */
function roofWith(box: Partial<Obstruction>) {
  const project = roofProject({ outline: GABLE, obstructions: { pipe: { ...BOX, ...box } } }, BLOCK)
  const { findings, assumptions, values } = arrangeModules(project)
  const right = Math.max(...values.modules.map((module) => module.xFt + module.widthFt))
  return { ids: findings.map(({ id, severity }) => `${severity} ${id}`), findings, assumptions, right }
}

describe('flues and inlets of combustion air', () => {
  test.each(['flue', 'combustion_air'] as const)('%s without a clearance is an error, and none is taken', (kind) => {
    const { ids, assumptions } = roofWith({ kind })
    expect(ids).toContain('error roof.flue-clearance-not-stated')
    expect(assumptions.map(({ path }) => path)).not.toContain('roof_planes.south.obstructions.pipe.clearance_in')
  })

  test('what serves an appliance is one too, whatever it is called', () => {
    for (const kind of ['vent', 'chimney', 'other'] as const) {
      expect(roofWith({ kind, serves_appliance: true }).ids).toContain('error roof.flue-clearance-not-stated')
    }
  })

  test('a module over it, or nearer than its clearance, is an error that says why', () => {
    const over = roofWith({ kind: 'flue', clearance_in: 12, x_ft: 11 })
    expect(over.ids).toContain('error roof.module-near-flue')
    expect(over.findings.find(({ id }) => id === 'roof.module-near-flue')?.message).toMatch(
      /lies over .* carbon monoxide/u,
    )
    expect(roofWith({ kind: 'flue', x_ft: 11 }).ids).toContain('error roof.module-near-flue')
    const { right } = over
    const near = roofWith({ kind: 'flue', clearance_in: 12, x_ft: right + 11.9 / 12 })
    expect(near.findings.find(({ id }) => id === 'roof.module-near-flue')?.message).toMatch(
      /is 11.9 in from 'pipe', where 12 in/u,
    )
    const far = roofWith({ kind: 'flue', clearance_in: 12, x_ft: right + 1 })
    expect(far.ids).not.toContain('error roof.module-near-flue')
    expect(far.ids).toContain('note roof.flue-wiring-not-checked')
  })

  test('a larger clearance never clears a module', () => {
    const { right } = roofWith({})
    let wasNear = false
    for (let clearance_in = 0; clearance_in <= 48; clearance_in += 4) {
      const isNear = roofWith({ kind: 'flue', clearance_in, x_ft: right + 2 }).ids.includes(
        'error roof.module-near-flue',
      )
      expect(isNear || !wasNear).toBe(true)
      wasNear = isNear
    }
    expect(wasNear).toBe(true)
  })

  test('a vent or chimney of unknown use is asked about; what is known is not', () => {
    for (const kind of ['vent', 'chimney'] as const) {
      expect(roofWith({ kind }).ids).toContain('warning roof.vent-use-not-stated')
      expect(roofWith({ kind, serves_appliance: false }).ids).not.toContain('warning roof.vent-use-not-stated')
    }
    for (const kind of ['plumbing_vent', 'exhaust_vent', 'attic_vent', 'skylight', 'other'] as const) {
      expect(roofWith({ kind }).ids.filter((id) => /flue|vent-use/u.test(id))).toEqual([])
    }
  })
})
