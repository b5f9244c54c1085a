import { describe, expect, it } from 'vitest'
import {
  busbarRules,
  changes2026,
  editions,
  editionSections,
  groundingRules,
  insulationTypes,
  labelQuestions,
  labelRules,
  labelWordRows,
  labelWords,
  lockableDisconnect,
  rapidShutdownRules,
  rooftopAdderExempt,
  rooftopAdders,
  smallerStandardDevices,
  supplySideRules,
  type Edition,
} from '../../src/tables/nec/index.js'
import { readFixture } from '../electrical/read-fixture.js'

const KEYS = [
  ['rule', 'rule'],
  ['section2023', 'section_2023'],
  ['section2026', 'section_2026'],
  ['change', 'change'],
  ['value2023', 'value_2023'],
  ['value2026', 'value_2026'],
  ['reportedBy', 'source'],
] as const

describe('changes of 2026 equal what secondary sources report, cell by cell', () => {
  const fixture = readFixture('nec2026_changes')

  it('has every row in its order', () => {
    expect(changes2026.map((row) => row.rule)).toEqual(fixture.map((row) => row['rule']))
  })

  it.each(changes2026.map((row, index) => [row.rule, row, fixture[index] ?? {}] as const))('%s', (_, row, source) => {
    for (const [ours, theirs] of KEYS) expect(row[ours], ours).toBe(source[theirs])
    expect('useNote' in row ? `${row.use} ${row.useNote}` : row.use).toBe(source['use'])
  })

  it('only the calculation whose numbers nobody knows is refused', () => {
    expect(changes2026.filter((row) => row.use === 'refuse').map((row) => row.section2026)).toEqual(['120.83'])
  })
})

/** Every table that is kept by edition, as the rows of one edition. */
const tables: Readonly<Record<string, (edition: Edition) => unknown>> = {
  ...Object.fromEntries(
    Object.entries(editionSections).map(([topic, places]) => [`section of ${topic}`, (edition) => places[edition]]),
  ),
  ...Object.fromEntries(
    labelRules.map((rule) => [`label ${rule.id}`, (edition: Edition) => rule.sections[edition]?.section]),
  ),
  'busbar rules': (edition) =>
    busbarRules.filter((row) => row.edition === edition).map(({ section, rule, share }) => [section, rule, share]),
  'grounding rules': (edition) => {
    const row = groundingRules.find((each) => each.edition === edition)
    return row && [row.arrayElectrode, row.faultProtectionAboveV, row.faultProtectionAboveA]
  },
  'rapid shutdown': (edition) => {
    const row = rapidShutdownRules.find((each) => each.edition === edition)
    return row && [row.outsideLimit, row.insideOptions, row.insideVoltage, row.timeS, row.initiatorOutdoors]
  },
  'rooftop adders': (edition) =>
    rooftopAdders.filter((row) => row.edition === edition).map(({ toIn, adderC }) => [toIn, adderC]),
  'insulations without adder': (edition) => rooftopAdderExempt[edition],
  'insulations in the array': (edition) =>
    insulationTypes.filter((row) => row.exposedInArray.includes(edition)).map(({ type }) => type),
  'small devices': (edition) => smallerStandardDevices[edition],
  'lockable disconnect': (edition) => lockableDisconnect.includes(edition),
  'labels to ask about': (edition) =>
    labelQuestions.filter((row) => row.editions.includes(edition)).map(({ words }) => words),
  'label words': (edition) => [...new Set(labelWordRows.map(({ id }) => id))].map((id) => labelWords(id, edition)),
}

const placeOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'place' in value ? value.place : value

/** Sections that sources report as new or moved. */
const MOVED = ['section of fractions']

describe('NEC 2026 in the tables', () => {
  it.each(Object.entries(tables).filter(([name]) => !MOVED.includes(name)))(
    '%s: as 2023, as no source reports a change',
    (_, of) => {
      expect(placeOf(of('NEC 2026'))).toEqual(placeOf(of('NEC 2023')))
    },
  )

  it('every table that is kept by edition has rows for every edition that has the rule', () => {
    for (const edition of editions) {
      expect(supplySideRules.filter((row) => row.edition === edition)).toHaveLength(1)
      expect(groundingRules.filter((row) => row.edition === edition)).toHaveLength(1)
      expect(busbarRules.some((row) => row.edition === edition)).toBe(true)
      expect(rooftopAdders.filter((row) => row.edition === edition).at(-1)?.toIn).toBe(Infinity)
      expect(rooftopAdderExempt).toHaveProperty([edition])
      expect(insulationTypes.find(({ type }) => type === 'PV wire')?.exposedInArray).toContain(edition)
      expect(rapidShutdownRules.filter((row) => row.edition === edition)).toHaveLength(edition === 'NEC 2011' ? 0 : 1)
      for (const [topic, places] of Object.entries(editionSections))
        expect(Object.keys(places), topic).toContain(edition)
      for (const rule of labelRules) expect(Object.keys(rule.sections), rule.id).toContain(edition)
    }
    expect(Object.keys(rooftopAdderExempt)).toEqual([...editions])
  })

  it('nothing of it counts as read, and what was from memory in 2023 is no better known', () => {
    const standings = [
      ...Object.values(editionSections).map((places) => [places['NEC 2026']?.standing, places['NEC 2023']?.standing]),
      ...labelRules.map(({ sections }) => [sections['NEC 2026']?.standing, sections['NEC 2023']?.standing]),
      ...[busbarRules, rapidShutdownRules, supplySideRules].map((rows) =>
        (['NEC 2026', 'NEC 2023'] as const).map((edition) => rows.find((row) => row.edition === edition)?.standing),
      ),
      (['NEC 2026', 'NEC 2023'] as const).map(
        (edition) => groundingRules.find((row) => row.edition === edition)?.arrayElectrodeStanding,
      ),
    ].filter(([standing]) => standing !== undefined)
    expect(standings.length).toBeGreaterThan(60)
    for (const [standing, before] of standings)
      expect(standing).toBe(before === 'from memory' ? 'from memory' : 'secondary')
  })

  it('supply side: 10 ft again, where 2023 names no distance', () => {
    const of = (edition: Edition) => supplySideRules.find((row) => row.edition === edition)
    expect(of('NEC 2023')?.deviceWithinFt).toBeUndefined()
    expect(of('NEC 2026')).toEqual({
      ...of('NEC 2023'),
      edition: 'NEC 2026',
      section: '705.11, 705.11(C)',
      deviceWithinFt: 10,
    })
  })

  it('fractions: a section in 2026 only', () => {
    expect(editions.filter((edition) => editionSections.fractions[edition] !== undefined)).toEqual(['NEC 2026'])
  })
})
