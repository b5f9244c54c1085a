import type { Insulation } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import { methodRow } from './wiring-method.js'

/** What covers a conductor: its insulation, or the type of the cable that it was made in. */
export type ConductorCover = Insulation | (typeof CABLE_TYPES)[keyof typeof CABLE_TYPES]

const CABLE_TYPES = { NM: 'NM-B', UF: 'UF-B', SE: 'SE-R', MC: 'MC', AC: 'AC' } as const

/** Insulation of the conductors that cables are made with. */
const IN_CABLES: ReadonlySet<string> = new Set(['THHN', 'THWN-2', 'XHHW-2'])

/** What covers the conductors of a segment, and the column that correction and adjustment start from, deg C. */
export interface Cover {
  readonly cover: ConductorCover
  readonly factorC: 60 | 75 | 90
}

/**
 * Insulation of the conductors of a segment, an assumption where none is stated.
 *
 * @throws StageError for an insulation that a cable is not made with.
 */
export function coverOf(job: Job, { stated, where }: RacewaySegment): Cover {
  const { raceway: method, insulation } = stated
  if (method === 'NM' || method === 'UF' || method === 'SE' || method === 'MC' || method === 'AC')
    return coverOfCable(job, method, insulation, where)
  if (insulation !== undefined) return { cover: insulation, factorC: 90 }
  const cover =
    method === 'none'
      ? job.worksheet.assume({
          path: 'electrical.runs.insulation_in_array',
          value: 'PV wire' as const,
          unit: '',
          why: 'PV wire for exposed conductors within the array',
          source: job.nec('arrayWire'),
        })
      : job.worksheet.assume({
          path: 'electrical.runs.insulation_in_raceway',
          value: 'THWN-2' as const,
          unit: '',
          why: 'THWN-2 in raceways, rated 90 deg C wet and dry',
          source: job.nec('wetRaceway'),
        })
  return { cover, factorC: 90 }
}

function coverOfCable(
  job: Job,
  method: keyof typeof CABLE_TYPES,
  insulation: Insulation | undefined,
  where: string,
): Cover {
  const { conductorsChosen, factorC, name } = methodRow(method)
  if (insulation !== undefined) {
    if (conductorsChosen && IN_CABLES.has(insulation)) return { cover: insulation, factorC: 90 }
    throw new StageError(
      `${where}.insulation`,
      `${name} is not made with ${insulation} that is chosen for it`,
      conductorsChosen ? `State ${[...IN_CABLES].join(', ')}, or nothing` : 'Delete insulation',
    )
  }
  if (factorC !== 75) return { cover: CABLE_TYPES[method], factorC }
  return {
    cover: CABLE_TYPES[method],
    factorC: job.worksheet.assume({
      path: `${where}.insulation`,
      value: 75 as const,
      unit: 'deg C',
      why: `Conductors of ${name} whose insulation is not stated count as 75 deg C; many are 90`,
      source: job.nec('ampacityTable'),
    }),
  }
}
