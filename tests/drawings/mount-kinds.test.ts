import { describe, expect, test } from 'vitest'
import { runHouse } from '../../src/house/index.js'
import { planMarkdown } from '../../src/fieldwork/index.js'
import type { Project } from '../../src/project/index.js'
import {
  deckMount,
  deckRoof,
  seamClamp,
  seamRoof,
  structuralScrew,
  tileHook,
  tileRoof,
} from '../structure/mount-kinds.js'
import { microHouse, packetInput } from './demo-packet.js'
import { factsOf, readPacket, sheetOf } from './read-sheet.js'

/** The demo house with another mount on another roof. */
function houseWith(mount: object, framing: object): Project {
  const house = microHouse()
  const structure = house.structure ?? {}
  const plane = structure.framing?.['south'] ?? {}
  return {
    ...house,
    equipment: { ...house.equipment, mounts: { foot: { name: 'Invented mount', weight_lb: 1.2, ...mount } } },
    structure: { ...structure, framing: { ...structure.framing, south: { ...plane, ...framing } } },
  }
}

const KINDS = [
  ['clamps', houseWith(seamClamp, seamRoof), 'seam', /setscrew/u],
  ['deck mounts', houseWith(deckMount, deckRoof), 'sheathing', /wood screw/iu],
  ['structural screws', houseWith(structuralScrew, {}), 'rafter', /structural screw/iu],
  ['hooks', houseWith(tileHook, tileRoof), 'rafter', /lag screw/iu],
] as const

describe.each(KINDS)('%s', (name, project, into, word) => {
  const packet = packetInput(project, '11x17', true)
  const sheets = readPacket(packet)
  const sheet = sheetOf(sheets, 'S-501')
  const words = sheet.said.map(({ text }) => text).join(' ')

  test('the attachment sheet names the fastener', () => {
    expect(packet.mounts?.values.fastener.into).toBe(into)
    expect(words).toMatch(word)
    if (name !== 'hooks') expect(words).not.toMatch(/\blag\b/iu)
    const facts = factsOf(sheet)
    expect(facts.get('Test report') ?? 'none').toMatch(name === 'structural screws' ? /none/u : /T-1207/u)
  })

  test('no sheet speaks of lag screws that are not there', () => {
    if (name === 'hooks') return
    expect(JSON.stringify(sheets.map((each) => each.said.map(({ text }) => text)))).not.toMatch(/lag screw/iu)
  })

  test('the list of material has the fastener, and no lag screw that is not there', async () => {
    const { values } = await runHouse({ project }).bom()
    const items = values.lines.map((line) => line.item)
    expect(items.some((item) => item.startsWith('lag'))).toBe(name === 'hooks')
    expect(items.some((item) => item.startsWith('screw.'))).toBe(name === 'deck mounts' || name === 'structural screws')
    expect(items.includes('sealant')).toBe(into !== 'seam')
    expect(items.some((item) => item.startsWith('flashing.'))).toBe(into !== 'seam')
  })

  test('the work plan sets what is there', async () => {
    const { values } = await runHouse({ project }, { wishes: { cellC: 25 } }).work()
    const said = JSON.stringify(values.steps)
    expect(/lag screws/u.test(said)).toBe(name === 'hooks')
    expect(/lead holes/u.test(said)).toBe(into === 'rafter')
    expect(values.mounts.every((mount) => mount.stands_on === into)).toBe(true)
    expect(planMarkdown('Invented', values, [], []).includes(`${into}, nearest`)).toBe(into !== 'rafter')
  })
})
