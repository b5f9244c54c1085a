import { describe, expect, test } from 'vitest'
import { labelsToAsk, requiredLabels } from '../../src/drawings/index.js'
import { existingHouseChecks, existingHouseFindings } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { workingSpace } from '../../src/tables/nec/index.js'
import { microHouse, packetInput } from '../drawings/demo-packet.js'

type House = NonNullable<Project['existing_house']>
type Edition = NonNullable<NonNullable<Project['codes']>['electrical']>

const houseWith = (house: House, edition: Edition = 'NEC 2020', electrodes?: ('rod' | 'water_pipe')[]): Project => {
  const base = microHouse()
  const bonding = electrodes === undefined ? {} : { bonding: { electrodes } }
  return {
    ...base,
    codes: { ...base.codes, electrical: edition },
    electrical: { ...base.electrical, service: { ...base.electrical?.service, ...bonding } },
    existing_house: house,
  }
}
const checkOf = (id: string, ...of: Parameters<typeof houseWith>) => {
  const found = existingHouseChecks(houseWith(...of)).find((each) => each.id === id)
  if (found === undefined) throw new Error(id)
  return found
}

describe('what a permit sets off in an existing house', () => {
  test('nothing stated: nothing is guessed, all is told', () => {
    const { existing_house: _, ...bare } = houseWith({})
    for (const { id, state } of existingHouseChecks(bare)) expect([id, state]).toEqual([id, 'not_stated'])
    const findings = existingHouseFindings(bare)
    expect(findings.map(({ severity }) => severity)).toEqual(['note', 'note', 'note', 'note', 'note'])
    for (const { fix } of findings) expect(fix).toMatch(/\.$/u)
  })

  test.each<[string, House, string]>([
    ['smoke-alarms', { smoke_alarms: 'all' }, 'met'],
    ['smoke-alarms', { smoke_alarms: 'some' }, 'not_met'],
    ['smoke-alarms', { smoke_alarms: 'none' }, 'not_met'],
    ['smoke-alarms', { smoke_alarms: 'none', wiring_inside: false }, 'not_needed'],
    ['smoke-alarms', { wiring_inside: true }, 'not_stated'],
    ['carbon-monoxide-alarms', { carbon_monoxide_source: false }, 'not_needed'],
    ['carbon-monoxide-alarms', { carbon_monoxide_source: true }, 'not_stated'],
    ['carbon-monoxide-alarms', { carbon_monoxide_source: true, carbon_monoxide_alarms: 'some' }, 'not_met'],
    ['carbon-monoxide-alarms', { carbon_monoxide_source: true, carbon_monoxide_alarms: 'all' }, 'met'],
    ['carbon-monoxide-alarms', { carbon_monoxide_alarms: 'none' }, 'not_stated'],
    ['carbon-monoxide-alarms', { wiring_inside: false }, 'not_needed'],
  ])('%s of %j: %s', (id, house, state) => expect(checkOf(id, house).state).toBe(state))

  // 250.50: all electrodes that are there are bonded together; 250.53(A)(2): one rod needs another electrode unless 25 ohm.
  test.each<[House, ('rod' | 'water_pipe')[] | undefined, string]>([
    [{ electrodes_bonded: true }, ['rod', 'water_pipe'], 'met'],
    [{ electrodes_bonded: false }, ['rod', 'water_pipe'], 'not_met'],
    [{}, ['rod', 'water_pipe'], 'not_stated'],
    [{ electrodes_bonded: true }, undefined, 'not_stated'],
    [{ electrodes_bonded: true }, ['rod'], 'not_stated'],
    [{ electrodes_bonded: true, rods: 1 }, ['rod'], 'not_met'],
    [{ electrodes_bonded: true, rods: 1, rod_at_most_25_ohm: false }, ['rod'], 'not_met'],
    [{ electrodes_bonded: true, rods: 1, rod_at_most_25_ohm: true }, ['rod'], 'met'],
    [{ electrodes_bonded: true, rods: 2 }, ['rod'], 'met'],
  ])('electrodes of %j with %j: %s', (house, electrodes, state) =>
    expect(checkOf('electrodes', house, 'NEC 2020', electrodes).state).toBe(state),
  )

  // Table 110.26(A)(1): 3 ft at 120 V to ground; 110.26(A)(2), (3): 30 in wide, 6.5 ft high.
  test.each<[number, number, number, string]>([
    [30, 36, 78, 'met'],
    [29.9, 36, 78, 'not_met'],
    [30, 35.9, 78, 'not_met'],
    [30, 36, 77.9, 'not_met'],
  ])('a space of %f by %f by %f in: %s', (width, depth, height, state) => {
    expect(workingSpace[0]?.conditionFt[0]).toBe(3)
    const space = { width_in: width, depth_in: depth, height_in: height }
    expect(checkOf('working-space', { panel_space: space }).state).toBe(state)
  })

  test.each<[House, Edition, string]>([
    [{}, 'NEC 2017', 'not_needed'],
    [{ service_replaced: true }, 'NEC 2017', 'not_needed'],
    [{}, 'NEC 2020', 'not_stated'],
    [{ service_replaced: false }, 'NEC 2020', 'not_needed'],
    [{ service_replaced: true }, 'NEC 2023', 'not_stated'],
    [{ service_replaced: true, emergency_disconnect: 'none' }, 'NEC 2023', 'not_met'],
    [{ service_replaced: true, emergency_disconnect: 'meter_disconnect' }, 'NEC 2023', 'met'],
    [{ emergency_disconnect: 'other' }, 'NEC 2026', 'met'],
  ])('emergency disconnect of %j by %s: %s', (house, edition, state) =>
    expect(checkOf('emergency-disconnect', house, edition).state).toBe(state),
  )

  test('what is not met is a warning with its way out, and no error of the design', () => {
    const findings = existingHouseFindings(houseWith({ smoke_alarms: 'none', wiring_inside: true }))
    expect(findings.find(({ id }) => id === 'house.smoke-alarms')).toMatchObject({
      severity: 'warning',
      where: 'existing_house.smoke_alarms',
    })
  })

  test('nothing of 2026 counts as read', () => {
    for (const { source } of existingHouseChecks(houseWith({}, 'NEC 2026'))) expect(source.standing).not.toBe('read')
  })
})

describe('the label of an emergency disconnect', () => {
  const labels = (house: House, edition: Edition) => {
    const project = houseWith(house, edition)
    const wiring = packetInput(project).wire?.values
    if (wiring === undefined) throw new Error('no wiring')
    return {
      needed: requiredLabels(project, wiring).find(({ id }) => id === 'EMERGENCY_DISC'),
      asked: labelsToAsk(project, wiring).some(({ phrases }) =>
        phrases.some((each) => each.startsWith('EMERGENCY DISCONNECT')),
      ),
    }
  }

  // 230.85 (2020) and 230.85(E)(1) (2023): words by the kind of the disconnect; 2023: white on red, 1/2 in.
  test.each<[NonNullable<House['emergency_disconnect']>, string, string]>([
    ['service_disconnect', 'EMERGENCY DISCONNECT, SERVICE DISCONNECT', 'main_panel'],
    ['meter_disconnect', 'EMERGENCY DISCONNECT, METER DISCONNECT, NOT SERVICE EQUIPMENT', 'meter'],
    ['other', 'EMERGENCY DISCONNECT, NOT SERVICE EQUIPMENT', 'meter'],
  ])('%s', (kind, text, place) => {
    for (const edition of ['NEC 2020', 'NEC 2023'] as const) {
      const { needed, asked } = labels({ emergency_disconnect: kind }, edition)
      expect([needed?.text, needed?.places, asked]).toEqual([text, [place], false])
    }
    expect(labels({ emergency_disconnect: kind }, 'NEC 2023').needed?.look).toContain(
      'white on red, capitals at least 1/2"',
    )
    expect(labels({ emergency_disconnect: kind }, 'NEC 2017').needed).toBe(undefined)
  })

  test('none stated: asked, as the project does not tell; none there: neither', () => {
    expect(labels({}, 'NEC 2020')).toEqual({ needed: undefined, asked: true })
    expect(labels({ emergency_disconnect: 'none' }, 'NEC 2020')).toEqual({ needed: undefined, asked: false })
  })
})
