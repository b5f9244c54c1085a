import type { Complaint } from './explain/complaint.js'
import { explain } from './explain/explain.js'
import { findRenames, sayRename } from './find-renames.js'
import type { Locator } from './locator.js'
import { formatPath } from './path.js'
import type { PlainMap } from './plain-data.js'
import type { Project } from './project-types.generated.js'
import { validate } from './project-validator.generated.js'
import { checkRules } from './rules/index.js'
import { projectSchema } from './schema.js'

/**
 * All that is wrong with the data by the schema or, when the schema is content, by the rules.
 *
 * @param isWhole False when a file that extends the data is missing: then the rules would blame what is right.
 */
export function checkData(data: PlainMap, locator: Pick<Locator, 'sourceAt'>, isWhole: boolean): Complaint[] {
  if (validate(data)) return isWhole ? checkRules(data as unknown as Project) : []
  const root = projectSchema()
  const renames = findRenames(data).map(sayRename)
  const renamed = new Set(renames.map(({ segments }) => formatPath(segments)))
  const others = explain(root, data, [], { root, sourceAt: (segments) => locator.sourceAt(segments) })
  const complaints = [...renames, ...others.filter(({ segments }) => !renamed.has(formatPath(segments)))]
  if (complaints.length > 0) return complaints
  // The validator refuses what explain does not know of: its own words are better than silence.
  return (validate.errors ?? []).map(({ instancePath, keyword }) => ({
    segments: instancePath.split('/').slice(1),
    at: 'value',
    message: `breaks '${keyword}' of the schema`,
  }))
}
