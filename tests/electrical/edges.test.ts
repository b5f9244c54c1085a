import { describe, expect, it } from 'vitest'
import {
  coldVoltage,
  deviceProtects,
  judgeBusbar,
  judgeConductor,
  largestStandardDeviceA,
  nextStandardDeviceA,
  rooftopAdderRow,
  selectConductor,
  sizeWire,
  tableFactor,
  type ConductorDemand,
} from '../../src/electrical/index.js'
import { context, microProject, stringProject } from './demo.js'

const demand: ConductorDemand = {
  continuousA: 16,
  requiredA: 20,
  deviceA: 20,
  material: 'copper',
  terminalC: 75,
  freeAir: false,
  correction: 1,
  adjustment: 1,
  voltageFloor: undefined,
}

describe('at the edges of the rows', () => {
  it('rooftop height: the edge belongs to the milder row since 2017 and to the hotter one before', () => {
    expect(rooftopAdderRow('NEC 2020', 0.875, 'THWN-2')?.adderC).toBe(0)
    expect(rooftopAdderRow('NEC 2020', 0.874, 'THWN-2')?.adderC).toBe(33)
    expect(rooftopAdderRow('NEC 2023', 0.75, 'THWN-2')?.adderC).toBe(0)
    expect(rooftopAdderRow('NEC 2014', 0.5, 'THWN-2')?.adderC).toBe(33)
    expect(rooftopAdderRow('NEC 2014', 12, 'THWN-2')?.adderC).toBe(17)
    expect(rooftopAdderRow('NEC 2014', 36.1, 'THWN-2')?.adderC).toBe(0)
  })

  it('cold voltage table: between two rows the colder one', () => {
    expect([25, 24, 20, 19.9, -5, -5.5, -40].map(tableFactor)).toEqual([1, 1.02, 1.02, 1.04, 1.12, 1.14, 1.25])
    expect(tableFactor(-40.1)).toBeUndefined()
  })

  it('a warm place never lowers the design voltage', () => {
    const module = { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.3, voc_v: 40, voc_temp_coeff_pct_per_c: -0.3 }
    expect(coldVoltage(module, 30, '').moduleV).toBe(40)
    expect(coldVoltage(module, 15, '').moduleV).toBeCloseTo(41.2, 9)
  })

  it('without coefficient the code table serves crystalline silicon', () => {
    const module = { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.3, voc_v: 40 }
    expect(coldVoltage(module, -6, '')).toMatchObject({ method: 'code table', factor: 1.14 })
    expect(() => coldVoltage(module, -41, 'm')).toThrow(/code table does not reach/)
  })

  it('standard devices', () => {
    expect(nextStandardDeviceA(20, '')).toBe(20)
    expect(nextStandardDeviceA(20.01, '')).toBe(25)
    // 13 times 16/13 A is 16 A, whatever the last bit says.
    expect(nextStandardDeviceA(13 * (16 / 13) * 1.25, '')).toBe(20)
    expect(largestStandardDeviceA(39.9)).toBe(35)
    expect(largestStandardDeviceA(10)).toBe(0)
    expect(() => nextStandardDeviceA(601, 'x')).toThrow(/largest standard/)
  })

  it('next size up: not when the ampacity is itself a standard rating', () => {
    expect(deviceProtects(70, 65)).toBe(true)
    expect(deviceProtects(30, 25)).toBe(false)
    expect(deviceProtects(30, 25.1)).toBe(true)
    expect(deviceProtects(20, 20)).toBe(true)
  })

  it('a chosen device that is larger than needed takes a larger conductor', () => {
    const large = { ...demand, continuousA: 32, requiredA: 40, deviceA: 60 }
    expect(judgeConductor('8', large)?.fails).toEqual(['overcurrent_device'])
    expect(selectConductor(large)).toMatchObject({ governs: 'overcurrent_device' })
    expect(selectConductor(large)?.verdict.conductor.size).toBe('6')
  })

  it('aluminum begins at 12 AWG and needs a larger size', () => {
    expect(judgeConductor('14', { ...demand, material: 'aluminum' })).toBeUndefined()
    expect(selectConductor({ ...demand, material: 'aluminum' })?.verdict.conductor.size).toBe('10')
  })

  it('a centre-fed trunk with an odd number counts the longer half', () => {
    const of = (inverters: number) =>
      sizeWire(
        microProject({ branches: { b1: { modules: { south: inverters }, feed: 'centre' } } }, inverters),
        context(),
      ).values.circuits[0]?.segments[0]
    expect(of(11)?.length_ft).toBe(24)
    expect(of(11)?.voltage_rise_pct).toBeCloseTo(of(12)?.voltage_rise_pct ?? 0, 12)
  })

  it('the ground of a DC circuit does not grow with its conductors', () => {
    const roof = { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT', size_awg: '6' } as const
    const result = sizeWire(
      stringProject({
        runs: {
          dc: { carries: ['strings'], segments: { roof } },
          ac: {
            carries: ['inverter_outputs'],
            segments: { wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT' } },
          },
        },
      }),
      context(),
    )
    expect(result.values.circuits[0]?.segments[0]).toMatchObject({ size_awg: '6', egc_awg: '10' })
  })

  it('conductors of other circuits count for the adjustment and for the fill', () => {
    const of = (others: number) =>
      sizeWire(
        microProject({
          runs: {
            ...microProject().electrical?.runs,
            home: {
              carries: ['branches'],
              segments: {
                wall: {
                  location: 'outdoor_wall',
                  length_ft: 10,
                  raceway: 'EMT',
                  other_conductors: { current_carrying: others, area_in2: others * 0.0211 },
                },
              },
            },
          },
        }),
        context(),
      ).values
    expect([0, 2, 3, 5, 6].map((others) => of(others).circuits[0]?.segments[1]?.adjustment)).toEqual([
      0.8, 0.8, 0.7, 0.7, 0.5,
    ])
    expect(of(6).raceways[0]?.fill_pct).toBeGreaterThan(of(0).raceways[0]?.fill_pct ?? 100)
  })

  it('the sum-of-breakers rule also asks that the main is not above the busbar', () => {
    const verdict = (mainA: number) =>
      judgeBusbar('NEC 2020', {
        busA: 125,
        mainA,
        mainPosition: 'end',
        oppositeEnd: false,
        inverterA: 24,
        sourceBreakersA: 30,
        firstBreakersA: 30,
        loadBreakersA: 60,
        feedThrough: undefined,
      }).find((candidate) => candidate.rule.expression === 'breaker-sum')
    expect(verdict(125)?.holds).toBe(true)
    expect(verdict(150)).toMatchObject({ holds: false, why: 'the main device is above the busbar rating' })
  })
})
