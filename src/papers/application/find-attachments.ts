import { documentName, documentsOf, listModuleGroups, type StatedDocument } from '../../project/index.js'
import { ATTACHMENTS, type AttachmentRule } from '../../tables/utility/index.js'
import type { ApplicationFacts } from './application-facts.js'
import type { ApplicationAttachment } from './application-values.js'

type Place = Pick<ApplicationAttachment, 'state' | 'where'>

const missing = (where: string): Place => ({ state: 'missing', where })
const packet = (where: string): Place => ({ state: 'packet', where })

/** What goes with the application, and whether packet and documents have it. */
export function findAttachments(facts: ApplicationFacts): ApplicationAttachment[] {
  return ATTACHMENTS.map((rule) => ({
    id: rule.id,
    what: rule.what,
    asked_by: rule.askedBy,
    ...placeOf(rule, facts),
    supplied_by: rule.who,
  }))
}

function placeOf({ from }: AttachmentRule, facts: ApplicationFacts): Place {
  const { project, stated, wire, inverters } = facts
  const documents = documentsOf(project)
  switch (from) {
    case 'one_line':
      return wire === undefined ? missing('size-wire cannot run') : packet('draw-permit, sheet E-601')
    case 'three_line':
      if (wire === undefined) return missing('size-wire cannot run')
      return project.drawings?.three_line === true
        ? packet('draw-permit, sheet E-605')
        : missing('drawings.three_line: true, or draw-permit --three-line')
    case 'site_plan':
      return project.site_plan === undefined ? missing('site_plan') : packet('draw-permit, sheet C-101')
    case 'module_sheets':
      return sheetsOf(
        listModuleGroups(project).map(({ array }) => `modules.${array.module}`),
        documents,
      )
    case 'inverter_sheets':
      return sheetsOf(
        inverters.map(({ id }) => `inverters.${id}`),
        documents,
      )
    case 'listing': {
      const listing = documents.find(({ kind }) => kind === 'listing')
      return listing === undefined
        ? missing('documents, with kind: listing')
        : { state: 'documents', where: documentName(listing) }
    }
    case 'later':
      return { state: 'later', where: 'after the work' }
    case 'authorisation_document':
    case 'insurance_document':
    case 'agreement_document':
    case 'verification_document': {
      const id = stated[from]
      const document = documents.find((each) => id !== undefined && each.id === id)
      return document === undefined
        ? missing(`utility_application.${from}`)
        : { state: 'documents', where: documentName(document) }
    }
  }
}

/** Data sheets of all that is named, else the first that is missing. */
function sheetsOf(items: readonly string[], documents: readonly StatedDocument[]): Place {
  const sheets = new Set<string>()
  for (const item of new Set(items)) {
    const sheet = documents.find(({ kind, items: of }) => kind === 'data_sheet' && of?.includes(item) === true)
    if (sheet === undefined) return missing(`documents, with kind: data_sheet and items: [${item}]`)
    sheets.add(documentName(sheet))
  }
  return { state: 'documents', where: [...sheets].join('; ') }
}
