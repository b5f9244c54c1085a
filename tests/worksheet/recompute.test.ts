import { beforeAll, describe, expect, it } from 'vitest'
import { workLines } from '../../src/cli/output/work.js'
import { sizeWire } from '../../src/electrical/index.js'
import { runHouse, type House } from '../../src/house/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import type { Step } from '../../src/worksheet/index.js'
import { context, microProject, stringProject } from '../electrical/demo.js'
import { evaluate, quantity, type Printed } from './evaluate.js'

/** Formulas of the wiring that are words, and why nothing can be put into them. */
const WORDS: Readonly<Record<string, string>> = {
  'from the fewest to the most modules': 'a range; its ends are worked out before it',
  'factor from the row of the table at or below T_min': 'a row of a table',
  'smallest standard rating >= I_req, or a larger one that is stated': 'a choice from a list of ratings',
  'fuses from 3 strings in parallel on': 'a count decides, nothing is worked out',
  'ampacity >= device and >= the smallest service': 'a rule; the ampacity is worked out where the size is',
  'C_a from the table': 'a row of a table, which is named',
  'C_n from the table': 'a row of a table, which is named',
  'device <= ampacity or the next standard size above it; small conductors have their own limit': 'a rule with cases',
  'smallest size that passes every test in every piece of the conductor': 'a choice from a list of sizes',
  'size from the table; area x (increased / needed) when voltage rise or a wish increases them; never above the circuit conductors':
    'a row of a table; the increase is worked out before it',
  'within the distance from each box or fitting, and at most the spacing apart': 'places, told one by one',
  'at least the table size; at least 6 AWG where it is exposed': 'a row of a table',
  'rod conductor need not exceed 6 AWG copper': 'a rule',
  'size from Table 250.102(C)(1)': 'a row of a table',
  'within the distance from each box or fitting, and at most the spacing apart; no more than 18 in of cable between entry and first support':
    'places, told one by one',
  'the place by the article of the method': 'a rule; nothing is worked out',
  'I_z and I_terminal <= I_column': 'a row of a table, which both are held to',
  'size from Table 250.66': 'a row of a table',
  'size from Table 250.66; to a rod at most 6 AWG, to a concrete-encased electrode at most 4 AWG': 'a row of a table',
  '100 A <= R': 'a rule; both numbers stand in it and beside it',
  'sum of all breakers but the main <= B, and M <= B': 'a sum over the breakers of the panel, which the project lists',
  'study of fault current and busbar load': 'nothing is worked out',
  'busbar by another method or without loads; feed-through conductors and panel behind them >= M + 1.25 x I, or a device that protects both':
    'a rule with cases',
  'controlled conductors at or below the limit': 'a rule',
}

const meets = (a: Printed, b: Printed): boolean => a.least <= b.most + 1e-12 && b.least <= a.most + 1e-12

/** What is wrong with a step as it is printed; '' when its numbers give its result. */
function faultOf(step: Step): string {
  const { numbers, written, result, check } = workLines(step)
  const [, value = ''] = result.split(' = ')
  if (check !== undefined && typeof step.result.value === 'number') {
    const [, left = '', relation = '', right = '', verdict = ''] = /^(\S+) (<=|>=) ([^:]*): (\w+)$/u.exec(check) ?? []
    const [a, b] = [Number(left), Number(right.split(' ')[0])]
    // At the same printed digits either is possible.
    if (a !== b && (relation === '<=' ? a <= b : a >= b) !== (verdict === 'holds')) return `check: ${check}`
  }
  if (numbers === undefined) return ''
  const relation = /<=|>=/u.exec(numbers)?.[0]
  if (relation !== undefined) {
    const [left, right] = numbers.split(relation).map(evaluate)
    if (left === undefined || right === undefined || !meets(left, quantity(value))) return `${numbers}; ${result}`
    const holds = relation === '<=' ? left.value <= right.value * (1 + 1e-9) : left.value >= right.value * (1 - 1e-9)
    return check !== undefined && check.includes(` ${relation} `) && holds !== check.endsWith('holds')
      ? `${numbers}: ${check}`
      : ''
  }
  if (!written.join(' ').includes(numbers)) return `not printed: ${numbers}`
  return meets(evaluate(numbers), quantity(value)) ? '' : `${written.join('; ')}, but ${evaluate(numbers).value}`
}

/** Inputs that name an earlier step and have another value than it. */
function brokenLinks(steps: readonly Step[]): string[] {
  const byId = new Map(steps.map((step) => [step.id, step]))
  return steps.flatMap((step) =>
    step.inputs.flatMap(({ symbol, value, from }) => {
      const other = byId.get(from)?.result.value
      return other === undefined || typeof value !== typeof other || value === other
        ? []
        : [`${step.id}: ${symbol} = ${value}, but ${from} gives ${other}`]
    }),
  )
}

const wordsOf = (steps: readonly Step[]): string[] => [
  ...new Set(steps.filter((step) => workLines(step).numbers === undefined).map(({ formula }) => formula)),
]
const houseOf = (name: string): House => {
  const loaded = loadProject({ path: new URL(`../../examples/${name}.yaml`, import.meta.url).pathname })
  return runHouse({ ...loaded, project: countFitted(loaded.project) })
}

describe.each(['lark-hollow', 'harbor-point'])(
  'every printed step of %s gives its result from its printed numbers',
  (name) => {
    let steps: readonly Step[]
    beforeAll(async () => {
      steps = (await houseOf(name).wire()).worksheet
    })

    it('wiring: all of it, but for formulas that are words', () => {
      expect(steps.length).toBeGreaterThan(100)
      expect(steps.map(faultOf).filter((fault) => fault !== '')).toEqual([])
      expect(wordsOf(steps).filter((formula) => !(formula in WORDS) && !formula.startsWith('T_'))).toEqual([])
      const recomputed = steps.filter((step) => workLines(step).numbers !== undefined)
      expect(recomputed.length / steps.length).toBeGreaterThan(0.55)
    })

    it('wiring: an input that names a step has its value', () => {
      expect(brokenLinks(steps)).toEqual([])
    })

    it('each circuit: currents, factors, rise, areas, as an inspector asks for them', () => {
      const ids = steps.filter((step) => workLines(step).numbers !== undefined).map(({ id }) => id)
      for (const end of [
        '.current',
        '.required',
        '.conditions',
        '.impedance',
        '.rise',
        '.areas',
        '.fill',
        '.voc-factor',
      ])
        expect(
          ids.some((id) => id.endsWith(end)),
          end,
        ).toBe(true)
      for (const step of steps.filter(({ id }) => id.endsWith('.device')))
        for (const { symbol, value } of step.inputs)
          if (symbol === 'I_req') expect(Number(step.result.value), step.id).toBeGreaterThanOrEqual(Number(value))
    })

    it.each(name === 'lark-hollow' ? (['roof', 'yield', 'payback', 'mounts'] as const) : (['roof', 'bill'] as const))(
      '%s: every formula that is mathematics',
      async (stage) => {
        const { worksheet } = await houseOf(name)[stage]()
        expect(worksheet.map(faultOf).filter((fault) => fault !== '')).toEqual([])
        if (stage !== 'roof') expect(worksheet.some((step) => workLines(step).numbers !== undefined)).toBe(true)
      },
    )
  },
)

const LOAD = {
  method: 'optional_new',
  floor_area_ft2: 2000,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
  appliances: { range: { kind: 'range', rating_w: 12_000 } },
  cooling: { ac: { current_a: 20, voltage_v: 240 } },
  heating: {},
} as const

const withCable = (): Project =>
  microProject({
    runs: {
      ...microProject().electrical?.runs,
      home: {
        carries: ['branches'],
        segments: { hall: { location: 'indoors', ambient_c: 30, length_ft: 20, raceway: 'NM' } },
      },
    },
  })

describe('houses made for it', () => {
  const rise = (project: Project): Project => ({
    ...project,
    electrical: { ...project.electrical, power_factor: 0.9, voltage_rise_limit_pct: 1, dc_voltage_drop_limit_pct: 0.5 },
  })

  it.each([
    ['module-level inverters', microProject()],
    ['strings', stringProject()],
    ['a load calculation', microProject({ load_calculation: LOAD })],
    ['a cable whose column holds its ampacity', withCable()],
    ['inverters off unity, runs enlarged', rise(microProject())],
    ['strings with little drop', rise(stringProject())],
  ])('%s, by every edition: what is printed gives what is printed', (_, project) => {
    for (const edition of ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023', 'NEC 2026'])
      for (const lowC of [-12, 30]) {
        const { worksheet } = sizeWire(project, { ...context(38, lowC), edition })
        expect(worksheet.map(faultOf).filter((fault) => fault !== '')).toEqual([])
        expect(brokenLinks(worksheet)).toEqual([])
        expect(wordsOf(worksheet).filter((formula) => !(formula in WORDS) && !/PV breakers/u.test(formula))).toEqual([])
      }
  })

  it('the ground grows with the conductors, by areas in circular mils', () => {
    const { worksheet } = sizeWire(rise(microProject()), context())
    const growth = worksheet.filter(({ id }) => id.endsWith('.ground-growth'))
    expect(growth.length).toBeGreaterThan(0)
    for (const step of growth)
      expect(workLines(step).written[0]).toMatch(/^A = A_table x A_used \/ A_needed = \d+ cmil x /)
  })

  it('an inverter off unity: resistance and reactance both count', () => {
    const { worksheet } = sizeWire(rise(microProject()), context())
    const step = worksheet.find(({ id }) => id.endsWith('.impedance'))
    expect(step && workLines(step).written[0]).toMatch(
      /^Z = R x pf \+ X x sqrt\(1 - pf\^2\) = [\d.]+ ohm\/kft x 0\.9 \+ [\d.]+ ohm\/kft x sqrt\(1 - 0\.9\^2\) = [\d.]+ ohm\/kft$/,
    )
  })
})
