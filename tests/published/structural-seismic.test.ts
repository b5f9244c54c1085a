import { describe, expect, it } from 'vitest'
import {
  buildingDuctility,
  componentForce,
  lateralChangePct,
  seismicExemption,
  shakenWeightLb,
  snowInWeightPsf,
} from '../../src/structure/seismic/index.js'
import { EARTHQUAKE_COMBINATIONS } from '../../src/tables/asce7/index.js'

/** Whether a value is within so much of a printed one. */
const near = (printed: number, within: number) => (value: number | undefined) =>
  value !== undefined && Math.abs(value - printed) <= within

describe('force of an earthquake on an array', () => {
  // Permit calculation of an engineer for a flush array in a city record: SDS = 2/3 x 1.576, ASCE 7-16; printed 0.84, 1.68, 0.32.
  it('follows a permit calculation by 7-16', () => {
    const sdsG = (2 / 3) * 1.576
    expect(sdsG).toSatisfy(near(1.05, 0.001))
    const force = componentForce({ edition: 'ASCE 7-16', sdsG, heightRatio: 1 })
    expect(force.perWeight).toSatisfy(near(0.84, 0.005))
    expect(force.most).toSatisfy(near(1.68, 0.005))
    expect(force.least).toSatisfy(near(0.32, 0.006))
  })

  // Worked from eq. 13.3-1 of 7-16: 380 ft2 of 3.0 psf on 26 mounts.
  it('is 0.8 SDS at the roof by 7-16', () => {
    const at = (heightRatio: number) => componentForce({ edition: 'ASCE 7-16', sdsG: 0.62, heightRatio })
    expect(at(1).perWeight).toSatisfy(near(0.496, 1e-9))
    expect(at(1).least).toSatisfy(near(0.186, 1e-9))
    expect(at(1).most).toSatisfy(near(0.992, 1e-9))
    expect(at(0.9).perWeight).toSatisfy(near(0.463, 0.0005))
    const pushLb = at(1).perWeight * 380 * 3
    expect(pushLb).toSatisfy(near(565.4, 0.05))
    const allowableLb = EARTHQUAKE_COMBINATIONS['ASCE 7-16'].alone * pushLb
    expect(allowableLb).toSatisfy(near(395.8, 0.05))
    expect(allowableLb / 26).toSatisfy(near(15.2, 0.05))
  })

  // Worked from eq. 13.3-1 of 7-22, as an open component-force program has it.
  it('takes CAR and Rpo by 7-22, and the cap without them', () => {
    const input = { edition: 'ASCE 7-22', sdsG: 0.62, heightRatio: 1 } as const
    expect(componentForce({ ...input, car: 1, rpo: 1.5 }).perWeight).toSatisfy(near(0.445, 0.0005))
    const buildingRmu = buildingDuctility(6.5, 3)
    expect(buildingRmu).toSatisfy(near(1.544, 0.0005))
    expect(componentForce({ ...input, car: 1, rpo: 1.5, buildingRmu }).perWeight).toSatisfy(near(0.375, 0.0005))
    expect(componentForce(input).perWeight).toSatisfy(near(0.992, 1e-9))
    expect(componentForce({ ...input, car: 1 }).perWeight).toSatisfy(near(0.992, 1e-9))
    expect(componentForce({ ...input, rpo: 1.5 }).perWeight).toSatisfy(near(0.992, 1e-9))
    expect(componentForce({ ...input, sdsG: 1, car: 1, rpo: 1.5 }).perWeight).toSatisfy(near(0.718, 0.0005))
  })

  it('keeps its least and its most', () => {
    expect(componentForce({ edition: 'ASCE 7-16', sdsG: 1, heightRatio: 0 }).perWeight).toSatisfy(near(0.3, 1e-9))
    expect(componentForce({ edition: 'ASCE 7-22', sdsG: 1, heightRatio: 1, car: 4, rpo: 1 }).perWeight).toSatisfy(
      near(1.6, 1e-9),
    )
    expect(componentForce({ edition: 'ASCE 7-22', sdsG: 1, heightRatio: 0, car: 0.5, rpo: 4 }).perWeight).toSatisfy(
      near(0.3, 1e-9),
    )
  })

  it('never gets less with more shaking or more height', () => {
    for (const edition of ['ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'] as const) {
      for (const factors of [{}, { car: 1.4, rpo: 1.5 }]) {
        let before = 0
        for (let i = 0; i <= 20; i++) {
          const { perWeight } = componentForce({ edition, sdsG: 0.1 * i, heightRatio: i / 20, ...factors })
          expect(perWeight).toBeGreaterThanOrEqual(before)
          before = perWeight
        }
      }
    }
  })
})

describe('exemptions', () => {
  const none = { dwelling: undefined, category: undefined, ssG: undefined, sdsG: undefined }
  // A house of category C at SDS 0.33: exempt; worked, its force would be 0.264 of its weight, at least 0.099.
  it('a house of category C needs no check', () => {
    expect(seismicExemption({ ...none, dwelling: 'one_two_family', category: 'C', sdsG: 0.33 })).toMatch(/house .* C/)
    const force = componentForce({ edition: 'ASCE 7-16', sdsG: 0.33, heightRatio: 1 })
    expect(force.perWeight).toSatisfy(near(0.264, 1e-9))
    expect(force.least).toSatisfy(near(0.099, 1e-9))
  })
  it('are asked in their order', () => {
    expect(seismicExemption({ ...none, dwelling: 'one_two_family', category: 'A' })).toMatch(/positive connection/)
    expect(seismicExemption({ ...none, dwelling: 'one_two_family', ssG: 0.39 })).toMatch(/below 0.4 g/)
    expect(seismicExemption({ ...none, dwelling: 'other', category: 'B' })).toMatch(/components .* B/)
    expect(seismicExemption({ ...none, category: 'C' })).toMatch(/importance 1.0/)
  })
  it('are not given to whom they do not belong', () => {
    expect(seismicExemption(none)).toBeUndefined()
    expect(seismicExemption({ ...none, dwelling: 'one_two_family' })).toBeUndefined()
    expect(seismicExemption({ ...none, dwelling: 'one_two_family', ssG: 0.4 })).toBeUndefined()
    expect(seismicExemption({ ...none, dwelling: 'other', ssG: 0.1 })).toBeUndefined()
    for (const category of ['D0', 'D1', 'D2', 'D', 'E', 'F'] as const)
      expect(seismicExemption({ ...none, dwelling: 'one_two_family', category, ssG: 0.1 })).toBeUndefined()
    // Shaking of category D takes the exemption away.
    for (const category of ['A', 'B', 'C'] as const)
      expect(seismicExemption({ ...none, dwelling: 'one_two_family', category, sdsG: 0.5 })).toBeUndefined()
  })
})

describe('the house', () => {
  // Worked as two permit calculations do it.
  it('weighs a few percent more', () => {
    const houseLb = shakenWeightLb([
      { name: 'roof', areaFt2: 1450, psf: 10 },
      { name: 'ceiling', areaFt2: 1450, psf: 5 },
      { name: 'partition', areaFt2: 520, psf: 6 },
      { name: 'wall', areaFt2: 620, psf: 15 },
    ])
    expect(houseLb).toBe(34_170)
    expect(lateralChangePct(1140, houseLb)).toSatisfy(near(3.34, 0.005))
  })
  it('carries part of heavy snow in an earthquake', () => {
    expect([30, 35].map((psf) => snowInWeightPsf('ASCE 7-16', psf))).toEqual([0, 7])
    expect(snowInWeightPsf('ASCE 7-22', 45)).toBe(0)
    expect(snowInWeightPsf('ASCE 7-22', 50)).toBeCloseTo(7.5, 9)
  })
})
