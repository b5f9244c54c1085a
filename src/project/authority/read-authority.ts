import { readCheckedYaml } from '../read-checked-yaml.js'
import { authoritySchema } from './authority-schema.generated.js'
import type { Authority } from './authority-types.generated.js'
import { validate } from './authority-validator.generated.js'
import { checkAuthority } from './check-authority.js'

/**
 * Reads what one authority asks of a packet.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/authority.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readAuthority(file: string, text: string): Authority {
  return readCheckedYaml<Authority>(file, text, { schema: authoritySchema, validate, check: checkAuthority }).data
}
