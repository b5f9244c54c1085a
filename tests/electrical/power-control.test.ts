import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, Project } from '../../src/project/index.js'
import { context } from './demo.js'
import { garageTree, treeProject } from './tree-house.js'

type Control = NonNullable<Electrical['power_control']>

const control: Control = {
  setting_a: 60,
  panels: ['main', 'garage'],
  uncontrolled: ['old_pv'],
  document: 'listing',
  locked_setting: true,
}
const listing = { id: 'listing', file: 'listing.pdf', title: 'Listing (invented)', date: '2026-03-01' }

function main(change: Partial<Control>, edition = 'NEC 2020', documents: Project['documents'] = [listing]) {
  const project = { ...treeProject(garageTree, { power_control: { ...control, ...change } }), documents }
  const { values } = sizeWire(project, { ...context(), edition })
  const node = values.distribution.find(({ id }) => id === 'main')
  return { node, rule: node?.rules.find(({ rule }) => rule === 'power control system') }
}

describe('power control system', () => {
  // Electrician forum thread 2588227, careful reading: 100 A busbar, 80 A continuous, an older 20 A breaker: 60 A.
  it('takes the setting with the breaker that it does not control within 80 percent of the busbar', () => {
    const older = {
      ...garageTree,
      sources: { old_pv: { kind: 'pv' as const, on: 'main', current_a: 12, breaker_a: 20 } },
    }
    const rule = (setting: number) => {
      const project = {
        ...treeProject(older, { power_control: { ...control, setting_a: setting } }),
        documents: [listing],
      }
      return sizeWire(project, context()).values.distribution.find(({ id }) => id === 'main')?.complies
    }
    expect(rule(60)).toBe(true)
    expect(rule(61)).toBe(false)
  })

  it('counts 125 percent of a source where that is more than its breaker, and nothing of one that it controls', () => {
    expect(main({}).rule).toMatchObject({ holds: true, sum_a: 75, limit_a: 80, section: '705.13' })
    expect(main({ uncontrolled: [] }).rule).toMatchObject({ sum_a: 60 })
  })

  it('frees no busbar that it does not watch', () => {
    expect(main({ panels: ['garage'] }).node?.complies).toBe(false)
    expect(main({ panels: ['garage'] }).rule).toBeUndefined()
  })

  it('does not count without a dated document, an unlocked setting, or in an edition that does not know it', () => {
    expect(main({}, 'NEC 2020', []).node?.complies).toBe(false)
    expect(main({}, 'NEC 2020', [{ ...listing, date: undefined } as never]).rule?.why).toContain('no dated document')
    expect(main({ locked_setting: false }).rule?.why).toContain('locked')
    expect(main({}, 'NEC 2017').rule?.why).toContain('knows no power control system')
    expect(main({}, 'NEC 2023').node?.complies).toBe(true)
  })

  it('has a setting within the device that protects the busbar', () => {
    expect(main({ setting_a: 101 }).rule?.why).toContain('above the 100 A device')
  })
})
