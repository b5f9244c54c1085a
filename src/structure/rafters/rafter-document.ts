import { own } from '../../values/index.js'
import { documentName, documentsOf } from '../../project/facts.js'
import type { Project, RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'

/**
 * Title and date of the document that the rafters of a plane stand on, or undefined when none is named or its file is not there
 * or of no use.
 *
 * @param state Ids under documents whose file is there, and why that of others is of no use.
 */
export function rafterDocument(
  project: Pick<RoofProject, 'structure'> & Pick<Project, 'documents'>,
  plane: string,
  state: {
    readonly documents?: ReadonlySet<string>
    readonly documentTroubles?: ReadonlyMap<string, string>
  },
  worksheet: Worksheet,
): string | undefined {
  const id = own(project.structure?.framing, plane)?.rafters_verified_by
  if (id === undefined) return undefined
  const document = documentsOf(project).find((one) => one.id === id)
  if (document !== undefined && state.documents?.has(id) === true) return documentName(document)
  const trouble = state.documentTroubles?.get(id)
  if (document !== undefined && trouble !== undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.rafter-document-unusable',
      message: `the document that the rafters of plane '${plane}' shall stand on (${documentName(document)}, file '${document.file}') cannot be used: ${trouble}; so it clears no check`,
      where: `structure.framing.${plane}.rafters_verified_by`,
      fix: 'Put a PDF in its place that can be read; one that is too large is printed to a new PDF with coarser pictures, or with fewer pages.',
    })
    return undefined
  }
  worksheet.find({
    severity: 'warning',
    id: 'structure.rafter-document-missing',
    message: `the document that the rafters of plane '${plane}' shall stand on ${document === undefined ? `('${id}') is not under documents` : `(${documentName(document)}) is not there as a PDF at '${document.file}'`}, so it clears no check`,
    where: `structure.framing.${plane}.rafters_verified_by`,
    fix: "Put the engineer's letter at the path that documents states, as a PDF inside the folder of the project.",
  })
  return undefined
}
