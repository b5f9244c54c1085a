import { describe, expect, it } from 'vitest'
import { drawPacket, flattenSheet } from '../../src/drawings/index.js'
import { panelName, servicePanel } from '../../src/project/facts.js'
import type { Electrical, Project } from '../../src/project/index.js'
import { houseOfPanels } from '../electrical/every-key-bases.js'
import { microHouse, packetInput } from './demo-packet.js'

/** All words of the packet in the order of its sheets, with one space between them. */
const wordsOf = (project: Project, sheets = ''): string =>
  drawPacket(packetInput(project))
    .filter(({ id }) => id.startsWith(sheets))
    .flatMap((sheet) => flattenSheet(sheet).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
    .join(' ')
    .replaceAll(/\s+/g, ' ')

/** A failure then shows the line, not the whole packet. */
const has = (words: string, part: string): boolean => words.includes(part)

const withoutDisconnects = (project: Project, change: Partial<Electrical> = {}): Project => {
  const { disconnects: _, ...electrical } = project.electrical ?? {}
  return { ...project, electrical: { ...electrical, ...change } }
}

describe('panels of a tree in drawings and labels', () => {
  it('the directory names the panel with the service disconnect, and the one with the breaker', () => {
    const words = wordsOf(withoutDisconnects(houseOfPanels()))
    expect(has(words, 'SERVICE DISCONNECT: MAIN, OUTDOORS')).toBe(true)
    expect(has(words, 'PV SYSTEM DISCONNECT: BACKFED BREAKER IN PANEL SUB, INDOORS')).toBe(true)
    expect(has(words, 'PV SYSTEM BREAKER IN PANEL SUB, INDOORS')).toBe(true)
    expect(has(words, 'It is connected to panel sub by a backfed breaker.')).toBe(true)
    expect(has(words, 'IN THIS PANEL')).toBe(false)
  })

  it('tables name the panel that they judge', () => {
    expect(has(wordsOf(houseOfPanels(), 'E-602'), 'Panel sub 125 A 100 A')).toBe(true)
    expect(has(wordsOf(houseOfPanels(), 'E-602'), 'Main panel')).toBe(false)
    expect(has(wordsOf(houseOfPanels(), 'G-001'), 'Panel sub 125 A bus')).toBe(true)
    expect(has(wordsOf(microHouse(), 'E-602'), 'Main panel 200 A 200 A')).toBe(true)
  })

  it('the diagram draws the panel that takes the breaker under its name', () => {
    const words = wordsOf(houseOfPanels(), 'E-601')
    expect(has(words, ' SUB ')).toBe(true)
    expect(has(words, '125 A bus')).toBe(true)
    expect(has(words, 'MAIN PANEL')).toBe(false)
  })

  it('a system on the service panel of a tree has its breaker in this panel', () => {
    const words = wordsOf(
      withoutDisconnects(houseOfPanels(), {
        connection: { kind: 'load_side_breaker', at: 'main', breaker_position: 'opposite_end' },
      }),
    )
    expect(has(words, 'PV SYSTEM DISCONNECT: BACKFED BREAKER IN THIS PANEL')).toBe(true)
    expect(has(words, 'PV SYSTEM BREAKER IN PANEL MAIN, OUTDOORS')).toBe(true)
  })

  it('the only panel is the main panel, as before', () => {
    const words = wordsOf(withoutDisconnects(microHouse()))
    expect(has(words, 'SERVICE DISCONNECT: MAIN PANEL, OUTDOORS')).toBe(true)
    expect(has(words, 'PV SYSTEM DISCONNECT: BACKFED BREAKER IN THIS PANEL')).toBe(true)
    expect(has(words, 'PV SYSTEM BREAKER IN THE MAIN PANEL, OUTDOORS')).toBe(true)
    expect(has(words, 'It is connected to the main panel by a backfed breaker.')).toBe(true)
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
    expect(has(words, 'PV SYSTEM DISCONNECT: DEVICE AT THE END OF TAP PV TAP')).toBe(true)
    expect(has(words, 'It is connected to a feeder by tap pv tap.')).toBe(true)
  })
})

describe('the panel at the service', () => {
  const panels = { main: { bus_a: 200 }, sub: { bus_a: 100 }, far: { bus_a: 100, name: 'Barn' } }
  const feeder = (from: string, to: string) => ({
    from,
    to,
    breaker_a: 60,
    material: 'copper' as const,
    size_awg: '4' as const,
    length_ft: 20,
  })
  const tree = (feeders: Record<string, ReturnType<typeof feeder>>): Electrical => ({
    connection: { kind: 'load_side_breaker', at: 'far' },
    distribution: { panels, feeders },
  })

  it('stands at the head of all feeders', () => {
    expect(servicePanel(tree({ a: feeder('main', 'sub'), b: feeder('sub', 'far') })).id).toBe('main')
    expect(panelName(servicePanel(tree({ a: feeder('main', 'sub') })))).toBe('Barn')
    expect(servicePanel({ panel: { bus_a: 200 } }).where).toBe('electrical.panel')
    expect(panelName(servicePanel(undefined))).toBe('main panel')
  })

  it('a circle and a feeder from nowhere end', () => {
    expect(['sub', 'far']).toContain(servicePanel(tree({ a: feeder('far', 'sub'), b: feeder('sub', 'far') })).id)
    expect(servicePanel(tree({ a: feeder('nowhere', 'far') })).id).toBe('far')
  })
})
