import { storageSection } from '../../tables/nec/index.js'
import { storagePlaceRules } from '../../tables/storage/index.js'
import type { Circuit, Job } from '../system/index.js'
import type { SizedSegment } from '../segments/index.js'
import { recordBatterySide } from './battery-side.js'
import { disconnectRules } from './disconnect-rules.js'
import { disconnectFactsOf, placeJobOf } from './facts-of.js'
import { placeRules } from './place-rules.js'
import { recordChecks } from './record-checks.js'
import { answerStated, type StorageCheck } from './storage-check.js'
import { storageOf, storageRulesOf, type StorageSystem } from './storage-unit.js'
import { unitRules } from './unit-rules.js'

/** The storage of a project with the checks that need no more than itself. */
export interface CheckedStorage {
  readonly system: StorageSystem
  readonly circuits: readonly Circuit[]
  readonly checks: readonly StorageCheck[]
}

/**
 * Data sheet, disconnect and places of the storage, on the worksheet.
 *
 * @param circuits Circuits of the storage.
 * @param sized Segments, of which those of the storage are held against wiring methods that storage rooms do not take.
 * @returns undefined without storage.
 */
export function checkStorage(
  job: Job,
  circuits: readonly Circuit[],
  sized: readonly SizedSegment[],
): CheckedStorage | undefined {
  const system = storageOf(job)
  if (system === undefined) {
    tellNotInstalled(job)
    return undefined
  }
  recordBatterySide(job, system)
  const unit = unitRules(job, system)
  const disconnect = disconnectRules(disconnectFactsOf(system, circuits), storageRulesOf(job), job.edition)
  const place = [...placeRules(placeJobOf(job, system), job.edition), ...methods(job, circuits, sized)]
  recordChecks(job, 'unit', unit)
  recordChecks(job, 'disconnect', disconnect)
  recordChecks(job, 'place', place)
  return { system, circuits, checks: [...unit, ...disconnect, ...place] }
}

/** Storage that is planned, but not where and how: busbars are judged without it, which is not the safe side. */
function tellNotInstalled({ project, worksheet }: Job): void {
  if (project.storage === undefined || project.storage.count === 0) return
  worksheet.find({
    severity: 'error',
    id: 'wire.storage-not-installed',
    message:
      'nothing is stated of the installation of the storage, so its circuit, its disconnect and its places were not judged, and busbars were judged without it',
    where: 'storage',
    source: { document: 'NEC', place: '705.12, 706', standing: 'secondary' },
    fix: 'State storage.installation: panel, places and disconnect, and a run under electrical.runs that carries storage',
  })
}

/** Wiring methods that are not for rooms with storage batteries; whether a room is one, the authority says. */
function methods(job: Job, circuits: readonly Circuit[], sized: readonly SizedSegment[]): StorageCheck[] {
  const places = Object.values(job.project.storage?.installation?.places ?? {})
  if (!places.some(({ location }) => storagePlaceRules[location].indoors)) return []
  return sized
    .filter(({ segment }) => segment.circuits.some((circuit) => circuits.includes(circuit)))
    .filter(({ segment }) => segment.stated.raceway === 'NM')
    .map(({ segment }) =>
      answerStated({
        id: 'wiring-method',
        where: `${segment.where}.raceway`,
        answer: false,
        yes: '',
        no: `${segment.id} is NM cable, which is not permitted in a room with storage batteries`,
        missing: '',
        source: storageSection(job.edition, 'storageRoomWiring'),
        fix: 'Use a raceway in the space of the units, or ask the authority whether it counts as a battery room',
        severity: 'warning',
      }),
    )
}
