import { statedModuleCount } from '../../project/facts.js'
import type { ArrayOfModules, FitRequest, Project } from '../../project/index.js'
import { arrangeModules } from '../../roof/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'

/** A project with every module that its roof still takes. */
export interface FilledRoof {
  readonly project: Project
  /** For an array of the person, the array that holds the modules which fit beside its own. */
  readonly further: ReadonlyMap<string, string>
  /** Arrays whose plane or module has no dimensions, so that nobody knows what else fits. */
  readonly unmeasured: readonly string[]
}

/**
 * Adds to each array as many modules as its roof plane takes beside those that are there, under the fire access rules.
 *
 * @param worksheet Takes a warning when the full roof breaks a rule that the project as it stands keeps.
 */
export function fillRoof(project: Project, worksheet: Worksheet): FilledRoof {
  const ids = Object.keys(project.arrays)
  const measured = ids.filter((id) => isMeasured(project, id))
  const further = new Map(measured.map((id) => [id, freeId(project, id)]))
  const asked: Record<string, ArrayOfModules> = {}
  for (const id of ids) {
    const array = own(project.arrays, id) as ArrayOfModules
    asked[id] = array.arrangement === undefined && further.has(id) ? fitted(array) : array
  }
  for (const [id, more] of further) {
    const array = own(project.arrays, id) as ArrayOfModules
    if (array.arrangement !== undefined) asked[more] = fitted(array)
  }
  const full = withArrays(project, asked, further)
  const arrangement = arrangeModules(full)
  tellBrokenRules(project, arrangement.findings, worksheet)
  const count = new Map<string, number>()
  for (const { array } of arrangement.values.modules) count.set(array, (count.get(array) ?? 0) + 1)
  const arrays: Record<string, ArrayOfModules> = { ...project.arrays }
  for (const [id, more] of further) {
    const array = own(project.arrays, id) as ArrayOfModules
    const unplaced = array.arrangement === undefined
    const added = unplaced ? (count.get(id) ?? 0) - (statedModuleCount(array) ?? 0) : (count.get(more) ?? 0)
    if (added < 1) further.delete(id)
    else arrays[more] = ofModules(unplaced ? array : fitted(array), array, added)
  }
  const unmeasured = ids.filter((id) => !measured.includes(id))
  return { project: withArrays(project, arrays, further), further, unmeasured }
}

function isMeasured(project: Project, id: string): boolean {
  const array = own(project.arrays, id)
  const module = own(project.equipment.modules, array?.module)
  const plane = own(project.roof_planes, array?.roof_plane)
  return plane?.outline !== undefined && module?.length_in !== undefined && module.width_in !== undefined
}

function freeId(project: Project, id: string): string {
  let name = `${id}_more`
  while (Object.hasOwn(project.arrays, name)) name += '_more'
  return name
}

/** The array with as many modules as fit, with the gaps of its own. */
function fitted(array: ArrayOfModules): ArrayOfModules {
  const { arrangement, modules: _modules, strings: _strings, ...rest } = array
  const request: FitRequest = { orientation: 'either' }
  if (typeof arrangement === 'object' && 'fit' in arrangement) return { ...rest, arrangement }
  const block =
    typeof arrangement === 'object' && 'blocks' in arrangement ? Object.values(arrangement.blocks)[0] : undefined
  const gap = block?.gap_in === undefined ? {} : { gap_in: block.gap_in }
  const rowGap = block?.row_gap_in === undefined ? {} : { row_gap_in: block.row_gap_in }
  return { ...rest, arrangement: { fit: { ...request, ...gap, ...rowGap } } }
}

/** An array of a number of modules behind the inverter of `like`, or behind the unit of its first string. */
function ofModules(array: ArrayOfModules, like: ArrayOfModules, modules: number): ArrayOfModules {
  const { strings: _, ...rest } = array
  const [first] = like.strings ?? []
  return { ...rest, modules, ...(first === undefined ? {} : { strings: [{ ...first, modules }] }) }
}

/** The project with other arrays; what shades an array shades the modules beside it too. */
function withArrays(
  project: Project,
  arrays: Record<string, ArrayOfModules>,
  further: ReadonlyMap<string, string>,
): Project {
  const { obstacles } = project.site
  if (obstacles === undefined) return { ...project, arrays }
  const widened = Object.fromEntries(
    Object.entries(obstacles).map(([id, obstacle]) => {
      if (obstacle.arrays === undefined) return [id, obstacle]
      return [
        id,
        {
          ...obstacle,
          arrays: obstacle.arrays.flatMap((one) => [one, ...(further.has(one) ? [further.get(one) as string] : [])]),
        },
      ]
    }),
  )
  return { ...project, site: { ...project.site, obstacles: widened }, arrays }
}

function tellBrokenRules(
  project: Project,
  findings: ReturnType<typeof arrangeModules>['findings'],
  worksheet: Worksheet,
): void {
  const before = new Set(arrangeModules(project).findings.map(({ id, where }) => `${id} ${where}`))
  for (const { severity, id, where, message } of findings) {
    // That an array which we added found no room is no trouble of the person's.
    if (severity !== 'error' || id === 'roof.fit-too-few' || before.has(`${id} ${where}`)) continue
    worksheet.find({
      severity: 'warning',
      id: 'size.roof-rule',
      message: `with all modules that fit: ${message} (${id})`,
      where,
      fix: 'Larger sizes may need another layout of the modules that are placed; arrange them anew before you decide.',
    })
  }
}
