/**
 * The rooms of the house: which sources belong together, and which tests answer for them.
 * `program` says that some of the tests start the built program, so that for those it must be built with the fault in it.
 */
export const ROOMS = {
  electrical: {
    sources: ['src/electrical/', 'src/tables/nec/'],
    tests: ['tests/electrical/', 'tests/published/electrical-'],
  },
  structure: {
    sources: ['src/structure/', 'src/tables/asce7/', 'src/tables/nds/', 'src/tables/aluminium/', 'src/tables/irc/'],
    tests: ['tests/structure/', 'tests/published/structural-'],
  },
  roof: { sources: ['src/roof/', 'src/tables/fire-access/'], tests: ['tests/roof/', 'tests/published/roof-'] },
  yield: {
    sources: ['src/yield/', 'src/sun/', 'src/tables/sky/', 'src/tables/losses/', 'src/tables/modules/'],
    tests: ['tests/yield/', 'tests/sun/', 'tests/published/yield-', 'tests/published/sun-', 'tests/published/sky-'],
  },
  climate: {
    sources: ['src/climate/', 'src/tables/climate/'],
    tests: ['tests/climate/', 'tests/published/climate-', 'tests/published/sky-'],
  },
  materials: { sources: ['src/materials/', 'src/tables/materials/'], tests: ['tests/materials/'] },
  money: { sources: ['src/money/', 'src/tables/money/'], tests: ['tests/money/', 'tests/published/money-'] },
  drawings: {
    sources: ['src/drawings/', 'src/packet/', 'src/tables/nec/label'],
    tests: ['tests/drawings/', 'tests/published/label', 'tests/published/electrical-tables'],
    program: true,
  },
  fieldwork: { sources: ['src/fieldwork/', 'src/tables/fieldwork/'], tests: ['tests/fieldwork/'], program: true },
  papers: { sources: ['src/papers/'], tests: ['tests/papers/'], program: true },
  fleet: { sources: ['src/fleet/', 'src/files/'], tests: ['tests/fleet/'], program: true },
  house: {
    sources: ['src/house/', 'src/seal/'],
    tests: ['tests/house/', 'tests/cli/earlier-result', 'tests/cli/check-project', 'tests/fieldwork/plan-'],
  },
  values: { sources: ['src/values/'], tests: ['tests/values/', 'tests/money/', 'tests/fieldwork/', 'tests/roof/'] },
  project: { sources: ['src/project/'], tests: ['tests/project/'] },
  schemas: { sources: ['schemas/parts/'], tests: ['tests/project/'], generate: true },
  cli: {
    sources: ['src/cli/', 'src/report/', 'src/worksheet/', 'bin/'],
    tests: ['tests/cli/', 'tests/explanations/', 'tests/robustness/explain', 'tests/robustness/complete-shell'],
    program: true,
  },
}

/** What a test loads that starts the built program. */
export const STARTS_PROGRAM = 'tests/cli/binary.ts'

/** Where a word is what is handed over (labels, sheets, steps of the work, tables); elsewhere a sentence may say the same in other words. */
export const WORDED = ['src/tables/', 'src/drawings/', 'src/fieldwork/work-plan/']

/** The room that answers for a source: the one with the longest fitting folder; undefined for what is generated or no code. */
export function roomOf(file) {
  if (file.includes('.generated.') || file.endsWith('.d.ts')) return undefined
  const fits = Object.entries(ROOMS).flatMap(([name, { sources }]) =>
    sources.filter((folder) => file.startsWith(folder)).map((folder) => ({ name, length: folder.length })),
  )
  return fits.toSorted((a, b) => b.length - a.length)[0]?.name
}
