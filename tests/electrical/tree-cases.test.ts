import { describe, expect, it } from 'vitest'
import { feeder, nodeOf, panel, ruleOf, source, tap, tree } from './small-tree.js'
import { sizeWire } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { context, microProject } from './demo.js'
import { projectOf, pvOf } from './tree-project.js'

describe('a panel without a main behind a feeder with a source on a tap', () => {
  const behind = (edition: 'NEC 2011' | 'NEC 2017', busA: number, mainA: number | undefined, farEnd: boolean) =>
    tree({
      edition,
      panels: [panel('main', { mainA: 200 }), panel('sub', { busA, mainA, loadA: 55 })],
      feeders: [feeder('f', 'main', 'sub', { size: '2/0' })],
      taps: [tap('t', 'f', { farEnd })],
      sources: [pvOf('main', 1, true), source('old', 't')],
    })

  it.each([true, false])('the busbar takes device and source together (at the far end: %s)', (farEnd) => {
    const rule = ruleOf(behind('NEC 2017', 70, undefined, farEnd), 'sub', 'device within busbar')
    expect(rule).toMatchObject({ holds: false, sum_a: 75, limit_a: 70 })
    expect(ruleOf(behind('NEC 2017', 75, undefined, farEnd), 'sub', 'device within busbar').holds).toBe(true)
  })

  it('2011 counts the device of the source', () => {
    const of = behind('NEC 2011', 70, undefined, true)
    const larger = { ...of, sources: [pvOf('main', 1, true), source('old', 't', { deviceA: 20, firstDevicesA: [20] })] }
    expect(ruleOf(larger, 'sub', 'device within busbar').sum_a).toBe(80)
  })

  it('a main of its own protects it', () => {
    expect(ruleOf(behind('NEC 2017', 70, 60, true), 'sub', 'device within busbar')).toMatchObject({
      holds: true,
      sum_a: 60,
    })
  })

  it('its load stays below the device, whatever the source adds; the device is told as it is', () => {
    const node = nodeOf(behind('NEC 2017', 100, undefined, true), 'sub')
    expect(node.main_a).toBe(60)
    expect(node.rules.find(({ rule }) => rule === 'load within busbar')).toMatchObject({ sum_a: 55, limit_a: 60 })
  })

  it('its own sources come on top', () => {
    const of = behind('NEC 2017', 100, undefined, true)
    const both = { ...of, sources: [pvOf('sub', 8, true), source('old', 't')] }
    expect(ruleOf(both, 'sub', '100 percent')).toMatchObject({ sum_a: 60 + 15 + 12.5, holds: true })
  })
})

describe('edges', () => {
  it.each([
    [15, 75, true],
    [20, 80, false],
  ])('2011: a first device of %s A makes %s A on a feeder of 65 A, which takes 78 A', (deviceA, sumA, holds) => {
    const of = tree({
      edition: 'NEC 2011',
      panels: [panel('main', { mainA: 200 }), panel('sub', { mainA: 60 })],
      feeders: [feeder('f', 'main', 'sub', { size: '6' })],
      sources: [pvOf('main', 1, true), source('old', 'sub', { deviceA, firstDevicesA: [deviceA] })],
    })
    expect(ruleOf(of, 'f', '120 percent of the conductor')).toMatchObject({ sum_a: sumA, limit_a: 78, holds })
  })

  it.each([
    [60, true],
    [70, false],
  ])('a setting of %s A against the 60 A device, whatever a source on a tap adds to it', (settingA, holds) => {
    const of = tree({
      panels: [panel('main', { mainA: 200 }), panel('sub')],
      feeders: [feeder('f', 'main', 'sub', { size: '2/0' })],
      taps: [tap('t', 'f')],
      sources: [pvOf('sub', 4, true), source('old', 't')],
      control: { settingA, panels: ['sub'], uncontrolled: [], documented: true, locked: true },
    })
    expect(ruleOf(of, 'sub', 'power control system').holds).toBe(holds)
  })

  it('devices stated for a tap count beside the source on it', () => {
    const of = tree({
      panels: [panel('main', { mainA: 200 }), panel('sub', { mainA: 60 })],
      feeders: [feeder('f', 'main', 'sub', { size: '2/0' })],
      taps: [tap('t', 'f', { endDeviceA: 30, endDevices: 2 })],
      sources: [pvOf('main', 1, true), source('old', 't')],
    })
    expect(nodeOf(of, 't').main_a).toBe(60)
  })
})

describe('sum of breakers', () => {
  it('counts the breaker of a generator that cannot run beside the utility', () => {
    const of = tree({
      panels: [panel('main', { mainA: 200, breakersA: [100, 60] })],
      sources: [pvOf('main', 4, true), source('spare', 'main', { kind: 'generator', deviceA: 30, parallel: false })],
    })
    expect(ruleOf(of, 'main', 'sum of breakers')).toMatchObject({ sum_a: 160 + 15 + 30, holds: false })
  })
})

describe('a busbar fed in the centre', () => {
  const centre = (sources: ReturnType<typeof source>[]) =>
    ruleOf(
      tree({ panels: [panel('main', { mainA: 200, centreFed: true })], sources }),
      'main',
      'centre-fed dwelling panel',
    )

  it('takes one source at an end', () => {
    expect(centre([pvOf('main', 4, true)]).holds).toBe(true)
    expect(centre([pvOf('main', 4, false)]).holds).toBe(false)
  })

  it('takes no second one, which may stand at the other end', () => {
    const rule = centre([pvOf('main', 4, true), source('old', 'main')])
    expect(rule.holds).toBe(false)
    expect(rule.why).toContain('both ends')
    expect(centre([pvOf('main', 4, true), source('idle', 'main', { kind: 'generator', parallel: false })]).holds).toBe(
      true,
    )
  })
})

describe('loads on taps', () => {
  const of = (panelLoadA: number | undefined, tapLoadA: number | undefined, endDevices = 1) =>
    tree({
      panels: [panel('main', { mainA: 200 }), panel('sub', { loadA: panelLoadA })],
      feeders: [feeder('f', 'main', 'sub')],
      taps: [tap('t', 'f', { endDeviceA: 30, endDevices, loadA: tapLoadA })],
    })

  it.each([
    [40, 25, 65, false],
    [40, 20, 60, true],
    [undefined, 25, 25, true],
    [50, undefined, 50, true],
  ])('feeder of 60 A with %s A on its panel and %s A on its tap: %s A', (panelA, tapA, sumA, holds) => {
    expect(ruleOf(of(panelA, tapA), 'f', 'feeder carries its load')).toMatchObject({ sum_a: sumA, limit_a: 60, holds })
  })

  it('a tap that ends in two devices carries both', () => {
    expect(ruleOf(of(10, 10), 't', '10 ft tap')).toMatchObject({ sum_a: 30, limit_a: 50, holds: true })
    expect(ruleOf(of(10, 10, 2), 't', '10 ft tap')).toMatchObject({ sum_a: 60, limit_a: 50, holds: false })
  })
})

describe('documents that a check stands on', () => {
  const controlled = tree({
    panels: [panel('main', { busA: 100, mainA: 100 })],
    sources: [pvOf('main', 24, true)],
    control: { settingA: 80, panels: ['main'], uncontrolled: [], documented: true, locked: true },
  })
  const holds = (project: Project) =>
    sizeWire(project, context(30, 0)).values.distribution.find(({ id }) => id === 'main')?.complies

  it('a power control system counts when its document is among them', () => {
    expect(holds(projectOf(controlled))).toBe(true)
    expect(holds({ ...projectOf(controlled), documents: ['control_sheet.pdf'] })).toBe(false)
    expect(holds({ ...projectOf(controlled), documents: [{ id: 'other', file: 'control_sheet' }] })).toBe(false)
    expect(holds({ ...projectOf(controlled), documents: [] })).toBe(false)
  })

  it('so does the acceptance of a collar adapter', () => {
    const project = microProject({
      service: {
        rating_a: 200,
        conductor_ampacity_a: 200,
        meter: { kind: 'collar_adapter', adapter_rating_a: 60, acceptance_document: 'letter' },
      },
      connection: { kind: 'supply_side', overcurrent_device_distance_ft: 5, conductor_size: '6' },
    })
    const asked = (documents: NonNullable<Project['documents']>) =>
      sizeWire({ ...project, documents }, context(30, 0)).findings.some(
        ({ id }) => id === 'wire.meter-adapter-acceptance',
      )
    expect(asked([{ id: 'letter', file: 'letter.pdf', title: 'Letter', date: '2026-02-01' }])).toBe(false)
    expect(asked(['letter'])).toBe(true)
    expect(asked([{ id: 'another', file: 'letter.pdf' }])).toBe(true)
  })
})
