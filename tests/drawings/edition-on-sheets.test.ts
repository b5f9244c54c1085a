import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput, stringHouse } from './demo-packet.js'
import { readPacket } from './read-sheet.js'

const LINE =
  'Sections and numbers of NEC 2026 on these sheets are from secondary sources only; its text was not read, and the words of labels are those of NEC 2023, unconfirmed.'

describe.each([
  ['branches on a combiner', microHouse],
  ['strings on the supply side', stringHouse],
] as const)('sheets of %s by an edition that nobody read', (_, make) => {
  const house = make()
  const by = (electrical: 'NEC 2023' | 'NEC 2026'): Project => ({ ...house, codes: { ...house.codes, electrical } })
  const packet = readPacket(packetInput(by('NEC 2026'), '11x17', true))

  test('one line of the cover says so, and no other', () => {
    const lines = packet.flatMap(({ sheet, words }) =>
      [...words.matchAll(/[^.;]*2026[^.]*secondary[^.]*\./gu)].map(([text]) => [
        sheet.id,
        text.includes('sources only'),
      ]),
    )
    expect(lines).toEqual([['G-001', true]])
    expect(packet.find(({ sheet }) => sheet.id === 'G-001')?.words).toContain(LINE)
  })

  test('no label and no step of the wiring says it again', () => {
    const electrical = packet.filter(({ sheet }) => sheet.id.startsWith('E-'))
    expect(electrical.length).toBeGreaterThan(3)
    for (const { sheet, words } of electrical) expect(words, sheet.id).not.toMatch(/2026[^.;]{0,40}\(secondary/u)
  })

  test('an edition that was read has no such line', () => {
    const cover = readPacket(packetInput(by('NEC 2023'), '11x17', true)).find(({ sheet }) => sheet.id === 'G-001')
    expect(cover?.words).not.toContain('secondary sources only')
  })
})
