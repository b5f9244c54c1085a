import { describe, expect, test } from 'vitest'
import { drawPacket } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { flat } from './pdf-text.js'

const letter = { id: 'letter', file: 'letter.pdf', title: 'Letter about the rafters (invented)', date: '2026-02-20' }

function house(): Project {
  const project = microHouse({ documents: ['m410.pdf', letter] })
  const framing = project.structure?.framing?.['south'] ?? {}
  return {
    ...project,
    structure: { ...project.structure, framing: { south: { ...framing, rafters_verified_by: 'letter' } } },
  }
}

/** All words of a sheet. */
function wordsOf(sheets: ReturnType<typeof drawPacket>, id: string): string {
  const sheet = sheets.find((each) => each.id === id)
  return flat((sheet?.paper ?? []).flatMap((each) => (each.kind === 'text' ? [each.text] : [])).join(' '))
}

describe('a packet whose rafters stand on a document', () => {
  const documents = [
    { path: 'm410.pdf', pages: 2 },
    { path: letter.file, pages: 1, id: letter.id, title: letter.title, date: letter.date },
  ]
  const sheets = drawPacket({ ...packetInput(house()), documents })

  test.each(['G-001', 'S-501'])('says so on %s with title, date and sheet', (id) => {
    expect(wordsOf(sheets, id)).toContain(
      'south: stand on Letter about the rafters (invented), 2026-02-20 (sheet X-003)',
    )
  })

  test('lists it in the index by its title and date', () => {
    expect(wordsOf(sheets, 'G-001')).toContain('X-003 Letter about the rafters (invented), 2026-02-20')
    expect(wordsOf(sheets, 'G-001')).toContain('X-001 to X-002 m410.pdf')
  })

  test('tells the strength of the rafters where S-501 goes on', () => {
    const words = wordsOf(sheets, 'S-501-2')
    expect(words).toContain('rafter bending strength')
    expect(words).toMatch(/Demand Limit Limit is Used/)
  })

  test('says nothing of the kind where none is named', () => {
    expect(wordsOf(drawPacket(packetInput(microHouse())), 'G-001')).not.toContain('stand on')
  })
})
