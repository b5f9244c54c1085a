import { requiredLabels } from '../../drawings/index.js'
import type { EditionTrait, WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { Result } from '../../worksheet/index.js'

/** Labels of each edition, with the words that are printed on them. */
export function labelTraits(
  project: Project,
  results: Readonly<Record<string, Result<WiringValues>>>,
): Record<string, EditionTrait[]> {
  return Object.fromEntries(
    Object.entries(results).map(([edition, { values }]) => [
      edition,
      requiredLabels(project, values).map(({ id, text, places }) => ({
        what: `label ${id}`,
        where: places.join(' and ').replaceAll('_', ' '),
        value: text,
      })),
    ]),
  )
}
