import { describe, expect, test } from 'vitest'
import type { PaperName } from '../../src/drawings/index.js'
import { packetInput } from './demo-packet.js'
import { readPacket, type ReadSheet } from './read-sheet.js'
import { wiredHouses } from './wired-houses.js'

interface Words {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Lines of text as boxes round their capitals. */
const linesOf = ({ said }: ReadSheet): Words[] =>
  said.flatMap(({ lines }) =>
    lines
      .filter(({ rotationDeg }) => rotationDeg === 0)
      .map(({ at, widthPt, sizePt, text }) => ({
        text,
        left: at.x,
        right: at.x + widthPt,
        top: at.y - sizePt * 0.7,
        bottom: at.y,
      })),
  )

/** Pairs of texts that lie on one another. */
function onOneAnother(read: ReadSheet): string[] {
  const boxes = linesOf(read)
  return boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (b) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5,
      )
      .map((b) => `${read.sheet.id}: ${a.text} on ${b.text}`),
  )
}

/** Texts that a wire runs through, or grazes. */
function struckOut(read: ReadSheet): string[] {
  const wires = read.paths.filter(({ points, pen, closed }) => points.length === 2 && !closed && pen === 'medium')
  return linesOf(read).flatMap((text) =>
    wires.some(({ points: [a, b] }) => {
      if (a === undefined || b === undefined || Math.abs(a.y - b.y) > 0.01) return false
      const [from, to] = [Math.min(a.x, b.x), Math.max(a.x, b.x)]
      return a.y > text.top - 1 && a.y < text.bottom + 1.5 && from < text.left && to > text.right
    })
      ? [`${read.sheet.id}: ${text.text}`]
      : [],
  )
}

describe.each(wiredHouses)('sheets of %s', (_, make) => {
  test.each(['11x17', 'letter', 'A3'] as const)(
    'on %s have no words on words of the one-line and elevation',
    (size: PaperName) => {
      const all = readPacket(packetInput(make(), size, true))
      const sheets = all.filter(({ sheet }) => /^E-60[16]/u.test(sheet.id))
      expect(sheets.flatMap(onOneAnother)).toEqual([])
      // What is not known or has no limit is said in words.
      expect(all.flatMap(({ sheet, words }) => (/Infinity|NaN|undefined/u.test(words) ? [sheet.id] : []))).toEqual([])
    },
  )

  test.each(['11x17', 'letter'] as const)('on %s have no wire through words but those of tags', (size: PaperName) => {
    const sheets = readPacket(packetInput(make(), size, true)).filter(({ sheet }) => sheet.id.startsWith('E-601'))
    const tag = /: (?:\d+[a-z]*|[FTSG]\d+|#|JB|M|[A-Z]|P\d+|PV|BAT|SUB)(?:, (?:\d+[a-z]*|[FTSG]\d+))*$/u
    expect(sheets.flatMap(struckOut).filter((each) => !tag.test(each))).toEqual([])
  })
})
