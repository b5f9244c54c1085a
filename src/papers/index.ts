export { listFormFields, prepareForm, type PreparedForm } from './prepare-form.js'
export type { FilledField, FormFile, ListedForm, MappingFile } from './form-shapes.js'
export { serveForeignFiles } from './serve-foreign-files.js'
export type { ListedField } from './forms/index.js'
export { prepareApplication, type PreparedPaper } from './prepare-application.js'
export {
  answerText,
  buildApplication,
  type ApplicationAttachment,
  type ApplicationField,
  type ApplicationValues,
} from './application/index.js'
export { prepareHandover, type HandoverWishes } from './prepare-handover.js'
export { cellFromAir, type HandoverValues, type RecordRow, type TableText, type Verdict } from './handover/index.js'
export { prepareProposal, readLogo, type PreparedProposal, type ProposalOptions } from './prepare-proposal.js'
export type { ProposalValues } from './proposal/index.js'
export { PAPER_LANGUAGES, type PaperLanguage } from './words/index.js'
export { PAGE_SIZES, type PageSize } from './pages/index.js'
export { watchHtml } from './watch/watch-html.js'
export { reviewPdf } from './prepare-review.js'
