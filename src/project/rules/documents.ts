import { documentsOf } from '../documents.js'
import { equipmentNamed } from '../equipment-named.js'
import type { Segments } from '../path.js'
import { listWords, showValue } from '../words.js'
import type { Rule } from './rule.js'

const APPLICATION_DOCUMENTS = [
  'authorisation_document',
  'insurance_document',
  'agreement_document',
  'verification_document',
] as const

/** Ids of documents are unique, and what names one finds it; `rafters_verified_by` with title and date. */
export const checkDocuments: Rule = (project, report) => {
  const documents = documentsOf(project)
  const ids = documents.flatMap(({ id }) => (id === undefined ? [] : [id]))
  for (const [index, { id }] of documents.entries()) {
    if (id === undefined || documents.findIndex((other) => other.id === id) === index) continue
    report(['documents', index, 'id'], `${showValue(id)} is the id of an earlier document too; give each its own`)
  }
  for (const [index, { items }] of documents.entries())
    for (const [at, item] of (items ?? []).entries())
      if (equipmentNamed(project, item) === undefined)
        report(
          ['documents', index, 'items', at],
          `${showValue(item)} is no equipment of this project; write kind and id, such as modules.m410`,
        )
  const { electrical } = project
  const named: readonly (readonly [Segments, string | undefined])[] = [
    [['electrical', 'power_control', 'document'], electrical?.power_control?.document],
    [['electrical', 'service', 'meter', 'acceptance_document'], electrical?.service?.meter?.acceptance_document],
    [['electrical', 'load_calculation', 'measured', 'document'], electrical?.load_calculation?.measured?.document],
    ...APPLICATION_DOCUMENTS.map((key) => [['utility_application', key], project.utility_application?.[key]] as const),
  ]
  for (const [segments, id] of named)
    if (id !== undefined && !ids.includes(id))
      report(
        segments,
        `${showValue(id)} is no id of a document under documents (${ids.length === 0 ? 'no document there has an id' : `ids there: ${listWords(ids)}`})`,
      )
  for (const [plane, { rafters_verified_by: named }] of Object.entries(project.structure?.framing ?? {})) {
    if (named === undefined) continue
    const segments = ['structure', 'framing', plane, 'rafters_verified_by']
    const index = documents.findIndex(({ id }) => id === named)
    const document = documents[index]
    if (document === undefined) {
      const known = ids.length === 0 ? 'no document there has an id' : `ids there: ${listWords(ids)}`
      report(
        segments,
        `${showValue(named)} is no id of a document under documents (${known}); a sentence clears nothing: add the engineer's letter there as { id: rafters, file: letter.pdf, title: ..., date: 'year-month-day' } and name its id here`,
      )
      continue
    }
    for (const key of ['title', 'date'] as const) {
      if (document[key] !== undefined) continue
      report(
        ['documents', index, key],
        `missing; the rafters of plane ${showValue(plane)} stand on this document, so the sheets print its title and date`,
        'parent',
      )
    }
  }
}
