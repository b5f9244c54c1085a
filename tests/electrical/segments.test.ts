import { describe, expect, it } from 'vitest'
import { placeStraps, sizeWire, tenFootNeighbour } from '../../src/electrical/index.js'
import { placeCableClips } from '../../src/electrical/raceways/place-straps.js'
import type { Electrical, WiringSegment } from '../../src/project/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { context, demoSegments, microProject, stringProject } from './demo.js'

const errors = (result: ReturnType<typeof sizeWire>): string[] =>
  result.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.id)

const homeRun = (segments: Record<string, WiringSegment>): Partial<Electrical> => ({
  runs: { ...microProject().electrical?.runs, home: { carries: ['branches'], segments } },
})

describe('segments', () => {
  it('rooftop adder by edition', () => {
    const adders = editions.map(
      (edition) =>
        sizeWire(
          microProject(homeRun({ roof: { ...demoSegments['roof'], height_above_roof_in: 0.8 } as WiringSegment })),
          {
            ...context(),
            edition,
          },
        ).values.circuits[0]?.segments[1]?.rooftop_adder_c,
    )
    expect(adders).toEqual([22, 22, 33, 33, 0, 0])
  })

  it('a raceway in the shade on the roof gets no adder', () => {
    const shade: WiringSegment = { location: 'roof', sun: false, length_ft: 10, raceway: 'EMT' }
    expect(sizeWire(microProject(homeRun({ shade })), context()).values.circuits[0]?.segments[1]?.rooftop_adder_c).toBe(
      0,
    )
  })

  it('a fractional temperature takes the hotter row', () => {
    const at = (ambientC: number) =>
      sizeWire(
        microProject(
          homeRun({ wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT', ambient_c: ambientC } }),
        ),
        context(),
      ).values.circuits[0]?.segments[1]?.correction
    expect([at(35), at(35.4), at(36)]).toEqual([0.96, 0.91, 0.91])
  })

  it('a stated nipple of 24 in needs no adjustment and may be filled to 60 percent; a short piece alone is none', () => {
    const of = (lengthFt: number, nipple?: boolean) =>
      sizeWire(
        microProject(
          homeRun({
            wall: {
              location: 'outdoor_wall',
              length_ft: lengthFt,
              raceway: 'EMT',
              ...(nipple === undefined ? {} : { nipple }),
            },
          }),
        ),
        context(),
      ).values
    // NEC 2017 310.15(B)(3)(a)(2), 2020 and 2023 310.15(C)(1)(b); Chapter 9 note 4.
    expect(of(2, true).circuits[0]?.segments[1]?.adjustment).toBe(1)
    expect(of(2, true).raceways[0]?.fill_limit_pct).toBe(60)
    for (const short of [of(2), of(2, false), of(0.5), of(2.1)]) {
      expect(short.circuits[0]?.segments[1]?.adjustment).toBe(0.8)
      expect(short.raceways[0]?.fill_limit_pct).toBe(40)
    }
  })

  it('a nipple longer than 24 in, or without raceway, is refused with the section of the edition', () => {
    const refuse = (lengthFt: number, edition: string) => () =>
      sizeWire(
        microProject(
          homeRun({ wall: { location: 'outdoor_wall', length_ft: lengthFt, raceway: 'EMT', nipple: true } }),
        ),
        { ...context(), edition },
      )
    expect(refuse(2.1, 'NEC 2017')).toThrow(
      /25\.2 in is no nipple; 24 in is the most \(NEC 2017, 310\.15\(B\)\(3\)\(a\)\(2\)/,
    )
    expect(refuse(2.1, 'NEC 2020')).toThrow(/310\.15\(C\)\(1\)\(b\)/)
    const bare = stringProject()
    const array = bare.electrical?.runs?.['dc']?.segments['array']
    if (array === undefined) throw new Error('no segment')
    array.nipple = true
    expect(() => sizeWire(bare, context())).toThrow('conductors without raceway are no nipple')
  })

  it('judges a named conductor and never uses a smaller one than needed', () => {
    const named = (size: '14' | '12' | '8') => {
      const result = sizeWire(
        microProject(homeRun({ wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT', size_awg: size } })),
        context(),
      )
      return { segment: result.values.circuits[0]?.segments[1], errors: errors(result) }
    }
    expect(named('14').segment).toMatchObject({
      size_awg: '12',
      smallest_awg: '12',
      named: { size_awg: '14', complies: false },
    })
    expect(named('14').errors).toContain('wire.named-conductor')
    expect(named('12').segment).toMatchObject({ size_awg: '12', named: { complies: true }, governs: 'small_conductor' })
    expect(named('8').segment).toMatchObject({ size_awg: '8', smallest_awg: '12', governs: 'named' })
    expect(named('8').errors).toEqual([])
  })

  it('the grounding conductor grows with conductors that are larger than their ampacity needs', () => {
    const of = (size: '12' | '8' | undefined) =>
      sizeWire(
        microProject(
          homeRun({
            wall: {
              location: 'outdoor_wall',
              length_ft: 10,
              raceway: 'EMT',
              ...(size === undefined ? {} : { size_awg: size }),
            },
          }),
        ),
        context(),
      ).values.circuits[0]?.segments[1]?.egc_awg
    expect(of(undefined)).toBe('12')
    // 12 AWG needed, 8 AWG chosen: 6530 x 16510 / 6530 cmil is 8 AWG.
    expect(of('8')).toBe('8')
  })

  it('DC grounding conductors do not grow, and are never above the circuit conductors', () => {
    const result = sizeWire(stringProject(), context())
    // Assumed device 25 A asks for 10 AWG; the circuit is 12 AWG.
    expect(result.values.circuits[0]?.segments[1]).toMatchObject({ size_awg: '12', egc_awg: '12' })
    expect(result.values.circuits[0]?.segments[0]).toMatchObject({ insulation: 'PV wire', egc_awg: '6' })
  })

  it('free air ampacity serves exposed wire in the array only', () => {
    const [array, roof] = sizeWire(stringProject(), context()).values.circuits[0]?.segments ?? []
    expect(array?.ampacity_a).toBeCloseTo(40 * 0.91, 9)
    expect(roof?.ampacity_a).toBeCloseTo(30 * 0.91, 9)
  })

  it('DC inside a building needs metal raceway', () => {
    const indoors = (raceway: 'PVC 40' | 'EMT') =>
      errors(
        sizeWire(
          stringProject({
            runs: {
              dc: { carries: ['strings'], segments: { in: { location: 'indoors', length_ft: 10, raceway } } },
              ac: {
                carries: ['inverter_outputs'],
                segments: { in: { location: 'indoors', length_ft: 10, raceway: 'EMT' } },
              },
            },
          }),
          context(),
        ),
      )
    expect(indoors('PVC 40')).toContain('wire.dc-inside')
    expect(indoors('EMT')).toEqual([])
  })

  it('AC and DC do not share a raceway', () => {
    const result = sizeWire(
      stringProject({
        runs: {
          both: {
            carries: ['strings', 'inverter_outputs'],
            segments: { in: { location: 'indoors', length_ft: 10, raceway: 'EMT' } },
          },
        },
      }),
      context(),
    )
    expect(errors(result)).toContain('wire.ac-with-dc')
  })

  it('voltage rise: the run is enlarged until the total is within the limit', () => {
    const long = sizeWire(
      microProject(homeRun({ wall: { location: 'outdoor_wall', length_ft: 90, raceway: 'EMT' } })),
      context(),
    )
    const [branch] = long.values.circuits
    expect(branch?.segments[1]?.governs).toBe('voltage_rise')
    expect(branch?.total_voltage_rise_pct).toBeLessThanOrEqual(2)
    const sum = branch?.segments.reduce((total, segment) => total + segment.voltage_rise_pct, 0)
    expect(branch?.voltage_rise_pct).toBeCloseTo(sum ?? 0, 12)
    expect(long.values.voltage.conductor_temperature_c).toBe(75)
  })

  it('says so when the trunk alone uses up the voltage', () => {
    const result = sizeWire(
      microProject({ branches: { b1: { modules: { south: 12 }, trunk_length_ft: 200 } } }, 12),
      context(),
    )
    expect(errors(result)).toContain('wire.voltage-rise')
    const finding = result.findings.find((candidate) => candidate.id === 'wire.voltage-rise')
    expect(finding?.fix).toContain('centre')
  })

  it('the arrangement wins over the connector spacing for the trunk', () => {
    const given = { ...context(), arrangement: { trunkLengthFt: { south_1: 24, south_2: 48 } } }
    const [one, two] = sizeWire(microProject(), given).values.circuits
    expect(one?.segments[0]?.length_ft).toBe(24)
    expect((two?.segments[0]?.voltage_rise_pct ?? 0) / (one?.segments[0]?.voltage_rise_pct ?? 1)).toBeCloseTo(2, 9)
  })

  it('the 10 ft rule applies only on request and only to short hot parts', () => {
    const segments: Record<string, WiringSegment> = {
      roof: { location: 'roof', length_ft: 4, raceway: 'EMT', height_above_roof_in: 0 },
      wall: { location: 'outdoor_wall', length_ft: 60, raceway: 'EMT' },
    }
    const of = (use: boolean) =>
      sizeWire(microProject({ ...homeRun(segments), use_10ft_rule: use }), context()).values.circuits[0]?.segments[1]
    expect(of(false)).toMatchObject({ rooftop_adder_c: 33, correction: 0.5 })
    expect(of(true)).toMatchObject({ rooftop_adder_c: 33, correction: 0.91 })
    expect(
      tenFootNeighbour(
        [
          { lengthFt: 7, factor: 0.4 },
          { lengthFt: 60, factor: 0.9 },
        ],
        0,
      ),
    ).toBeUndefined()
    expect(
      tenFootNeighbour(
        [
          { lengthFt: 6, factor: 0.4 },
          { lengthFt: 60, factor: 0.9 },
        ],
        0,
      ),
    ).toBe(1)
    expect(
      tenFootNeighbour(
        [
          { lengthFt: 11, factor: 0.4 },
          { lengthFt: 200, factor: 0.9 },
        ],
        0,
      ),
    ).toBeUndefined()
  })
})

describe('straps and expansion', () => {
  it.each([
    ['EMT', '3/4', 30, 10, 3],
    ['EMT', '1/2', 16, 10, 3],
    ['EMT', '1', 16.1, 10, 3],
    ['EMT', '1', 5, 10, 3],
    ['PVC 40', '3/4', 25, 3, 3],
    ['PVC 80', '1-1/4', 25, 5, 3],
    ['LFNC', '1/2', 6, 3, 1],
    ['RMC', '1', 40, 12, 3],
    ['RMC', '3', 100, 20, 3],
  ] as const)(
    '%s %s over %d ft: at most %d ft apart, within %d ft of the ends',
    (kind, tradeSize, lengthFt, spacingFt, endFt) => {
      const { positionsFt } = placeStraps(kind, tradeSize, lengthFt)
      expect(positionsFt[0]).toBeLessThanOrEqual(endFt)
      expect(lengthFt - (positionsFt.at(-1) ?? 0)).toBeLessThanOrEqual(endFt + 1e-6)
      for (let i = 1; i < positionsFt.length; i++)
        expect((positionsFt[i] ?? 0) - (positionsFt[i - 1] ?? 0)).toBeLessThanOrEqual(spacingFt + 1e-6)
      // One fewer would leave a gap that is too wide.
      const fewest = lengthFt <= 2 * endFt ? 1 : Math.ceil((lengthFt - 2 * endFt) / spacingFt) + 1
      expect(positionsFt).toHaveLength(fewest)
    },
  )

  it('exposed wire in the array is held every 24 in', () => {
    expect(placeCableClips(10).positionsFt).toEqual([1, 3, 5, 7, 9])
  })

  it('PVC in the sun gets an expansion fitting by its temperature range', () => {
    const of = (lengthFt: number, rangeF?: number) =>
      sizeWire(
        microProject(
          homeRun({
            wall: {
              location: 'outdoor_wall',
              length_ft: lengthFt,
              raceway: 'PVC 40',
              ...(rangeF === undefined ? {} : { expansion_range_f: rangeF }),
            },
          }),
        ),
        context(),
      ).values.raceways[0]
    expect(of(15, 41)?.expansion_fitting).toBe(false)
    expect(of(15, 42)?.expansion_fitting).toBe(true)
    // (38 + 6) x 1.8 + 30 = 109.2 F.
    expect(of(20)?.length_change_in).toBeCloseTo(20 * 12 * 3.38e-5 * 109.2, 9)
  })
})
