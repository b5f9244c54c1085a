import { describe, expect, it } from 'vitest'
import { labelsToAsk, requiredLabels } from '../../src/drawings/index.js'
import { sizeWire, withoutFraction } from '../../src/electrical/index.js'
import { didYouMean } from '../../src/project/index.js'
import type { Electrical, Project } from '../../src/project/index.js'
import { context, microProject, stringProject } from './demo.js'

const by = (project: Project, edition: string) => sizeWire(project, { ...context(), edition })
const found = (project: Project, id: string, edition = 'NEC 2026') =>
  by(project, edition).findings.filter((finding) => finding.id === id)

const supply = (distanceFt?: number): Partial<Electrical> => ({
  connection: {
    kind: 'supply_side',
    ...(distanceFt === undefined ? {} : { overcurrent_device_distance_ft: distanceFt }),
  },
})

describe('NEC 2026 beside NEC 2023', () => {
  it.each([
    ['module-level inverters', microProject()],
    ['strings', stringProject()],
  ])('%s: the same sizes, devices and limits; only the edition differs', (_, project) => {
    const { edition: old, ...before } = by(project, 'NEC 2023').values
    const { edition, ...after } = by(project, 'NEC 2026').values
    expect([old, edition]).toEqual(['NEC 2023', 'NEC 2026'])
    expect(after).toEqual(before)
  })

  it.each([
    ['module-level inverters', microProject()],
    ['strings', stringProject()],
  ])('%s: told once that the text was not read, and no step claims it', (_, project) => {
    expect(found(project, 'wire.edition-secondary')).toHaveLength(1)
    expect(found(project, 'wire.edition-secondary')[0]).toMatchObject({
      severity: 'warning',
      where: 'codes.electrical',
    })
    expect(found(project, 'wire.edition-secondary')[0]?.message).toMatch(/^secondary: the NEC 2026 text was not read/)
    for (const edition of ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023'])
      for (const id of ['wire.edition-secondary', 'wire.edition-changed'])
        expect(found(project, id, edition)).toEqual([])
    const sources = by(project, 'NEC 2026').worksheet.map(({ source }) => source)
    const code = sources.filter(({ document }) => document === 'NEC')
    expect(code.length).toBeGreaterThan(20)
    for (const { edition, standing } of code) expect([edition, standing === 'read']).toEqual(['2026', false])
  })

  it('the supply-side device is within 10 ft again; 2023 names no distance', () => {
    const house = (distanceFt?: number) => microProject(supply(distanceFt))
    const distance = (edition: string, distanceFt?: number) =>
      found(house(distanceFt), 'wire.supply-side-distance', edition).length
    expect([distance('NEC 2026', 10), distance('NEC 2026', 10.1), distance('NEC 2026')]).toEqual([0, 1, 1])
    expect([distance('NEC 2023', 10.1), distance('NEC 2023')]).toEqual([0, 0])
    expect(found(house(8), 'wire.edition-changed').map(({ message }) => message)).toEqual([
      'supply-side overcurrent distance dwelling (inside): NEC 2023 none (230 VI-VII), NEC 2026 10 ft; the project states 8 ft',
    ])
    expect(found(house(), 'wire.edition-changed')[0]?.message).toContain('states no distance')
  })

  it('strings: both rules for the short-circuit current, once a module', () => {
    const strings = [
      { modules: 12, input: 1 },
      { modules: 12, input: 2 },
    ]
    expect(found(stringProject({}, strings), 'wire.edition-changed')).toEqual([
      expect.objectContaining({
        severity: 'note',
        where: 'equipment.modules.m410.isc_a',
        message:
          'source circuit max current: NEC 2023 Isc x 1.25, NEC 2026 highest Isc x 1.25; the highest current printed for module m410 counts, also with light on its back; 13.9 A x 1.25 is reckoned with',
      }),
    ])
  })

  it('a fraction below half an ampere may be dropped in 2026: not used, the other device is named', () => {
    const house = (currentA: number): Project => {
      const project = stringProject()
      const inverter = project.equipment.inverters?.['s5000']
      if (inverter === undefined) throw new Error('no inverter')
      return {
        ...project,
        equipment: {
          ...project.equipment,
          inverters: { s5000: { ...inverter, ac_current_a: currentA, max_branch_ocpd_a: 40 } },
        },
      }
    }
    const told = (currentA: number, drop = false, edition = 'NEC 2026') => {
      const project = house(currentA)
      const wished = drop ? { ...project, electrical: { ...project.electrical, drop_fractions: true } } : project
      const { values, findings } = by(wished, edition)
      return {
        device: values.circuits.find(({ id }) => id === 'garage')?.breaker_a,
        messages: findings.filter(({ message }) => message.startsWith('fractions')).map(({ message }) => message),
        kept: findings.filter(({ id }) => id === 'wire.fractions-kept').map(({ severity }) => severity),
      }
    }
    const says =
      'fractions of ampere or volt: NEC 2023 not allowed, NEC 2026 allowed; garage needs 30.13 A, which a device of 35 A carries, and 30 A without the fraction, for which 30 A would do; '
    // 1.25 x 24.1 A = 30.125 A: 35 A, or 30 A without the fraction.
    expect(told(24.1)).toEqual({ device: 35, messages: [`${says}the fraction is not dropped here`], kept: [] })
    expect(told(24.1, true)).toEqual({
      device: 30,
      messages: [`${says}drop_fractions is stated, so it is dropped`],
      kept: [],
    })
    const wished = house(24.1)
    const step = by(
      { ...wished, electrical: { ...wished.electrical, drop_fractions: true } },
      'NEC 2026',
    ).worksheet.find(({ id }) => id === 'wire.garage.device')
    expect(step?.says).toBe(
      'Overcurrent device: next standard rating from 30.00 A on, the fraction of an ampere dropped',
    )
    // No such permission before 2026: the wish is told and not followed.
    expect(told(24.1, true, 'NEC 2023')).toEqual({ device: 35, messages: [], kept: ['warning'] })
    // 1.25 x 24.4 A = 30.5 A is not below a half; 1.25 x 20.8 A = 26 A has no fraction; 1.25 x 20.9 A = 26.125 A takes 30 A anyway.
    expect(told(24.4, true)).toEqual({ device: 35, messages: [], kept: ['note'] })
    for (const currentA of [20.8, 20.9])
      expect(told(currentA, true)).toEqual({ device: 30, messages: [], kept: ['note'] })
    expect(told(20.2, true).device).toBe(25)
  })

  it('a dropped fraction never lets a conductor or a disconnect be smaller', () => {
    const project = stringProject()
    const wished = { ...project, electrical: { ...project.electrical, drop_fractions: true } }
    const [kept, dropped] = [by(project, 'NEC 2026'), by(wished, 'NEC 2026')]
    expect(dropped.values.circuits.map(({ required_a: required }) => required)).toEqual(
      kept.values.circuits.map(({ required_a: required }) => required),
    )
  })

  it('fractions: below a half go, a half stays', () => {
    expect([30.125, 30.49, 30.5, 30.9, 30].map((amperes) => withoutFraction(amperes))).toEqual([30, 30, 30.5, 30.9, 30])
  })

  const load = (method: 'optional_new' | 'optional_existing', ev = false): Project =>
    microProject({
      load_calculation: {
        method,
        floor_area_ft2: 2000,
        small_appliance_circuits: 2,
        laundry_circuits: 1,
        appliances: {
          range: { kind: 'range', rating_w: 12_000 },
          ...(ev ? { car: { kind: 'ev_supply' as const, rating_va: 7200 } } : {}),
        },
        existing_ac_or_heat_added: false,
        cooling: { ac: { current_a: 20, voltage_v: 240 } },
        heating: {},
      },
    })

  it('load calculation: both numbers are told, and the load is smaller', () => {
    const told = (ev: boolean, edition: string) =>
      found(load('optional_new', ev), 'wire.edition-changed', edition).map(({ message }) => message.split(';')[0])
    expect(told(false, 'NEC 2026')).toEqual([
      'dwelling lighting load: NEC 2023 3 VA/ft2, NEC 2026 2 VA/ft2',
      'optional method first tier: NEC 2023 10 kVA, NEC 2026 8 kVA',
    ])
    expect(told(true, 'NEC 2026')).toContain(
      'EV supply equipment optional method: NEC 2023 7200 VA or nameplate in the 40 percent list (reading varies), NEC 2026 100 percent nameplate',
    )
    expect(told(true, 'NEC 2023')).toEqual([])
    const of = (edition: string) => by(load('optional_new'), edition).values.service_load_a ?? 0
    // 2000 ft2 x 3 VA + 4500 VA + 12,000 VA = 22,500 VA: 10 kVA + 40 % of the rest + 4800 VA = 19,800 VA, over 240 V.
    expect(of('NEC 2023')).toBeCloseTo(19_800 / 240, 9)
    // 2000 ft2 x 2 VA + 4500 VA + 12,000 VA = 20,500 VA: 8 kVA + 40 % of the rest + 4800 VA = 17,800 VA.
    expect(of('NEC 2026')).toBeCloseTo(17_800 / 240, 9)
  })

  it('the calculation for an existing dwelling is refused with the reason, in 2026 only', () => {
    expect(by(load('optional_existing'), 'NEC 2026').values.service_load_a).toBeNull()
    expect(found(load('optional_existing'), 'wire.load-method').map(({ severity }) => severity)).toEqual(['error'])
    expect(found(load('optional_existing'), 'wire.load-method', 'NEC 2023')).toEqual([])
    expect(by(load('optional_existing'), 'NEC 2023').values.service_load_a).toBeGreaterThan(0)
  })

  it('labels are those of 2023; a list says unconfirmed words, a sheet does not repeat it', () => {
    const labels = (edition: 'NEC 2023' | 'NEC 2026') => {
      const project: Project = { ...stringProject(), codes: { electrical: edition } }
      return {
        needed: requiredLabels(project, by(project, edition).values),
        asked: labelsToAsk(project, by(project, edition).values),
      }
    }
    const [now, before] = [labels('NEC 2026'), labels('NEC 2023')]
    expect(now.needed.map(({ id, text }) => [id, text])).toEqual(before.needed.map(({ id, text }) => [id, text]))
    expect(now.asked.map(({ phrases }) => phrases)).toEqual(before.asked.map(({ phrases }) => phrases))
    for (const { wording, source, onSheet } of now.needed) {
      expect(wording).toMatch(/those of NEC 2026 are not at hand|no words for NEC 2026/)
      expect(source).toMatch(/secondary source|from memory/)
      expect(`${onSheet.look} ${onSheet.wording} ${onSheet.source}`).not.toMatch(/secondary|at hand|memory|unverified/)
    }
    for (const { onSheet } of now.asked) expect(onSheet.source).not.toMatch(/secondary|memory/)
  })
})

describe('another edition', () => {
  it('is never taken for a slip of one of ours', () => {
    const known = ['NEC 2020', 'NEC 2023', 'NEC 2026']
    for (const other of ['NEC 2022', 'NEC 2029', 'NEC 2008', 'NEC 202']) expect(didYouMean(other, known)).toBe('')
    expect(didYouMean('ASCE 7-17', ['ASCE 7-10', 'ASCE 7-16'])).toBe('')
    // The same edition, spelled otherwise, is one.
    expect(didYouMean('nec 2023', known)).toBe('; did you mean NEC 2023?')
    expect(didYouMean('NCE 2026', known)).toBe('; did you mean NEC 2026?')
    expect(didYouMean('array_2', ['array_1', 'array_3'])).toBe('; did you mean array_1?')
  })
})
