import { describe, expect, test } from 'vitest'
import { requiredLabels, type PaperName, type RequiredLabel } from '../../src/drawings/index.js'
import { CAP_HEIGHT } from '../../src/drawings/model/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput, stringHouse } from './demo-packet.js'
import { readPacket, type ReadSheet } from './read-sheet.js'
import { wiredHouses } from './wired-houses.js'

function read(project: Project, size: PaperName, id: string): { sheets: ReadSheet[]; labels: RequiredLabel[] } {
  const input = packetInput(project, size, true)
  if (input.wire === undefined) throw new Error('no wiring')
  const sheets = readPacket(input).filter(({ sheet }) => sheet.id.startsWith(id))
  return { sheets, labels: requiredLabels(project, input.wire.values) }
}

/** Numbers in `labels 1, 4` of every text on sheets. */
const marksOn = (sheets: readonly ReadSheet[]): string[] =>
  sheets.flatMap(({ said }) => said.flatMap(({ text }) => text.match(/\blabels? (\d+(?:, \d+)*)/gu) ?? []))

describe.each(wiredHouses)('numbers of labels on the one-line of %s', (_, make) => {
  test('stand once at each piece of equipment that a label is fixed to', () => {
    const { sheets, labels } = read(make(), '11x17', 'E-601')
    const places = new Set(labels.flatMap((each) => each.places))
    const wanted = [...places].map((place) => {
      const numbers = labels.filter((each) => each.places.includes(place)).map(({ number }) => number)
      return `label${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')}`
    })
    expect(marksOn(sheets).toSorted()).toEqual(wanted.toSorted())
  })
})

describe.each([
  ['11x17', 1, 'Labels at true size', 'Drawn at true size.'],
  ['A3', 1, 'Labels at true size', 'Drawn at true size.'],
  ['letter', 0.5, 'Labels at half size', 'Drawn at half size'],
] as const)('labels on %s', (size, share, scale, says) => {
  test.each([
    ['branches', microHouse],
    ['strings', stringHouse],
  ] as const)('of %s have the heights of their letters at that share, and say so', (_, make) => {
    const { sheets, labels } = read(make(), size, 'E-604')
    expect(sheets[0]?.words).toContain(scale)
    expect(sheets[0]?.words).toContain(says)
    for (const { parts, number } of labels)
      for (const part of parts.filter(({ figure }) => figure === undefined)) {
        const text = part.text.replaceAll(/\s+/gu, ' ').trim()
        const set = sheets.flatMap(({ said }) =>
          said.filter((each) => each.text === text && each.lines[0]?.face === 'bold'),
        )
        const heights = set.flatMap(({ lines }) => lines.map(({ sizePt }) => (sizePt * CAP_HEIGHT) / 72))
        const least = Math.max(...heights)
        expect([
          number,
          text,
          set.length > 0,
          least >= part.capsIn * share - 1e-9,
          least < part.capsIn * share * 1.01,
        ]).toEqual([number, text, true, true, true])
      }
    for (const { marks, sheet } of sheets)
      for (const mark of marks)
        if (mark.kind === 'text' && mark.rotationDeg === 0)
          expect(mark.at.x + mark.widthPt).toBeLessThan(sheet.size.widthPt - 18)
  })
})
