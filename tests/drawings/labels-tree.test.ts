import { describe, expect, test } from 'vitest'
import { requiredLabels, type RequiredLabel } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { readPacket } from './read-sheet.js'
import { subpanelHouse, supplyTree, threeLevels } from './tree-houses.js'

function labelsOf(project: Project): RequiredLabel[] {
  const { wire } = packetInput(project, '11x17', true)
  if (wire === undefined) throw new Error('no wiring')
  return requiredLabels(project, wire.values)
}

const placesOf = (labels: readonly RequiredLabel[], id: string): string[][] =>
  labels.filter((label) => label.id === id).map(({ placeTitles }) => [...placeTitles])

type Distribution = NonNullable<NonNullable<Project['electrical']>['distribution']>

function withTree(base: Project, change: (tree: Distribution) => Partial<Distribution>): Project {
  const tree = base.electrical?.distribution
  if (tree === undefined) throw new Error('no tree')
  return { ...base, electrical: { ...base.electrical, distribution: { ...tree, ...change(tree) } } }
}

describe('labels of a busbar', () => {
  test('the label of the 120 percent rule stands at every busbar that it lets in, upstream too', () => {
    const labels = labelsOf(subpanelHouse())
    // 22.95 A x 1.25 + 200 A is above the 200 A bus and within 240 A; + 60 A is within the 125 A bus of the garage.
    expect(placesOf(labels, 'BACKFED_BREAKER')).toEqual([['Main panel']])
    expect(placesOf(labels, 'SUM_RULE')).toEqual([])
    const small = withTree(subpanelHouse(), ({ panels }) => ({
      panels: { ...panels, garage: { ...panels['garage'], bus_a: 80 } },
    }))
    // 60 + 28.7 A is above 80 A and within 96 A.
    expect(placesOf(labelsOf(small), 'BACKFED_BREAKER')).toEqual([['Main panel', 'Garage panel']])
  })

  test('the label of the sum of the breakers stands where that rule lets in', () => {
    const other = withTree(subpanelHouse(), ({ feeders }) => ({
      feeders: Object.fromEntries(
        Object.entries(feeders ?? {}).map(([id, feeder]) => [id, { ...feeder, breaker_position: 'other' as const }]),
      ),
    }))
    const labels = labelsOf(other)
    expect(placesOf(labels, 'SUM_RULE')).toEqual([['Main panel']])
    expect(placesOf(labels, 'BACKFED_BREAKER')).toEqual([])
  })

  test('a busbar that no rule lets in gets no label of a rule', () => {
    expect(placesOf(labelsOf(threeLevels()), 'BACKFED_BREAKER')).toEqual([['Garage panel']])
  })

  test('the label of a power control system names its setting', () => {
    const base = threeLevels()
    const controlled: Project = {
      ...base,
      documents: [{ id: 'pcs', file: 'pcs.pdf', title: 'Listing of the control (invented)', date: '2026-01-01' }],
      electrical: {
        ...base.electrical,
        power_control: { setting_a: 140, panels: ['main'], document: 'pcs', locked_setting: true },
      },
    }
    const [label] = labelsOf(controlled).filter(({ id }) => id === 'PCS')
    expect(label?.placeTitles).toEqual(['Main panel'])
    expect(label?.text).toContain('MAXIMUM SETTING 140 A')
    expect(label?.text).toContain('CONTROLLED: PHOTOVOLTAIC SYSTEM, PV OF 2015 (PV), GENERATOR (GENERATOR)')
    const partly = {
      ...controlled.electrical?.power_control,
      setting_a: 100,
      panels: ['main'],
      uncontrolled: ['old_pv'],
    }
    const [other] = labelsOf({ ...controlled, electrical: { ...controlled.electrical, power_control: partly } }).filter(
      ({ id }) => id === 'PCS',
    )
    expect(other?.text).toContain('CONTROLLED: PHOTOVOLTAIC SYSTEM, GENERATOR (GENERATOR)')
    expect(labelsOf(base).some(({ id }) => id === 'PCS')).toBe(false)
  })
})

describe('which sources feed a panel', () => {
  const labels = labelsOf(threeLevels())

  test('one label for each panel, with the sources whose current passes it', () => {
    const present = labels.filter(({ id }) => id === 'SOURCES_PRESENT')
    expect(present.map(({ placeTitles, text }) => [placeTitles.join(), text.split('SOURCES: ')[1]])).toEqual([
      ['Main panel', 'UTILITY, PHOTOVOLTAIC SYSTEM, PV OF 2015 (PV) AND GENERATOR (GENERATOR)'],
      // The tap leaves the feeder before the garage panel: the old system does not pass its busbar.
      ['Garage panel', 'UTILITY AND PHOTOVOLTAIC SYSTEM'],
      ['Workshop panel', 'UTILITY AND PHOTOVOLTAIC SYSTEM'],
    ])
    expect(present.map(({ count }) => count)).toEqual([1, 1, 1])
  })

  test('the directory names the service, the PV disconnect and every older source with its place', () => {
    const [directory] = labels.filter(({ id }) => id === 'DIRECTORY')
    expect(directory?.text).toContain('SERVICE DISCONNECT: MAIN PANEL, OUTDOORS')
    expect(directory?.text).toContain('PV SYSTEM DISCONNECT: OUTSIDE, OUTDOORS')
    expect(directory?.text).toContain('PV OF 2015 (PV): DISCONNECT ON TAP HUT')
    expect(directory?.text).toContain('GENERATOR (GENERATOR): DISCONNECT ON MAIN PANEL')
    expect(directory?.text).toContain('BATTERY OF THE CELLAR (STORAGE): DISCONNECT AHEAD OF THE SERVICE DISCONNECT')
    expect(directory?.placeTitles).toEqual(['Main panel', 'pv disconnect'])
  })

  test('the current of the label at the connection is that of this system alone', () => {
    const base = threeLevels()
    const { connection } = base.electrical ?? {}
    if (connection === undefined) throw new Error('no connection')
    // The busbar of the main panel carries the older system as well.
    const atMain = { ...base, electrical: { ...base.electrical, connection: { ...connection, at: 'main' } } }
    const [point] = labelsOf(atMain).filter(({ id }) => id === 'AC_POI')
    expect(point?.text).toContain('RATED AC OUTPUT CURRENT 23.0 A')
  })

  test('two panels at the service both carry the placard and the directory', () => {
    const supply = labelsOf(supplyTree())
    expect(placesOf(supply, 'RSD_PLACARD')).toEqual([['Main panel', 'Garage panel']])
    expect(placesOf(supply, 'SOURCES_PRESENT')).toEqual([])
  })
})

test('the PV breaker is named where it stands, and the sheet names the panels', () => {
  const base = subpanelHouse()
  const { disconnects: _, ...electrical } = base.electrical ?? {}
  const labels = labelsOf({ ...base, electrical })
  expect(placesOf(labels, 'DISC_PURPOSE')).toEqual([['Garage panel']])
  expect(placesOf(labels, 'PV_DISC')).toEqual([['Garage panel']])
  expect(labels.find(({ id }) => id === 'RSD_PLACARD')?.text).toContain(
    'PV SYSTEM BREAKER IN THE GARAGE PANEL, INDOORS',
  )
  const [sheet] = readPacket(packetInput({ ...base, electrical })).filter((read) => read.sheet.id === 'E-604')
  expect(sheet?.said.some(({ text }) => text === 'GARAGE PANEL')).toBe(true)
  expect(sheet?.words).toContain('At: Garage panel.')
})

test('the short form keeps its places', () => {
  const labels = labelsOf(microHouse())
  expect(new Set(labels.flatMap(({ places }) => places))).toEqual(new Set(['main_panel', 'pv_disconnect']))
})
