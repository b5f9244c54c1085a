import { beforeAll, describe, expect, test } from 'vitest'
import { run as planRun } from '../../src/cli/commands/plan-work.js'
import type { CommandContext } from '../../src/cli/subcommand.js'
import type { WorkPlanValues } from '../../src/fieldwork/index.js'
import { INSULATION_TESTS } from '../../src/tables/fieldwork/index.js'
import { loadProject, type LoadedProject, type Project } from '../../src/project/index.js'
import type { Finding } from '../../src/worksheet/index.js'
import { microHouse, noCombiner, stringHouse } from '../drawings/demo-packet.js'

interface Plan {
  readonly values: WorkPlanValues
  readonly findings: readonly Finding[]
}

/** Files that an example refers to. */
const filesOf = new WeakMap<Project, LoadedProject['files']>()

async function planOf(project: Project): Promise<Plan> {
  const loaded = {
    project,
    files: filesOf.get(project) ?? new Map(),
    digest: '',
    warnings: [],
  } as unknown as LoadedProject
  const context: CommandContext = {
    args: ['house.yaml'],
    tool: 'gablewatt 0.0.0',
    project: async () => await Promise.resolve(loaded),
    earlier: async () => await Promise.resolve(undefined),
    subcommands: [],
    progress: () => undefined,
  }
  const outcome = await planRun(context, { cellTemperature: 25 })
  if (!('report' in outcome)) throw new Error('no report')
  return { values: outcome.report.result.values as WorkPlanValues, findings: outcome.report.result.findings }
}

const tasksOf = ({ steps }: WorkPlanValues) =>
  steps.flatMap((step, at) => step.tasks.map((task) => ({ ...task, step: step.id, state: step.state, at })))
const saysOf = (plan: Plan, id: string): string[] =>
  tasksOf(plan.values)
    .filter((task) => task.id === id)
    .map((task) => task.says)

/** String house on a breaker in the panel. */
const stringsInPanel = (): Project => {
  const house = stringHouse()
  return {
    ...house,
    electrical: {
      ...house.electrical,
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end', breaker_marked_line_load: false },
      rapid_shutdown: {
        inside_boundary: 'hazard_control_system',
        initiator: 'pv_disconnect',
        initiator_outdoors: true,
      },
    },
  }
}
const microSupplySide = (): Project => {
  const house = microHouse()
  return {
    ...house,
    electrical: {
      ...house.electrical,
      connection: {
        kind: 'supply_side',
        overcurrent_device_distance_ft: 6,
        conductor_size: '6',
        conductor_material: 'copper',
      },
    },
  }
}
const withSkylight = (): Project => {
  const house = microHouse()
  const south = house.roof_planes['south']
  if (south === undefined) throw new Error('no plane')
  const light = {
    kind: 'skylight' as const,
    x_ft: 34,
    y_ft: 3,
    width_ft: 2,
    length_ft: 3,
    height_ft: 0.4,
    clearance_in: 6,
  }
  return { ...house, roof_planes: { south: { ...south, obstructions: { ...south.obstructions, bath: light } } } }
}
const edition2011 = (): Project => ({ ...microHouse(), codes: { ...microHouse().codes, electrical: 'NEC 2011' } })
const unwired = (): Project => {
  const { electrical: _, ...house } = stringHouse()
  return house
}
const both = (): Project => {
  const [house, micro] = [unwired(), microHouse()]
  const [south, other] = [house.arrays['south'], micro.arrays['south']]
  if (south === undefined || other === undefined) throw new Error('no array')
  const { structure: _, ...bare } = house
  const { arrangement: _south, ...strings } = south
  const { arrangement: _other, ...few } = other
  return {
    ...bare,
    equipment: { ...house.equipment, inverters: { ...house.equipment.inverters, ...micro.equipment.inverters } },
    arrays: { south: strings, few: { ...few, modules: 2 } },
  }
}
const example = (name: string) => (): Project => {
  const { project, files } = loadProject({
    path: new URL(`../../examples/${name}.yaml`, import.meta.url).pathname,
  })
  filesOf.set(project, files)
  return project
}

/** What is true of each kind of system; written here by hand, not asked of the program. */
const kinds = [
  {
    name: 'module-level inverters on a combiner',
    make: microHouse,
    micro: true,
    strings: false,
    supply: false,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'module-level inverters, breakers in the panel',
    make: noCombiner,
    micro: true,
    strings: false,
    supply: false,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'module-level inverters ahead of the main',
    make: microSupplySide,
    micro: true,
    strings: false,
    supply: true,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'module-level inverters with a skylight',
    make: withSkylight,
    micro: true,
    strings: false,
    supply: false,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'module-level inverters by an edition without rapid shutdown',
    make: edition2011,
    micro: true,
    strings: false,
    supply: false,
    units: false,
    shutdown: false,
    steep: true,
    wired: true,
  },
  {
    name: 'strings with shutdown units ahead of the main',
    make: stringHouse,
    micro: false,
    strings: true,
    supply: true,
    units: true,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'strings on a breaker in the panel',
    make: stringsInPanel,
    micro: false,
    strings: true,
    supply: false,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'strings without an electrical part',
    make: unwired,
    micro: false,
    strings: true,
    supply: false,
    units: false,
    shutdown: false,
    steep: true,
    wired: false,
  },
  {
    name: 'the demo house',
    make: example('lark-hollow'),
    micro: true,
    strings: false,
    supply: false,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'the demo house with strings',
    make: example('harbor-point'),
    micro: false,
    strings: true,
    supply: true,
    units: false,
    shutdown: true,
    steep: true,
    wired: true,
  },
  {
    name: 'both kinds, without an electrical part',
    make: both,
    micro: true,
    strings: true,
    supply: false,
    units: false,
    shutdown: false,
    steep: true,
    wired: false,
  },
] as const
type Kind = (typeof kinds)[number]

/** Every task of safety and of a test, with the systems that have it. */
const WHEN: Readonly<Record<string, (kind: Kind) => boolean>> = {
  'safety.weather-stop': () => true,
  'safety.fall-protection': () => true,
  'safety.steep-roof': (kind) => kind.steep,
  'safety.anchor': () => true,
  'safety.rescue': () => true,
  'safety.ladder': () => true,
  'safety.ladder-climb': () => true,
  'safety.holes': () => true,
  'safety.overhead-lines': () => true,
  'safety.below': () => true,
  'lock-out.sources': () => true,
  'lock-out.breaker': () => true,
  'lock-out.main': (kind) => !kind.supply,
  'lock-out.utility': (kind) => kind.supply,
  'lock-out.capacitors': () => true,
  'absence.prove': () => true,
  'absence.again': () => true,
  'absence.light': () => true,
  'modules.no-stack': () => true,
  'strings.open': (kind) => kind.strings,
  'terminations.prove-dead': () => true,
  'terminations.dc-run': (kind) => kind.strings,
  'test.visual': () => true,
  'test.ac-circuits': () => true,
  'test.bonding': () => true,
  'test.dc-run': (kind) => kind.strings,
  'test.string-care': (kind) => kind.strings,
  'test.shutdown-units': (kind) => kind.units,
  'test.polarity': (kind) => kind.strings,
  'test.voc': (kind) => kind.strings,
  'test.voc-alike': (kind) => kind.strings,
  'test.isc': (kind) => kind.strings,
  'test.insulation': (kind) => kind.strings,
  'strings.switch-off': (kind) => kind.strings,
  'strings.last-connection': (kind) => kind.strings,
  'strings.at-switch': (kind) => kind.strings,
  'inspection.rapid-shutdown': (kind) => kind.shutdown,
  'permission.wait': () => true,
  'permission.no-test': () => true,
  'on.order': () => true,
  'on.ac-voltage': () => true,
  'on.string-current': (kind) => kind.strings,
  'on.module-voltage': (kind) => kind.micro,
  'on.ac-current': (kind) => kind.wired,
  'on.loss-of-mains': () => true,
  'on.rapid-shutdown': (kind) => kind.shutdown,
  'on.energy': () => true,
  'on.switch-off-order': () => true,
}

describe.each(kinds)('the plan of $name', (kind) => {
  let plan: Plan
  beforeAll(async () => {
    plan = await planOf(kind.make())
  }, 60_000)
  const first = (id: string): number => tasksOf(plan.values).findIndex((task) => task.id === id)
  const last = (id: string): number => tasksOf(plan.values).findLastIndex((task) => task.id === id)

  test('has each task of safety and of a test exactly where its condition holds', () => {
    const present = new Set(tasksOf(plan.values).flatMap((task) => (task.id === '' ? [] : [task.id])))
    expect([...present].sort()).toEqual(
      Object.entries(WHEN)
        .filter(([, holds]) => holds(kind))
        .map(([id]) => id)
        .sort(),
    )
    for (const task of tasksOf(plan.values)) {
      if (task.id !== '') expect(task.says.length, task.id).toBeGreaterThan(10)
      expect(task.says).not.toMatch(/undefined|NaN|Infinity|null/u)
    }
  })

  test('nothing that needs the system on stands before the written permission', () => {
    const { steps } = plan.values
    const permission = steps.findIndex((step) => step.id === 'finish.permission')
    expect(permission).toBeGreaterThan(0)
    for (const [at, step] of steps.entries()) {
      if (step.state === 'on_after_permission') expect(at, step.id).toBeGreaterThan(permission)
      else expect(at, step.id).toBeLessThanOrEqual(permission)
    }
    for (const task of tasksOf(plan.values)) {
      if (task.id.startsWith('on.')) expect(task.state, task.id).toBe('on_after_permission')
      if (task.at > permission) continue
      // Words of measuring something that runs.
      expect(task.says).not.toMatch(/full sun|operating current of|shown working|AC between the lines|switch on:/u)
    }
    for (const id of Object.keys(WHEN).filter((each) => each.startsWith('on.')))
      if (first(id) >= 0) expect(first(id), id).toBeGreaterThan(first('permission.wait'))
  })

  test('absence of voltage is proved after the lock-out and before any work on wires, and again in the panel', () => {
    for (const id of [
      'lock-out.sources',
      'lock-out.breaker',
      'lock-out.main',
      'lock-out.utility',
      'lock-out.capacitors',
    ])
      expect(last(id), id).toBeLessThan(first('absence.prove'))
    const { steps } = plan.values
    const at = (id: string) => steps.findIndex((step) => step.id === id)
    for (const id of ['roof.bonding', 'roof.raceway', 'equipment.inverters', 'equipment.terminations', 'test.dead'])
      expect(at('before.prove-dead'), id).toBeLessThan(at(id))
    expect(steps[at('equipment.terminations')]?.tasks[0]?.id).toBe('terminations.prove-dead')
    expect(steps[at('before.prove-dead')]?.stop).not.toBeNull()
    // No step is said to be dead before that is proved.
    for (const [index, step] of steps.entries())
      expect(step.state === 'not_proved_dead', step.id).toBe(index <= at('before.prove-dead'))
  })

  test('dead tests come before the strings’, and strings stay open until everything about them is right', () => {
    const { steps } = plan.values
    expect(first('test.bonding')).toBeGreaterThan(first('terminations.prove-dead'))
    expect(steps.some((step) => step.id === 'test.strings')).toBe(kind.strings)
    if (!kind.strings) return
    const order = [
      'strings.open',
      'test.dc-run',
      'test.polarity',
      'test.voc',
      'test.isc',
      'test.insulation',
      'strings.switch-off',
      'strings.last-connection',
      'strings.at-switch',
      'permission.wait',
    ]
    expect(order.map(first)).toEqual(order.map(first).toSorted((a, b) => a - b))
    for (const task of tasksOf(plan.values)) {
      const open = task.id === 'strings.open' || task.id.startsWith('test.')
      if (open) expect(task.state, task.id).toBe('open_strings_live')
      if (task.id !== 'strings.open' && task.id !== 'strings.last-connection' && task.id !== '')
        expect(task.says, task.id).not.toMatch(/are the ends of each string joined/u)
    }
    expect(steps.find((step) => step.id === 'finish.final-inspection')?.state).toBe('closed_strings_off')
  })

  test('every figure names its source, and no warning line or monitor is offered', () => {
    for (const task of tasksOf(plan.values)) if (task.id !== '' && kind.wired) expect(task.source, task.id).not.toBe('')
    const all = JSON.stringify(plan.values.steps)
    expect(all).not.toMatch(/warning line|safety monitor/iu)
    expect(saysOf(plan, 'safety.fall-protection')[0]).toMatch(
      /6 ft or more .* guardrail, a net or personal fall arrest/u,
    )
  })

  test('rapid shutdown is shown at work before the permission only with the consent of the utility', () => {
    if (!kind.shutdown) return
    expect(saysOf(plan, 'inspection.rapid-shutdown')[0]).toMatch(
      /with the system off\. .* before permission needs the written consent of/u,
    )
  })
})

describe('figures of the tests', () => {
  const string = (modules: number, voc: number, maxV: number | undefined): Project => {
    const house = stringHouse()
    const south = house.arrays['south']
    const { max_system_voltage_v: _, ...m410 } = house.equipment.modules?.['m410'] ?? {
      pmax_w: 410,
      pmax_temp_coeff_pct_per_c: -0.3,
    }
    if (south === undefined) throw new Error('no array')
    const module = { ...m410, voc_v: voc, ...(maxV === undefined ? {} : { max_system_voltage_v: maxV }) }
    const { electrical: _electrical, structure: _structure, ...bare } = house
    const { arrangement: _arrangement, ...array } = south
    return {
      ...bare,
      equipment: { ...house.equipment, modules: { m410: module } },
      arrays: { south: { ...array, strings: [{ modules, inverter_unit: 'garage', input: 1 }] } },
    }
  }

  // IEC 62446-1 by an instrument maker's poster: 1.25 x Voc up to the voltage, test voltage, least megohms.
  test.each([
    ['above 500 V: 11 x 49.5 V', 11, 49.5, 1500, 680.625, 1000, 1],
    ['exactly 500 V', 10, 40, 1500, 500, 500, 1],
    ['just above 500 V', 10, 40.1, 1500, 501.25, 1000, 1],
    ['exactly 120 V', 2, 48, 1500, 120, 500, 1],
    ['below 120 V', 2, 47, 1500, 117.5, 250, 0.5],
    ['exactly 1000 V', 16, 50, 1500, 1000, 1000, 1],
    ['above 1000 V', 17, 50, 1500, 1062.5, 1500, 1],
    ['above 1000 V, modules of 1000 V', 17, 50, 1000, 1062.5, 1000, 1],
    ['older modules of 600 V', 11, 49.5, 600, 680.625, 500, 1],
  ] as const)('insulation, %s', async (_, modules, voc, maxV, raised, testV, least) => {
    const plan = await planOf(string(modules, voc, maxV))
    const [value] = plan.values.insulation
    expect(value?.raised_voc_v).toBeCloseTo(raised, 6)
    expect([value?.test_v, value?.least_mohm]).toEqual([testV, least])
    const says = saysOf(plan, 'test.insulation').join('\n')
    expect(says).toContain(`test with ${testV} V`)
    expect(says).toContain(`at least ${least} Mohm`)
    expect(says.includes('below the')).toBe((value?.table_test_v ?? 0) > testV)
    if (value?.max_system_v !== null) expect(value?.test_v ?? 0).toBeLessThanOrEqual(value?.max_system_v ?? 0)
  })

  test('the table of insulation tests is that of the source', () => {
    // below 120: 250 V, 0.5; 120 to 500: 500 V, 1; above 500 to 1000: 1000 V, 1; above 1000: 1500 V, 1 Mohm.
    expect(INSULATION_TESTS.map((row) => [row.upToV, row.testV, row.leastMohm])).toEqual([
      [120, 250, 0.5],
      [500, 500, 1],
      [1000, 1000, 1],
      [Number.POSITIVE_INFINITY, 1500, 1],
    ])
  })

  test('without the limit of the modules there is no test voltage, and that is told', async () => {
    const plan = await planOf(string(11, 49.5, undefined))
    expect(plan.values.insulation[0]?.test_v).toBeNull()
    expect(saysOf(plan, 'test.insulation').join('\n')).toContain('NO TEST')
    const finding = plan.findings.find((each) => each.id === 'work.insulation-voltage-unknown')
    expect([finding?.severity, finding?.where]).toEqual(['warning', 'equipment.modules.m410.max_system_voltage_v'])
  })

  test('the range of an open voltage keeps a string with a module fewer out', async () => {
    for (const modules of [4, 8, 11, 16]) {
      const plan = await planOf(string(modules, 49.5, 1500))
      const reading = plan.values.readings.find((each) => each.modules === modules)
      const full = modules * 49.5
      expect(reading?.voc_v).toBeCloseTo(full, 9)
      expect(reading?.low_v).toBeCloseTo(full - Math.min(0.05 * full, 24.75), 9)
      expect(reading?.high_v).toBeCloseTo(full + Math.min(0.05 * full, 24.75), 9)
      expect(reading?.one_module_less_v ?? 0).toBeLessThan(reading?.low_v ?? 0)
    }
  })

  test('currents of a string by the light', async () => {
    const plan = await planOf(stringHouse())
    // M410: Isc 13.87 A, Imp 13.02 A; at 800 W/m2 11.10 A and 10.42 A.
    expect(saysOf(plan, 'test.isc').join('\n')).toMatch(
      /string 1 of array south: 13\.87 A x G \/ 1000 W\/m2 .*11\.10 A at 800 W\/m2/u,
    )
    expect(saysOf(plan, 'on.string-current').join('\n')).toMatch(
      /string 2 of array south: about 13\.02 A x G \/ 1000 W\/m2, 10\.42 A at 800/u,
    )
  })

  test('the ladder by the height of the eave: foot a quarter of its length, 3 ft above the eave', async () => {
    // Eave at 10 ft: L = 10 / sqrt(1 - 1/16) = 10.33 ft, foot 2.58 ft out; 3 ft above the eave 13.43 ft of ladder.
    const says = saysOf(await planOf(microHouse()), 'safety.ladder').join('\n')
    expect(says).toContain('foot out by a quarter of its working length (1:4), rails 3 ft above the eave')
    expect(says).toContain(
      'south: eave at 10 ft, so 10.3 ft of working length, foot 2.6 ft out, ladder at least 13.5 ft long',
    )
  })

  test('skylights of the project are named among what is covered', async () => {
    expect(saysOf(await planOf(withSkylight()), 'safety.holes')[0]).toMatch(
      /skylights \(south: bath\).* 2 times the weight .* marked HOLE or COVER/u,
    )
  })

  test('limits: bonding, overhead lines, wind, anchor, loss of mains, rapid shutdown', async () => {
    const plan = await planOf(stringHouse())
    const says = (id: string): string => saysOf(plan, id).join('\n')
    expect(says('test.bonding')).toMatch(
      /at least 200 mA.* 1 ohm at most is usual, aim at 0\.1 ohm more than the wire/u,
    )
    expect(says('safety.overhead-lines')).toContain('keep 10 ft away (up to 50 kV')
    expect(says('safety.weather-stop')).toContain('25 mph')
    expect(says('safety.anchor')).toContain('5,000 lb')
    expect(says('on.loss-of-mains')).toMatch(/stops within 2 s; .*300 s/u)
    expect(says('on.rapid-shutdown')).toMatch(/30 V or less within 30 s/u)
    expect(says('on.energy')).toMatch(/10 min of steady light above 400 W\/m2/u)
    expect(says('strings.at-switch')).toContain('below 0.5 A')
    const early = { ...stringHouse(), codes: { ...stringHouse().codes, electrical: 'NEC 2014' as const } }
    expect(saysOf(await planOf(early), 'on.rapid-shutdown')[0]).toContain('within 10 s')
  })
})
