import { readCheckedYaml, type CheckedYaml } from '../../../project/index.js'
import { checkMapping } from './check-mapping.js'
import { formMappingSchema } from './form-mapping-schema.generated.js'
import type { FormMapping } from './form-mapping-types.generated.js'
import { validate } from './form-mapping-validator.generated.js'

/** A mapping that is right by itself, with the way to refuse it for what the form says. */
export type ReadMapping = CheckedYaml<FormMapping>

/**
 * Reads what goes into which field of a form.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/form-mapping.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readMapping(file: string, text: string): ReadMapping {
  return readCheckedYaml<FormMapping>(file, text, { schema: formMappingSchema, validate, check: checkMapping })
}
