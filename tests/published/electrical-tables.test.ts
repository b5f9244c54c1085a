import { describe, expect, it } from 'vitest'
import {
  acImpedance,
  ambientCorrection,
  ampacityFreeAir,
  ampacityRaceway,
  bondingJumper,
  busbarRules,
  conductorAdjustment,
  conductorAreas,
  conductorSizes,
  dcResistance,
  editions,
  editionSections,
  electrodeConductor,
  equipmentGround,
  insulationTypes,
  labelRules,
  NIPPLE_FILL_PCT,
  PVC_COEFFICIENT_PER_F,
  pvcExpansion,
  pvHighTemperature,
  pvHighTemperatureAmpacity,
  racewayAreas,
  racewayFill,
  racewaySupports,
  rapidShutdownRules,
  rooftopAdders,
  smallConductors,
  standardDevices,
  use2Areas,
  vocCorrection,
  workingSpace,
  type AmpacityRow,
} from '../../src/tables/nec/index.js'
import { cell, readFixture, sizeName } from '../electrical/read-fixture.js'

const years = ['2011', '2014', '2017', '2020', '2023'] as const

describe('ampacity tables equal the published ones (NEC 2017 and 2023 Tables 310.16 and 310.17)', () => {
  it.each([
    ['ampacity_310_16', ampacityRaceway],
    ['ampacity_310_17_free_air', ampacityFreeAir],
  ] as const)('%s, cell by cell', (name, table) => {
    const expected = readFixture(name).map((row) => ({
      size: sizeName(row['size_awg_kcmil'] ?? ''),
      copper: [cell(row['cu_60C']), cell(row['cu_75C']), cell(row['cu_90C'])],
      aluminum: row['al_60C'] === '' ? undefined : [cell(row['al_60C']), cell(row['al_75C']), cell(row['al_90C'])],
    }))
    expect(table).toEqual(expected)
  })

  it.each([
    ['raceway', ampacityRaceway],
    ['free air', ampacityFreeAir],
  ] as const)('%s: the columns follow sqrt((Tc2 - 30)/(Tc1 - 30)) within 10 percent', (_, table) => {
    for (const row of table)
      for (const [at60, at75, at90] of metals(row)) {
        // sqrt(45/30) = 1.225 and sqrt(60/45) = 1.155; small sizes are rounded to 5 A.
        expect(Math.abs(at75 - at60 * Math.sqrt(45 / 30))).toBeLessThanOrEqual(Math.max(5, 0.1 * at75))
        expect(Math.abs(at90 - at75 * Math.sqrt(60 / 45))).toBeLessThanOrEqual(Math.max(5, 0.1 * at90))
        expect(at60).toBeLessThan(at75)
        expect(at75).toBeLessThan(at90)
      }
  })

  it.each([
    ['raceway', ampacityRaceway],
    ['free air', ampacityFreeAir],
  ] as const)('%s: ampacity grows with the area as a power of it without a jump', (_, table) => {
    for (const metal of ['copper', 'aluminum'] as const) {
      for (const column of [0, 1, 2] as const) {
        const points = table.flatMap((row, i) => {
          const value = row[metal]?.[column]
          return value === undefined ? [] : [{ x: Math.log(areaOf(i)), y: Math.log(value) }]
        })
        // Neher-McGrath ampacities are smooth in log-log: a cell lies within 8 percent, or the 5 A
        // of rounding, of the mean of its neighbours.
        for (let i = 1; i < points.length - 1; i++) {
          const [a, b, c] = [points[i - 1], points[i], points[i + 1]]
          if (a === undefined || b === undefined || c === undefined) throw new Error('index')
          const between = a.y + ((c.y - a.y) * (b.x - a.x)) / (c.x - a.x)
          const value = Math.exp(b.y)
          expect(Math.abs(value - Math.exp(between)), `${metal} row ${i} column ${column}`).toBeLessThan(
            Math.max(5, 0.08 * value),
          )
        }
      }
    }
  })
})

const metals = (row: AmpacityRow): (readonly [number, number, number])[] =>
  row.aluminum === undefined ? [row.copper] : [row.copper, row.aluminum]

/** AWG geometry, ASTM B258: d = 0.005 in x 92^((36 - n)/39). */
function areaOf(index: number): number {
  const size = conductorSizes[index] ?? ''
  if (size.endsWith('kcmil')) return Number(size.split(' ')[0]) * 1000
  const number = size.endsWith('/0') ? 1 - Number(size.split('/')[0]) : Number(size)
  return (1000 * 0.005 * 92 ** ((36 - number) / 39)) ** 2
}

describe('ambient correction', () => {
  it('equals the published table, cell by cell', () => {
    expect(ambientCorrection).toEqual(
      readFixture('ambient_correction_30C').map((row) => ({
        toC: cell(row['to_C']),
        factor60: cell(row['factor_60C']),
        factor75: cell(row['factor_75C']),
        factor90: cell(row['factor_90C']),
      })),
    )
  })

  it('follows sqrt((Tc - Ta)/(Tc - 30)) within 0.005 (NEC 2020 equation 310.15(B))', () => {
    for (const row of ambientCorrection) {
      for (const [tc, factor] of [
        [60, row.factor60],
        [75, row.factor75],
        [90, row.factor90],
      ] as const) {
        if (factor === undefined) expect(row.toC).toBeGreaterThanOrEqual(tc - 4)
        else expect(Math.abs(factor - Math.sqrt((tc - row.toC) / (tc - 30)))).toBeLessThan(0.005)
      }
    }
  })

  it('PV wire at 105 and 125 deg C: equal and by the same formula (NEC 2020 Table 690.31(A))', () => {
    const fixture = readFixture('pv_high_temp_690_31')
    expect(pvHighTemperature).toEqual(
      fixture.map((row) => ({
        toC: Number(row['ambient_C']?.split('-').at(-1)),
        factor105: cell(row['factor_105C']),
        factor125: cell(row['factor_125C']),
      })),
    )
    for (const row of pvHighTemperature) {
      expect(Math.abs(row.factor125 - Math.sqrt((125 - row.toC) / 95))).toBeLessThan(0.005)
      if (row.factor105 !== undefined)
        expect(Math.abs(row.factor105 - Math.sqrt((105 - row.toC) / 75))).toBeLessThan(0.005)
    }
    // The two columns of ampacity stand in the ratio sqrt(95/75) of their temperature rises, within 5 A of rounding.
    for (const { at105A, at125A } of pvHighTemperatureAmpacity)
      expect(at125A / at105A).toBeCloseTo(Math.sqrt(95 / 75) * 0.965, 1)
    expect(pvHighTemperatureAmpacity.map((row) => [row.size, row.at105A, row.at125A])).toEqual([
      ['14', 29, 31],
      ['12', 36, 39],
      ['10', 46, 50],
      ['8', 64, 69],
      ['6', 81, 87],
      ['4', 109, 118],
    ])
  })
})

const halfUnit = (value: number): number => 0.5 * 10 ** (Math.floor(Math.log10(value)) - 1)

describe('conductors', () => {
  it('resistance equals Table 8, cell by cell', () => {
    expect(dcResistance).toEqual(
      readFixture('ch9_table8_dc_resistance').map((row) => ({
        size: sizeName(row['size_awg_kcmil'] ?? ''),
        circularMils: cell(row['circular_mils']),
        strands: cell(row['strands']),
        diameterIn: cell(row['overall_diameter_in']),
        copper: cell(row['cu_uncoated_ohm_per_kft']),
        coatedCopper: cell(row['cu_coated_ohm_per_kft']),
        aluminum: cell(row['al_ohm_per_kft']),
      })),
    )
  })

  it('resistance follows resistivity and area: 10.371 ohm cmil/ft at 20 C, 0.00393/K, 2 % more when stranded', () => {
    for (const row of dcResistance) {
      const lay = row.strands === 1 ? 1 : 1.02
      const copper = ((10.371 * (1 + 0.00393 * 55)) / row.circularMils) * 1000 * lay
      const aluminum = ((10.371 / 0.61) * (1 + 0.00403 * 55) * 1000 * lay) / row.circularMils
      expect(Math.abs(row.copper / copper - 1), `copper ${row.size}`).toBeLessThan(0.0051)
      expect(Math.abs(row.aluminum / aluminum - 1), `aluminum ${row.size}`).toBeLessThan(0.0071)
      expect(row.coatedCopper / row.copper).toBeGreaterThan(1.02)
      expect(row.coatedCopper / row.copper).toBeLessThan(1.055)
    }
  })

  it('areas follow AWG geometry (ASTM B258) within the 0.1 percent of the print', () => {
    for (const row of dcResistance) {
      const index = conductorSizes.indexOf(row.size)
      expect(Math.abs(row.circularMils / areaOf(index) - 1), row.size).toBeLessThan(0.001)
      if (row.strands === 1) expect(row.diameterIn).toBeCloseTo(Math.sqrt(areaOf(index)) / 1000, 3)
      else expect(row.diameterIn * 1000).toBeGreaterThan(Math.sqrt(areaOf(index)))
    }
  })

  it('insulated areas equal Table 5 and are pi/4 d2', () => {
    expect(conductorAreas).toEqual(
      readFixture('ch9_table5_conductor_area').map((row) => ({
        size: sizeName(row['size'] ?? ''),
        thwn2AreaIn2: cell(row['thhn_thwn2_area_in2']),
        thwn2DiameterIn: cell(row['thhn_thwn2_diameter_in']),
        xhhw2AreaIn2: cell(row['xhhw2_area_in2']),
        xhhw2DiameterIn: cell(row['xhhw2_diameter_in']),
      })),
    )
    for (const row of conductorAreas) {
      for (const [area, diameter] of [
        [row.thwn2AreaIn2, row.thwn2DiameterIn],
        [row.xhhw2AreaIn2, row.xhhw2DiameterIn],
      ] as const) {
        const spread = (Math.PI / 2) * diameter * 0.0005 + 0.00005
        expect(Math.abs(area - (Math.PI / 4) * diameter ** 2)).toBeLessThan(spread)
      }
    }
  })

  it('XHHW-2 14 to 8 AWG is not the THHN area of a known wrong public copy', () => {
    for (const row of conductorAreas.slice(0, 4)) expect(row.xhhw2AreaIn2).toBeGreaterThan(row.thwn2AreaIn2)
  })

  it('USE-2/RHW-2 areas (note of the published table) are larger than XHHW-2 and grow', () => {
    expect(use2Areas.map((row) => row.areaIn2)).toEqual([0.0209, 0.026, 0.0333, 0.0556, 0.0726, 0.0973])
    for (const [i, row] of use2Areas.entries())
      expect(row.areaIn2).toBeGreaterThan(conductorAreas[i]?.xhhw2AreaIn2 ?? 9)
  })

  it('impedance equals Table 9, cell by cell', () => {
    const three = (row: Record<string, string>, key: string, tail = ''): unknown =>
      row[`${key}_pvc${tail}`] === ''
        ? undefined
        : ['pvc', 'al', 'steel'].map((conduit) => cell(row[`${key}_${conduit}${tail}`]))
    expect(acImpedance).toEqual(
      readFixture('ch9_table9_ac_rx').map((row) => ({
        size: sizeName(row['size'] ?? ''),
        reactance: [cell(row['X_pvc_or_al_conduit']), cell(row['X_steel'])],
        copperResistance: three(row, 'Rcu'),
        aluminumResistance: three(row, 'Ral'),
        copperZ085: three(row, 'Zcu', '_pf085'),
        aluminumZ085: three(row, 'Zal', '_pf085'),
      })),
    )
  })

  it('Table 9: Z = 0.85 R + 0.527 X to print rounding, and R is near Table 8', () => {
    for (const row of acImpedance) {
      const dc = dcResistance.find((r) => r.size === row.size && r.strands > 1)
      for (const i of [0, 1, 2] as const) {
        const x = i === 2 ? row.reactance[1] : row.reactance[0]
        for (const [r, z, r8] of [
          [row.copperResistance[i], row.copperZ085[i], dc?.copper ?? 0],
          [row.aluminumResistance?.[i], row.aluminumZ085?.[i], dc?.aluminum ?? 0],
        ] as const) {
          if (r === undefined || z === undefined) continue
          // Both R and Z are printed with two digits, so each is off by half a unit in its second digit.
          expect(Math.abs(0.85 * r + 0.527 * x - z), `${row.size} Z`).toBeLessThan(
            halfUnit(z) + 0.85 * halfUnit(r) + 0.0005,
          )
          expect(Math.abs(r - r8), `${row.size} R`).toBeLessThan(0.0075 + 0.04 * r8)
        }
      }
    }
  })

  it('Table 9: reactance of 10 and 8 AWG is not that of a known wrong public library (0.054/0.068, 0.050/0.063)', () => {
    const of = (size: string) => acImpedance.find((row) => row.size === size)?.reactance
    expect(of('10')).toEqual([0.05, 0.063])
    expect(of('8')).toEqual([0.052, 0.065])
    expect(of('10')).not.toEqual([0.054, 0.068])
    expect(of('8')).not.toEqual([0.05, 0.063])
  })

  it('Table 9: reactance in steel is 1.25 times that in PVC within print rounding', () => {
    for (const { reactance } of acImpedance) expect(Math.abs(reactance[1] / reactance[0] - 1.25)).toBeLessThan(0.03)
  })
})

describe('raceways', () => {
  it('areas equal Table 4, cell by cell', () => {
    expect(racewayAreas).toEqual(
      readFixture('ch9_table4_conduit_area').map((row) => ({
        kind: row['raceway'],
        tradeSize: row['trade_size'],
        insideDiameterIn: cell(row['internal_diameter_in']),
        area100In2: cell(row['area_100pct_in2']),
        area40In2: cell(row['area_40pct_in2']),
        area31In2: cell(row['area_31pct_computed_in2']),
        area53In2: cell(row['area_53pct_computed_in2']),
        area60In2: cell(row['area_60pct_nipple_computed_in2']),
      })),
    )
  })

  it('areas are pi/4 d2 and the stated shares of it, to print rounding', () => {
    for (const row of racewayAreas) {
      const name = `${row.kind} ${row.tradeSize}`
      const full = (Math.PI / 4) * row.insideDiameterIn ** 2
      expect(Math.abs(row.area100In2 - full), name).toBeLessThan((Math.PI / 2) * row.insideDiameterIn * 0.0005 + 0.0006)
      expect(Math.abs(row.area40In2 - 0.4 * row.area100In2), name).toBeLessThan(0.0011)
      expect(Math.abs(row.area31In2 - 0.31 * row.area100In2), name).toBeLessThan(0.0011)
      expect(Math.abs(row.area53In2 - 0.53 * row.area100In2), name).toBeLessThan(0.0011)
      expect(Math.abs(row.area60In2 - 0.6 * row.area100In2), name).toBeLessThan(0.0011)
    }
  })

  it('known wrong public cells: RMC 3/4 and 1 are not the EMT areas; 40 percent of 3/4 EMT is 0.213, not 0.2316', () => {
    const of = (kind: string, size: string) => racewayAreas.find((row) => row.kind === kind && row.tradeSize === size)
    expect(of('RMC', '3/4')?.area100In2).toBe(0.549)
    expect(of('RMC', '1')?.area100In2).toBe(0.887)
    expect(of('RMC', '3/4')?.area100In2).not.toBe(of('EMT', '3/4')?.area100In2)
    expect(of('RMC', '1')?.area100In2).not.toBe(of('EMT', '1')?.area100In2)
    expect(of('EMT', '3/4')?.area40In2).toBe(0.213)
    expect(of('EMT', '3/4')?.area40In2).not.toBe(0.2316)
  })

  it('fill percentages equal Table 1', () => {
    const fixture = readFixture('ch9_table1_fill')
    const percent = (name: string) =>
      cell(fixture.find((row) => row['number_of_conductors'] === name)?.['max_fill_percent'])
    expect(racewayFill.map((row) => row.percent)).toEqual([percent('1'), percent('2'), percent('over 2')])
    expect(racewayFill.map((row) => row.to)).toEqual([1, 2, Infinity])
    expect(NIPPLE_FILL_PCT).toBe(percent('nipple <= 24 in'))
  })

  it('PVC expansion equals Table 352.44 and 3.38e-5 in/in/F', () => {
    expect(pvcExpansion).toEqual(
      readFixture('pvc_expansion_352_44').map((row) => ({
        changeF: cell(row['temp_change_F']),
        inPer100Ft: cell(row['length_change_in_per_100ft']),
      })),
    )
    for (const row of pvcExpansion)
      expect(Math.abs(row.inPer100Ft - PVC_COEFFICIENT_PER_F * 1200 * row.changeF)).toBeLessThan(0.0051)
  })

  it('supports equal the published rows', () => {
    const of = (kind: string, size: string) =>
      racewaySupports.find((row) => row.kind === kind && row.toTradeSize === size)?.maxSpacingFt
    const last = (text: string | undefined) => text?.split(' to ').at(-1) ?? ''
    for (const row of readFixture('pvc_support_352_30'))
      expect(of('PVC', last(row['trade_size'])), row['trade_size']).toBe(cell(row['max_support_spacing_ft']))
    for (const row of readFixture('metal_raceway_support')) {
      const kind = row['raceway']?.split(' ')[0] ?? ''
      if (kind.includes('/')) continue
      const rows = racewaySupports.filter((r) => r.kind === kind)
      const size = last(row['trade_size'])
      const match = size === 'all' || size === '3 and larger' ? rows.at(-1) : rows.find((r) => r.toTradeSize === size)
      expect(match?.maxSpacingFt, `${kind} ${size}`).toBe(cell(row['max_spacing_ft']))
      expect(match?.maxFromBoxIn, `${kind} ${size}`).toBe(cell(row['max_from_box_in']))
    }
  })
})

describe('overcurrent, grounding, voltage, space', () => {
  it('conductor adjustment equals Table 310.15(C)(1)', () => {
    expect(conductorAdjustment).toEqual(
      readFixture('ccc_adjustment').map((row) => ({
        to: row['conductors_to'] === '' ? Infinity : cell(row['conductors_to']),
        percent: cell(row['percent']),
      })),
    )
  })

  it('standard ratings equal 240.6(A)', () => {
    expect(standardDevices).toEqual(readFixture('ocpd_standard_240_6A').map((row) => cell(row['rating_A'])))
  })

  it('small conductors equal 240.4(D)', () => {
    expect(smallConductors.map((row) => [row.size, row.material, row.maxDeviceA])).toEqual(
      readFixture('small_conductor_240_4_D').map((row) => [
        row['size_awg'],
        row['material'] === 'Cu' ? 'copper' : 'aluminum',
        cell(row['max_ocpd_A']),
      ]),
    )
  })

  it('small conductors are limited to no more than their 60 deg C ampacity', () => {
    for (const { size, material, maxDeviceA } of smallConductors)
      expect(maxDeviceA).toBeLessThanOrEqual(ampacityRaceway.find((row) => row.size === size)?.[material]?.[0] ?? 0)
  })

  it('equipment ground equals Table 250.122; aluminum is two sizes larger than copper', () => {
    expect(equipmentGround).toEqual(
      readFixture('egc_250_122').map((row) => ({
        toA: cell(row['ocpd_not_exceeding_A']),
        copper: row['cu_awg'],
        aluminum: row['al_awg'],
      })),
    )
    const ladder = ['14', '12', '10', '8', '6', '4', '2', '1']
    for (const row of equipmentGround) {
      if (row.copper === '3') expect(row.aluminum).toBe('1')
      else expect(ladder.indexOf(row.aluminum) - ladder.indexOf(row.copper)).toBe(1)
    }
  })

  it('bonding jumper equals Table 250.102(C)(1) up to 1100 kcmil of copper', () => {
    const rows = readFixture('bonding_250_102_C1').filter((row) => !row['min_cu']?.includes('percent'))
    expect(bondingJumper.map((row) => [row.largestCopper, row.largestAluminum, row.copper, row.aluminum])).toEqual(
      rows.map((row) => [row['largest_ungrounded_cu'], row['largest_ungrounded_al'], row['min_cu'], row['min_al']]),
    )
    expect(rows).toHaveLength(6)
  })

  it('electrode conductor equals Table 250.66', () => {
    expect(electrodeConductor.map((row) => [row.largestCopper, row.largestAluminum, row.copper, row.aluminum])).toEqual(
      readFixture('gec_250_66').map((row) => [
        row['largest_ungrounded_cu'],
        row['largest_ungrounded_al'],
        sizeName(row['gec_cu'] ?? ''),
        sizeName(row['gec_al'] ?? ''),
      ]),
    )
    // The upper ends of the rows in kcmil are the AWG areas of the sizes that the row names.
    const kcmil = (name: string) => areaOf(conductorSizes.findIndex((size) => size === name)) / 1000
    for (const [i, size] of (['2', '1/0', '3/0'] as const).entries())
      expect(electrodeConductor[i]?.toCopperKcmil).toBeCloseTo(kcmil(size), 0)
    for (const [i, size] of (['1/0', '3/0'] as const).entries())
      expect(electrodeConductor[i]?.toAluminumKcmil).toBeCloseTo(kcmil(size), 0)
  })

  it('cold voltage equals Table 690.7(A)', () => {
    const [first, ...rest] = vocCorrection
    expect(first).toEqual({ fromC: 25, factor: 1 })
    expect(rest).toEqual(
      readFixture('voc_correction_690_7A').map((row) => ({ fromC: cell(row['min_C']), factor: cell(row['factor']) })),
    )
  })

  it('cold voltage rises by 0.3 to 0.5 percent per deg C, as crystalline silicon does', () => {
    for (const row of vocCorrection.slice(1)) {
      const perC = (row.factor - 1) / (25 - row.fromC)
      expect(perC).toBeGreaterThan(0.003)
      expect(perC).toBeLessThan(0.0051)
    }
  })

  it('working space equals Table 110.26(A)(1)', () => {
    expect(workingSpace).toEqual(
      readFixture('working_space_110_26').map((row) => ({
        toV: Number(row['voltage_to_ground']?.split('-')[1]),
        conditionFt: [cell(row['cond1_ft']), cell(row['cond2_ft']), cell(row['cond3_ft'])],
      })),
    )
  })
})

describe('editions', () => {
  it('rooftop adder equals the published rows, edition by edition', () => {
    const fixture = readFixture('rooftop_adder').filter((row) => row['nec_edition'] !== '2008')
    const written = rooftopAdders.filter((row) => row.edition !== 'NEC 2026')
    expect(written.map((row) => [row.edition, row.section, row.adderC, row.adderF])).toEqual(
      fixture.map((row) => [`NEC ${row['nec_edition']}`, row['section'], cell(row['adder_C']), cell(row['adder_F'])]),
    )
    for (const [i, row] of written.entries()) {
      const text = fixture[i]?.['height_above_roof_in'] ?? ''
      if (row.toIn === Infinity) expect(text).toMatch(/or more|above 36$/)
      else expect(text).toContain(row.inclusive ? `to ${row.toIn}` : `less than ${row.toIn}`)
      // 33 C is 60 F of temperature difference, and so on, rounded to a whole degree.
      expect(Math.abs(row.adderC * 1.8 - row.adderF)).toBeLessThan(1)
    }
  })

  it('NEC 2023 is not quoted with the 7/8 in of NEC 2020', () => {
    const limit = (edition: string) => rooftopAdders.find((row) => row.edition === edition)?.toIn
    expect(limit('NEC 2023')).toBe(0.75)
    expect(limit('NEC 2020')).toBe(0.875)
  })

  it('sections equal the crosswalk, with its marks', () => {
    const keys = Object.keys(editionSections)
    for (const [i, row] of readFixture('edition_crosswalk').entries()) {
      const topic = Object.values(editionSections)[i]
      for (const year of years) {
        const text = row[year] === 'same' ? row['2008'] : row[year]
        const place = topic?.[`NEC ${year}`]
        const name = `${row['topic']} (${keys[i]}) ${year}`
        if (text === '-') expect(place, name).toBeUndefined()
        else {
          expect(text?.toLowerCase(), name).toContain(place?.place.replace(/^Table /, '').toLowerCase())
          if (text?.includes('memory, unverified')) expect(place?.standing, name).toBe('from memory')
          if (year === '2011' || year === '2014' || (year === '2023' && /^(690|705)/.test(text ?? '')))
            expect(place?.standing, name).not.toBe('read')
          if (year === '2017') expect(place?.standing, name).toBe('read')
        }
      }
    }
  })

  it('every section is written as the code numbers them', () => {
    const number = /^(?:removed|(?:Table )?\d{3}\.\d+(?:\([A-Za-z0-9]+\))*|Chapter 9 Table (?:1|4|5|8|9))(?:[ ,-].*)?$/u
    for (const [topic, byEdition] of Object.entries(editionSections))
      for (const [edition, section] of Object.entries(byEdition))
        if (section !== undefined) expect(section.place, `${topic} ${edition}`).toMatch(number)
    // NEC chapter 9: table 8 has resistances to direct current, table 9 impedances, 1 the fill, 4 raceways, 5 conductors.
    expect(editionSections.dcResistance['NEC 2017']?.place).toBe('Chapter 9 Table 8')
  })

  it('busbar rules equal the published ones: section, share and expression', () => {
    const fixture = readFixture('busbar_rules')
    for (const row of fixture) {
      const edition = `NEC ${row['nec_edition']}`
      const rules = busbarRules.filter((rule) => rule.edition === edition)
      if (row['nec_edition'] === '2008') expect(rules).toEqual([])
      else if (row['nec_edition'] === '2020' || row['nec_edition'] === '2023') {
        expect(rules.map((rule) => rule.section)).toEqual(
          [1, 2, 3, 4, 5, 6].map((n) => (row['section'] ?? '').replace(/\(1\)-\(6\)$/, `(${n})`)),
        )
      } else {
        const rule =
          rules.find((r) => r.section === row['section'] && r.rule === row['rule']) ??
          rules.find((r) => r.section === row['section'] && r.share === 1.2)
        expect(rule, `${edition} ${row['section']}`).toBeDefined()
        const expression = row['expression'] ?? ''
        if (expression.startsWith('M + sum')) expect(rule?.expression).toBe('breakers')
        if (expression.startsWith('1.25*I')) expect(rule?.expression).toBe('current')
        if (expression.startsWith('sum(')) expect(rule?.expression).toBe('breaker-sum')
        expect(rule?.share).toBe(expression.includes('1.20*B') ? 1.2 : 1)
        if (row['position_required']?.startsWith('opposite')) expect(rule?.position).toBe('opposite end')
      }
    }
  })

  it('rapid shutdown equals the published rows', () => {
    for (const row of readFixture('rapid_shutdown')) {
      const rule = rapidShutdownRules.find((r) => r.edition === `NEC ${row['nec_edition']}`)
      if (row['nec_edition'] === '2011 and earlier') {
        expect(rapidShutdownRules.some((r) => r.edition === 'NEC 2011')).toBe(false)
        continue
      }
      expect(rule?.section).toBe(row['section'])
      expect(rule?.moduleLevelNote).toBe(row['microinverter_note'])
      expect(rule?.outsideLimit).toBe(row['outside_limit'])
      expect(rule?.timeS).toBe(cell(row['time_s']))
      expect(rule?.labelSection).toBe(row['label_section'])
      expect(rule?.initiatorOutdoors).toBe(row['nec_edition'] !== '2014')
    }
  })

  it('labels equal the published rows, section by section', () => {
    const fixture = readFixture('labels')
    expect(labelRules.map((row) => row.id)).toEqual(fixture.map((row) => row['id']))
    for (const [i, rule] of labelRules.entries()) {
      const row = fixture[i] ?? {}
      expect(rule.where).toBe(row['where'])
      expect(rule.gist).toBe(row['gist_of_required_text'])
      expect(rule.sizeAndColour).toBe(row['size_colour'])
      expect(rule.neededForModuleLevel).toBe(row['needed_for_microinverter_system'])
      expect(rule.verifiedBy).toBe(row['verified_by'])
      for (const edition of editions.filter((each) => each !== 'NEC 2026')) {
        const text = row[`nec${edition.slice(4)}`] ?? ''
        const place = rule.sections[edition]
        if (['-', 'removed', 'deleted', ''].includes(text)) expect(place, `${rule.id} ${edition}`).toBeUndefined()
        else expect(text, `${rule.id} ${edition}`).toContain(place?.section)
        if (text.includes('memory, unverified')) expect(place?.standing).toBe('from memory')
      }
    }
  })

  it('insulation temperatures equal the published rows', () => {
    const fixture = readFixture('insulation_types')
    for (const [i, row] of fixture.entries()) {
      expect(row['type']).toContain(insulationTypes[i]?.type)
      expect([insulationTypes[i]?.wetC, insulationTypes[i]?.dryC]).toEqual([cell(row['wet_C']), cell(row['dry_C'])])
      expect(insulationTypes[i]?.exposedInArray.length === 0).toBe(row['sunlight_exposed_array']?.startsWith('no'))
      expect(insulationTypes[i]?.racewayOnRoof).toBe(row['raceway_on_roof']?.startsWith('yes'))
    }
  })
})
