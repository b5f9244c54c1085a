import { envelopeOf, sealed } from '../seal/index.js'
import { substitution, type Step } from '../worksheet/index.js'
import { cautionTexts } from './cautions.js'
import { roundForMachines } from './numbers.js'
import type { Report, ReportContext } from './report.js'
import { cleanJson } from './sanitise.js'

/** Changes only when a reader of the older form would misunderstand the newer one. */
export const RESULT_FORMAT = 'gablewatt-result/4'

/** The result envelope of schemas/result.schema.json, sealed: fixed key order, byte-identical for identical input. */
export function renderJson(
  report: Pick<Report, 'stage' | 'result' | 'cautions'> & Partial<Report>,
  context: ReportContext,
): string {
  const { values, findings, assumptions, worksheet } = report.result
  const envelope = {
    ...envelopeOf(RESULT_FORMAT, context.tool, report.stage),
    stage: report.stage,
    project: context.project === undefined ? null : { title: context.project.title, digest: context.project.digest },
    values,
    findings,
    assumptions,
    cautions: cautionTexts(report.cautions ?? []),
    worksheet: worksheet.map(withSubstitution),
  }
  return `${cleanJson(JSON.stringify(sealed(plain(envelope, '') as object), null, 2))}\n`
}

/** Values as `renderJson` prints them: rounded for machines, without what is undefined. */
export function plainValues(values: unknown): unknown {
  return plain(values, '')
}

/** A step with its formula in numbers, where it is mathematics. */
function withSubstitution(step: Step): Step & { readonly substitution: string | undefined } {
  const { id, says, formula, inputs, ...rest } = step
  return { id, says, formula, substitution: substitution(step), inputs, ...rest }
}

/**
 * The same data with every number rounded for machines. Optional properties that are undefined are left out; anything
 * else that JSON cannot hold is a defect and named with its place.
 */
function plain(value: unknown, place: string): unknown {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`result ${place || '/'} is ${value}`)
    return roundForMachines(value)
  }
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    return Array.from(value as unknown as ArrayLike<unknown>, (item, index) => plain(item, `${place}/${index}`))
  }
  if (typeof value === 'object' && [Object.prototype, null].includes(Object.getPrototypeOf(value) as object | null)) {
    return Object.fromEntries(
      Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .map(([key, item]) => [key, plain(item, `${place}/${key}`)]),
    )
  }
  throw new Error(
    `result ${place || '/'} is ${typeof value === 'object' ? value.constructor.name : typeof value}, which JSON cannot hold`,
  )
}
