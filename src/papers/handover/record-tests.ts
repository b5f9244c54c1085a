import { moduleVocV } from '../../fieldwork/index.js'
import { listModuleGroups } from '../../project/index.js'
import { COMMISSIONING_TESTS, READING_CELL_C, type CommissioningTest } from '../../tables/fieldwork/index.js'
import type { HandoverInput } from './handover-input.js'
import type { RecordRow, RecordTest } from './handover-values.js'
import {
  judgeAcVoltages,
  judgeAlike,
  judgeBonding,
  judgeChecks,
  judgeEnergy,
  judgeInsulation,
  judgeIsc,
  judgeLossOfMains,
  judgePolarity,
  judgeShutdown,
  judgeUnits,
  judgeVoc,
  operatingRow,
  type StringFacts,
  type SystemFacts,
} from './judge/index.js'

/** The tests in their order, each with what is expected beside what was read. */
export function recordTests(input: HandoverInput, system: SystemFacts, strings: readonly StringFacts[]): RecordTest[] {
  const groups = listModuleGroups(input.project)
  const hasUnits = groups.some(({ conversion }) => conversion.kind === 'module_level')
  return COMMISSIONING_TESTS.map((test) => {
    const leftOut = leftOutOf(test, input, strings.length > 0, hasUnits)
    return {
      id: test.id,
      number: test.number,
      title: test.title,
      state: test.state,
      left_out: leftOut,
      tasks: leftOut === null ? tasksOf(test, input) : [],
      rows: leftOut === null ? rowsOf(test.id, input, system, strings) : [],
    }
  })
}

function leftOutOf(
  test: CommissioningTest,
  { project }: HandoverInput,
  hasStrings: boolean,
  hasUnits: boolean,
): string | null {
  if (test.strings === true && !hasStrings)
    return hasUnits
      ? 'module-level inverters: no DC string tests; the DC voltage of each unit is read from the monitoring'
      : 'strings with converters are tested as their maker says'
  if (test.moduleLevel === true && !hasUnits) return 'no module-level inverters'
  if (test.id === 'combiner' && project.electrical?.dc_combiners === undefined) return 'no combiner box'
  return null
}

/** How the test is done, in the words of the work plan; where the record has rows, without its lines by string. */
function tasksOf({ tasks: ids, id }: CommissioningTest, { work }: HandoverInput): RecordTest['tasks'] {
  const all = work.steps.flatMap(({ tasks }) => tasks)
  const hasRows = id === 'isc' || id === 'insulation' || id === 'unit_voltage'
  return ids.flatMap((name) => {
    const found = all.filter((task) => task.id === name)
    return (hasRows ? found.slice(0, 1) : found).map(({ says, source }) => ({
      says: says.replace(/[;,]? (?:power|read): ______.*$/u, ''),
      source,
    }))
  })
}

function rowsOf(id: string, input: HandoverInput, system: SystemFacts, strings: readonly StringFacts[]): RecordRow[] {
  switch (id) {
    case 'visual':
      return judgeChecks(system, ['visual', 'torque_marks', 'labels'])
    case 'ac_circuits':
      return judgeChecks(system, strings.length > 0 ? ['ac_circuits', 'dc_run'] : ['ac_circuits'])
    case 'bonding':
      return judgeBonding(system)
    case 'polarity':
      return strings.map(judgePolarity)
    case 'voc':
      return [...strings.map(judgeVoc), ...judgeAlike(strings, 'voc_v', 'V')]
    case 'isc':
      return [
        ...strings.map(judgeIsc),
        ...judgeAlike(strings, 'isc_a', 'A'),
        ...strings.flatMap(operatingRow),
        ...judgeAlike(strings, 'operating_a', 'A'),
      ]
    case 'insulation':
      return strings.map(judgeInsulation)
    case 'functional':
      return [...judgeAcVoltages(system), ...judgeChecks(system, ['switches']), ...judgeLossOfMains(system)]
    case 'unit_voltage':
      return unitRows(input, system)
    case 'rapid_shutdown':
      return judgeShutdown(system)
    case 'energy':
      return [...judgeEnergy(system), ...judgeChecks(system, ['meter_direction', 'monitoring'])]
    default:
      return []
  }
}

/** The open voltage of the modules behind units, at today's temperature, else at the coldest of the table. */
function unitRows({ project, measured, cellC }: HandoverInput, system: SystemFacts): RecordRow[] {
  const atC = measured.cell_c ?? cellC ?? READING_CELL_C[0]
  const volts = listModuleGroups(project)
    .filter(({ conversion }) => conversion.kind === 'module_level')
    .map(({ array, module }) => moduleVocV(array.module, module, atC))
  return judgeUnits(system, Math.max(...volts), atC)
}
