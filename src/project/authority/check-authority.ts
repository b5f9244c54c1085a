import type { Complaint } from '../explain/complaint.js'
import { checklistIds } from '../../tables/permit/index.js'
import { nearest } from '../did-you-mean.js'
import { listWords, showValue } from '../words.js'
import type { Authority } from './authority-types.generated.js'

const at = (segments: Complaint['segments'], message: string): Complaint => ({ segments, at: 'value', message })

/** Everything that is wrong with a file of an authority whose parts are each valid by the schema. */
export function checkAuthority(authority: Authority): Complaint[] {
  const complaints: Complaint[] = []
  for (const [index, id] of (authority.not_asked ?? []).entries()) {
    if (checklistIds.includes(id)) continue
    const near = nearest(id, checklistIds)
    const hint = near === undefined ? `points: ${listWords(checklistIds)}` : `did you mean ${showValue(near)}?`
    complaints.push(at(['not_asked', index], `${showValue(id)} is no point of the common list; ${hint}`))
  }
  for (const [id, point] of Object.entries(authority.also_asked ?? {})) {
    if (checklistIds.includes(id))
      complaints.push(at(['also_asked', id], 'is the id of a point of the common list; give yours another'))
    if (point.words === undefined && point.document === undefined)
      complaints.push(
        at(
          ['also_asked', id],
          'cannot be looked up: state words that stand on a sheet, or document, the id of a document',
        ),
      )
    if (point.sheets !== undefined && point.words === undefined)
      complaints.push(
        at(['also_asked', id, 'sheets'], 'says where words are searched, but words is missing; state both'),
      )
  }
  const { min_gap_in: low, max_gap_in: high } = authority.expedited ?? {}
  if (low !== undefined && high !== undefined && low > high)
    complaints.push(at(['expedited', 'min_gap_in'], `is ${low}, more than max_gap_in of ${high}`))
  return complaints
}
