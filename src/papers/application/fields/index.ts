import type { FieldRule } from '../field-rule.js'
import { CONNECTION_FIELDS } from './connection.js'
import { GENERATOR_FIELDS } from './generator.js'
import { INVERTER_FIELDS } from './inverters.js'
import { PEOPLE_FIELDS } from './people.js'
import { TERMS_FIELDS } from './terms.js'

/** Every field, in the order of the sheet. */
export const APPLICATION_FIELDS: readonly FieldRule[] = [
  ...PEOPLE_FIELDS,
  ...GENERATOR_FIELDS,
  ...INVERTER_FIELDS,
  ...CONNECTION_FIELDS,
  ...TERMS_FIELDS,
]
