import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { readPacket, sheetOf } from './read-sheet.js'

const withLine = (change: (project: Project) => void): ReturnType<typeof sheetOf> => {
  const project = structuredClone(microHouse())
  change(project)
  return sheetOf(readPacket(packetInput(project)), 'C-101')
}
const stated = (project: Project): void => {
  project.site.overhead_lines = {
    drop: {
      kind: 'service_drop',
      cable: 'multiplex',
      to_ground_v: 120,
      between_v: 240,
      sag_ft: 2,
      points: [
        { x_ft: 2, y_ft: 2, height_ft: 23 },
        { x_ft: 14, y_ft: 12, height_ft: 17.5 },
      ],
    },
  }
}

describe('overhead lines on the site plan', () => {
  test('bear their name, the heights of their supports, the zone and the warning', () => {
    const { said, paths, words } = withLine(stated)
    const texts = said.map(({ text }) => text)
    expect(texts).toEqual(expect.arrayContaining(['SERVICE DROP drop, 240 V', '23 ft', '17.5 ft']))
    expect(words).toContain('DANGER: overhead lines')
    const zone = paths.filter(({ dash, closed, points }) => dash === 'hidden' && closed && points.length > 4)
    expect(zone).toHaveLength(1)
  })
  test('are told to be none where that is stated, and nothing is told where nothing is', () => {
    const none = withLine((project) => {
      project.site.overhead_lines = 'none'
    })
    expect(none.words).toContain('no overhead line passes')
    expect(withLine(() => {}).said.some(({ text }) => /overhead/iu.test(text))).toBe(false)
  })
  test('trees at places of the plan are drawn with their heights', () => {
    const { said } = withLine((project) => {
      project.site.obstacles = { old_oak: { at: { x_ft: 10, y_ft: 10 }, width_ft: 8, height_ft: 31 } }
    })
    expect(said.map(({ text }) => text)).toContain('old oak, 31 ft high')
  })
})
