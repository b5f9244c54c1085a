import { describe, expect, it } from 'vitest'
import { parseEpw } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { estimateYield } from '../../src/yield/index.js'
import { SEATTLE_EPW, seattleLines, setField } from './epw-fixture.js'

const [GHI, DNI, DHI] = [13, 14, 15] as const

/** The Seattle file with each hour's radiation changed. */
function radiation(
  change: (now: {
    ghi: number
    dni: number
    dhi: number
    month: number
    row: number
  }) => Partial<Record<'ghi' | 'dni' | 'dhi', number>>,
): string {
  const lines = seattleLines()
  for (let line = 9; line <= lines.length; line++) {
    const fields = lines[line - 1]!.split(',')
    const [ghi, dni, dhi, month] = [fields[GHI], fields[DNI], fields[DHI], fields[1]].map(Number) as [
      number,
      number,
      number,
      number,
    ]
    const next = { ghi, dni, dhi, ...change({ ghi, dni, dhi, month, row: line - 9 }) }
    for (const [column, value] of [
      [GHI, next.ghi],
      [DNI, next.dni],
      [DHI, next.dhi],
    ] as const) {
      fields[column] = String(value)
    }
    lines[line - 1] = fields.join(',')
  }
  return lines.join('\n')
}

function header(...changes: readonly (readonly [number, string])[]): string {
  const lines = seattleLines()
  for (const [column, text] of changes) setField(lines, 1, column, text)
  return lines.join('\n')
}

function refusal(text: string): StageError {
  try {
    parseEpw(text)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('was not refused')
}

describe('radiation that cannot be is refused', () => {
  it.each<[string, () => string, RegExp]>([
    [
      'all of it zero',
      () => radiation(() => ({ ghi: 0, dni: 0, dhi: 0 })),
      /next to no global.*Jan, Feb.*Dec.*column 14/,
    ],
    [
      'direct and diffuse zero',
      () => radiation(() => ({ dni: 0, dhi: 0 })),
      /do not make up global in Jan.*come to 0 %/,
    ],
    ['direct zero', () => radiation(() => ({ dni: 0 })), /do not make up global/],
    ['diffuse zero', () => radiation(() => ({ dhi: 0 })), /do not make up global/],
    ['global zero', () => radiation(() => ({ ghi: 0 })), /next to no global/],
    [
      'one month zero',
      () => radiation(({ month }) => (month === 7 ? { ghi: 0, dni: 0, dhi: 0 } : {})),
      /global horizontal radiation in Jul:/,
    ],
    [
      'direct and diffuse of one month zero',
      () => radiation(({ month }) => (month === 4 ? { dni: 0, dhi: 0 } : {})),
      /global in Apr:/,
    ],
    [
      'diffuse above global',
      () => radiation(({ ghi }) => ({ dni: 0, dhi: Math.round(1.2 * ghi) })),
      /diffuse radiation above global \(columns 16 and 14\) in \d+ of \d+ hours.*line \d+/,
    ],
    [
      'diffuse far above global',
      () => radiation(({ dhi }) => ({ dhi: Math.min(1500, 3 * dhi) })),
      /do not make up global/,
    ],
    [
      'too much of all',
      () =>
        radiation(({ ghi, dni, dhi }) => ({
          ghi: 1.9 * ghi > 1499 ? 1499 : 1.9 * ghi,
          dni: Math.min(1499, 1.9 * dni),
          dhi: 1.9 * dhi,
        })),
      /of the sun above the air over the year/,
    ],
  ])('%s', (_, text, message) => {
    const error = refusal(text())
    expect(error.where).toBe('site.climate.epw')
    expect(error.message).toMatch(message)
    expect(error.fix).not.toBe('')
    expect(error.message).not.toMatch(/NaN|Infinity|undefined/)
  })

  it.each<[string, (readonly [number, string])[]]>([
    ['a longitude without its sign', [[7, '122.32']]],
    [
      'the clock of Hawaii and a longitude without its sign',
      [
        [7, '155.05'],
        [8, '-10'],
      ],
    ],
    ['UTC for local time', [[8, '0']]],
  ])('light at night from %s', (_, changes) => {
    const error = refusal(header(...changes))
    expect(error.message).toMatch(
      /\d+ % of its radiation falls in hours in which the sun is down at its place \(latitude 47.47/,
    )
    expect(error.message).toMatch(/line \d+/)
    expect(error.fix).toMatch(/Americas negative/)
  })

  it('stops the estimate', () => {
    const project: Project = {
      format: 'gablewatt/2',
      title: 'no light',
      site: { latitude_deg: 47.5, longitude_deg: -122.3, climate: { epw: 'a.epw' } },
      roof_planes: { south: { azimuth_deg: 180, tilt_deg: 26.6 } },
      arrays: {
        south: { roof_plane: 'south', module: 'm', inverter: 'i', modules: 6, mounting: 'near_roof', standoff_in: 4 },
      },
      equipment: {
        modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
        inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
      },
    }
    const dark = radiation(() => ({ dni: 0, dhi: 0 }))
    expect(() => estimateYield(project, new Map([['a.epw', dark]]))).toThrow(/do not make up global/)
    expect(estimateYield(project, new Map([['a.epw', SEATTLE_EPW]])).values.annual.ac_kwh).toBeGreaterThan(1000)
  })
})

describe('radiation that may be is taken', () => {
  it('a sound public file, silently', () => {
    expect(parseEpw(SEATTLE_EPW).findings).toEqual([])
  })

  it.each<[string, () => string]>([
    ['a clock one hour wrong, which has its own warning', () => header([8, '-7'])],
    ['global 6 % above its parts, as a measured set has it', () => radiation(({ ghi }) => ({ ghi: 1.06 * ghi }))],
    ['a dark week', () => radiation(({ row }) => (row > 4000 && row < 4168 ? { ghi: 0, dni: 0, dhi: 0 } : {}))],
    [
      'diffuse a little above global in dull hours',
      () => radiation(({ ghi, dni }) => (dni === 0 ? { dhi: Math.round(1.04 * ghi) } : {})),
    ],
  ])('%s', (_, text) => {
    expect(parseEpw(text()).findings).toEqual([])
  })

  it('with a warning where one hour in ten has diffuse above global', () => {
    const { findings } = parseEpw(
      radiation(({ ghi, row }) => (Math.floor(row / 24) % 10 === 0 ? { dni: 0, dhi: 1.2 * ghi } : {})),
    )
    expect(findings.map(({ id, severity }) => [severity, id])).toEqual([['warning', 'climate.epw-radiation-doubtful']])
    expect(findings[0]!.message).toMatch(/diffuse radiation above global .* in \d+ of \d+ hours of daylight \(1 Jan/)
  })

  it('with a warning where low suns give more than the air lets through', () => {
    const { findings } = parseEpw(radiation(({ ghi }) => (ghi > 0 && ghi < 25 ? { ghi: 250, dni: 0, dhi: 250 } : {})))
    expect(findings.map(({ id }) => id)).toEqual(['climate.epw-radiation-doubtful'])
    expect(findings[0]!.message).toMatch(/beyond what the sun above the air allows in \d+ of \d+ hours/)
  })

  it('in the months of a polar winter, of which November to January are not judged and February is', () => {
    // Only the header moves: an Alaskan winter of Seattle's light would be light at night.
    const lines = seattleLines()
    setField(lines, 1, 6, '66')
    for (let line = 9; line <= lines.length; line++) {
      const month = Number(lines[line - 1]!.split(',')[1])
      if (month > 2 && month < 11) continue
      for (const column of [GHI, DNI, DHI]) setField(lines, line, column, '0')
    }
    expect(refusal(lines.join('\n')).message).toMatch(/next to no global horizontal radiation in Feb:/)
  })
})
