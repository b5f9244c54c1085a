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
export { prepareProposal, readLogo, type PreparedProposal, type ProposalOptions } from './prepare-proposal.js'
export type { ProposalValues } from './proposal/index.js'
export { PAPER_LANGUAGES, type PaperLanguage } from './words/index.js'
export { PAGE_SIZES, type PageSize } from './pages/index.js'
