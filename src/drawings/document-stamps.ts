import { composeStamp } from './layout/index.js'
import type { Sheet } from './model/index.js'
import { documentPageId } from './sheets/document-index.js'

/**
 * Small sheets with the number that is stamped on each page of the person's documents.
 *
 * @param pages Number of pages of all documents together.
 */
export function documentStamps(pages: number, project: string, draft: boolean): Sheet[] {
  return Array.from({ length: pages }, (_, index) =>
    composeStamp(documentPageId(index + 1), draft ? `${project} - DRAFT` : project),
  )
}
