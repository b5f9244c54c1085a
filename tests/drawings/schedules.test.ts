import { describe, expect, test } from 'vitest'
import type { ConductorValues, RacewayValues } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import {
  hipHouse,
  manyBranches,
  microHouse,
  noCombiner,
  packetInput,
  stringHouse,
  withSmallLetters,
} from './demo-packet.js'
import { readPacket, tableOf, type ReadSheet } from './read-sheet.js'

const nec2020Fused = (): Project => {
  const house = stringHouse()
  return {
    ...house,
    electrical: {
      ...house.electrical,
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end', breaker_marked_line_load: false },
    },
  }
}

const houses = [
  ['branches on a combiner', microHouse],
  ['breakers in the panel', noCombiner],
  ['strings on the supply side', stringHouse],
  ['strings on a breaker', nec2020Fused],
  ['four branches', hipHouse],
  ['fifteen branches', manyBranches],
] as const

/** The rows of a table over all sheets that it runs on. */
function rowsOf(sheets: readonly ReadSheet[], headings: readonly string[]): string[][] {
  const found = sheets.flatMap((read) => {
    try {
      return [tableOf(read, headings)]
    } catch {
      return []
    }
  })
  if (found.length === 0) throw new Error(`no table ${headings.join(' | ')}`)
  return found.flat()
}

type Tagged = Pick<ConductorValues, 'tag' | 'circuits'>

/** Conductors of a circuit as its raceway holds them; a trunk cable of these houses has two lines, a bond is one alone. */
function numberOf({ tag, circuits }: Tagged, raceway: RacewayValues | undefined): string {
  if (raceway === undefined) return tag.startsWith('G') ? '1' : '2'
  const own = raceway.conductors.filter(({ circuit }) => circuit === circuits[0])
  const count = (use: string): number => own.reduce((sum, each) => sum + (each.use === use ? each.count : 0), 0)
  return `${count('current_carrying')}${count('neutral') === 0 ? '' : ' + N'}`
}

/** At most so many decimals, none that are needless. */
const figure = (value: number, decimals = 2): string => {
  const [whole = '', part = ''] = value.toFixed(decimals).split('.')
  const kept = part.replace(/0+$/u, '')
  return kept === '' ? whole : `${whole}.${kept}`
}
const spaced = (id: string): string => id.split('_').join(' ')
const size = (awg: string): string => (awg.endsWith('kcmil') ? awg : `${awg} AWG`)
/** Words of a cell that may be broken over lines within a word. */
const tight = (text: string | undefined): string => (text ?? '').replaceAll(' ', '')

describe.each(houses)('schedules of %s', (_, make) => {
  const input = packetInput(withSmallLetters(make()), '11x17', true)
  const wiring = input.wire?.values
  if (wiring === undefined) throw new Error('no wiring')
  const packet = readPacket(input)
  const sheets = packet.filter(({ sheet }) => sheet.id.startsWith('E-602'))
  const diagram = packet.filter(({ sheet }) => sheet.id.startsWith('E-601'))

  const wayHeads = ['No.', 'Circuits', 'Where', 'Conductors', 'Raceway', 'Length', 'Fill']

  test('each raceway and trunk cable has one number with its conductors, length and fill', () => {
    for (const rows of [rowsOf(sheets, wayHeads)]) {
      expect(rows.map(([tag]) => tag)).toEqual(rows.map((__, index) => String(index + 1)))
      const raceways = rows.slice(rows.length - wiring.raceways.length)
      for (const [index, raceway] of wiring.raceways.entries()) {
        const [, circuits, where, conductors, kind, length, fill] = raceways[index] ?? []
        expect(tight(circuits)).toBe(raceway.circuits.join(','))
        expect(tight(where)).toBe(tight(`${spaced(raceway.id)} (${spaced(raceway.location)})`))
        expect(kind).toBe(
          raceway.type === 'none' ? 'none, clipped to the rails' : `${raceway.trade_size} in ${raceway.type}`,
        )
        expect(length).toBe(`${figure(raceway.length_ft, 0)} ft`)
        expect(fill).toBe(
          raceway.fill_pct === null
            ? ''
            : `${figure(raceway.fill_pct, 0)} of ${figure(raceway.fill_limit_pct ?? 0, 0)} %`,
        )
        const wanted = new Map<string, number>()
        for (const { count, size_awg: awg, material, insulation, use } of raceway.conductors) {
          const metal = material === 'copper' ? 'Cu' : 'Al'
          const kindOf = use === 'grounding' ? 'ground' : use === 'neutral' ? `${insulation} neutral` : insulation
          const key = tight(`${size(awg)} ${metal} ${kindOf}`)
          wanted.set(key, (wanted.get(key) ?? 0) + count)
        }
        const told = new Map<string, number>()
        for (const part of conductors?.split('; ') ?? []) {
          const [, count, what] = /^(\d+) x (.+)$/u.exec(part) ?? []
          told.set(tight(what), Number(count))
        }
        expect(told).toEqual(wanted)
      }
      const trunks = rows.slice(0, rows.length - wiring.raceways.length)
      const inTrunk = wiring.circuits.filter((circuit) => circuit.segments.some(({ id }) => id.endsWith('.trunk')))
      expect(trunks.flatMap(([, circuits]) => tight(circuits).split(',')).toSorted()).toEqual(
        inTrunk.map(({ id }) => id).toSorted(),
      )
      for (const [, circuits, where, conductors, kind, length, fill] of trunks) {
        const segments = inTrunk
          .filter(({ id }) => tight(circuits).split(',').includes(id))
          .map((circuit) => circuit.segments.find(({ id }) => id === `${circuit.id}.trunk`))
        expect(length).toBe(`${figure(Math.max(...segments.map((each) => each?.length_ft ?? 0)), 0)} ft`)
        expect([where, kind, fill]).toEqual(['array, behind the modules', 'none, clipped to the rails', ''])
        for (const segment of segments) {
          const ground = segment?.egc_awg === null ? '' : ` with ${segment?.egc_awg} AWG ground`
          expect(conductors).toBe(`${segment?.size_awg} AWG ${segment?.insulation}${ground}`)
        }
      }
    }
  })

  test('each circuit has its kind, inverters, voltage, currents, device and voltage rise', () => {
    const names: Readonly<Record<string, string>> = {
      ac_branch: 'AC branch',
      ac_inverter_output: 'AC inverter output',
      ac_combined_output: 'AC combined output',
      ac_supply_tap: 'AC supply tap',
      dc_string: 'DC string',
    }
    const rows = rowsOf(sheets, [
      'Circuit',
      'Kind',
      'Inverters',
      'Voltage',
      'Rated current',
      '125 %',
      'Overcurrent device',
      'Voltage rise',
    ])
    expect(rows).toEqual(
      wiring.circuits.map((circuit) => [
        circuit.id,
        names[circuit.kind],
        circuit.inverters > 0 ? `${circuit.inverters}` : '',
        `${figure(circuit.voltage_v, 0)} V`,
        `${figure(circuit.continuous_a)} A`,
        `${figure(circuit.required_a)} A`,
        circuit.breaker_a !== null
          ? `${circuit.breaker_a} A${circuit.kind === 'dc_string' ? '' : ', 2-pole'}`
          : circuit.kind === 'ac_supply_tap'
            ? 'at their end'
            : 'none needed',
        `${figure(circuit.total_voltage_rise_pct)} of ${figure(circuit.voltage_rise_limit_pct)} %`,
      ]),
    )
  })

  test('each segment has its conductor, air, adder, factors and ampacity', () => {
    const rows = rowsOf(sheets, [
      'Circuit',
      'Segment',
      'Conductor',
      'Air',
      'Roof adder',
      'Correction',
      'Adjustment',
      'Ampacity',
      'Terminal limit',
      'Governs',
    ])
    const wanted = wiring.circuits.flatMap((circuit) =>
      circuit.segments.map((segment) => [
        circuit.id,
        spaced(segment.id),
        `${size(segment.size_awg)} ${segment.insulation}`,
        `${figure(segment.ambient_c, 1)} °C`,
        segment.rooftop_adder_c > 0 ? `+${figure(segment.rooftop_adder_c, 1)} °C` : '',
        figure(segment.correction),
        figure(segment.adjustment),
        `${figure(segment.ampacity_a, 1)} A`,
        `${figure(segment.terminal_limit_a, 1)} A`,
        spaced(segment.governs),
      ]),
    )
    expect(rows.map((row) => row.map(tight))).toEqual(wanted.map((row) => row.map(tight)))
  })

  test('each string has its voltages and how many modules it may have', () => {
    const heads = ['String or array', 'Modules', 'Highest, cold', 'Limit', 'Lowest, hot', 'Modules allowed']
    expect(wiring.strings.length).toBeGreaterThan(0)
    expect(rowsOf(sheets, heads)).toEqual(
      wiring.strings.map((string) => [
        string.id,
        `${string.modules}`,
        `${figure(string.voc_cold_v, 1)} V`,
        `${figure(string.limit_v, 0)} V`,
        `${figure(string.vmp_hot_v, 1)} V`,
        `${string.min_modules} to ${string.max_modules}`,
      ]),
    )
  })

  const amps = (value: number | null): string => (value === null ? '' : `${figure(value, 1)} A`)
  const called = (id: string, name: string): string =>
    id !== name ? name : id === 'panel' ? 'Main panel' : id === 'combiner' ? 'AC combiner' : 'Service'

  test('every part of the installation shows its rules with sum and limit', () => {
    const heads = ['Part', 'Bus', 'Main', 'Rule', 'Section', 'Sum', 'Limit', 'Holds']
    const wanted = wiring.distribution.flatMap((node) =>
      node.rules.map((rule) => [
        called(node.id, node.name),
        amps(node.bus_a),
        amps(node.main_a),
        rule.rule,
        rule.section,
        amps(rule.sum_a),
        amps(rule.limit_a),
        rule.holds
          ? rule.rule === node.governs
            ? 'yes, governs'
            : 'yes'
          : rule.needed === 'one_of' && node.complies
            ? 'no, not used'
            : 'NO',
      ]),
    )
    expect(rowsOf(sheets, heads)).toEqual(wanted)
  })

  test('every conductor has its tag, ends, size, ampacity, current, device and ground, once, with the diagram', () => {
    const heads = [
      'Tag',
      'From',
      'To',
      'Number',
      'Size',
      'Insulation',
      'Ground',
      'Raceway or method',
      'Fill',
      'Ampacity',
      'Required',
      'Device',
    ]
    const titles = new Map(wiring.distribution.map(({ id, name }) => [id, called(id, name)]))
    const trunks = new Set(
      wiring.circuits.flatMap(({ segments }) => segments.filter(({ id }) => id.endsWith('.trunk'))),
    )
    expect(trunks.size).toBe(wiring.conductors.filter(({ method }) => method === 'listed trunk cable').length)
    const wanted = wiring.conductors.map((each) => {
      // The raceway of a numbered conductor holds its circuit, and has its length.
      const [raceway] = wiring.raceways.filter(
        ({ circuits, length_ft: length }) =>
          /^\d/u.test(each.tag) &&
          each.method !== 'listed trunk cable' &&
          circuits.includes(each.circuits[0] ?? '') &&
          length === each.length_ft,
      )
      return [
        each.tag,
        titles.get(each.from) ?? each.from,
        titles.get(each.to) ?? each.to,
        numberOf(each, raceway),
        `${size(each.size_awg)} ${each.material === 'copper' ? 'Cu' : 'Al'}`,
        raceway?.conductors.find(({ circuit }) => circuit === each.circuits[0])?.insulation ?? '',
        each.ampacity_a === null ? '' : each.grounding_awg === null ? 'none' : size(each.grounding_awg),
        raceway === undefined
          ? each.method
          : raceway.type === 'none'
            ? 'none, clipped to the rails'
            : `${raceway.trade_size} in ${raceway.type}`,
        raceway === undefined || raceway.fill_pct === null
          ? ''
          : `${figure(raceway.fill_pct, 0)} of ${figure(raceway.fill_limit_pct ?? 0, 0)} %`,
        amps(each.ampacity_a),
        each.required_a === 0 ? 'load not stated' : amps(each.required_a),
        each.ocpd_a === null ? '' : `${each.ocpd_a} A${each.ocpd_size_ok === false ? ', too large' : ''}`,
      ]
    })
    expect(rowsOf(diagram, heads).map((row) => row.map(tight))).toEqual(wanted.map((row) => row.map(tight)))
    expect(() => rowsOf(sheets, heads)).toThrow('no table')
  })

  test('grounding: every conductor with its device or its note', () => {
    const rows = rowsOf(sheets, ['What', 'Conductor', 'Note'])
    const { grounding } = wiring
    const wanted = [
      ...grounding.equipment.map((each) => [
        `Equipment ground, ${spaced(each.raceway)}`,
        `${size(each.size_awg)} ${each.material}`,
        `by ${each.device_a} A device`,
      ]),
      [
        'Rails and module frames along the array',
        `${size(grounding.array.size_awg)} ${grounding.array.material}`,
        grounding.array.note,
      ],
      [
        'Electrode at the array',
        grounding.electrode.size_awg === null ? 'none' : size(grounding.electrode.size_awg),
        grounding.electrode.note,
      ],
      ...(grounding.supply_side_bonding_awg === null
        ? []
        : [
            [
              'Supply-side bonding jumper',
              size(grounding.supply_side_bonding_awg),
              'also the main bonding jumper and the least neutral ahead of the PV disconnect',
            ],
          ]),
      ...grounding.raceway_bonding.map((each) => [`Bond at ${spaced(each.at)}`, '', each.note]),
    ]
    expect(rows.map((row) => row.map(tight))).toEqual(wanted.map((row) => row.map(tight)))
  })

  test('equipment: how many of what, with the ratings of its sheet', () => {
    const rows = rowsOf([...diagram, ...sheets], ['Item', 'Number', 'Name', 'Ratings', 'Listing and sheet'])
    const modules = input.arrangement.values.modules.length
    const item = (name: string): string[] | undefined => rows.find(([each]) => each === name)
    expect(item('Module')).toEqual([
      'Module',
      `${modules}`,
      'Invented M410',
      '410 W, Voc 37.4 V, Isc 13.87 A, Vmp 31.5 V, Imp 13.02 A, fuse at most 25 A, system at most 1000 V',
      'UL 61730; M410 sheet rev 2 (invented)',
    ])
    expect(item('Inverter')).toEqual(
      input.project.inverter_units === undefined
        ? [
            'Inverter',
            `${modules}`,
            'Invented micro 366',
            '366 W AC, 1.53 A, 240 V AC, DC at most 60 V, tracks 16 to 58 V, branch device at most 20 A, rapid shutdown',
            'UL 1741 SB; Micro 366 sheet rev 1 (invented)',
          ]
        : [
            'Inverter',
            '1',
            'Invented string 6000',
            '6000 W AC, 25 A, 240 V AC, DC at most 600 V, tracks 120 to 500 V, branch device at most 40 A, rapid shutdown, arc-fault protection',
            '',
          ],
    )
    const counts = input.mounts?.values.counts
    expect(item('Rail')).toEqual([
      'Rail',
      `${counts?.rail_pieces} pieces`,
      'Invented rail 40',
      '6005A-T61',
      'Rail 40 sheet rev 1 (invented)',
    ])
    expect(item('Mount')).toEqual([
      'Mount',
      `${counts?.mounts}`,
      'Invented flashed foot',
      '1 lag screw 5/16 x 5"',
      'Flashed foot sheet rev 3 (invented)',
    ])
    expect(rows).toHaveLength(4)
    // Once: with the diagram, or with the schedules where it has no room; the schedules say where.
    const withSchedules = sheets.some(({ words }) => words.includes('UL 61730'))
    expect(diagram.some(({ words }) => words.includes('UL 61730'))).toBe(!withSchedules)
    expect(
      sheets
        .map(({ words }) => words)
        .join(' ')
        .replaceAll(/\s+/gu, ' '),
    ).toContain(`Conductors by tag${withSchedules ? '' : ', and ratings of the equipment'}: sheet E-601`)
    const cover = packet.filter(({ sheet }) => sheet.id.startsWith('G-001'))
    expect(rowsOf(cover, ['Item', 'No.', 'Name', 'Ratings'])).toEqual(rows.map((row) => row.slice(0, 4)))
  })
})

describe('what an equipment schedule cannot know', () => {
  test('is left out, not guessed', () => {
    const base = microHouse()
    const { m410 } = base.equipment.modules ?? {}
    const { micro366 } = base.equipment.inverters ?? {}
    const { foot } = base.equipment.mounts ?? {}
    if (m410 === undefined || micro366 === undefined || foot === undefined) throw new Error('no equipment')
    const { max_series_fuse_a: _, name: __, listing: ___, ...module } = m410
    const { mppt_max_v: ____, rapid_shutdown: _____, ...inverter } = micro366
    const { lag: ______, name: _______, ...mount } = foot
    const input = packetInput(base, '11x17', true)
    const project: Project = {
      ...base,
      equipment: {
        ...base.equipment,
        modules: { m410: module },
        inverters: { micro366: inverter },
        mounts: { foot: mount },
      },
    }
    const { mounts: ________, ...rest } = input
    const sheets = readPacket({ ...rest, project }).filter(({ sheet }) => sheet.id.startsWith('E-601'))
    const rows = rowsOf(sheets, ['Item', 'Number', 'Name', 'Ratings', 'Listing and sheet'])
    expect(rows).toEqual([
      [
        'Module',
        '15',
        'm410',
        '410 W, Voc 37.4 V, Isc 13.87 A, Vmp 31.5 V, Imp 13.02 A, system at most 1000 V',
        'M410 sheet rev 2 (invented)',
      ],
      [
        'Inverter',
        '15',
        'Invented micro 366',
        '366 W AC, 1.53 A, 240 V AC, DC at most 60 V, branch device at most 20 A',
        'UL 1741 SB; Micro 366 sheet rev 1 (invented)',
      ],
      ['Rail', '', 'Invented rail 40', '6005A-T61', 'Rail 40 sheet rev 1 (invented)'],
      ['Mount', '', 'foot', '', 'Flashed foot sheet rev 3 (invented)'],
    ])
  })
})
