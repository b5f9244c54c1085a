import type { Source } from '../../worksheet/index.js'
import type { PlaneRafters } from './plane-rafters.js'

/** The rafters of one plane after their check. */
export interface RaftersToReport extends PlaneRafters {
  /** Id of the plane. */
  readonly id: string
  /** Title and date of the document that the rafters stand on, when there is one. */
  readonly covered: string | undefined
}

export const IRC = (place: string, standing: Source['standing'] = 'secondary'): Source => ({
  document: 'IRC 2021',
  place,
  standing,
})
