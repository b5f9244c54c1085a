import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import {
  faultAtService,
  faultAtTransformer,
  faultDown,
  faultValues,
  governingFaultA,
  recordRun,
} from '../../src/electrical/index.js'
import type { Electrical, ServiceTransformer } from '../../src/project/index.js'
import { conductorSizes } from '../../src/tables/nec/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { jobOf, recompute } from './job-of.js'

const service = (more: Partial<NonNullable<Electrical['service']>>): Partial<Electrical> => ({
  service: { rating_a: 200, ...more },
})
const transformer: ServiceTransformer = {
  rating_kva: 37.5,
  impedance_pct: 1.6,
  run_ft: 50,
  size: '4/0',
  material: 'aluminum',
  sets: 1,
}

describe('fault current at the service', () => {
  it('is not known when the project tells nothing of it', () => {
    const { job, result } = jobOf(service({}))
    expect(faultAtService(job)).toBeUndefined()
    expect(result().findings).toEqual([])
  })

  it('a stated one counts for both ways, and says so', () => {
    const fault = faultAtService(jobOf(service({ available_fault_current_a: 9000 })).job)
    expect(fault).toMatchObject({ lineToLineA: 9000, lineToNeutralA: 9000, governsA: 9000 })
    expect(fault?.how).toContain('alike')
    expect(faultValues(fault)).toMatchObject({ line_to_line_a: 9000, line_to_neutral_a: 9000, governs_a: 9000 })
    expect(faultValues(undefined)).toBeNull()
  })

  it('is worked out from the transformer and the run, each step by its formula', () => {
    const { job, result } = jobOf(service({ transformer }))
    const fault = faultAtService(job)
    const steps = result().worksheet
    expect(steps.map(({ id }) => id)).toEqual([
      'wire.fault.transformer.line',
      'wire.fault.transformer.neutral',
      'wire.fault.service.line',
      'wire.fault.service.neutral',
    ])
    for (const step of steps) expect(recompute(step), step.id).toBeCloseTo(Number(step.result.value), 6)
    // 4/0 aluminum: C = 1000 / (0.1 * 0.835) = 11,976; f = 2 * 50 * 10,851 / (11,976 * 240) = 0.3775.
    expect(fault?.lineToLineA).toBeCloseTo(10_850.7 / 1.377_52, 0)
    // 1.5 * 10,851 = 16,276; f = 2 * 50 * 16,276 / (11,976 * 120) = 1.1326.
    expect(fault?.lineToNeutralA).toBeCloseTo(16_276 / 2.132_55, 0)
    expect(fault?.governsA).toBe(fault?.lineToLineA)
  })

  it('near the transformer the fault to the neutral governs', () => {
    const fault = faultAtService(jobOf(service({ transformer: { ...transformer, run_ft: 10 } })).job)
    expect(fault?.governsA).toBe(fault?.lineToNeutralA)
    expect(fault?.lineToNeutralA).toBeGreaterThan(fault?.lineToLineA ?? Infinity)
  })

  it('without a run the transformer itself is taken, and that is an assumption', () => {
    const { job, result } = jobOf(service({ transformer: { rating_kva: 37.5, impedance_pct: 1.6 } }))
    expect(faultAtService(job)?.governsA).toBeCloseTo(16_276, 0)
    expect(result().assumptions.map(({ path }) => path)).toEqual(['electrical.service.transformer.run_ft'])
  })

  it.each(['run_ft', 'size', 'material', 'sets'] as const)('a run without %s is refused', (key) => {
    const { [key]: _, ...rest } = transformer
    expect(() => faultAtService(jobOf(service({ transformer: rest })).job)).toThrow(StageError)
    expect(() => faultAtService(jobOf(service({ transformer: rest })).job)).toThrow(new RegExp(`^${key} of`, 'u'))
  })

  it.each([0, -1, Number.NaN])('a transformer of %s kVA or percent is refused', (bad) => {
    const of = (change: Partial<ServiceTransformer>) => () =>
      faultAtService(jobOf(service({ transformer: { ...transformer, ...change } })).job)
    expect(of({ rating_kva: bad })).toThrow(StageError)
    expect(of({ impedance_pct: bad })).toThrow(StageError)
  })

  it.each([
    [2000, 7876.97, 7632.0],
    [7700, 7876.97, 7700],
    [20_000, 20_000, 20_000],
  ])('beside a stated %d A the larger counts each way', (available_fault_current_a, lineA, neutralA) => {
    const { job, result } = jobOf(service({ transformer, available_fault_current_a }))
    const fault = faultAtService(job)
    expect(fault?.lineToLineA).toBeCloseTo(lineA, 0)
    expect(fault?.lineToNeutralA).toBeCloseTo(neutralA, 0)
    expect(result().findings.map(({ id }) => id)).toEqual(['wire.fault-current-twice'])
  })
})

describe('fault current down a run', () => {
  const pair = fc.record({
    lineToLineA: fc.double({ min: 500, max: 60_000, noNaN: true }),
    lineToNeutralA: fc.double({ min: 500, max: 60_000, noNaN: true }),
  })
  const run = fc.record({
    size: fc.constantFrom(...conductorSizes.slice(2)),
    material: fc.constantFrom('copper' as const, 'aluminum' as const),
    sets: fc.integer({ min: 1, max: 4 }),
    lengthFt: fc.double({ min: 0, max: 500, noNaN: true }),
  })

  it('is never more on a longer run or a smaller conductor, nor more than at the start', () => {
    fc.assert(
      fc.property(pair, run, fc.double({ min: 0, max: 200, noNaN: true }), (at, way, moreFt) => {
        const end = faultDown(at, way)
        const smaller = conductorSizes[conductorSizes.indexOf(way.size) - 1] ?? way.size
        for (const key of ['lineToLineA', 'lineToNeutralA'] as const) {
          expect(end[key]).toBeLessThanOrEqual(at[key])
          expect(faultDown(at, { ...way, lengthFt: way.lengthFt + moreFt })[key]).toBeLessThanOrEqual(end[key])
          expect(faultDown(at, { ...way, size: smaller })[key]).toBeLessThanOrEqual(end[key])
          expect(faultDown(at, { ...way, sets: way.sets + 1 })[key]).toBeGreaterThanOrEqual(end[key])
          expect(faultDown({ ...at, [key]: at[key] * 1.1 }, way)[key]).toBeGreaterThanOrEqual(end[key])
        }
      }),
      { numRuns: 200 },
    )
  })

  it('two pieces of one conductor give what the whole gives', () => {
    fc.assert(
      fc.property(pair, run, (at, way) => {
        const half = { ...way, lengthFt: way.lengthFt / 2 }
        const whole = faultDown(at, way)
        const pieces = faultDown(faultDown(at, half), half)
        expect(pieces.lineToLineA / whole.lineToLineA).toBeCloseTo(1, 9)
        expect(pieces.lineToNeutralA / whole.lineToNeutralA).toBeCloseTo(1, 9)
      }),
      { numRuns: 100 },
    )
  })

  it('two sets carry what one of half the length does', () => {
    const at = faultAtTransformer(75, 2)
    const one = { size: '2/0', material: 'copper', sets: 1, lengthFt: 40 } as const
    const two = faultDown(at, { ...one, sets: 2, lengthFt: 80 })
    expect(two.lineToLineA).toBeCloseTo(faultDown(at, one).lineToLineA, 6)
    expect(two.lineToNeutralA).toBeCloseTo(faultDown(at, one).lineToNeutralA, 6)
    const { job, result } = jobOf({})
    recordRun(job, 'wire.fault.two', 'a panel', at, { ...one, sets: 2 })
    for (const step of result().worksheet) expect(recompute(step), step.id).toBeCloseTo(Number(step.result.value), 6)
  })

  it('a run of no length leaves it as it is, and a run records both ways under its own name', () => {
    const at = faultAtTransformer(50, 2)
    const none = { size: '3/0', material: 'copper', sets: 1, lengthFt: 0 } as const
    expect(faultDown(at, none)).toEqual(at)
    const { job, result } = jobOf({})
    expect(recordRun(job, 'wire.fault.garage', 'the garage panel', at, { ...none, lengthFt: 60 })).toEqual(
      faultDown(at, { ...none, lengthFt: 60 }),
    )
    expect(result().worksheet.map(({ id }) => id)).toEqual(['wire.fault.garage.line', 'wire.fault.garage.neutral'])
    expect(governingFaultA({ lineToLineA: 3, lineToNeutralA: 5 })).toBe(5)
  })
})
