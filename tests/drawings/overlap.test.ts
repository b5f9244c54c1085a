import { describe, expect, test } from 'vitest'
import { drawPacket, type Sheet } from '../../src/drawings/index.js'
import { measureSheet, overprints } from '../../src/drawings/layout/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { DRAWN_HOUSES, PAPERS } from './drawn-houses.js'

/**
 * Least height of capitals, in: 10 point type on the usual paper ("10 point or larger", permit guide of a large city, read), of
 * which 1493 of 2048 parts are capitals in this font; 0.08 in on letter paper.
 */
const LEAST_CAPITAL_IN = { '11x17': (10 * 1493) / 2048 / 72, A3: (10 * 1493) / 2048 / 72, letter: 0.08 } as const

/** Whether another sheet goes on where this one ends, so that it has to be full. */
const goesOn = (sheet: Sheet, next: Sheet | undefined): boolean => next?.id.slice(0, 5) === sheet.id.slice(0, 5)

describe.each(DRAWN_HOUSES)('%s', (_, make) => {
  const input = packetInput(make())
  test.each(PAPERS)('on %s: nothing overprints, letters are high enough, no sheet is left empty', (size) => {
    const sheets = drawPacket({ ...input, size, threeLine: true })
    const measured = sheets.map((sheet) => ({ sheet, measure: measureSheet(sheet) }))
    expect(measured.flatMap(({ sheet, measure }) => overprints(measure).map((each) => `${sheet.id}: ${each}`))).toEqual(
      [],
    )
    for (const { measure } of measured)
      expect(measure.leastCapitalIn ?? 1).toBeGreaterThan(LEAST_CAPITAL_IN[size] - 1e-9)
    // The last sheet of a series holds what is left.
    const empty = measured.filter(({ sheet, measure }, index) => {
      const isLast = sheet.id.length > 5 && !goesOn(sheet, sheets[index + 1])
      // Labels at true size are not cut, and a three-line diagram goes on by panels.
      const least = /^E-60[45]/u.test(sheet.id) ? 1 / 4 : 1 / 3
      return measure.fill < least && !isLast
    })
    expect(empty.map(({ sheet, measure }) => `${sheet.id}: ${measure.fill.toFixed(2)}`)).toEqual([])
  })
})

describe('what an authority asks of the lettering', () => {
  // Some ask for letters of 1/8 in; capitals count.
  test.each([
    [0.125, '11x17'],
    [0.1, 'A3'],
    [0.08, 'letter'],
  ] as const)('capitals of %d in on %s are kept on every sheet, and nothing overprints on the plans', (least, size) => {
    const input = packetInput({ ...microHouse(), drawings: { least_text_in: least } })
    const measured = drawPacket({ ...input, size }).map((sheet) => ({ id: sheet.id, ...measureSheet(sheet) }))
    for (const { leastCapitalIn } of measured) expect(leastCapitalIn ?? 0).toBeGreaterThan(least - 1e-9)
    const heights = measured.map(({ leastCapitalIn }) => leastCapitalIn ?? 0)
    expect(Math.min(...heights)).toBeCloseTo(least, 6)
    const plans = measured.filter(({ id }) => /^[CAS]/u.test(id))
    expect(plans.flatMap((each) => overprints(each))).toEqual([])
  })
})
