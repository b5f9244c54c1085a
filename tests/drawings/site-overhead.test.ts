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
  test('bear a caution with a line to them; no label of the code is made of it', () => {
    const { said, paths } = withLine(stated)
    const [word, ...more] = said.filter(({ text }) => text === 'CAUTION: OVERHEAD LINE, KEEP 10 FT AWAY')
    expect(more).toEqual([])
    const [line] = paths.filter(
      ({ layer, points, pen, dash }) =>
        layer === 'overhead' && points.length === 2 && pen === 'medium' && dash === 'solid',
    )
    const [a, b] = line!.points
    // The tip of its leader lies on the line.
    const tips = paths.filter(({ layer, pen, points }) => layer === 'note' && pen === 'hair' && points.length === 2)
    const onLine = tips.filter(({ points: [tip] }) => {
      const cross = (b!.x - a!.x) * (tip!.y - a!.y) - (b!.y - a!.y) * (tip!.x - a!.x)
      return (
        Math.abs(cross) / Math.hypot(b!.x - a!.x, b!.y - a!.y) < 0.1 &&
        Math.abs((tip!.x - a!.x) / (b!.x - a!.x) - 0.35) < 0.1
      )
    })
    expect(onLine).toHaveLength(1)
    const end = onLine[0]!.points[1]!
    expect(Math.hypot(end.x - word!.middle.x, end.y - word!.middle.y)).toBeLessThan(80)
    const project = structuredClone(microHouse())
    stated(project)
    const sheets = readPacket(packetInput(project))
    const words = sheets.map((each) => each.words).join(' ')
    expect(words).toContain(
      'The caution at a line is no label of the electrical code; the utility may ask for other words.',
    )
    // Where it is from the preparer's report says.
    expect(words).not.toContain('common practice')
    const labels = sheets.filter(({ sheet }) => sheet.id.startsWith('E-604'))
    expect(labels.length).toBeGreaterThan(0)
    for (const sheet of labels) expect(sheet.words).not.toMatch(/overhead/iu)
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
