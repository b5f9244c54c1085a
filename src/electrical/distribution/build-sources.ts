import { StageError } from '../../worksheet/index.js'
import type { Job } from '../system/index.js'
import type { Sources } from '../connection/index.js'
import { buildStorageCircuits, STORAGE_SOURCE, storageOf } from '../storage/index.js'
import { ONLY_PANEL } from './build-panels.js'
import { PV_SOURCE, type BackfedDevice, type Landing, type SourceNode } from './tree.js'

/** The PV system of the project, its storage, and the sources that are there already. */
export function buildSources(job: Job, pv: Sources): SourceNode[] {
  const { connection } = job.electrical
  const device = (ratingA: number): BackfedDevice => ({
    ratingA,
    type: connection?.breaker_type ?? 'standard',
    markedForBackfeed: connection?.breaker_marked_for_backfeed === true,
    markedLineLoad: connection?.breaker_marked_line_load === true,
    oppositeEnd:
      connection?.breaker_position === undefined ? undefined : connection.breaker_position === 'opposite_end',
    where: 'electrical.connection',
  })
  const project: SourceNode = {
    id: PV_SOURCE,
    name: 'PV system',
    kind: 'pv',
    where: 'electrical.connection',
    at: landingOf(job),
    currentA: pv.inverterA,
    devices: pv.breakersA.map(device),
    firstDevicesA: [pv.firstBreakersA],
    runsInParallel: true,
  }
  return [project, ...storage(job), ...existing(job)]
}

/**
 * The storage of the project as a source with its rated output. A DC-coupled one has none of its own: it leaves through the
 * inverter of the modules, which counts once.
 */
function storage(job: Job): SourceNode[] {
  const system = storageOf(job)
  const circuits = buildStorageCircuits(job).filter(({ kind }) => kind === 'ac_storage')
  const panel = circuits[0]?.storage?.landing
  if (system === undefined || panel === undefined) return []
  const { installation } = system.stated
  const position = installation?.breaker_position
  return [
    {
      id: STORAGE_SOURCE,
      name: system.name,
      kind: 'storage',
      where: 'storage.installation',
      at: { panel },
      currentA: system.count * (system.unit.rated_output_a ?? 0),
      devices: circuits.map(({ deviceA }) => ({
        ratingA: deviceA ?? undefined,
        type: installation?.breaker_type ?? 'standard',
        markedForBackfeed: installation?.breaker_marked_for_backfeed === true,
        markedLineLoad: installation?.breaker_marked_line_load === true,
        oppositeEnd: position === undefined ? undefined : position === 'opposite_end',
        where: 'storage.installation',
      })),
      firstDevicesA: circuits.map(({ deviceA }) => deviceA ?? 0),
      runsInParallel: true,
    },
  ]
}

/** Where the PV system of the project lands. @throws StageError when several panels could be meant. */
function landingOf(job: Job): Landing {
  const { connection, distribution } = job.electrical
  if (connection?.kind === 'supply_side') return 'supply_side'
  if (connection?.kind === 'feeder_tap') {
    if (connection.at !== undefined) return { tap: connection.at }
    throw new StageError('electrical.connection.at', 'the tap that takes the PV system is not stated', tapsKnown(job))
  }
  const panels = Object.keys(distribution?.panels ?? { [ONLY_PANEL]: undefined })
  const panel = connection?.at ?? (panels.length === 1 ? panels[0] : undefined)
  if (panel !== undefined) return { panel }
  throw new StageError(
    'electrical.connection.at',
    'the panel that takes the PV breaker is not stated',
    `State one of: ${panels.join(', ')}`,
  )
}

function tapsKnown(job: Job): string {
  const taps = Object.keys(job.electrical.distribution?.taps ?? {})
  return taps.length === 0
    ? 'State a tap under electrical.distribution.taps and name it'
    : `State one of: ${taps.join(', ')}`
}

function existing(job: Job): SourceNode[] {
  const { distribution } = job.electrical
  return Object.entries(distribution?.sources ?? {}).map(([id, source]): SourceNode => {
    const where = `electrical.distribution.sources.${id}`
    const at = existingLanding(job, where, source.on, source.supply_side)
    return {
      id,
      name: source.name ?? id.replaceAll('_', ' '),
      kind: source.kind,
      where,
      at,
      currentA: source.current_a,
      devices: [
        {
          ratingA: source.breaker_a,
          type: source.breaker_type ?? 'standard',
          markedForBackfeed: source.breaker_marked_for_backfeed === true,
          markedLineLoad: source.breaker_marked_line_load === true,
          oppositeEnd: source.breaker_position === undefined ? undefined : source.breaker_position === 'opposite_end',
          where,
        },
      ],
      firstDevicesA: source.breaker_a === undefined ? [] : [source.breaker_a],
      runsInParallel: source.runs_in_parallel ?? true,
    }
  })
}

function existingLanding(job: Job, where: string, on: string | undefined, supplySide: boolean | undefined): Landing {
  if (supplySide === true) return 'supply_side'
  if (on === undefined)
    throw new StageError(
      `${where}.on`,
      'where this source lands is not stated',
      'Name its panel or tap, or supply_side: true',
    )
  return Object.hasOwn(job.electrical.distribution?.taps ?? {}, on) ? { tap: on } : { panel: on }
}
