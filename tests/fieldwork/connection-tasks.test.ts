import { describe, expect, test } from 'vitest'
import { connectionTasks } from '../../src/fieldwork/work-plan/connection-tasks.js'
import type { PlanSystem } from '../../src/fieldwork/work-plan/plan-system.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from '../drawings/demo-packet.js'
import { subpanelHouse, tapHouse, threeLevels } from '../drawings/tree-houses.js'

function tasksOf(project: Project): string[] {
  const { wire } = packetInput(project)
  if (wire === undefined) throw new Error('no wiring')
  return connectionTasks(wire.values, { project } as PlanSystem)
}

describe('what the plan says of the connection', () => {
  test('the short form names the rule of its panel', () => {
    expect(tasksOf(microHouse())).toEqual([
      'panel: rule 120 percent holds with 22.95 A of inverters; breaker where the drawings have it',
    ])
  })

  test('with several panels the one that takes the breaker, and the rule of every busbar on the way', () => {
    expect(tasksOf(subpanelHouse())).toEqual([
      'output lands on its 30 A breaker in Garage panel, nowhere else, where the drawings have it',
      'Main panel: rule 120 percent holds with 22.95 A of sources',
      'Garage panel: rule 100 percent holds with 22.95 A of sources',
    ])
    expect(tasksOf(threeLevels())).toContain('Main panel: rule 120 percent FAILS with 34.95 A of sources')
  })

  test('a tap with its conductors, their length and the device at its end; no breaker in a panel', () => {
    const tasks = tasksOf(tapHouse())
    expect(
      tasks.some((task) => /^tap pv_tap \(T1\): \S+ AWG copper, at most 8 ft to its 30 A device$/u.test(task)),
    ).toBe(true)
    expect(tasks.some((task) => task.includes('lands on its'))).toBe(false)
  })
})
