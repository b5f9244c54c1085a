export {
  listFormFields,
  prepareForm,
  type FilledField,
  type FormFile,
  type ListedForm,
  type MappingFile,
  type PreparedForm,
} from './prepare-form.js'
export type { ListedField } from './forms/index.js'
export {
  buildApplication,
  type ApplicationAttachment,
  type ApplicationField,
  type ApplicationValues,
} from './application/index.js'
