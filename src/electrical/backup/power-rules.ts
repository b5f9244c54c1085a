import { storageSection } from '../../tables/nec/index.js'
import type { Kilowatts, Watts } from '../../values/index.js'
import type { PanelNode, Tree } from '../distribution/index.js'
import { PV_SOURCE } from '../distribution/index.js'
import { answerStated, compareStated, type StorageCheck, type StorageSystem } from '../storage/index.js'
import { serviceOf, type Job } from '../system/index.js'
import { isSingleSupply, singleSupplyRules } from './single-supply.js'
import type { Island } from './island.js'

/** What the storage has to carry: load, largest appliance, motors, PV, neutral. */
export function powerRules(job: Job, system: StorageSystem, tree: Tree, island: Island): StorageCheck[] {
  return [
    ...capacity(job, system, tree, island),
    ...solar(job, system, island),
    ...singleSupplyRules(job, system),
    ...neutral(job, system),
    ...motor(system),
  ]
}

/** Continuous output of all units, W. */
const outputW = ({ unit, count }: StorageSystem): Watts => 1000 * unit.discharge_kw * count

function capacity(job: Job, system: StorageSystem, tree: Tree, { panel }: Island): StorageCheck[] {
  const { backup } = system.stated
  const source = storageSection(job.edition, 'backupCapacity')
  const standAlone = compareStated({
    id: 'largest-load',
    where: 'storage.backup.largest_load_w',
    what: 'continuous output of the storage against its largest single appliance: the appliance',
    value: largestLoadW(system),
    limit: outputW(system),
    unit: 'W',
    relation: '<=',
    source: storageSection(job.edition, 'standAlone'),
    fix: 'Leave that appliance off the panel, or use more units',
  })
  if (backup?.transfer === undefined)
    return [
      {
        id: 'transfer',
        where: 'storage.backup.transfer',
        says: 'whether the house changes over by itself is not stated, so what the storage has to carry is not known',
        verdict: 'not_stated',
        source,
        fix: 'State automatic or manual',
      },
      standAlone,
    ]
  if (backup.transfer === 'manual') return [standAlone]
  if (backup.load_managed === true)
    return [
      {
        id: 'full-load',
        where: 'storage.backup.load_managed',
        says: `a load-management system keeps the load within the ${outputW(system)} W of the storage`,
        verdict: 'pass',
        source,
        fix: '',
      },
      standAlone,
    ]
  return [
    compareStated({
      id: 'full-load',
      where: panel.loadA === undefined ? `${panel.where}.load_a` : 'storage.backup.transfer',
      what: 'load that is transferred by itself',
      value: transferredW(job, tree, panel),
      limit: outputW(system),
      unit: 'W',
      relation: '<=',
      source,
      fix: 'Move circuits to another panel, use more units or a load-management system (load_managed), or change over by hand',
    }),
    standAlone,
  ]
}

/** Calculated load of the panel that is transferred, W; of the first panel that of the house. */
function transferredW(job: Job, tree: Tree, panel: PanelNode): Watts | undefined {
  const first = !tree.feeders.some(({ to }) => to === panel.id)
  const loadA = panel.loadA ?? (first ? tree.service.loadA : undefined)
  return loadA === undefined ? undefined : Math.round(loadA * serviceOf(job).lineToLineV)
}

function largestLoadW({ stated }: StorageSystem): Watts | undefined {
  const { backup } = stated
  if (backup?.largest_load_w !== undefined) return backup.largest_load_w
  const loads = Object.values(backup?.loads ?? {})
  return loads.length === 0 ? undefined : Math.max(...loads.map(({ w }) => w))
}

/** PV on the island: the storage has to take what the house does not use. */
function solar(job: Job, { unit, unitWhere, count }: StorageSystem, island: Island): StorageCheck[] {
  const pv = island.sources.filter(({ kind }) => kind === 'pv')
  if (pv.length === 0) return []
  const pvKw: Kilowatts = pv.reduce((sum, { currentA }) => sum + (currentA * serviceOf(job).lineToLineV) / 1000, 0)
  const most = unit.max_pv_ac_kw
  const parts = {
    id: 'pv-ratio',
    where: `${unitWhere}.max_pv_ac_kw`,
    source: { document: 'data sheet of the storage unit', standing: 'project file' },
    fix: 'Land PV circuits ahead of the isolating device, or use more units; too much PV pushes the frequency up until the island trips',
  } as const
  if (most === undefined)
    return [
      {
        ...parts,
        verdict: 'not_stated',
        says: `the largest PV output that a unit can hold is not stated, so the ${pvKw.toFixed(1)} kW on the backed-up panels were not held against it`,
      },
    ]
  return [
    compareStated({
      ...parts,
      what: 'PV output on the backed-up panels',
      value: pvKw,
      limit: most * count,
      unit: 'kW',
      relation: '<=',
    }),
    ...islandShutdown(job, island),
  ]
}

/** The rapid shutdown of the modules must work while the storage keeps the house on. */
function islandShutdown(job: Job, { sources }: Island): StorageCheck[] {
  if (!sources.some(({ id }) => id === PV_SOURCE)) return []
  return [
    answerStated({
      id: 'shutdown-in-island',
      where: 'storage.backup.shutdown_works_islanded',
      answer: job.project.storage?.backup?.shutdown_works_islanded,
      yes: 'the rapid shutdown of the modules has an initiator that works while the storage keeps the house on',
      no: 'loss of grid power alone starts the rapid shutdown, which does not happen while the storage keeps the house on',
      missing: 'whether the rapid shutdown of the modules works while the storage keeps the house on is not stated',
      source: storageSection(job.edition, 'shutdownInIsland'),
      fix: 'Use a separate switch as initiator',
    }),
  ]
}

function neutral(job: Job, system: StorageSystem): StorageCheck[] {
  const { unit, unitWhere, stated } = system
  const { backup } = stated
  const bonding = { document: 'NEC', place: '250.30', standing: 'from memory' } as const
  return [
    ...(backup?.needs_neutral === false || isSingleSupply(system)
      ? []
      : [
          answerStated({
            id: 'neutral-forming',
            where: `${unitWhere}.neutral_forming`,
            answer: unit.neutral_forming,
            yes: 'the unit makes 120/240 V with a neutral of its own',
            no: 'the unit makes no neutral of its own, and loads of 120 V need one',
            missing: 'whether the unit makes a neutral of its own is not stated, and loads of 120 V need one',
            source: storageSection(job.edition, 'standAlone'),
            fix: 'Use equipment with a listed neutral-forming transformer, or state needs_neutral: false where every load works on 240 V',
          }),
        ]),
    answerStated({
      id: 'neutral-bonding',
      where: 'storage.backup.switched_neutral',
      answer: backup?.switched_neutral === undefined ? undefined : !backup.switched_neutral,
      yes: 'the neutral is not switched, so neutral and ground are joined at the service disconnect only',
      no: 'the isolating device opens the neutral, so the island is a separately derived system with a bonding jumper and an electrode conductor of its own, which this program does not size',
      missing:
        'whether the isolating device opens the neutral is not stated, so where neutral and ground are joined is not known',
      source: bonding,
      fix: 'Read the manual of the isolating device; where it opens the neutral ask an electrical engineer for the grounding',
      severity: 'warning',
    }),
  ]
}

/** The largest motor against what the units start. */
function motor({ unit, unitWhere, count, stated }: StorageSystem): StorageCheck[] {
  const { essential, loads } = stated.backup ?? {}
  const locked = [essential?.locked_rotor_a, ...Object.values(loads ?? {}).map((load) => load.locked_rotor_a)]
  const largest = Math.max(0, ...locked.map((a) => a ?? 0))
  if (largest === 0) return []
  const source = { document: 'data sheet of the storage unit', standing: 'project file' } as const
  const where = `${unitWhere}.surge_a`
  const fix = 'Leave the motor off the panel, fit a soft starter, or use more units'
  if (unit.surge_a === undefined)
    return [
      {
        id: 'motor-start',
        where,
        says: `the locked-rotor current that the unit starts is not stated, and the largest motor takes ${largest} A`,
        verdict: 'not_stated',
        source,
        fix,
      },
    ]
  return [
    compareStated({
      id: 'motor-start',
      where,
      what: 'locked-rotor current of the largest motor',
      value: largest,
      limit: unit.surge_a * count,
      unit: 'A',
      relation: '<=',
      source,
      fix,
    }),
  ]
}
