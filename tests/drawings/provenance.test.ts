import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  drawPacket,
  drawPreparerReport,
  labelsToAsk,
  requiredLabels,
  type PacketInput,
} from '../../src/drawings/index.js'
import { runHouse } from '../../src/house/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { formatSource } from '../../src/worksheet/index.js'
import { hipHouse, longNames, manyBranches, microHouse, noCombiner, packetInput, stringHouse } from './demo-packet.js'
import { readSheet } from './read-sheet.js'
import { knownService, longTree, subpanelHouse, supplyTree, tapHouse, threeLevels } from './tree-houses.js'

/** Words that say how far somebody read a source: they stand in the preparer's report, never on a sheet that is filed. */
const STANDING =
  /[^.;]{0,60}(?:secondary source|from memory|unverified|unconfirmed|no source|was not read)[^.;]{0,40}/giu

const by = (house: Project, electrical: NonNullable<Project['codes']>['electrical']): Project => ({
  ...house,
  codes: { ...house.codes, ...(electrical === undefined ? {} : { electrical }) },
})

const EDITIONS = ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023', 'NEC 2026'] as const

const invented: [string, Project][] = [
  ['hip', hipHouse()],
  ['long names', longNames()],
  ['many branches', manyBranches()],
  ['no combiner', noCombiner()],
  ['subpanel', subpanelHouse()],
  ['three levels', threeLevels()],
  ['tap', tapHouse()],
  ['supply tree', supplyTree()],
  ['known service', knownService()],
  ['long tree', longTree()],
  ...EDITIONS.flatMap((edition): [string, Project][] => [
    [`micro ${edition}`, by(microHouse(), edition)],
    [`strings ${edition}`, by(stringHouse(), edition)],
  ]),
]

const examples = new URL('../../examples/', import.meta.url)
const files = [
  'lark-hollow.yaml',
  'harbor-point.yaml',
  ...readdirSync(new URL('fleet', examples)).map((name) => `fleet/${name}`),
].filter((path) => path.endsWith('.yaml') && !/equipment|template/u.test(path))

describe('a filed sheet cites the rule and not how far somebody read it', () => {
  test.each(invented)('%s', (_, project) => {
    const input = packetInput(project)
    expect(drawPacket(input).flatMap((sheet) => standingWords(sheet))).toEqual([])
    expect(missingFromReport(input)).toEqual([])
  })

  test('there are sample houses', () => expect(files.length).toBeGreaterThan(20))

  test.each(files)('%s', async (path) => {
    const loaded = loadProject({ path: new URL(path, examples).pathname, allowOutside: true })
    const input = await runHouse(loaded).packet({ size: '11x17', documents: [] })
    const whole = { ...input, draft: false }
    expect(drawPacket(whole).flatMap((sheet) => standingWords(sheet))).toEqual([])
    expect(missingFromReport(whole)).toEqual([])
  })
})

function standingWords(sheet: Parameters<typeof readSheet>[0]): string[] {
  const read = readSheet(sheet)
  return [...new Set([...read.words.matchAll(STANDING)].map(([text]) => `${sheet.id}: ${text.trim()}`))]
}

const tight = (text: string): string => text.replaceAll(/\s+/gu, '')

/** What a preparer has to know and the report does not print: sources as they are named, assumptions, findings, labels. */
function missingFromReport(input: PacketInput): string[] {
  const words = tight(
    drawPreparerReport({ ...input, size: 'letter' })
      .map((sheet) => readSheet(sheet).words)
      .join(' '),
  )
  const stages = [input.arrangement, input.mounts, input.wire].flatMap((each) => each ?? [])
  const steps = stages.flatMap(({ worksheet }) => worksheet)
  const assumptions = stages.flatMap((stage) => stage.assumptions)
  const wiring = input.wire?.values
  const labels = wiring === undefined ? [] : requiredLabels(input.project, wiring)
  const asked = wiring === undefined ? [] : labelsToAsk(input.project, wiring)
  const needed = [
    ...steps.map(({ source }) => formatSource(source)),
    ...steps.flatMap(({ limits }) => limits ?? []),
    ...assumptions.flatMap(({ path, why, source }) => [path, why, formatSource(source)]),
    ...input.findings.flatMap(({ message, fix, source }) => [
      message,
      fix ?? '',
      source === undefined ? '' : formatSource(source),
    ]),
    ...Object.values(input.arrangement.values.planes).flatMap(({ keepOuts }) =>
      keepOuts.map(({ source }) => formatSource(source)),
    ),
    ...labels.flatMap(({ look, wording, source }) => [look, wording, source]),
    ...asked.flatMap(({ when, source }) => [when, source]),
    ...(wiring?.edition === 'NEC 2026' ? ['its text was not read'] : []),
  ]
  return [...new Set(needed)].filter((text) => !words.includes(tight(text)))
}

test('it counts how much is marked: a report without marks would be none', () => {
  const pages = drawPreparerReport(packetInput(stringHouse(), 'letter')).map((sheet) => readSheet(sheet).words)
  const marks = pages.join(' ').match(/secondary source|from memory, unverified|common practice, no source/gu) ?? []
  expect(marks.length).toBeGreaterThan(100)
})
