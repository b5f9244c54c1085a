import { describe, expect, it } from 'vitest'
import { drawPacket, flattenSheet } from '../../src/drawings/index.js'
import type { Electrical, Project } from '../../src/project/index.js'
import { houseOfPanels } from '../electrical/every-key-bases.js'
import { microHouse, packetInput } from './demo-packet.js'

/** All words of the packet in the order of its sheets, with one space between them. */
const wordsOf = (project: Project): string =>
  drawPacket(packetInput(project))
    .flatMap((sheet) => flattenSheet(sheet).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
    .join(' ')
    .replaceAll(/\s+/g, ' ')

/** A failure then shows the line, not the whole packet. */
const has = (words: string, part: string): boolean => words.includes(part)

const withoutDisconnects = (project: Project, change: Partial<Electrical> = {}): Project => {
  const { disconnects: _, ...electrical } = project.electrical ?? {}
  return { ...project, electrical: { ...electrical, ...change } }
}

describe('what labels call the device of the system', () => {
  it('the only panel is the main panel, as before', () => {
    const words = wordsOf(withoutDisconnects(microHouse()))
    expect(has(words, 'SERVICE DISCONNECT: MAIN PANEL, OUTDOORS')).toBe(true)
    expect(has(words, 'PV SYSTEM DISCONNECT: BACKFED BREAKER IN THIS PANEL')).toBe(true)
    expect(has(words, 'PV SYSTEM BREAKER IN THE MAIN PANEL, OUTDOORS')).toBe(true)
  })

  it('a tap is named with its own words', () => {
    const house = houseOfPanels()
    const { distribution } = house.electrical ?? {}
    if (distribution === undefined) throw new Error('no tree')
    const words = wordsOf(
      withoutDisconnects(house, {
        connection: { kind: 'feeder_tap', at: 'pv_tap', breaker_a: 30 },
        distribution: {
          ...distribution,
          taps: {
            pv_tap: {
              feeder: 'f',
              position: 'along',
              material: 'copper',
              size_awg: '4',
              insulation: 'THWN-2',
              ambient_c: 30,
              length_ft: 8,
              end_devices: 1,
            },
          },
        },
      }),
    )
    expect(has(words, 'PV SYSTEM DISCONNECT: OVERCURRENT DEVICE AT THE END OF FEEDER TAP PV TAP')).toBe(true)
    expect(has(words, 'RAPID SHUTDOWN SWITCH: OVERCURRENT DEVICE AT THE END OF FEEDER TAP PV TAP')).toBe(true)
    expect(has(words, 'BACKFED BREAKER IN')).toBe(false)
  })
})
