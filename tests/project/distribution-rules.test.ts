import { stringify } from 'yaml'
import { describe, expect, it } from 'vitest'
import { loadText, problemsOf, STARTER } from './support.js'

const panel = { bus_a: 100 }
const feeder = (from: string, to: string) => ({ from, to, material: 'copper', length_ft: 20 })

/** What is said of an installation, with the place of each complaint. */
const textOf = (electrical: object): string => `${STARTER}\n${stringify({ electrical })}`
const said = (electrical: object): string => problemsOf(textOf(electrical)).join('\n')
const withTree = (distribution: object, more: object = {}): object => ({
  connection: { kind: 'load_side_breaker', at: 'main' },
  distribution,
  ...more,
})
const tree = (distribution: object, more: object = {}): string => said(withTree(distribution, more))

describe('an installation hangs together', () => {
  const whole = { panels: { main: panel, sub: panel }, feeders: { f: feeder('main', 'sub') } }

  it('a whole one is taken', () => {
    const taken = (electrical: object) => loadText(textOf(electrical)).project.electrical?.distribution?.panels
    expect(taken(withTree(whole))).toEqual(whole.panels)
    expect(
      taken(
        withTree({
          ...whole,
          taps: { t: { feeder: 'f', material: 'copper', length_ft: 8 } },
          sources: {
            old: { kind: 'pv', on: 't', current_a: 8 },
            ahead: { kind: 'pv', supply_side: true, current_a: 8 },
          },
        }),
      ),
    ).toEqual(whole.panels)
  })

  it.each([
    ['a feeder from nowhere', { ...whole, feeders: { f: feeder('attic', 'sub') } }, 'feeders.f.from'],
    ['a feeder to nowhere', { ...whole, feeders: { f: feeder('main', 'attic') } }, 'feeders.f.to'],
    ['a feeder to its own panel', { ...whole, feeders: { f: feeder('main', 'main') } }, 'turn from and to round'],
    [
      'a circle',
      { ...whole, feeders: { f: feeder('main', 'sub'), g: feeder('sub', 'main') } },
      "feeds 'main' from itself",
    ],
    [
      'two feeders to a panel',
      { ...whole, feeders: { f: feeder('main', 'sub'), g: feeder('main', 'sub') } },
      'has one',
    ],
    ['one id twice', { ...whole, feeders: { sub: feeder('main', 'sub') } }, "is called 'sub'"],
    ['a panel with a name of ours', { panels: { main: panel, service: panel } }, "is called 'service'"],
    [
      'a tap of no feeder',
      { ...whole, taps: { t: { feeder: 'x', material: 'copper', length_ft: 8 } } },
      'taps.t.feeder',
    ],
    ['a source on nothing', { ...whole, sources: { old: { kind: 'pv', current_a: 8 } } }, 'sources.old.on'],
    [
      'a source on what is not there',
      { ...whole, sources: { old: { kind: 'pv', on: 'x', current_a: 8 } } },
      'sources.old.on',
    ],
    [
      'a source in two places',
      { ...whole, sources: { old: { kind: 'pv', on: 'main', supply_side: true, current_a: 8 } } },
      'sources.old.supply_side',
    ],
    ['a source called pv', { ...whole, sources: { pv: { kind: 'pv', on: 'main', current_a: 8 } } }, 'sources.pv'],
  ])('%s is refused', (_, distribution, words) => {
    expect(tree(distribution)).toContain(words)
  })

  it('the connection names what is there', () => {
    expect(tree(whole, { connection: { kind: 'load_side_breaker', at: 'attic' } })).toContain('connection.at')
    expect(tree(whole, { connection: { kind: 'feeder_tap', at: 'main' } })).toContain('connection.at')
    expect(said({ connection: { kind: 'load_side_breaker', at: 'main' } })).toContain('connection.at')
    expect(said({ connection: { kind: 'feeder_tap' } })).toContain('connection.kind')
  })

  it('there is one way to write it', () => {
    expect(tree(whole, { panel: { bus_a: 200 } })).toContain('electrical.panel')
  })

  it('power control watches panels and leaves out sources that are there', () => {
    const control = { setting_a: 60, panels: ['attic'], uncontrolled: ['old'] }
    expect(tree(whole, { power_control: control })).toContain('power_control.panels')
    expect(tree(whole, { power_control: { ...control, panels: ['main'] } })).toContain('power_control.uncontrolled')
    expect(loadText(textOf({ power_control: { setting_a: 60, panels: ['panel'] } })).project.electrical).toBeDefined()
  })
})
