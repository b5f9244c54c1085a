import { describe, expect, it } from 'vitest'
import { placeStraps, sizeWire } from '../../src/electrical/index.js'
import type { Electrical, WiringSegment } from '../../src/project/index.js'
import { context, microProject, stringProject } from './demo.js'

const homeRun = (segments: Record<string, WiringSegment>, change: Partial<Electrical> = {}) =>
  microProject({
    runs: { ...microProject().electrical?.runs, home: { carries: ['branches'], segments } },
    ...change,
  })

const inside = (change: Partial<WiringSegment>): WiringSegment => ({
  location: 'indoors',
  length_ft: 20,
  raceway: 'NM',
  ...change,
})

const of = (piece: WiringSegment, edition = 'NEC 2020', change: Partial<Electrical> = {}) => {
  const result = sizeWire(homeRun({ a: piece }, change), { ...context(), edition })
  return {
    result,
    segment: result.values.circuits[0]?.segments[1],
    raceway: result.values.raceways[0],
    findings: result.findings.map(({ id, severity }) => `${severity} ${id}`),
  }
}

describe('where a method may lie', () => {
  it.each([
    ['NM', 'outdoor_wall', 'error wire.method-place'],
    ['NM', 'buried', 'error wire.method-place'],
    ['NM', 'indoors', undefined],
    ['AC', 'outdoor_wall', 'error wire.method-place'],
    ['FMC', 'outdoor_wall', 'error wire.method-place'],
    ['FMC', 'indoors', undefined],
    ['UF', 'buried', undefined],
    ['UF', 'outdoor_wall', 'warning wire.method-marking'],
    ['SE', 'buried', 'error wire.method-place'],
    ['SE', 'outdoor_wall', 'warning wire.method-marking'],
    ['MC', 'outdoor_wall', 'error wire.method-marking'],
    ['MC', 'indoors', undefined],
    ['LFMC', 'outdoor_wall', 'warning wire.method-marking'],
    ['IMC', 'outdoor_wall', undefined],
    ['UF', 'array', 'error wire.method-place'],
    ['SE', 'array', 'error wire.method-place'],
    ['EMT', 'array', undefined],
    ['IMC', 'buried', undefined],
  ] as const)('%s at %s: %s', (method, location, expected) => {
    const trade = method === 'FMC' || method === 'IMC' ? { trade_size: '3/4' as const } : {}
    const { findings } = of(inside({ raceway: method, location, ...trade }))
    expect(findings.find((finding) => finding.includes('wire.method'))).toBe(expected)
  })

  it('in the shade only the wet counts; a stated marking clears the finding, another one does not', () => {
    const at = (piece: Partial<WiringSegment>) => of(inside({ location: 'outdoor_wall', ...piece })).findings
    expect(at({ raceway: 'UF', sun: false })).not.toContain('warning wire.method-marking')
    expect(at({ raceway: 'MC', markings: ['wet', 'sunlight_resistant'] }).join()).not.toContain('method')
    expect(at({ raceway: 'MC', markings: ['sunlight_resistant'] })).toContain('error wire.method-marking')
    expect(at({ raceway: 'MC', markings: ['wet'] })).toContain('warning wire.method-marking')
  })

  it('the message names method, place and article', () => {
    const finding = of(inside({ location: 'outdoor_wall' })).result.findings.find(
      ({ id }) => id === 'wire.method-place',
    )
    expect(finding).toMatchObject({ where: 'electrical.runs.home.segments.a.raceway', source: { place: '334' } })
    expect(finding?.message).toContain("NM-B cable in home.a meets a wet place and sunlight at 'outdoor_wall'")
  })

  it.each([
    ['NM', true],
    ['AC', true],
    ['PVC 40', true],
    ['MC', false],
    ['LFMC', false],
    ['FMC', false],
    ['IMC', false],
    ['RMC', false],
  ] as const)('PV DC inside a building in %s: refused %s', (method, refused) => {
    const trade = method === 'FMC' || method === 'IMC' ? { trade_size: '1' as const } : {}
    const { findings } = sizeWire(
      stringProject({
        runs: {
          dc: { carries: ['strings'], segments: { a: inside({ raceway: method, ...trade }) } },
          ac: { carries: ['inverter_outputs'], segments: { a: inside({ raceway: 'EMT' }) } },
        },
      }),
      context(),
    )
    expect(findings.some(({ id }) => id === 'wire.dc-inside')).toBe(refused)
  })
})

describe('ampacity of cables', () => {
  // Branches of 15 A in two cables: 4 conductors lie together, 0.8. 31 to 35 deg C: 0.96 of 90, 0.91 of 60 deg C.
  it('NM: factors from 90 deg C, result never above 60 deg C (334.80)', () => {
    const cool = of(inside({ ambient_c: 30 })).segment
    // 12 AWG: 30 x 1 x 0.8 = 24, capped at 20.
    expect(cool).toMatchObject({ size_awg: '12', ampacity_a: 20, terminal_limit_a: 20, adjustment: 0.8 })
    const hot = of(inside({ location: 'attic', ambient_c: 60 })).segment
    // 12 AWG: 30 x 0.71 x 0.8 = 17.04.
    expect(hot?.ampacity_a).toBeCloseTo(17.04, 9)
    expect(hot?.terminal_limit_a).toBe(20)
  })

  it.each([
    ['14', 15],
    ['12', 20],
    ['10', 30],
    ['8', 40],
    ['6', 55],
  ] as const)('NM %s is worth %d A at the most', (size, amperes) => {
    const { segment } = of(inside({ ambient_c: 20, cables_spaced: true, size_awg: size }))
    if (size === '14') expect(segment).toMatchObject({ size_awg: '12', named: { complies: false } })
    else expect(segment).toMatchObject({ size_awg: size, ampacity_a: amperes })
  })

  it('UF starts from 60 deg C: hotter air costs more, and 60 deg C is too hot', () => {
    const uf = of(inside({ raceway: 'UF', ambient_c: 40, cables_spaced: true })).segment
    // 10 AWG: 30 x 0.82; 12 AWG: 20 x 0.82 = 16.4 >= 15.
    expect(uf).toMatchObject({ size_awg: '12', correction: 0.82 })
    expect(uf?.ampacity_a).toBeCloseTo(16.4, 9)
    expect(() => of(inside({ raceway: 'UF', ambient_c: 60 }))).toThrow('too hot for 60 deg C')
  })

  it('SE in insulation: 60 deg C up to 10 AWG, in 2011 for all sizes; stated 90 deg C conductors start there', () => {
    const se = (piece: Partial<WiringSegment>, edition?: string) =>
      of(inside({ raceway: 'SE', ambient_c: 30, cables_spaced: true, ...piece }), edition).segment?.ampacity_a
    expect(se({ size_awg: '10' })).toBe(35)
    expect(se({ size_awg: '10', insulation: 'XHHW-2' })).toBe(40)
    expect(se({ size_awg: '10', insulation: 'XHHW-2', in_insulation: true })).toBe(30)
    expect(se({ size_awg: '8', insulation: 'XHHW-2', in_insulation: true })).toBe(55)
    expect(se({ size_awg: '8', insulation: 'XHHW-2', in_insulation: true }, 'NEC 2011')).toBe(40)
  })

  it('AC keeps 90 deg C outside insulation and 60 in it', () => {
    const ac = (change: Partial<WiringSegment>) =>
      of(inside({ raceway: 'AC', ambient_c: 30, cables_spaced: true, size_awg: '8', ...change })).segment?.ampacity_a
    expect(ac({})).toBe(55)
    expect(ac({ in_insulation: true })).toBe(40)
  })

  it('cables that are bundled count together, foreign ones with three conductors each; spaced ones count alone', () => {
    const adjustment = (change: Partial<WiringSegment>) => of(inside(change)).segment?.adjustment
    expect(adjustment({ cables_spaced: true })).toBe(1)
    expect(adjustment({})).toBe(0.8)
    expect(adjustment({ bundled_cables: 1 })).toBe(0.7)
    expect(adjustment({ bundled_cables: 2 })).toBe(0.5)
  })

  it('the 10 ft rule is not used in insulation, nor for more than two cables', () => {
    const correction = (change: Partial<WiringSegment>) =>
      sizeWire(
        homeRun(
          {
            attic: inside({ location: 'attic', ambient_c: 60, length_ft: 4, ...change }),
            b: inside({ length_ft: 60, ambient_c: 30 }),
          },
          { use_10ft_rule: true },
        ),
        context(),
      ).values.circuits[0]?.segments[1]?.correction
    expect(correction({})).toBe(1)
    expect(correction({ in_insulation: true })).toBe(0.71)
    expect(correction({ bundled_cables: 1 })).toBe(0.71)
  })

  it('NM ends at 2 AWG, and large cables need a look at their ground', () => {
    const { findings } = of(inside({ size_awg: '1', cables_spaced: true }))
    expect(findings).toContain('error wire.cable-size')
    expect(findings).toContain('warning wire.cable-ground')
    expect(of(inside({ size_awg: '2', cables_spaced: true })).findings).not.toContain('error wire.cable-size')
    expect(of(inside({ size_awg: '10', cables_spaced: true })).findings).not.toContain('warning wire.cable-ground')
  })
})

describe('contents and supports', () => {
  it('each circuit has its own cable, with its own ground and no fill', () => {
    const { raceway, segment } = of(inside({}))
    expect(raceway).toMatchObject({ type: 'NM', form: 'cable', trade_size: null, fill_pct: null, fill_limit_pct: null })
    expect(raceway?.conductors).toEqual(
      ['south_1', 'south_2']
        .map((circuit) => ({ circuit, use: 'current_carrying', count: 2, size_awg: '12', insulation: 'NM-B' }))
        .concat(
          ['south_1', 'south_2'].map((circuit) => ({
            circuit,
            use: 'grounding',
            count: 1,
            size_awg: '12',
            insulation: 'in NM-B',
          })),
        )
        .map((row) => ({ ...row, material: 'copper' })),
    )
    expect(segment?.insulation).toBe('NM-B')
  })

  it.each([
    ['NM', null, 20, 4.5, 1],
    ['UF', null, 20, 4.5, 1],
    ['SE', null, 20, 4.5, 1],
    ['AC', null, 20, 4.5, 1],
    ['MC', null, 20, 6, 1],
    ['FMC', '3/4', 20, 4.5, 1],
    ['LFMC', '3/4', 20, 4.5, 1],
    ['IMC', '1', 40, 10, 3],
  ] as const)('%s %s over %d ft: at most %d ft apart, within %d ft of the ends', (method, size, feet, apart, end) => {
    const { positionsFt } = placeStraps(method, size, feet)
    expect(positionsFt).toHaveLength(Math.ceil((feet - 2 * end) / apart) + 1)
    expect(positionsFt[0]).toBe(end)
    expect(positionsFt.at(-1)).toBe(feet - end)
    for (const [i, at] of positionsFt.entries())
      if (i > 0) expect(at - (positionsFt[i - 1] ?? 0)).toBeLessThanOrEqual(apart + 1e-6)
  })

  it('the length of NM between entry and support is told from 2020 on', () => {
    const formula = (edition: string) =>
      of(inside({}), edition).result.worksheet.find((step) => step.id === 'wire.home.a.straps')?.formula
    expect(formula('NEC 2017')).not.toContain('18 in')
    expect(formula('NEC 2020')).toContain('no more than 18 in of cable')
  })

  it('the worksheet names the ground and what is not checked, for cables and flexible conduit only', () => {
    const note = (piece: Partial<WiringSegment>) =>
      of(inside(piece)).result.worksheet.find(({ id }) => id === 'wire.home.a.method')
    expect(note({ in_insulation: true })).toMatchObject({
      result: { symbol: 'cables', value: 2 },
      source: { place: '334' },
      inputs: [
        { value: 'indoors' },
        { value: 'none stated' },
        { symbol: 'in insulation', value: 'yes' },
        { symbol: 'current-carrying together', value: 4 },
      ],
    })
    expect(note({})?.says).toContain('not in rooms with storage batteries')
    expect(note({ raceway: 'LFMC', markings: ['sunlight_resistant'] })?.inputs[1]?.value).toBe('sunlight_resistant')
    expect(note({ raceway: 'EMT' })).toBeUndefined()
  })

  it('LFMC is filled by its rows of the table; FMC and IMC only by a stated area', () => {
    const lfmc = of(inside({ raceway: 'LFMC' })).raceway
    expect(lfmc).toMatchObject({ trade_size: '1/2', fill_limit_pct: 40 })
    // 5 x 12 AWG in 0.314 in2.
    expect(lfmc?.fill_pct).toBeCloseTo((100 * 5 * 0.0133) / 0.314, 9)
    const fmc = inside({ raceway: 'FMC', trade_size: '1/2' })
    expect(of(fmc).findings).toContain('warning wire.fill-not-judged')
    expect(of(fmc).raceway).toMatchObject({ trade_size: '1/2', fill_pct: null })
    const known = of({ ...fmc, inside_area_in2: 0.25, inside_area_source: 'read' })
    expect(known.findings).not.toContain('warning wire.fill-not-judged')
    // 5 x 12 AWG THWN-2: 0.0665 in2.
    expect(known.raceway?.fill_pct).toBeCloseTo((100 * 5 * 0.0133) / 0.25, 9)
    expect(() => of({ ...fmc, inside_area_in2: 0.166, inside_area_source: 'read' })).toThrow('too small')
    expect(() => of({ ...fmc, inside_area_in2: 0.16625, inside_area_source: 'read' })).not.toThrow()
  })

  it.each([
    [{ in_insulation: true, raceway: 'EMT' }, 'in_insulation counts for cables'],
    [{ bundled_cables: 1, raceway: 'EMT' }, 'bundled_cables counts for cables'],
    [{ cables_spaced: true, raceway: 'none' }, 'cables_spaced counts for cables'],
    [{ trade_size: '1/2' }, 'trade_size does not go with NM-B cable'],
    [{ nipple: true }, 'nipple does not go with'],
    [{ other_conductors: { current_carrying: 2, area_in2: 0.1 } }, 'other_conductors does not go with'],
    [{ cables_spaced: true, bundled_cables: 2 }, 'do not lie with others'],
    [{ markings: ['wet'] }, 'changes nothing'],
    [{ insulation: 'THHN' }, 'NM-B cable is not made with THHN'],
    [{ raceway: 'MC', insulation: 'PV wire' }, 'MC cable is not made with PV wire'],
    [{ raceway: 'FMC' }, 'the trade size of FMC is not chosen'],
    [{ raceway: 'FMC', trade_size: '1/2', inside_area_in2: 0.3 }, 'go together'],
    [{ raceway: 'EMT', inside_area_in2: 0.3, inside_area_source: 'x' }, 'the inside area of EMT is not stated'],
  ] as const)('%j is refused: %s', (change, message) => {
    const piece: WiringSegment = { ...inside({}), ...structuredClone(change) } as WiringSegment
    expect(() => of(piece)).toThrow(message)
  })

  it.each([
    ['IMC', 'RMC'],
    ['FMC', 'EMT'],
    ['LFMC', 'EMT'],
    ['LFNC', 'PVC 40'],
  ] as const)('%s has the impedance of %s', (method, known) => {
    const rise = (raceway: WiringSegment['raceway']) => {
      const piece = inside({ raceway, size_awg: '1/0', trade_size: '2', length_ft: 60 })
      return of(piece, 'NEC 2020', { power_factor: 0.85 }).segment?.voltage_rise_pct
    }
    expect(rise(method)).toBe(rise(known))
    expect(rise('EMT')).not.toBe(rise('PVC 40'))
  })

  it('metal armour meets plastic: bonded; metal meets metal: not', () => {
    const bonds = (raceway: WiringSegment['raceway']) =>
      sizeWire(homeRun({ a: inside({ raceway: 'EMT' }), b: inside({ raceway }) }), context()).values.grounding
        .raceway_bonding.length
    expect([bonds('MC'), bonds('NM'), bonds('LFMC'), bonds('PVC 40')]).toEqual([0, 1, 0, 1])
  })
})
