import type { ArrayOfModules, Project } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import { own } from '../../values/index.js'
import type { FilledRoof } from './fill-roof.js'
import type { ModuleLot } from './share-modules.js'
import { stringLengths } from './string-lengths.js'

/** A lot with the ids of its modules, own ones first, each part in order of best yield. */
export interface SizeLot extends ModuleLot {
  readonly moduleIds: readonly string[]
  /** Most modules that the strings take; Infinity behind module-level inverters. */
  readonly stringLimit: number
}

/** The arrays of a full roof as lots of modules to choose from. */
export function sizeLots(project: Project, filled: FilledRoof, run: YieldRun, worksheet: Worksheet): SizeLot[] {
  const ranked = (arrayId: string | undefined) =>
    (arrayId === undefined ? [] : (own(run.result.values.arrays, arrayId)?.by_module ?? [])).toSorted(
      (a, b) => b.ac_kwh - a.ac_kwh,
    )
  return Object.entries(project.arrays).map(([arrayId, array]) => {
    const own = ranked(arrayId)
    const all = [...own, ...ranked(filled.further.get(arrayId))]
    const kwhOfFirst = [0]
    for (const module of all) kwhOfFirst.push((kwhOfFirst.at(-1) ?? 0) + module.ac_kwh)
    return {
      arrayId,
      moduleIds: all.map((module) => module.id),
      kwhOfFirst,
      own: own.length,
      ...stringRule(project, arrayId, array, worksheet),
    }
  })
}

function stringRule(
  project: Project,
  arrayId: string,
  array: ArrayOfModules,
  worksheet: Worksheet,
): Pick<SizeLot, 'takes' | 'stringLimit'> {
  const strings = array.strings?.length ?? 0
  if (strings === 0) return { takes: () => true, stringLimit: Infinity }
  try {
    const lengths = stringLengths(project, array)
    if (lengths === undefined) return { takes: () => true, stringLimit: Infinity }
    const { leastModules, mostModules } = lengths
    worksheet.note({
      id: `size.strings.${arrayId}`,
      says: `Modules in a string of ${arrayId}, so that no voltage limit is passed in the cold and the inverter works in the heat`,
      formula: 'V_window / V_hot <= n <= V_limit / V_cold (of one module)',
      inputs: [{ symbol: 'strings', value: strings, unit: '', from: `arrays.${arrayId}.strings` }],
      result: { symbol: 'n', value: `${String(leastModules)} to ${String(mostModules)}`, unit: 'modules' },
      source: { document: 'NEC', place: '690.7', standing: 'secondary' },
    })
    const fits = (modules: number): boolean =>
      modules === 0 ||
      Array.from({ length: strings }, (_, i) => i + 1).some(
        (used) => modules >= used * leastModules && modules <= used * mostModules,
      )
    return { takes: fits, stringLimit: strings * mostModules }
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    worksheet.find({
      severity: 'warning',
      id: 'size.strings-not-checked',
      message: `how many modules a string of ${arrayId} takes is not known: ${error.message}`,
      where: error.where,
      fix: error.fix,
    })
    return { takes: () => true, stringLimit: Infinity }
  }
}
