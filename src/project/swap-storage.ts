import type { Project, Storage } from './project-types.generated.js'
import { formatPath } from './path.js'
import { checkRules } from './rules/index.js'
import type { Swapped } from './swap-equipment.js'

/** Units of storage that a project could have instead of its own. */
export interface StorageCandidate {
  /** Id under equipment.storage_units. */
  readonly unit: string
  /** 0 = none. */
  readonly count: number
  /** Price of one unit, USD, which buying it again is counted with where the project states none of this unit. */
  readonly unitUsd: number | undefined
}

/**
 * The project with so many of a unit, under its own control, reserve and place, or why it cannot have them. Where the units of the
 * project stand at one place, all stand there; at several it is not known how many go where, and the places stay as stated.
 */
export function swapStorage(project: Project, candidate: StorageCandidate): Swapped {
  const own = project.storage
  if (candidate.count === 0) {
    return { project: own === undefined ? project : { ...project, storage: { ...own, count: 0 } } }
  }
  const swapped = { ...project, storage: { ...withPrices(own, candidate), ...placed(own, candidate.count) } }
  const broken = checkRules(swapped).map(({ segments, message }) => `${formatPath(segments)}: ${message}`)
  return broken.length > 0 ? { reasons: broken } : { project: swapped }
}

function placed(own: Storage | undefined, count: number): Pick<Storage, 'installation'> {
  const { installation } = own ?? {}
  const places = Object.entries(installation?.places ?? {})
  const [only] = places
  if (installation === undefined || only === undefined || places.length > 1) return {}
  return { installation: { ...installation, places: { [only[0]]: { ...only[1], units: count } } } }
}

/** Prices that the project states are those of its own unit and number; those of others follow from the price of one. */
function withPrices(own: Storage | undefined, { unit, count, unitUsd }: StorageCandidate): Storage {
  if (own === undefined) return { unit, count }
  const { replacement, cost_usd_per_unit: ofOwn, ...rest } = own
  const isOwn = unit === own.unit
  const each = isOwn ? ofOwn : unitUsd
  const whole = replacement?.usd
  const again =
    isOwn && whole !== undefined && own.count > 0
      ? (whole * count) / own.count
      : isOwn && ofOwn !== undefined
        ? ofOwn * count
        : unitUsd === undefined
          ? undefined
          : unitUsd * count
  const { usd: _, ...when } = replacement ?? {}
  return {
    ...rest,
    unit,
    count,
    ...(each === undefined ? {} : { cost_usd_per_unit: each }),
    ...(replacement === undefined ? {} : { replacement: { ...when, ...(again === undefined ? {} : { usd: again }) } }),
  }
}
