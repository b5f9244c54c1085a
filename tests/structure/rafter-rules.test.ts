import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import {
  checkRafters,
  deflectionLimit,
  liveLoadLeftOut,
  roofLiveLoadPsf,
  spaceMounts,
  worstCheck,
} from '../../src/structure/index.js'
import { demoArrangement, demoProject } from './demo-house.js'
import { framingOf, inputOf } from './rafter-kit.js'
import { readTable } from './read-table.js'

const deg = (riseIn: number): number => (Math.atan(riseIn / 12) * 180) / Math.PI
const STANDARD = { loads: 'ASCE 7-16', residential: undefined } as const

describe('roof live load', () => {
  // ASCE 7 4.8.2 (secondary, three sources): Lr = 20 R2, R2 = 1 up to 4 in 12, 1.2 - 0.05 F, 0.6 from 12 in 12.
  it.each([
    [2, 20],
    [4, 20],
    [6, 18],
    [8, 16],
    [10, 14],
    [12, 12],
    [16, 12],
  ])('at %d in 12 is %d psf by the load standard', (rise, psf) => {
    expect(roofLiveLoadPsf(deg(rise), STANDARD)).toBeCloseTo(psf, 9)
  })

  // IRC table R301.6 (secondary, partly from memory): the step of the slope, column up to 200 ft2.
  it('is the step of the residential code where that one is named and higher', () => {
    const steps = readTable('roof_live_load').map((row) => Number(row['trib_0_200_ft2_psf']))
    expect(steps).toEqual([20, 16, 12])
    const irc = { loads: 'ASCE 7-16', residential: 'IRC 2021' } as const
    expect(roofLiveLoadPsf(deg(3), irc)).toBeCloseTo(steps[0] ?? 0, 9)
    expect(roofLiveLoadPsf(deg(11), irc)).toBeCloseTo(steps[1] ?? 0, 9)
    expect(roofLiveLoadPsf(deg(12), irc)).toBeCloseTo(steps[2] ?? 0, 9)
    // Between 4 and 8 in 12 the load standard asks for more.
    expect(roofLiveLoadPsf(deg(6), irc)).toBeCloseTo(18, 9)
    expect(roofLiveLoadPsf(deg(11), { ...irc, residential: 'IFC 2015' })).toBeCloseTo(13, 9)
  })

  // IBC 2015 1607.12.5.1, 2018 1607.13.5.1, 2021 1607.14.4.1 (secondary): clear space of at most 24 in.
  it('is left out under modules up to 24 in above the roof, from the codes of 2015 on', () => {
    const by = (residential: string | undefined, loads: 'ASCE 7-10' | 'ASCE 7-16' | 'ASCE 7-22', clearIn = 4) =>
      liveLoadLeftOut({ loads, residential }, clearIn)
    expect(by('IFC 2012', 'ASCE 7-16')).toBe(false)
    expect(by('IFC 2015', 'ASCE 7-10')).toBe(true)
    expect(by('IRC 2018', 'ASCE 7-16')).toBe(true)
    expect(by('IRC 2021', 'ASCE 7-16', 24)).toBe(true)
    expect(by('IRC 2021', 'ASCE 7-16', 24.1)).toBe(false)
    expect(by(undefined, 'ASCE 7-10')).toBe(false)
    expect(by(undefined, 'ASCE 7-22')).toBe(true)
  })
})

describe('deflection of rafters', () => {
  // IRC table R301.7 (secondary): slope over 3:12 without a ceiling, all others, plaster.
  it('has the limits of the code table', () => {
    const rows = readTable('roof_deflection_limits').filter(
      ({ code_table: code, member }) =>
        code === 'IRC Table R301.7' || /^(all other|plaster or stucco)/.test(member ?? ''),
    )
    const limits = rows.map((row) => Number(row['snow_or_wind']?.replace('L/', '')))
    expect(limits).toEqual([180, 240, 360])
    const by = (attached: boolean | undefined, rise: number, finish?: 'plaster' | 'gypsum') =>
      deflectionLimit({ ceiling: { attached, finish } }, deg(rise))
    expect(by(false, 4)).toBe(limits[0])
    expect(by(false, 3)).toBe(limits[1])
    expect(by(true, 4)).toBe(limits[1])
    // Not stated: the stricter.
    expect(by(undefined, 4)).toBe(limits[1])
    expect(by(true, 4, 'gypsum')).toBe(limits[1])
    expect(by(true, 4, 'plaster')).toBe(limits[2])
  })
})

describe('loads that reach a rafter', () => {
  const covered = { coveredIn: () => [{ fromIn: 0, toIn: 1000 }], livePsf: 20 }
  const liveLine = (liveLeftOut: boolean) =>
    checkRafters(inputOf(framingOf(), { ...covered, liveLeftOut })).rafters[0]?.lines.find(
      ({ name }) => name === 'D + Lr',
    )?.momentLbIn ?? 0

  it('live load lies on a covered rafter too where the code does not leave it out', () => {
    // 20 psf at 16 in over 11 ft.
    expect(liveLine(false) - liveLine(true)).toBeCloseTo((12 * ((20 * 16) / 12) * 121) / 8, 6)
  })

  it('live load stays under modules that stand high above the roof', () => {
    const live = (standoff_in: number) => {
      const project: Project = structuredClone(demoProject())
      // 7-10 has no limit of the height for wind.
      Object.assign(project.codes ?? {}, { loads: 'ASCE 7-10', residential: 'IRC 2018' })
      Object.assign(project.roof_access ?? (project.roof_access = {}), { required_fire_class: 'none' })
      Object.assign(project.arrays['south'] ?? {}, { standoff_in })
      const { worksheet } = spaceMounts(project, demoArrangement(), { spacingIn: 48 })
      const line = worksheet.find(({ says }) => /^Rafter \d+, D \+ Lr$/.test(says))
      return Number(line?.inputs.find(({ symbol }) => symbol.includes('M(live)'))?.value ?? 0)
    }
    expect(live(30)).toBeGreaterThan(live(4) + 100)
  })

  it('a rafter bears on 1.5 in of a purlin', () => {
    const framing = framingOf({ spansFt: [8, 8], continuous: true, existingDeadPsf: 40, seatIn: 5 })
    const bearing = worstCheck(checkRafters(inputOf(framing, { livePsf: 0 })).rafters, 'bearing')?.check
    expect(bearing?.place).toEqual({ kind: 'support', number: 1 })
    // 1.25 w L over 1.5 in of breadth and 1.5 in of purlin.
    expect(bearing?.demand).toBeCloseTo((1.25 * ((40 * 16) / 12) * 8) / (1.5 * 1.5), 6)
  })
})

describe('what is told of rafters', () => {
  const solve = (change: object, windMph = 115) => {
    const project: Project = structuredClone(demoProject())
    Object.assign(project.structure?.framing?.['south'] ?? {}, change)
    Object.assign(project.structure?.wind ?? {}, { basic_speed_mph: windMph })
    return spaceMounts(project, demoArrangement())
  }
  const found = (result: ReturnType<typeof solve>, id: string) => result.findings.find((finding) => finding.id === id)

  it('a stated share of load warns, and one that is too low for the spacing is an error', () => {
    const told = (share: number, spacing_in: number) =>
      found(solve({ load_sharing: { share, source: 'a letter' }, spacing_in }), 'structure.rafter-load-sharing')
        ?.severity
    expect(told(0.8, 16)).toBe('warning')
    expect(told(0.79, 16)).toBe('error')
    expect(told(0.89, 24)).toBe('error')
    expect(told(0.9, 24)).toBe('warning')
    expect(found(solve({}), 'structure.rafter-load-sharing')).toBeUndefined()
  })

  it('the force of wind that lifts a rafter off the wall, as a note that says what is not checked', () => {
    const note = found(solve({}, 150), 'structure.rafter-uplift-tie')
    expect(note?.severity).toBe('note')
    expect(note?.message).toMatch(/off the wall with \d+ lb .*is not checked here/)
    const lb = (mph: number): number =>
      Number(/with (\d+) lb/.exec(found(solve({}, mph), 'structure.rafter-uplift-tie')?.message ?? '')?.[1] ?? 0)
    expect(lb(150)).toBeGreaterThan(lb(120))
  })

  it('a notch deeper than a quarter of the depth, by its own figure or by the seat', () => {
    expect(found(solve({ notch_in: 1.375 }), 'structure.rafter-notch')).toBeUndefined()
    expect(found(solve({ notch_in: 1.4 }), 'structure.rafter-notch')?.where).toBe('structure.framing.south.notch_in')
    // 4 in of seat at 22 degrees cut 1.5 in deep.
    expect(found(solve({ seat_in: 4 }), 'structure.rafter-notch')?.where).toBe('structure.framing.south.seat_in')
  })

  it('the table of the code as a second answer, its basis where no table covers the wood', () => {
    const says = (change: object) =>
      solve(change).worksheet.find(({ id }) => id === 'structure.south.rafter-table')?.says ?? ''
    expect(says({})).toMatch(/R802\.4\.1\(2\) for 20 psf, 10 psf dead, 16 in/)
    expect(says({ ceiling_attached: false })).toMatch(/R802\.4\.1\(1\)/)
    expect(says({ species: 'Western Cedars' })).toMatch(/no table covers them/)
  })
})
