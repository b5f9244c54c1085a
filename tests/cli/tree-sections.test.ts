import { describe, expect, test } from 'vitest'
import { treeSections } from '../../src/cli/commands/tree-sections.js'
import type { WiringValues } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from '../drawings/demo-packet.js'
import { subpanelHouse, threeLevels } from '../drawings/tree-houses.js'

function valuesOf(project: Project): WiringValues {
  const { wire } = packetInput(project)
  if (wire === undefined) throw new Error('no wiring')
  return wire.values
}

function tableOf(values: WiringValues, heading: string) {
  const found = treeSections(values).find((each) => each.kind === 'table' && (each.heading ?? '').startsWith(heading))
  if (found?.kind !== 'table') throw new Error(`no table ${heading}`)
  return found
}

describe('tables of the installation', () => {
  test('every part stands once with what it hangs on, and whether it complies', () => {
    const values = valuesOf(threeLevels())
    const { rows, heading } = tableOf(values, 'Service, panels, feeders and sources')
    expect(rows.map(([part]) => part)).toEqual(values.distribution.map(({ name }) => name))
    expect(heading).toContain('9000 A fault current at the service')
    expect(rows[0]?.[1]).toBe('utility')
    const verdicts = rows.map((row) => JSON.stringify(row.at(-1)))
    expect(verdicts.map((each) => each.includes('FAILS'))).toEqual(values.distribution.map(({ complies }) => !complies))
  })

  test('the rule that governs each part, and of a part that fails every way that was tried', () => {
    const values = valuesOf(threeLevels())
    const { rows } = tableOf(values, 'Rules that govern them')
    for (const node of values.distribution) {
      const own = rows.filter(([part]) => part === node.name)
      expect(own.some(([, rule]) => rule === node.governs)).toBe(true)
      if (!node.complies) expect(own).toHaveLength(node.rules.filter(({ holds }) => !holds).length)
    }
  })

  test('ways out are listed in their order with room, verdict, cost and section', () => {
    const values = valuesOf(threeLevels())
    expect(values.remedies.length).toBeGreaterThan(0)
    const { rows } = tableOf(values, 'Ways out')
    expect(rows.map(([what, room, , cost, section]) => [what, room, cost, section])).toEqual(
      values.remedies.map((each) => [each.what, each.reaches_a, each.cost_usd ?? 'not stated', each.section]),
    )
    expect(treeSections(valuesOf(microHouse())).some((each) => each.kind === 'list')).toBe(false)
  })

  test('conductors stand by tag with the names of their ends; one that carries only fault current has no ground of its own', () => {
    const values = valuesOf(subpanelHouse())
    const { rows } = tableOf(values, 'Conductors by tag')
    expect(rows.map(([tag]) => tag)).toEqual(values.conductors.map(({ tag }) => tag))
    const feeder = rows.find(([tag]) => tag === 'F1')
    expect(feeder?.slice(1, 4)).toEqual(['Main panel', 'Garage panel', '4 AWG Cu'])
    expect(rows.find(([tag]) => tag === 'G1')?.at(-1)).toBeNull()
  })
})
