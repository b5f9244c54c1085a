import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { LabelPlace } from './label-places.js'
import { requiredLabels } from './required-labels.js'

/** Numbers of the labels at a place in words: `labels 1, 4`; '' where none goes. */
export type LabelMarks = (place: LabelPlace) => string

/** The numbers of sheet E-604 by the place of the label. */
export function labelMarks(project: Project, wiring: WiringValues): LabelMarks {
  const labels = requiredLabels(project, wiring)
  return (place) => {
    const numbers = labels.filter(({ places }) => places.includes(place)).map(({ number }) => number)
    return numbers.length === 0 ? '' : `label${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')}`
  }
}
