import { describe, expect, test } from 'vitest'
import type { PacketInput } from '../../src/drawings/index.js'
import type { NodeValues } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { manyBranches, microHouse, packetInput, stringHouse, withSmallLetters } from './demo-packet.js'
import { readPacket, type ReadSheet, type Said } from './read-sheet.js'
import { knownService, longTree, subpanelHouse, supplyTree, tapHouse, threeLevels } from './tree-houses.js'

const TAG = /^(?:\d+[a-z]*|[FTSG]\d+)$/u

/** Texts of the sheets of the diagram above their tables. */
function diagramOf(input: PacketInput): { readonly sheets: readonly ReadSheet[]; readonly said: readonly Said[] } {
  const sheets = readPacket(input).filter(({ sheet }) => sheet.id.startsWith('E-601'))
  const said = sheets.flatMap((read) => {
    const heads = read.boxes.filter(({ fill, width }) => fill === 'light' && width > 600)
    const bottom = Math.min(...heads.map(({ y }) => y), Infinity)
    return read.said.filter(({ at }) => at.y < bottom)
  })
  return { sheets, said }
}

const tagsOn = (said: readonly Said[]): string[] =>
  said.flatMap(({ text }) => {
    const parts = text.split(', ')
    return parts.every((part) => TAG.test(part)) ? parts : []
  })

const wiringOf = (input: PacketInput) => {
  if (input.wire === undefined) throw new Error('no wiring')
  return input.wire.values
}

describe.each([
  ['two branches', microHouse],
  ['fifteen branches on several sheets', manyBranches],
  ['a known service', knownService],
  ['strings ahead of the service', stringHouse],
  ['a subpanel', subpanelHouse],
  ['three levels with a tap and older sources', threeLevels],
  ['a feeder tap', tapHouse],
  ['strings ahead of two panels', supplyTree],
  ['long names', longTree],
] as const)('diagram of %s', (_, make) => {
  const input = packetInput(withSmallLetters(make()), '11x17', true)
  const { said } = diagramOf(input)

  test('every conductor of the list stands on it once, and no other', () => {
    const { conductors } = wiringOf(input)
    expect(tagsOn(said).toSorted()).toEqual(conductors.map(({ tag }) => tag).toSorted())
  })
})

/** The words that name a part: the one that is the name alone, or that begins with it. */
function namesOf(said: readonly Said[], { name, kind }: NodeValues): Said[] {
  const upper = name.toUpperCase()
  return said.filter(({ text }) => (kind === 'service' ? /^TO .* SERVICE \d+ A/u.test(text) : isNamed(text, upper)))
}

/** Whether a text begins with a name, which may be cut after two lines. */
function isNamed(text: string, upper: string): boolean {
  const cut = text.indexOf('…')
  if (cut > 0) return upper.replaceAll(/\s/gu, '').startsWith(text.slice(0, cut).replaceAll(/\s/gu, ''))
  return text === upper || (text.startsWith(upper) && /^[ ,]/u.test(text.slice(upper.length)))
}

/** Words of the ratings of a panel: beside its name, or the nearest below it in its column. */
function ratingsOf(said: readonly Said[], name: Said): string {
  if (/ bus,/u.test(name.text)) return name.text
  const right = ({ lines }: Said): number => Math.max(...lines.map(({ at, widthPt }) => at.x + widthPt))
  const [nearest] = said
    .filter((each) => / A bus,/u.test(each.text) && each.at.y > name.at.y && Math.abs(right(each) - right(name)) < 1)
    .toSorted((a, b) => a.at.y - b.at.y)
  return nearest?.text ?? ''
}

describe.each([
  ['a subpanel', subpanelHouse],
  ['three levels with a tap and older sources', threeLevels],
  ['a feeder tap', tapHouse],
  ['strings ahead of two panels', supplyTree],
  ['long names', longTree],
] as const)('parts of %s', (_, make: () => Project) => {
  const project = make()
  const input = packetInput(withSmallLetters(project), '11x17', true)
  const { said, sheets } = diagramOf(input)
  const { distribution, conductors } = wiringOf(input)

  test('each part is named once, a panel with its bus and its main', () => {
    for (const node of distribution) {
      if (node.kind === 'combiner') continue
      const found = namesOf(said, node)
      expect([node.name, found.length]).toEqual([node.name, 1])
      const [name] = found
      if (node.kind !== 'panel' || name === undefined) continue
      const stated = project.electrical?.distribution?.panels[node.id]
      const main =
        stated?.main_a === undefined ? `main lugs, behind ${node.main_a} A` : `${stated.main_a} A main breaker`
      expect(ratingsOf(said, name)).toContain(`${node.bus_a} A bus, ${main}`)
      expect(ratingsOf(said, name)).toContain('EXISTING')
      expect(ratingsOf(said, name).includes('DOES NOT COMPLY')).toBe(!node.complies)
    }
  })

  test('each panel stands left of the one that feeds it, on the level of the wire of its feeder', () => {
    const sheet = sheets.find((read) => read.said.some(({ text }) => text === 'METER'))
    if (sheet === undefined) throw new Error('no sheet with the meter')
    for (const feeder of distribution.filter(({ kind }) => kind === 'feeder')) {
      const row = conductors.find(({ tag, circuits }) => tag.startsWith('F') && circuits[0] === feeder.id)
      const tag = sheet.said.find(({ text }) => text === row?.tag)
      const at = (id: string | undefined): Said | undefined => {
        const node = distribution.find((each) => each.id === id)
        return node === undefined ? undefined : namesOf(sheet.said, node)[0]
      }
      const [from, to] = [at(row?.from), at(row?.to)]
      expect(to?.middle.x ?? Infinity).toBeLessThan(tag?.middle.x ?? 0)
      expect(from?.middle.x ?? 0).toBeGreaterThan(tag?.middle.x ?? Infinity)
      // A wire runs through the tag, and a breaker of the rating of the feeder stands on it.
      const y = tag?.middle.y ?? 0
      const wires = sheet.paths.filter(
        ({ points: [a, b, ...more] }) =>
          more.length === 0 &&
          Math.abs((a?.y ?? 0) - y) < 0.6 &&
          Math.abs((b?.y ?? 0) - y) < 0.6 &&
          Math.min(a?.x ?? 0, b?.x ?? 0) < (tag?.middle.x ?? 0) &&
          Math.max(a?.x ?? 0, b?.x ?? 0) > (tag?.middle.x ?? 0),
      )
      expect(wires.length).toBeGreaterThan(0)
      const ratings = sheet.said.filter(
        ({ text, middle }) =>
          text === `${feeder.main_a} A` && Math.abs(middle.y - y) < 2 && middle.x > (tag?.middle.x ?? 0),
      )
      expect([feeder.id, ratings.length]).toEqual([feeder.id, 1])
    }
  })

  test('the PV system lands where the project says', () => {
    const landing = project.electrical?.connection
    const node = distribution.find(({ id }) => id === landing?.at)
    const name = node === undefined ? undefined : namesOf(said, node)[0]
    const to = said.find(({ text }) => text.startsWith('TO ') && !text.includes('SERVICE 200 A'))
    const words = said.find(({ text }) => text.startsWith('PV SYSTEM of this project'))
    // At the end of the outputs, and where they land.
    const flags = [to, words].flatMap((near) =>
      said.filter(({ text, middle }) => text === 'A' && Math.abs(middle.y - (near?.middle.y ?? 0)) < 1),
    )
    expect(flags).toHaveLength(2)
    const [, flag] = flags
    if (name === undefined) expect(to?.text).toBe('TO SERVICE CONDUCTORS')
    else {
      // A long name is broken after its hyphens.
      expect(to?.text.replaceAll('- ', '-').startsWith(`TO ${node?.name.toUpperCase()}`)).toBe(true)
      // On a panel the flag stands below its name and left of it; on a tap above the words of the tap.
      if (node?.kind === 'panel') expect(flag?.middle.y ?? 0).toBeGreaterThan(name.middle.y)
      else expect(Math.abs((flag?.middle.y ?? 0) - name.middle.y)).toBeLessThan(36)
      expect(flag?.middle.x ?? Infinity).toBeLessThan(name.middle.x)
    }
  })
})

describe('what is there already', () => {
  const { said, sheets } = diagramOf(packetInput(threeLevels(), '11x17', true))

  test('is drawn in grey and called so; a feeder without a size is new', () => {
    const feeders = said.filter(({ text }) => text.startsWith('FEEDER TO '))
    expect(feeders.map(({ text }) => /(?:EXISTING|NEW)/u.exec(text)?.[0] ?? '').toSorted()).toEqual([
      'EXISTING',
      'EXISTING',
      'NEW',
    ])
    for (const name of ['PV OF 2015', 'GENERATOR', 'BATTERY OF THE CELLAR'])
      expect(said.find(({ text }) => text.startsWith(name))?.text).toContain('EXISTING')
    const meter = sheets.find((read) => read.said.some(({ text }) => text === 'METER'))
    const through = (tag: string) => {
      const at = meter?.said.find(({ text }) => text === tag)?.middle
      return (meter?.paths ?? []).filter(
        ({ points: [a, b] }) =>
          a?.y === b?.y &&
          Math.abs((a?.y ?? 0) - (at?.y ?? 0)) < 0.6 &&
          (a?.x ?? 0) < (at?.x ?? 0) &&
          (b?.x ?? 0) > (at?.x ?? 0),
      )
    }
    expect(through('F1').map(({ color }) => color)).toEqual(['grey'])
    expect(through('F3').map(({ color }) => color)).toEqual(['black'])
  })

  test('fault current and what breakers interrupt stand where they are known', () => {
    expect(said.some(({ text }) => text.includes('9000 A fault current available'))).toBe(true)
    expect(said.filter(({ text }) => text.includes('breakers interrupt 22000 A'))).toHaveLength(1)
    expect(said.filter(({ text }) => text.includes('breakers interrupt 10000 A'))).toHaveLength(1)
  })
})

test('a service without a stated size says so, one with a size does not', () => {
  const words = 'service conductors: size not stated'
  expect(diagramOf(packetInput(microHouse())).said.some(({ text }) => text.includes(words))).toBe(true)
  expect(diagramOf(packetInput(knownService())).said.some(({ text }) => text.includes(words))).toBe(false)
  const bare = subpanelHouse()
  const unknown = { ...bare, electrical: { ...bare.electrical, service: { rating_a: 200 } } }
  expect(diagramOf(packetInput(unknown)).said.some(({ text }) => text.includes(words))).toBe(true)
})
