import { describe, expect, test } from 'vitest'
import {
  judgeAcVoltages,
  judgeAlike,
  judgeBonding,
  judgeEnergy,
  judgeInsulation,
  judgeIsc,
  judgeLossOfMains,
  judgePolarity,
  judgeShutdown,
  judgeTorques,
  judgeUnits,
  judgeVoc,
  type SystemFacts,
} from '../../../src/papers/handover/judge/index.js'
import { loadProject, type Commissioning } from '../../../src/project/index.js'
import { example, insulation } from './facts.js'

// Worked example of a commissioning course: 11 modules Voc 49.5 V, -0.25 %/K, cells 48 C: 513.2 V; 505 V is -1.6 % and
// passes; 468 V is one module short (466.5 V). Isc 10.9 A, 820 W/m2, 0.05 %/K: 9.04 A. 1.25 x 544.5 V = 680.6 V: test 1000 V, 1 Mohm.
describe('the worked example', () => {
  test('open voltage: expected, and a reading that passes', () => {
    expect(judgeVoc(example())).toMatchObject({ expected: '513.2 V (11 modules, cells 48 C)', verdict: 'open' })
    expect(judgeVoc(example({ voc_v: 505 }))).toMatchObject({ verdict: 'pass', why: '-1.6 % of the expected' })
  })

  test('a string that is one module short', () => {
    const row = judgeVoc(example({ voc_v: 468 }))
    expect(row.verdict).toBe('fail')
    expect(row.why).toBe('-8.8 % of the expected; like one module short (466.5 V)')
  })

  test('short-circuit current', () => {
    expect(judgeIsc(example()).expected).toBe('9.04 A at 820 W/m2, cells 48 C')
    expect(judgeIsc(example({ isc_a: 9 })).verdict).toBe('pass')
    expect(judgeIsc(example({ isc_a: 8.5 }))).toMatchObject({ verdict: 'fail', why: '-6.0 % of the expected' })
  })

  test('insulation: 680.6 V asks for 1000 V and 1 Mohm', () => {
    const row = judgeInsulation(example())
    expect(row.expected).toBe('test with 1000 V (1.25 x Voc is 680.6 V)')
    expect(row.limit).toContain('at least 1 Mohm')
  })
})

describe('open voltage', () => {
  test('5 % decides for short strings, half a module for long ones, on both sides', () => {
    // 4 modules: 5 % of 186.6 V is 9.33 V, half a module 23.3 V. 11 modules: 25.7 V against 23.3 V.
    const four = example({}, { modules: 4 })
    const eachV = 49.5 * (1 - 0.0025 * 23)
    const verdicts = (facts: typeof four, volts: readonly number[]) =>
      volts.map((voc) => judgeVoc({ ...facts, reading: { voc_v: voc } }).verdict)
    expect(verdicts(four, [4 * eachV * 0.951, 4 * eachV * 0.949, 4 * eachV * 1.049, 4 * eachV * 1.051])).toEqual([
      'pass',
      'fail',
      'pass',
      'fail',
    ])
    expect(verdicts(example(), [10.51 * eachV, 10.49 * eachV, 11.49 * eachV, 11.51 * eachV])).toEqual([
      'pass',
      'fail',
      'pass',
      'fail',
    ])
  })

  test('without a cell temperature it is held against nothing', () => {
    expect(judgeVoc(example({ voc_v: 505 }, { cellC: undefined })).verdict).toBe('look')
  })

  test('polarity', () => {
    expect(judgePolarity(example({ polarity: 'right' })).verdict).toBe('pass')
    expect(judgePolarity(example({ polarity: 'reversed' })).verdict).toBe('fail')
    expect(judgePolarity(example()).verdict).toBe('open')
  })
})

describe('currents', () => {
  test('without light there is nothing to hold the reading against', () => {
    expect(judgeIsc(example({ isc_a: 9 }, { irradianceWM2: undefined })).verdict).toBe('look')
  })

  // Identical strings within 5 %: poster of an instrument maker on the edition of 2009.
  test('like strings lie within 5 % of each other, light taken out where it was noted', () => {
    const pair = (first: number, second: number, light?: number) => [
      example({ isc_a: first }),
      example({ isc_a: second }, { id: 'south_s2', irradianceWM2: light ?? 820 }),
    ]
    expect(judgeAlike(pair(9, 8.56), 'isc_a', 'A')[0]).toMatchObject({ verdict: 'pass', measured: '4.9 % apart' })
    expect(judgeAlike(pair(9, 8.54), 'isc_a', 'A')[0]).toMatchObject({
      verdict: 'fail',
      why: 'south_s2 reads lowest (8.54 A)',
    })
    // 8.2 A in 745 W/m2 is 9.03 A in 820 W/m2.
    expect(judgeAlike(pair(9, 8.2, 745), 'isc_a', 'A')[0]?.verdict).toBe('pass')
    expect(judgeAlike(pair(9, 8.2), 'isc_a', 'A')[0]?.verdict).toBe('fail')
  })

  test('strings that are not alike, and a lone one, are not compared', () => {
    const other = example({ isc_a: 5 }, { id: 'west_s1', alike: 'm 9 20 270' })
    expect(judgeAlike([example({ isc_a: 9 }), other], 'isc_a', 'A')).toEqual([])
  })
})

// Table of IEC 62446-1 by an instrument maker's poster and manual: below 120 V 250 V and 0.5 Mohm, to 500 V 500 V, above 1000 V, 1 Mohm.
describe('insulation', () => {
  const read = (reading: Parameters<typeof example>[0], vocV = 544.5, maxV: number | null = 1000) =>
    judgeInsulation(example(reading, { insulation: insulation(vocV, maxV) }))

  test('two readings make one as resistances in parallel', () => {
    // 3 and 1.5 Mohm are 1 Mohm; 3 and 1.4 are 0.955 Mohm.
    const both = (negative: number, positive: number) =>
      read({ insulation_negative_mohm: negative, insulation_positive_mohm: positive, insulation_test_v: 1000 })
    expect(both(3, 1.5)).toMatchObject({ verdict: 'pass', measured: '1.00 Mohm at 1000 V' })
    expect(both(3, 1.4)).toMatchObject({ verdict: 'fail', measured: '0.95 Mohm at 1000 V' })
    expect(both(0, 5).verdict).toBe('fail')
  })

  test('one of two readings is no test yet, and fails when it is too low by itself', () => {
    expect(read({ insulation_negative_mohm: 5 }).verdict).toBe('look')
    expect(read({ insulation_negative_mohm: 0.9 }).verdict).toBe('fail')
  })

  test('a low string needs 0.5 Mohm only', () => {
    expect(read({ insulation_both_mohm: 0.5, insulation_test_v: 250 }, 95).verdict).toBe('pass')
    expect(read({ insulation_both_mohm: 0.5, insulation_test_v: 500 }, 96).verdict).toBe('fail')
  })

  test('never above the maximum system voltage: modules of 600 V are tested with 500 V, below the standard', () => {
    expect(read({}, 544.5, 600).expected).toContain('test with 500 V')
    expect(read({}, 544.5, 600).expected).toContain('below the 1000 V of the standard')
    expect(read({ insulation_both_mohm: 9, insulation_test_v: 1000 }, 544.5, 600).verdict).toBe('fail')
    expect(read({ insulation_both_mohm: 9, insulation_test_v: 500 }, 544.5, 600)).toMatchObject({
      verdict: 'pass',
      why: 'the test is below the standard',
    })
  })

  test('a test with too low a voltage fails, one without its voltage is to be looked at', () => {
    expect(read({ insulation_both_mohm: 9, insulation_test_v: 500 }).verdict).toBe('fail')
    expect(read({ insulation_both_mohm: 9 }).verdict).toBe('look')
    expect(read({ insulation_both_mohm: 9, insulation_test_v: 1000 }, 544.5, null).verdict).toBe('look')
  })
})

describe('the whole system', () => {
  const { project } = loadProject({ path: new URL('../../../examples/lark-hollow.yaml', import.meta.url).pathname })
  const system = (measured: Commissioning, more: Partial<SystemFacts> = {}): SystemFacts => ({
    project,
    measured,
    ac: { nominal_v: 240, low_v: 228, high_v: 252 },
    edition: 'NEC 2020',
    dcW: 8200,
    acW: 7320,
    powerPctPerC: -0.34,
    ...more,
  })
  const verdicts = (rows: readonly { readonly verdict: string }[]) => rows.map(({ verdict }) => verdict)

  test('bonding: aimed at 0.1 ohm and the wire, usual 1 ohm', () => {
    const of = (ohm: number, wire?: number) =>
      judgeBonding(system({ bonding: { a: { what: 'rail', ohm, ...(wire === undefined ? {} : { wire_ohm: wire }) } } }))
    expect([...of(0.1), ...of(0.11), ...of(0.14, 0.05), ...of(1), ...of(1.01)].map(({ verdict }) => verdict)).toEqual([
      'pass',
      'look',
      'pass',
      'look',
      'fail',
    ])
  })

  // ANSI C84.1, range A: 5 % round 240 and 120 V.
  test('AC voltages within 5 %', () => {
    const of = (lineToLine: number, toNeutral: number) =>
      verdicts(
        judgeAcVoltages(
          system({
            ac_voltages: { line_to_line_v: lineToLine, line1_to_neutral_v: toNeutral, line2_to_neutral_v: 120 },
          }),
        ),
      )
    expect(of(228, 114)).toEqual(['pass', 'pass', 'pass'])
    expect(of(252.1, 113.9)).toEqual(['fail', 'fail', 'pass'])
  })

  test('loss of mains: 2 s, and back after 300 s', () => {
    expect(verdicts(judgeLossOfMains(system({ loss_of_mains: { stops_s: 2, returns_s: 300 } })))).toEqual([
      'pass',
      'pass',
    ])
    expect(verdicts(judgeLossOfMains(system({ loss_of_mains: { stops_s: 2.1, returns_s: 60 } })))).toEqual([
      'fail',
      'look',
    ])
  })

  // NEC 690.12(B): 30 V outside and 80 V inside within 30 s; 10 s in 2014; no rule in 2011.
  test('rapid shutdown by edition', () => {
    const of = (edition: string, read: NonNullable<Commissioning['rapid_shutdown']>) =>
      verdicts(judgeShutdown(system({ rapid_shutdown: read }, { edition })))
    expect(of('NEC 2020', { after_s: 30, outside_v: 30, inside_v: 80 })).toEqual(['pass', 'pass'])
    expect(of('NEC 2020', { after_s: 30, outside_v: 30.1, inside_v: 80.1 })).toEqual(['fail', 'fail'])
    expect(of('NEC 2020', { after_s: 31, outside_v: 4, inside_v: 40 })).toEqual(['look', 'look'])
    expect(of('NEC 2014', { after_s: 11, outside_v: 4 })).toEqual(['look'])
    expect(of('NEC 2014', { after_s: 10, outside_v: 4 })).toEqual(['pass'])
    expect(of('NEC 2011', { after_s: 10, outside_v: 400 })).toEqual([])
  })

  test('the energy check has no limit, only a ratio and a word on weak light', () => {
    // 8.2 kW x 0.8 x (1 - 0.0034 x 20) = 6113 W, below the 7320 W of the inverters.
    const strong = judgeEnergy(system({ energy: { ac_w: 5502, irradiance_w_m2: 800, cell_c: 45, steady_min: 10 } }))[0]
    expect(strong?.expected).toContain('below 6114 W')
    expect(strong).toMatchObject({ verdict: 'look' })
    expect(strong?.why).toBe(
      '90 % of the most that modules and inverters give in this light; no source has a limit for it',
    )
    const weak = judgeEnergy(system({ energy: { ac_w: 2000, irradiance_w_m2: 400, steady_min: 10 } }))[0]
    expect(weak?.why).toContain('too weak')
  })

  test('units of module-level inverters stay below the open voltage', () => {
    expect(verdicts(judgeUnits(system({ unit_dc_v: { a: 33, b: 0, c: 41.5 } }), 41, -10))).toEqual([
      'pass',
      'fail',
      'fail',
    ])
    expect(verdicts(judgeUnits(system({}), 41, -10))).toEqual(['open'])
  })

  test('torques that were set are those of the equipment', () => {
    const torques = {
      lug: { what: 'lugs', lb_in: 45, stated_lb_in: 45 },
      other: { what: 'others', lb_in: 40 },
      low: { what: 'low', lb_in: 30, stated_lb_in: 45 },
    }
    expect(verdicts(judgeTorques(system({ torques }), []))).toEqual(['pass', 'look', 'fail'])
    expect(
      judgeTorques(system({}), [{ what: 'clamps', lb_in: null, from: 'equipment.rails.r.clamp.torque_lb_in' }])[0]
        ?.expected,
    ).toContain('not in the project')
  })
})
