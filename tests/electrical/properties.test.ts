import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { compareSizes } from './compare-sizes.js'
import { sizeWire, type CircuitValues, type WiringValues } from '../../src/electrical/index.js'
import type { Project, WiringSegment } from '../../src/project/index.js'
import { StageError, type Result } from '../../src/worksheet/index.js'
import { editions, tradeSizes } from '../../src/tables/nec/index.js'
import { context, microProject, stringProject } from './demo.js'

/** What the properties vary. */
interface Case {
  readonly edition: string
  readonly inverters: number
  readonly inverterA: number
  /** Undefined: by the spacing of the connectors. */
  readonly trunkFt: number | undefined
  readonly highC: number
  readonly roofFt: number
  readonly wallFt: number
  readonly heightIn: number
  readonly others: number
  readonly raceway: 'EMT' | 'PVC 40' | 'PVC 80' | 'LFNC' | 'RMC'
  readonly insulation: 'THWN-2' | 'XHHW-2'
  readonly material: 'copper' | 'aluminum'
  readonly risePct: number
}

const cases: fc.Arbitrary<Case> = fc.record({
  edition: fc.constantFrom(...editions),
  inverters: fc.integer({ min: 1, max: 12 }),
  inverterA: fc.double({ min: 0.7, max: 1.25, noNaN: true }),
  trunkFt: fc.option(fc.double({ min: 5, max: 300, noNaN: true }), { nil: undefined }),
  highC: fc.double({ min: 5, max: 48, noNaN: true }),
  roofFt: fc.double({ min: 0.5, max: 120, noNaN: true }),
  wallFt: fc.double({ min: 0.5, max: 120, noNaN: true }),
  heightIn: fc.double({ min: 0, max: 40, noNaN: true }),
  others: fc.integer({ min: 0, max: 12 }),
  raceway: fc.constantFrom('EMT', 'PVC 40', 'PVC 80', 'LFNC', 'RMC'),
  insulation: fc.constantFrom('THWN-2', 'XHHW-2'),
  material: fc.constantFrom('copper', 'aluminum'),
  risePct: fc.constantFrom(2, 3, 5, 10),
})

function projectOf(c: Case): Project {
  const common = { raceway: c.raceway, insulation: c.insulation, material: c.material }
  const roof: WiringSegment = {
    ...common,
    location: 'roof',
    length_ft: c.roofFt,
    height_above_roof_in: c.heightIn,
    other_conductors: { current_carrying: c.others, area_in2: c.others * 0.0211 },
  }
  const project = microProject(
    {
      branches: {
        b1: {
          modules: { south: c.inverters },
          feed: 'end',
          ...(c.trunkFt === undefined ? {} : { trunk_length_ft: c.trunkFt }),
        },
      },
      voltage_rise_limit_pct: c.risePct,
      runs: {
        home: {
          carries: ['b1'],
          segments: { roof, wall: { ...common, location: 'outdoor_wall', length_ft: c.wallFt } },
        },
        to_panel: {
          carries: ['output'],
          segments: { inside: { location: 'indoors', length_ft: 15, raceway: c.raceway, material: c.material } },
        },
      },
    },
    c.inverters,
  )
  const micro = project.equipment.inverters?.['micro']
  if (micro === undefined) throw new Error('no inverter')
  const { max_ac_rise_pct: _, ...free } = micro
  return {
    ...project,
    equipment: { ...project.equipment, inverters: { micro: { ...free, ac_current_a: c.inverterA } } },
  }
}

const size = (c: Case): Result<WiringValues> | undefined => {
  try {
    return sizeWire(projectOf(c), { ...context(c.highC), edition: c.edition })
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

/** Names of what is smaller in `harder` than in `easier`; it should be nothing. */
function shrunk(easier: Case, harder: Case): string[] {
  const [a, b] = [size(easier), size(harder)]
  // A refusal of the harder case is as good; a refusal of the easier one alone is not.
  if (b === undefined) return []
  if (a === undefined) return ['the easier case is refused and the harder is not']
  return a.values.circuits.flatMap((circuit, i) => {
    const other = b.values.circuits[i]
    const breaker = (other?.breaker_a ?? 0) < (circuit.breaker_a ?? 0) ? [`${circuit.id} breaker`] : []
    const segments = circuit.segments.flatMap((segment, j) => {
      const against = other?.segments[j]
      const name = `${circuit.id} ${segment.id}`
      const pipe = (value: string | null | undefined) => (tradeSizes as readonly string[]).indexOf(value ?? '')
      return [
        compareSizes(against?.size_awg ?? '', segment.size_awg) < 0 ? `${name} wire` : '',
        compareSizes(against?.egc_awg ?? '', segment.egc_awg ?? '') < 0 ? `${name} ground` : '',
        pipe(against?.raceway.trade_size) < pipe(segment.raceway.trade_size) ? `${name} raceway` : '',
      ].filter((line) => line !== '')
    })
    return [...breaker, ...segments]
  })
}

const runs = { numRuns: 150 }

/** What the properties vary of a supply-side connection. */
interface TapCase {
  readonly edition: string
  readonly currentA: number
  readonly breakerA: number | undefined
  readonly ambientC: number
  readonly lengthFt: number
  readonly risePct: number
  readonly raceway: 'EMT' | 'PVC 40' | 'PVC 80' | 'RMC'
  readonly insulation: 'THWN-2' | 'XHHW-2'
  readonly material: 'copper' | 'aluminum'
  readonly marked: boolean
}

const tapCases: fc.Arbitrary<TapCase> = fc.record({
  edition: fc.constantFrom(...editions),
  currentA: fc.double({ min: 1, max: 200, noNaN: true }),
  breakerA: fc.constantFrom(undefined, 15, 60, 100, 250),
  ambientC: fc.double({ min: -10, max: 70, noNaN: true }),
  lengthFt: fc.double({ min: 0.5, max: 60, noNaN: true }),
  risePct: fc.constantFrom(0.5, 2, 5),
  raceway: fc.constantFrom('EMT', 'PVC 40', 'PVC 80', 'RMC'),
  insulation: fc.constantFrom('THWN-2', 'XHHW-2'),
  material: fc.constantFrom('copper', 'aluminum'),
  marked: fc.boolean(),
})

function tapOf(c: TapCase): CircuitValues | undefined {
  const project = stringProject({
    connection: {
      kind: 'supply_side',
      overcurrent_device_distance_ft: c.lengthFt,
      conductor_material: c.material,
      tap: { location: 'indoors', ambient_c: c.ambientC, raceway: c.raceway, insulation: c.insulation },
      ...(c.breakerA === undefined ? {} : { breaker_a: c.breakerA }),
    },
    service: { rating_a: 400, conductor_ampacity_a: 400 },
    voltage_rise_limit_pct: c.risePct,
    terminal_temperature_c: c.marked ? 75 : 60,
  })
  const inverter = project.equipment.inverters?.['s5000']
  if (inverter === undefined) throw new Error('no inverter')
  const s5000 = { ...inverter, ac_power_w: 240 * c.currentA, ac_current_a: c.currentA, max_branch_ocpd_a: 600 }
  try {
    const result = sizeWire(
      { ...project, equipment: { ...project.equipment, inverters: { s5000 } } },
      { ...context(), edition: c.edition },
    )
    const tap = result.values.circuits.find(({ kind }) => kind === 'ac_supply_tap')
    if (tap === undefined) throw new Error('no conductors ahead of the device')
    return tap
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

function checkHarderTap(easier: TapCase, harder: TapCase): void {
  const [a, b] = [tapOf(easier), tapOf(harder)]
  if (b === undefined) return
  expect(a, 'the easier case is refused and the harder is not').toBeDefined()
  const [easy, hard] = [a?.segments[0]?.size_awg ?? '', b.segments[0]?.size_awg ?? '']
  expect(compareSizes(hard, easy)).toBeGreaterThanOrEqual(0)
}

describe('harder conditions never give a smaller conductor ahead of a supply-side device', () => {
  const tapRuns = { numRuns: 70, seed: 705 }

  it('more current', () => {
    fc.assert(
      fc.property(tapCases, fc.double({ min: 0, max: 100, noNaN: true }), (c, more) =>
        checkHarderTap(c, { ...c, currentA: c.currentA + more }),
      ),
      tapRuns,
    )
  })

  it('hotter', () => {
    fc.assert(
      fc.property(tapCases, fc.double({ min: 0, max: 15, noNaN: true }), (c, more) =>
        checkHarderTap(c, { ...c, ambientC: c.ambientC + more }),
      ),
      tapRuns,
    )
  })

  it('longer', () => {
    fc.assert(
      fc.property(tapCases, fc.double({ min: 0, max: 60, noNaN: true }), (c, more) =>
        checkHarderTap(c, { ...c, lengthFt: c.lengthFt + more }),
      ),
      tapRuns,
    )
  })

  it('a larger device, and terminals that are not marked', () => {
    fc.assert(
      fc.property(tapCases, fc.constantFrom(60, 100, 250, 300), (c, breakerA) => {
        checkHarderTap(c, { ...c, breakerA: Math.max(breakerA, c.breakerA ?? 0) })
        checkHarderTap({ ...c, marked: true }, { ...c, marked: false })
      }),
      tapRuns,
    )
  })

  it('the chosen one carries the device, 125 percent of the current and the smallest service', () => {
    fc.assert(
      fc.property(tapCases, (c) => {
        const segment = tapOf(c)?.segments[0]
        if (segment === undefined) return
        const ampacityA = Math.min(segment.ampacity_a, segment.terminal_limit_a)
        expect(ampacityA).toBeGreaterThanOrEqual(Math.max(60, c.breakerA ?? 0))
        expect(segment.terminal_limit_a).toBeGreaterThanOrEqual(1.25 * c.currentA)
      }),
      tapRuns,
    )
  })
})

describe('harder conditions never give a smaller wire, breaker or pipe', () => {
  it('hotter', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 15, noNaN: true }), (c, more) => {
        expect(shrunk(c, { ...c, highC: c.highC + more })).toEqual([])
      }),
      runs,
    )
  })

  it('longer on the roof or on the wall', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 80, noNaN: true }), fc.boolean(), (c, more, onRoof) => {
        expect(shrunk(c, onRoof ? { ...c, roofFt: c.roofFt + more } : { ...c, wallFt: c.wallFt + more })).toEqual([])
      }),
      runs,
    )
  })

  it('longer along the trunk', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 200, noNaN: true }), (c, more) => {
        const at = { ...c, trunkFt: c.trunkFt ?? 40 }
        expect(shrunk(at, { ...at, trunkFt: at.trunkFt + more })).toEqual([])
      }),
      runs,
    )
  })

  it('a trunk of 100 to 200 ft, in steps of 4 ft', () => {
    fc.assert(
      fc.property(cases, (c) => {
        for (let trunkFt = 100; trunkFt < 200; trunkFt += 4)
          expect(shrunk({ ...c, trunkFt }, { ...c, trunkFt: trunkFt + 4 }), `${trunkFt} ft`).toEqual([])
      }),
      { numRuns: 12 },
    )
  })

  it('more current of each inverter', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 0.5, noNaN: true }), (c, more) => {
        const copper = { ...c, material: 'copper' as const }
        expect(shrunk(copper, { ...copper, inverterA: c.inverterA + more })).toEqual([])
      }),
      runs,
    )
  })

  it('more conductors in the pipe', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 12 }), (c, more) => {
        expect(shrunk(c, { ...c, others: c.others + more })).toEqual([])
      }),
      runs,
    )
  })

  it('more inverters on the branch', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 11 }), (c, more) => {
        // Copper: beside aluminum the steps of the ratio in 250.122(B) differ from those of the copper ground, and the
        // next device can ask for a smaller increase of the GROUND.
        const copper = { ...c, material: 'copper' as const }
        expect(shrunk(copper, { ...copper, inverters: c.inverters + more })).toEqual([])
      }),
      runs,
    )
  })

  it('more inverters on aluminum: conductors and breakers', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 11 }), (c, more) => {
        const aluminum = { ...c, material: 'aluminum' as const }
        const smaller = shrunk(aluminum, { ...aluminum, inverters: c.inverters + more })
        expect(smaller.filter((name) => name.endsWith('wire') || name.endsWith('breaker'))).toEqual([])
      }),
      runs,
    )
  })

  it('lower on the roof', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1, noNaN: true }), (c, share) => {
        expect(shrunk(c, { ...c, heightIn: c.heightIn * share })).toEqual([])
      }),
      runs,
    )
  })
})

describe('a chosen conductor passes its own tests', () => {
  it('for any case', () => {
    fc.assert(
      fc.property(cases, (c) => {
        const result = size(c)
        if (result === undefined) return
        for (const circuit of result.values.circuits) {
          for (const segment of circuit.segments) {
            expect(segment.ampacity_a).toBeGreaterThanOrEqual(circuit.continuous_a)
            if (segment.governs !== 'listed_cable')
              expect(segment.terminal_limit_a).toBeGreaterThanOrEqual(circuit.required_a)
            expect(segment.raceway.fill_pct ?? 0).toBeLessThanOrEqual(60 + 1e-9)
          }
          expect(circuit.breaker_a).toBeGreaterThanOrEqual(circuit.required_a - 1e-9)
        }
        expect(JSON.stringify(result)).not.toMatch(/NaN|undefined|Infinity/)
      }),
      runs,
    )
  })

  it('the same project gives the same bytes', () => {
    fc.assert(
      fc.property(cases, (c) => {
        expect(JSON.stringify(size(c))).toBe(JSON.stringify(size(c)))
      }),
      { numRuns: 20 },
    )
  })
})

describe('unrelated input changes nothing', () => {
  it.each<[string, (project: Project) => Project]>([
    ['title', (project) => ({ ...project, title: 'Another name' })],
    ['site', (project) => ({ ...project, site: { latitude_deg: 45, longitude_deg: -90 } })],
    ['slope of the roof', (project) => ({ ...project, roof_planes: { south: { azimuth_deg: 120, tilt_deg: 40 } } })],
    ['losses', (project) => ({ ...project, losses: { dirt_pct: 7 } })],
    [
      'another module on the shelf',
      (project) => ({
        ...project,
        equipment: {
          ...project.equipment,
          modules: { ...project.equipment.modules, spare: { pmax_w: 100, pmax_temp_coeff_pct_per_c: -0.4 } },
        },
      }),
    ],
    [
      'another inverter on the shelf',
      (project) => ({
        ...project,
        equipment: {
          ...project.equipment,
          inverters: { ...project.equipment.inverters, spare: { kind: 'string', ac_power_w: 9000 } },
        },
      }),
    ],
  ])('%s', (_, change) => {
    const result = sizeWire(microProject(), context())
    expect(sizeWire(change(microProject()), context())).toEqual(result)
  })

  it('a warmer cold limit does not change the AC side', () => {
    const [cold, mild] = [sizeWire(microProject(), context(38, -30)), sizeWire(microProject(), context(38, 5))]
    expect(mild.values.circuits).toEqual(cold.values.circuits)
    expect(mild.values.panel).toEqual(cold.values.panel)
  })

  it('a longer run of one circuit does not change another that has its own raceway', () => {
    const of = (lengthFt: number) =>
      sizeWire(
        microProject({
          branches: { a: { modules: { south: 12 } }, b: { modules: { south: 12 } } },
          voltage_rise_limit_pct: 10,
          runs: {
            one: {
              carries: ['a'],
              segments: { wall: { location: 'outdoor_wall', length_ft: lengthFt, raceway: 'EMT' } },
            },
            two: { carries: ['b'], segments: { wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT' } } },
            to_panel: { carries: ['output'], segments: { in: { location: 'indoors', length_ft: 10, raceway: 'EMT' } } },
          },
        }),
        context(),
      ).values.circuits.find((circuit) => circuit.id === 'b')?.segments
    expect(of(60)).toEqual(of(10))
  })
})
