import { describe, expect, test } from 'vitest'
import { drawPacket } from '../../src/drawings/index.js'
import { optimiserHouse } from '../electrical/devices-demo.js'
import { longNames, packetInput, stringHouse } from './demo-packet.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import { readPacket, readSheet } from './read-sheet.js'
import { wiredHouses } from './wired-houses.js'

const houseOf = (name: string) => {
  const found = DRAWN_HOUSES.find(([each]) => each === name)
  if (found === undefined) throw new Error(`there is no house ${name}`)
  return found[1]()
}

/** What the specification of this project asks of a sheet; no source outside of it. */
describe('enlarged parts of a roof', () => {
  test.each(['11x17', 'letter'] as const)('name every module once, on %s', (size) => {
    const input = packetInput(houseOf('sixty in an L 21'), size, true)
    const parts = readPacket(input).filter(({ sheet }) => /^A-101-\d/u.test(sheet.id))
    const names = parts.flatMap(({ said }) => said.map(({ text }) => text)).filter((text) => /r\d+c\d+$/u.test(text))
    expect(names).toHaveLength(60)
    expect(new Set(names).size).toBe(60)
  })
})

describe('the title strip', () => {
  test.each(['letter', '11x17'] as const)('never cuts the title of a sheet, on %s', (size) => {
    for (const project of [longNames(), houseOf('crowded lot 41'), houseOf('sixty in an L 21')]) {
      for (const sheet of drawPacket(packetInput(project, size, true))) {
        const { said, words } = readSheet(sheet)
        expect([sheet.id, words.includes(sheet.title.toUpperCase())]).toEqual([sheet.id, true])
        expect(said.filter(({ text }) => text === 'ISSUED' || text === 'ISSUED, FOR')).toHaveLength(1)
      }
    }
  })

  test('sets a name smaller before it cuts it', () => {
    const names = drawPacket(packetInput(houseOf('crowded lot 41'), 'letter', true)).map((sheet) => readSheet(sheet))
    for (const { sheet, words } of names)
      expect([sheet.id, words.includes('Carriage House lot with trees and a service drop (invented)')]).toEqual([
        sheet.id,
        true,
      ])
  })
})

describe('the one-line diagram', () => {
  const houses: [string, () => Parameters<typeof packetInput>[0]][] = [
    ...wiredHouses.map(([name, make]): [string, typeof make] => [name, make]),
    ['strings', stringHouse],
    ['optimisers', optimiserHouse],
  ]

  test.each(houses)('has no tag on a junction box: %s', (_, make) => {
    for (const size of ['11x17', 'letter'] as const) {
      for (const { sheet, said, boxes } of readPacket(packetInput(make(), size, true))) {
        if (!sheet.id.startsWith('E-601')) continue
        const junctions = said.filter(({ text }) => text === 'JB').map(({ middle }) => middle)
        const flags = boxes.filter(
          ({ height, pen, fill }) => pen === 'thin' && fill === 'white' && Math.abs(height - 13.2) < 0.01,
        )
        for (const junction of junctions) {
          const on = flags.filter(
            (box) =>
              Math.abs(box.y + box.height / 2 - junction.y) < 2 &&
              box.x < junction.x + 9 - 0.01 &&
              box.x + box.width > junction.x - 9 + 0.01,
          )
          expect(on.map(({ x }) => [sheet.id, x])).toEqual([])
        }
      }
    }
  })

  test('of four branches is on one sheet', () => {
    const sheets = readPacket(packetInput(houseOf('four planes 31'), '11x17', true))
    const [first] = sheets.filter(({ sheet }) => sheet.id === 'E-601')
    for (const branch of ['b1', 'b2', 'b3', 'b4']) expect(first?.words).toContain(`BRANCH ${branch}`)
    expect(sheets.filter(({ sheet }) => sheet.id.startsWith('E-601'))).toHaveLength(2)
  })
})

describe('a box between two pieces of a circuit', () => {
  const input = packetInput(houseOf('four planes 31'), 'letter', true)
  const { conductors = [] } = input.wire?.values ?? {}

  // The list of conductors says where each ends; a reader of the diagram has to see it too.
  test.each(['11x17', 'letter', 'A3'] as const)('stands between their tags, on %s', (size) => {
    const sheets = drawPacket({ ...input, size })
      .filter(({ id }) => id.startsWith('E-601'))
      .map(readSheet)
    const pairs = conductors.flatMap(({ tag, to, circuits }) => {
      const next = conductors.find((each) => each.from === to && each.circuits[0] === circuits[0])
      return to.startsWith('box ') && next !== undefined ? [[tag, next.tag] as const] : []
    })
    expect(pairs).toHaveLength(4)
    for (const [tag, next] of pairs) {
      const read = sheets.find(({ said }) => said.some(({ text }) => text === tag))
      const placeOf = (text: string) => read?.said.find((each) => each.text === text)?.middle ?? { x: 0, y: 0 }
      const [a, b] = [placeOf(tag), placeOf(next)]
      const between = read?.boxes.filter(
        (box) => box.x > a.x && box.x + box.width < b.x && Math.abs(box.y + box.height / 2 - a.y) < 0.6,
      )
      const words = read?.said.filter(({ middle }) => middle.x > a.x && middle.x < b.x && Math.abs(middle.y - a.y) < 1)
      expect([tag, between?.length, words?.map(({ text }) => text)]).toEqual([tag, 1, ['JB']])
      // Clear of both circles.
      const [box] = between ?? []
      expect(box === undefined ? 0 : Math.min(box.x - a.x, b.x - box.x - box.width)).toBeGreaterThan(6.6)
    }
  })
})

describe('marks of equipment on the site plan', () => {
  test.each(['11x17', 'letter', 'A3'] as const)('stand at what they name and at nothing else, on %s', (size) => {
    for (const name of ['demo house', 'strings on a combiner', 'four planes 31']) {
      const project = houseOf(name)
      const [read] = drawPacket(packetInput(project, size, true))
        .filter(({ id }) => id === 'C-101')
        .map(readSheet)
      const [view] = read?.sheet.viewports ?? []
      if (read === undefined || view === undefined) throw new Error('no site plan')
      const marks = { utility_meter: 'M', main_panel: 'MP', pv_disconnect: 'D', combiner: 'C' } as const
      const dots = Object.values(project.site_plan?.equipment ?? {}).flatMap((each) => {
        const mark = (marks as Readonly<Record<string, string>>)[each.kind]
        const at = {
          x: view.originPt.x + each.x_ft * view.scalePtPerFt,
          y: view.originPt.y - each.y_ft * view.scalePtPerFt,
        }
        return mark === undefined ? [] : [{ mark, at }]
      })
      expect(dots.length).toBeGreaterThan(1)
      for (const { mark, at } of dots) {
        const said = read.said.find(({ text, middle }) => text === mark && middle.x < view.box.x + view.box.width)
        const [line] = said?.lines ?? []
        if (said === undefined || line === undefined) throw new Error(`no ${mark}`)
        const distance = (to: { readonly x: number; readonly y: number }): number =>
          Math.hypot(
            Math.max(line.at.x - to.x, 0, to.x - line.at.x - line.widthPt),
            Math.max(line.at.y - line.sizePt - to.y, 0, to.y - line.at.y),
          )
        const nearest = dots.toSorted((a, b) => distance(a.at) - distance(b.at))[0]
        expect([name, mark, nearest?.mark]).toEqual([name, mark, mark])
        // A line leads from it to its dot, and does not run along the wall or the raceway there.
        const leader = read.paths.find(
          ({ points: [a], pen }) => pen === 'hair' && a !== undefined && Math.hypot(a.x - at.x, a.y - at.y) < 0.2,
        )
        const [from, to] = leader?.points ?? []
        expect([name, mark, Math.abs((to?.x ?? 0) - (from?.x ?? 0)) > 2]).toEqual([name, mark, true])
      }
    }
  })
})

describe('a plan of wind zones', () => {
  test('has its name right below it', () => {
    for (const name of ['strings on a combiner', 'four planes 31'])
      for (const size of ['11x17', 'letter'] as const) {
        const [sheet] = readPacket(packetInput(houseOf(name), size, true)).filter((each) => each.sheet.id === 'S-502')
        if (sheet === undefined) throw new Error('no S-502')
        const names = sheet.said.filter(({ text }) => text.startsWith('ROOF PLANE '))
        const outlines = sheet.paths.filter(({ pen, closed }) => pen === 'heavy' && closed)
        expect(names.length).toBeGreaterThan(0)
        for (const { middle } of names) {
          const feet = outlines
            .map(({ points }) => Math.max(...points.map(({ y }) => y)))
            .filter((foot) => foot < middle.y)
          expect(middle.y - Math.max(...feet)).toBeLessThan(30)
        }
      }
  })
})

describe('the site plan with an overhead line', () => {
  const [sheet, ...more] = readPacket(packetInput(houseOf('crowded lot 41'), 'letter', true)).filter((each) =>
    each.sheet.id.startsWith('C-101'),
  )

  test('names what the line passes in words, not by its place in the file', () => {
    const words = [sheet, ...more].map((each) => each?.words).join(' ')
    expect(words).toContain('ladder place 1')
    expect(words).toContain('array south')
    expect(words).not.toMatch(/site_plan|arrays\.|ground_access/u)
    expect(words).not.toMatch(/no source/u)
  })

  test('has the street along its lot line, outside of the lot', () => {
    const street = sheet?.said.find(({ text }) => text.endsWith('STREET'))
    expect(street?.lines.every(({ rotationDeg }) => Math.abs(rotationDeg) === 90)).toBe(true)
  })
})

describe('the wall with labels', () => {
  test('has no name that is cut', () => {
    for (const [name, make] of DRAWN_HOUSES.filter(([each]) => !each.startsWith('long'))) {
      for (const { sheet, words } of drawPacket(packetInput(make(), 'letter', true))
        .filter(({ id }) => id === 'E-604')
        .map(readSheet))
        expect([name, sheet.id, /DISCONN…|SWITC…/u.test(words)]).toEqual([name, sheet.id, false])
    }
  })
})
