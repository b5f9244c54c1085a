import { largestModuleIsc, listedInverters } from './system-facts.js'
import { plainNumber } from '../layout/index.js'
import type { PacketInput } from '../inputs.js'
import { systemSize } from '../system-size.js'

/** One limit of the short review. */
export interface ExpeditedLine {
  /** Key in the file of the authority. */
  readonly key: string
  readonly limit: string
  readonly found: string
  /** Undefined when the project does not state what it is compared with. */
  readonly holds: boolean | undefined
}

/** Whether a project may take the short review of its authority. */
export interface ExpeditedReview {
  readonly eligible: boolean
  /** `not eligible, normal review: output 11.4 kW AC of 10 kW` */
  readonly verdict: string
  readonly lines: readonly ExpeditedLine[]
  /** What is odd about the limits themselves. */
  readonly remarks: readonly string[]
}

/** Below this short-circuit current a limit is from a time of smaller cells, A. @source product sheets of today, common practice, no source */
const OLD_ISC_LIMIT_A = 12

/** The limits of the authority, each compared; undefined when it states none. */
export function expeditedReview(input: PacketInput): ExpeditedReview | undefined {
  const limits = input.authority?.expedited
  if (limits === undefined) return undefined
  const { project, wire: wiring, mounts } = input
  const { electrical, structure } = project
  const inverters = listedInverters(input)
  const gaps = Object.values(project.arrays).map(({ standoff_in: gap }) => gap)
  const lines: ExpeditedLine[] = []
  const most = (
    key: string,
    what: string,
    limit: number | undefined,
    found: number | undefined,
    unit: string,
  ): void => {
    if (limit === undefined) return
    const told = found === undefined ? 'not stated' : `${plainNumber(found)}${unit}`
    lines.push({
      key,
      limit: `${what} at most ${limit}${unit}`,
      found: told,
      holds: found === undefined ? undefined : found <= limit + 1e-9,
    })
  }
  const wants = (
    key: string,
    asked: boolean | undefined,
    limit: string,
    found: string,
    holds: boolean | undefined,
  ): void => {
    if (asked === true) lines.push({ key, limit, found, holds })
  }
  const separate = limits.max_module_inverters !== undefined
  most('max_ac_kw', 'output', limits.max_ac_kw, systemSize(input).acKw, ' kW AC')
  most('max_inverters', 'inverters', limits.max_inverters, inverters.string + (separate ? 0 : inverters.module), '')
  most('max_module_inverters', 'inverters behind modules', limits.max_module_inverters, inverters.module, '')
  const kind = electrical?.connection?.kind
  wants(
    'load_side_only',
    limits.load_side_only,
    'connected on the load side',
    kind?.replaceAll('_', ' ') ?? 'not stated',
    kind === undefined ? undefined : kind !== 'supply_side',
  )
  most('max_bus_a', 'busbar', limits.max_bus_a, wiring?.values.panel.bus_a ?? undefined, ' A')
  const batteries =
    (project.storage?.count ?? 0) > 0 ||
    Object.values(electrical?.distribution?.sources ?? {}).some(({ kind: source }) => source === 'storage')
  wants('no_storage', limits.no_storage, 'no batteries', batteries ? 'batteries' : 'none', !batteries)
  most(
    'max_module_isc_a',
    'short-circuit current of a module',
    limits.max_module_isc_a,
    largestModuleIsc(project),
    ' A',
  )
  const [low, high] = [limits.min_gap_in, limits.max_gap_in]
  if (low !== undefined || high !== undefined) {
    const [least, largest] = [Math.min(...gaps), Math.max(...gaps)]
    lines.push({
      key: low === undefined ? 'max_gap_in' : 'min_gap_in',
      limit: `gap under the modules ${low === undefined ? 'up to' : `from ${low} in`}${high === undefined ? '' : ` ${low === undefined ? '' : 'to '}${high} in`}`,
      found: least === largest ? `${least} in` : `${least} to ${largest} in`,
      holds: (low === undefined || least >= low) && (high === undefined || largest <= high),
    })
  }
  most('max_dead_load_psf', 'weight of the array', limits.max_dead_load_psf, mounts?.values.added_dead_load_psf, ' psf')
  most('max_mount_spacing_in', 'spacing of mounts', limits.max_mount_spacing_in, structure?.mount_spacing_in, ' in')
  const dwelling = structure?.seismic?.dwelling
  wants(
    'one_or_two_family',
    limits.one_or_two_family,
    'dwelling of one or two families',
    dwelling?.replaceAll('_', ' ') ?? 'not stated',
    dwelling === undefined ? undefined : dwelling === 'one_two_family',
  )
  most(
    'max_roof_height_ft',
    'mean height of the roof',
    limits.max_roof_height_ft,
    structure?.wind?.mean_roof_height_ft,
    ' ft',
  )
  const failing = lines.filter(({ holds }) => holds !== true)
  const verdict =
    failing.length === 0
      ? `eligible for the short review: all ${lines.length} limits are kept`
      : `not eligible, normal review: ${failing.map(({ limit, found }) => `${limit}, ${found === 'not stated' ? found : `it is ${found}`}`).join('; ')}`
  const remarks =
    limits.max_module_isc_a !== undefined && limits.max_module_isc_a < OLD_ISC_LIMIT_A
      ? [
          `The limit of ${limits.max_module_isc_a} A for the short-circuit current of a module is from a time of smaller cells, and most modules of today are above it: ask whether the list is in force.`,
        ]
      : []
  return { eligible: failing.length === 0, verdict, lines, remarks }
}
