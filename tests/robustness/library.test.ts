import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import * as library from '../../src/index.js'
import type { LoadedProject, Project } from '../../src/index.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-library-'))
afterAll(() => rmSync(folder, { recursive: true }))

const example = (name: string): string => new URL(`../../examples/${name}`, import.meta.url).pathname
const springfield = readFileSync(example('fleet/springfield-whole-job.yaml'), 'utf8')
writeFileSync(join(folder, 'equipment.yaml'), readFileSync(example('fleet/equipment.yaml')))

/** The invented house with its array fitted to the roof, with or without a number of modules. */
function house(modules: number | undefined): LoadedProject {
  const number = modules === undefined ? '' : `    modules: ${modules}\n`
  const text = springfield.replace('    modules: 12\n', number)
  expect(text.includes('modules: 12')).toBe(modules === 12)
  return library.loadProject({ path: '-', text, baseFolder: folder })
}

const NO_FILES: ReadonlyMap<string, string> = new Map()
const runOf = (project: Project) => library.runYield(project, NO_FILES)
const wiringOnly = (project: Project) => ({
  designTemperatures: library.wiringContext(project).wiring.designTemperatures,
})

const fitted = house(undefined)
const count = library.arrangeModules(fitted.project).values.modules.length
const stated = house(count)

const structure = (project: Project) => {
  const { modules, planes } = library.arrangeModules(project).values
  return library.spaceMounts(project, { modules, planes: Object.values(planes) })
}
const bill = (project: Project) => {
  const wiring = library.wiringOf(project)
  return library.priceBom({
    project,
    arrangement: library.arrangeModules(project),
    mounts: structure(project),
    wire: wiring,
    labels: library.requiredLabels(project, wiring.values),
    prices: undefined,
  })
}
const plan = (project: Project) => {
  const wiring = library.wiringOf(project)
  return library.planWork({
    project,
    run: runOf(project),
    mounts: structure(project).values,
    wire: wiring.values,
    labels: library.requiredLabels(project, wiring.values),
    missing: [],
  })
}
const DAYS = 'date,kWh\n2026-05-01,20\n2026-05-02,24\n2026-05-03,12\n'
const production = (project: Project) => {
  const limits = library.productionLimits(project, runOf(project))
  return { ...library.readProduction('p.csv', DAYS, {}, limits), limits }
}
const review = (project: Project) => {
  const { series } = production(project)
  if (series === undefined) throw new Error('no series')
  return library.reviewProduction({ project, run: runOf(project), series })
}

/** Everything of the library that takes a project. */
const STAGES: Readonly<Record<string, (loaded: LoadedProject) => unknown>> = {
  arrangeModules: ({ project }) => library.arrangeModules(project),
  countFitted: ({ project }) => library.countFitted(project).arrays['main']?.modules,
  siteClimate: ({ project }) => library.siteClimate(project.site, undefined, new library.Worksheet()),
  designTemperatures: ({ project }) => library.designTemperatures(project.site, new library.Worksheet()),
  estimateYield: ({ project, files }) => library.estimateYield(project, files),
  runYield: ({ project, files }) => library.runYield(project, files).result,
  expectedHours: ({ project }) => library.expectedHours(runOf(project)),
  stepTable: ({ project }) => library.stepTable(runOf(project)),
  sweepAngle: ({ project, files }) => library.sweepAngle(project, files, runOf(project), 'main', 'azimuth').points,
  wiringContext: ({ project }) => library.wiringContext(project).wiring,
  sizeWire: ({ project }) => library.sizeWire(project, wiringOnly(project)),
  wiringOf: ({ project }) => library.wiringOf(project),
  compareEditions: ({ project }) => library.compareEditions(project, ['NEC 2017', 'NEC 2023'], wiringOnly(project)),
  spaceMounts: ({ project }) => structure(project),
  requiredLabels: ({ project }) => library.requiredLabels(project, library.wiringOf(project).values),
  priceBom: ({ project }) => bill(project),
  compareBills: ({ project }) => library.compareBills(bill(project).values, bill(project).values),
  billsOfProject: ({ project, files }) => library.billsOfProject(project, files),
  paybackOfProject: ({ project, files }) => library.paybackOfProject(project, files, { installedCostUsd: 20_000 }),
  sizesOfProject: ({ project, files }) => library.sizesOfProject(project, files, { usdPerModule: 600, fixedUsd: 4000 }),
  planWork: ({ project }) => plan(project),
  productionLimits: ({ project }) => production(project).limits.mostKwh(0, 3_600_000),
  readProduction: ({ project }) => production(project).series,
  reviewProduction: ({ project }) => review(project),
}

/** What has nothing to do with a project, or is covered by the stages that use it. */
const OTHERS = [
  'checkBills',
  'checkHouse',
  'chooseSize',
  'billAcrossRates',
  'billFromPeriods',
  'compareAlternatives',
  'computeBill',
  'cutStock',
  'FileError',
  'findSite',
  'FleetError',
  'formatProblem',
  'formatSource',
  'importRate',
  'impliedInflation',
  'inWorker',
  'internalRate',
  'lifeCycleCost',
  'modifiedInternalRate',
  'modifiedUniformPresentValue',
  'monthlyRate',
  'singlePresentValue',
  'uniformCapitalRecovery',
  'uniformPresentValue',
  'labelsOfEdition',
  'listFormFields',
  'listSites',
  'loadProject',
  'parseEpw',
  'payback',
  'prepareApplication',
  'prepareForm',
  'prepareHandover',
  'preparePacket',
  'ProjectError',
  'readPriceList',
  'readTariff',
  'readUsage',
  'renderDxf',
  'renderSvg',
  'runFleet',
  'runHouse',
  'StageError',
  'startingFile',
  'sunPosition',
  'trunkGapsFt',
  'weatherOfDays',
  'Worksheet',
]

describe('a project whose modules the program fits to the roof, through the library alone', () => {
  test('the list below has everything of the library', () => {
    expect([...Object.keys(STAGES), ...OTHERS].toSorted()).toEqual(Object.keys(library).toSorted())
  })

  test.each(Object.entries(STAGES))('%s gives what it gives with the number stated', (_name, run) => {
    expect(count).toBeGreaterThan(12)
    const json = (loaded: LoadedProject): string => JSON.stringify(run(loaded))
    expect(json(fitted)).toBe(json(stated))
  })
})
