import { insulationTypes, necSource, type Permission, type WiringMethodRow } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { isAc, type Job } from '../system/index.js'
import type { ConductorCover } from './conductor-cover.js'
import type { RacewaySegment, StatedSegment } from './raceway-segment.js'
import { methodRow } from './wiring-method.js'

/** Locations whose raceways are wet inside. @source NEC 300.9 */
const WET = new Set(['array', 'roof', 'outdoor_wall', 'buried'])

/**
 * Whether method and insulation may lie where the segment lies.
 *
 * @throws StageError for exposed wire outside the array and for an insulation that may not get wet.
 */
export function checkPlace(job: Job, segment: RacewaySegment, cover: ConductorCover): void {
  const method = methodRow(segment.stated.raceway)
  if (method.form === 'open') checkExposed(job, segment, cover)
  else findForbidden(job, segment, method)
  const { stated, where } = segment
  const row = insulationTypes.find((candidate) => candidate.type === cover)
  if (method.form === 'raceway' && WET.has(stated.location) && (row?.wetC ?? 0) < 90)
    throw new StageError(
      `${where}.insulation`,
      `${cover} is not rated for the wet inside of a raceway at '${stated.location}'`,
      'Use THWN-2 or XHHW-2',
    )
  if (cover === 'USE-2')
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.use-2-marking',
      message: `USE-2 at ${where}: ${row?.condition ?? ''}`,
      where: `${where}.insulation`,
      source: job.nec('arrayWire'),
      fix: 'Read the marking on the wire, or use PV wire in the array and THWN-2 in raceways',
    })
}

function checkExposed(job: Job, { stated, where, circuits }: RacewaySegment, cover: ConductorCover): void {
  const row = insulationTypes.find((candidate) => candidate.type === cover)
  if (stated.location !== 'array')
    throw new StageError(
      `${where}.raceway`,
      `conductors without raceway are covered only within the array, not at '${stated.location}'`,
      'Name a raceway or a cable',
    )
  if (circuits.some(isAc))
    throw new StageError(
      `${where}.raceway`,
      'AC circuits lie exposed in the array only as listed trunk cable, which belongs to the branch and not to a run',
      'Begin the run at the junction box with a raceway',
    )
  if (row?.exposedInArray.includes(job.edition) !== true)
    throw new StageError(
      `${where}.insulation`,
      `${cover} is not allowed as exposed conductor in the array`,
      'Use PV wire',
    )
}

/** What a place asks of a method. */
interface Demand {
  readonly what: string
  readonly marking: 'wet' | 'sunlight_resistant' | 'direct_burial'
  readonly allowed: Permission
}

function demandsOf({ location, sun }: StatedSegment, method: WiringMethodRow): Demand[] {
  const inSun = sun ?? (location === 'roof' || location === 'outdoor_wall')
  return [
    ...(WET.has(location) ? [{ what: 'a wet place', marking: 'wet', allowed: method.wet } as const] : []),
    ...(inSun && location !== 'buried'
      ? [{ what: 'sunlight', marking: 'sunlight_resistant', allowed: method.sun } as const]
      : []),
    ...(location === 'buried'
      ? [{ what: 'the ground', marking: 'direct_burial', allowed: method.buried } as const]
      : []),
    ...(location === 'array' ? [{ what: 'the array', marking: 'wet', allowed: method.array } as const] : []),
  ]
}

/** What the method may not meet here, and what it may only when it is marked for it. */
function findForbidden(job: Job, { id, stated, where }: RacewaySegment, method: WiringMethodRow): void {
  const demands = demandsOf(stated, method)
  const source = necSource(job.edition, method.article, job.nec('listedEquipment').standing)
  const never = demands.filter(({ allowed }) => allowed === 'no')
  if (never.length > 0) {
    job.worksheet.find({
      severity: 'error',
      id: 'wire.method-place',
      message: `${method.name} in ${id} meets ${words(never)} at '${stated.location}', where it is not allowed (${method.article})`,
      where: `${where}.raceway`,
      source,
      fix: 'Name a raceway or cable that is allowed there, or take the circuit another way',
    })
    return
  }
  const open = demands.filter(
    ({ allowed, marking }) => allowed === 'marked' && stated.markings?.includes(marking) !== true,
  )
  if (open.length === 0) return
  const cable = method.form === 'cable' && open.some(({ marking }) => marking !== 'sunlight_resistant')
  job.worksheet.find({
    severity: cable ? 'error' : 'warning',
    id: 'wire.method-marking',
    message: `${method.name} in ${id} meets ${words(open)} at '${stated.location}', which is allowed only when it is marked or listed for it (${method.article}); that is not stated`,
    where: `${where}.markings`,
    source,
    fix: `Read the marking, then state markings: [${[...new Set(open.map(({ marking }) => marking))].join(', ')}]`,
  })
}

const words = (demands: readonly Demand[]): string => demands.map(({ what }) => what).join(' and ')
