import type { Worksheet } from '../../worksheet/index.js'
import { type FramingSpec, planInOf, type RafterResult } from '../rafters/index.js'
import { planDepthFt } from '../model/index.js'
import type { PlaneModel } from './plane-model.js'
import { feetOf } from '../../values/index.js'

/** Findings about spans that cannot be, and about mounts on parts of rafters whose supports are not stated. */
export function reportSpans(
  { geometry }: PlaneModel,
  framing: FramingSpec,
  { unchecked }: RafterResult,
  covered: string | undefined,
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${geometry.id}`
  const depthFt = planDepthFt(geometry)
  const totalFt = framing.spansFt.reduce((sum, spanFt) => sum + spanFt, 0)
  if (totalFt > depthFt + 1e-6) {
    const what =
      framing.spansFt.length === 1 ? `a rafter span of ${totalFt} ft` : `rafter spans of ${totalFt} ft in all`
    worksheet.find({
      severity: 'error',
      id: 'structure.rafter-span-too-long',
      message: `plane '${geometry.id}': ${what} cannot lie under a plane that is ${depthFt.toFixed(1)} ft deep on the horizontal`,
      where: `${path}.${framing.spansFt.length === 1 ? 'span_ft' : 'further_spans_ft'}`,
      fix: 'Measure the span on the horizontal from support to support, or correct the outline of the plane.',
    })
  }
  if (unchecked.length === 0) return
  const reachFt = (feetOf(framing.eaveOverhangIn) + totalFt).toFixed(1)
  const highestFt = feetOf(Math.max(...unchecked.map((point) => planInOf(geometry, point.yIn))))
  const rafters = [...new Set(unchecked.map((point) => point.rafter))].sort((a, b) => a - b)
  const named =
    rafters.length > 6 ? `${rafters.length} rafters` : `rafter${rafters.length === 1 ? '' : 's'} ${rafters.join(', ')}`
  worksheet.find({
    severity: covered === undefined ? 'error' : 'note',
    id: 'structure.rafter-span-not-stated',
    message: `plane '${geometry.id}': ${unchecked.length} mount${unchecked.length === 1 ? '' : 's'} on ${named}, up to ${highestFt.toFixed(1)} ft from the eave on the horizontal, stand${unchecked.length === 1 ? 's' : ''} off the stated spans, which end ${reachFt} ft from it; bending there is not checked${covered === undefined ? '' : `; covered by ${covered}`}`,
    where: `${path}.further_spans_ft`,
    fix: 'Look in the attic for the supports up to the ridge (purlin or knee wall strutted to a bearing wall, ridge) and state the spans above the first as further_spans_ft.',
  })
}
