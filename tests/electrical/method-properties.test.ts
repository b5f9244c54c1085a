import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { boxFill, sizeWire, type BoxContents } from '../../src/electrical/index.js'
import type { Project, WiringSegment } from '../../src/project/index.js'
import { boxConductorSizes, editions } from '../../src/tables/nec/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { compareSizes } from './compare-sizes.js'
import { context, microProject } from './demo.js'

const conductors = fc.array(
  fc.record({
    size: fc.constantFrom(...boxConductorSizes),
    count: fc.integer({ min: 1, max: 12 }),
    grounding: fc.boolean(),
  }),
  { minLength: 1, maxLength: 6 },
)

const contents: fc.Arbitrary<BoxContents> = fc.record({
  conductors,
  internalClamps: fc.boolean(),
  supportFittings: fc.integer({ min: 0, max: 2 }),
  terminalBlocks: fc.integer({ min: 0, max: 3 }),
  devices: fc.array(fc.record({ gangs: fc.integer({ min: 1, max: 3 }) }), { maxLength: 3 }),
})

describe('boxes', () => {
  it('more in a box never needs a smaller one, and rows add up', () => {
    fc.assert(
      fc.property(contents, conductors, fc.constantFrom(...editions), (held, more, edition) => {
        const [less, all] = [held, { ...held, conductors: [...held.conductors, ...more] }].map((each) =>
          boxFill(each, edition),
        )
        if (less === undefined || all === undefined) throw new Error('two fills')
        expect(all.requiredIn3).toBeGreaterThanOrEqual(less.requiredIn3 - 1e-9)
        expect(less.requiredIn3).toBeCloseTo(
          less.rows.reduce((sum, row) => sum + row.volumeIn3, 0),
          9,
        )
        // Grounds count less than or as much as from 2020 on.
        expect(boxFill(held, 'NEC 2017').requiredIn3).toBeLessThanOrEqual(boxFill(held, 'NEC 2020').requiredIn3 + 1e-9)
      }),
      { numRuns: 200 },
    )
  })
})

/** What is varied of a run in three pieces. */
interface Case {
  readonly methods: readonly WiringSegment['raceway'][]
  readonly ambientsC: readonly number[]
  readonly lengthsFt: readonly number[]
  readonly spliceAt: number | undefined
  readonly risePct: number
  readonly inInsulation: boolean
}

const three = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(one, { minLength: 3, maxLength: 3 })

const cases: fc.Arbitrary<Case> = fc.record({
  methods: three(fc.constantFrom('EMT', 'PVC 40', 'LFMC', 'NM', 'UF', 'SE', 'MC', 'AC')),
  ambientsC: three(fc.integer({ min: 10, max: 55 })),
  lengthsFt: three(fc.double({ min: 1, max: 80, noNaN: true })),
  spliceAt: fc.constantFrom(undefined, 0, 1),
  risePct: fc.constantFrom(2, 5, 10),
  inInsulation: fc.boolean(),
})

const isCable = (method: string): boolean => ['NM', 'UF', 'SE', 'MC', 'AC'].includes(method)

function projectOf({ methods, ambientsC, lengthsFt, spliceAt, risePct, inInsulation }: Case): Project {
  const segments = Object.fromEntries(
    methods.map((raceway, i): [string, WiringSegment] => [
      `p${i}`,
      {
        location: 'indoors',
        raceway,
        ambient_c: ambientsC[i] ?? 30,
        length_ft: lengthsFt[i] ?? 10,
        ...(isCable(raceway) ? { in_insulation: inInsulation } : {}),
        ...(spliceAt === i
          ? { box: { kind: 'box', splice: true, volume_in3: 200, pull: 'splice', length_in: 60 } }
          : {}),
      },
    ]),
  )
  const project = microProject({
    voltage_rise_limit_pct: risePct,
    runs: { ...microProject().electrical?.runs, home: { carries: ['branches'], segments } },
  })
  const micro = project.equipment.inverters?.['micro']
  if (micro === undefined) throw new Error('no inverter')
  const { max_ac_rise_pct: _, ...free } = micro
  return { ...project, equipment: { ...project.equipment, inverters: { micro: free } } }
}

function sizesOf(each: Case): string[] | undefined {
  try {
    const [branch] = sizeWire(projectOf(each), context()).values.circuits
    return branch?.segments.slice(1).map(({ size_awg: size }) => size)
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

const noneSmaller = (here: readonly string[], than: readonly string[]): boolean =>
  here.every((size, i) => compareSizes(size, than[i] ?? '') >= 0)

describe('runs through changing conditions', () => {
  it('a worse piece never makes a conductor smaller', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 0, max: 2 }), fc.integer({ min: 1, max: 20 }), (each, at, more) => {
        const worse = { ...each, ambientsC: each.ambientsC.map((c, i) => (i === at ? Math.min(c + more, 56) : c)) }
        const [a, b] = [sizesOf(each), sizesOf(worse)]
        if (b === undefined) return
        expect(a !== undefined && noneSmaller(b, a), JSON.stringify([a, b])).toBe(true)
        const [loose, touching] = [sizesOf({ ...each, inInsulation: false }), sizesOf({ ...each, inInsulation: true })]
        if (loose !== undefined && touching !== undefined) expect(noneSmaller(touching, loose)).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('wherever the splice is, no part is smaller than it would be alone, nor larger than without a splice', () => {
    fc.assert(
      fc.property(cases, (each) => {
        const at = (spliceAt: number | undefined) => sizesOf({ ...each, spliceAt })
        const whole = at(undefined)
        if (whole === undefined) return
        const pieces = [0, 1, 2].map((i) => aloneSize(each, i))
        for (const sizes of [whole, at(0), at(1)]) {
          if (sizes === undefined) throw new Error('a splice refuses nothing')
          expect(noneSmaller(sizes, pieces), JSON.stringify([sizes, pieces])).toBe(true)
          expect(noneSmaller(whole, sizes)).toBe(true)
        }
      }),
      { numRuns: 40 },
    )
  })
})

/** Size of one piece when each is a conductor of its own: behind each is another run. */
function aloneSize(each: Case, at: number): string {
  const project = projectOf({ ...each, spliceAt: undefined })
  const segments = Object.entries(project.electrical?.runs?.['home']?.segments ?? {})
  const { home: _, ...others } = project.electrical?.runs ?? {}
  const runs = Object.fromEntries(
    segments.map(([id, segment]) => [`r${id}`, { carries: ['branches'], segments: { [id]: segment } }]),
  )
  const result = sizeWire(
    { ...project, electrical: { ...project.electrical, runs: { ...runs, ...others } } },
    context(),
  )
  return result.values.circuits[0]?.segments[at + 1]?.size_awg ?? ''
}
