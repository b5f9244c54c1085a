import { describe, expect, test } from 'vitest'
import { textWidthPt, wrapText } from '../../src/drawings/model/index.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import { packetInput } from './demo-packet.js'
import { readPacket } from './read-sheet.js'

/**
 * What stays on one line. Source: the international system of units, brochure, 5.4.3 (a space, not a break, between a number
 * and its unit; from memory), and common practice for fractions and editions, no source.
 */
const WHOLE = [
  '22000 A',
  '120/240 V',
  '22 of 40 %',
  '13 1/2"',
  '115 mph',
  '-18.8 deg C',
  'ASCE 7-16',
  'NEC 2020',
  '4/0 AWG',
  '2091 ft²',
  '≤ 7015',
  '15 ft;',
  'labels 6',
  'label 12,',
]

describe('a line breaks', () => {
  test.each(WHOLE)('not within %s', (whole) => {
    const text = `some words and ${whole} more`
    for (let width = textWidthPt(whole, 7); width < textWidthPt(text, 7); width += 3) {
      expect(wrapText(text, 7, 'plain', width).some((line) => line.includes(whole))).toBe(true)
    }
  })

  test.each([
    ['12 modules', '12'],
    ['no edition', 'no'],
    ['plane A is', 'plane'],
    ['words of a', 'words'],
    ['of 40 houses', 'of'],
    ['r1c10 A', 'r1c10'],
  ])('within %s', (text, first) => {
    expect(wrapText(text, 7, 'plain', textWidthPt(first, 7) + 0.1)[0]).toBe(first)
  })

  test('within a number and its unit where the width does not hold both, so that nothing leaves its cell', () => {
    expect(wrapText('22 of 40 %', 7, 'plain', textWidthPt('22 of', 7) + 0.1)).toEqual(['22 of', '40 %'])
  })
})

test.each(DRAWN_HOUSES.filter(([name]) => /demo|strings|41/u.test(name)))(
  'no unit and no piece of a word begins a line in the tables of %s',
  (_, make) => {
    const alone = /^(?:[AVW%]|ft|psf|psi|mph|AWG|lb|\d+\/\d+"|t|n|d|ed|ity)(?:[ ,;.)]|$)/u
    // Words of a formula, and of a heading that names its unit.
    const named = /(?:rise = |Down, psf|V = )/u
    const lines = (['11x17', 'letter'] as const).flatMap((size) =>
      readPacket(packetInput(make(), size, true)).flatMap(({ sheet, said }) =>
        said.flatMap((each) =>
          each.lines
            .slice(1)
            .flatMap(({ text }) =>
              alone.test(text) && !named.test(each.text) ? [`${size} ${sheet.id}: ${each.text}`] : [],
            ),
        ),
      ),
    )
    expect(lines).toEqual([])
  },
)
