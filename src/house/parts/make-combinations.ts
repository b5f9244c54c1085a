import {
  isAcModule,
  swapEquipment,
  swapStorage,
  type Inverter,
  type Project,
  type PvModule,
  type StorageUnit,
  type Swapped,
} from '../../project/facts.js'
import { own } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import type { PriceList } from '../../materials/index.js'
import type { Combination } from './parts-values.js'

/** What is compared; ids are of the project's equipment. */
export interface PartsWishes {
  readonly modules: readonly string[]
  /** None: each combination keeps the project's. */
  readonly inverters: readonly string[]
  /** Modules in all; none: as the project says. */
  readonly sizes: readonly number[]
  /** Ids of storage units; none: the project keeps its own. */
  readonly storage?: readonly string[]
  /** Numbers of storage units, 0 = none; none: one of each that is named. */
  readonly units?: readonly number[]
}

/** The combinations in the order in which they were named. */
export function combinationsOf(wishes: PartsWishes): Combination[] {
  const { modules, inverters, sizes } = wishes
  const orNone = <Value>(list: readonly Value[]): readonly (Value | null)[] => (list.length === 0 ? [null] : list)
  const stores = storesOf(wishes)
  return modules.flatMap((module) =>
    orNone(inverters).flatMap((inverter) =>
      orNone(sizes).flatMap((size) => stores.map((store) => ({ module, inverter, ...store, size }))),
    ),
  )
}

/** Each unit in each number; without storage there is one combination, whatever unit there would be. */
function storesOf({ storage = [], units = [] }: PartsWishes): Pick<Combination, 'storage' | 'storage_units'>[] {
  if (storage.length === 0) return [{ storage: null, storage_units: null }]
  const counts = units.length === 0 ? [1] : units
  return [
    ...(counts.includes(0) ? [{ storage: null, storage_units: 0 }] : []),
    ...storage.flatMap((id) =>
      counts.filter((count) => count > 0).map((count) => ({ storage: id, storage_units: count })),
    ),
  ]
}

/** The equipment of an id. @throws StageError with the ids that there are. */
function pieceOf<Piece>(group: Readonly<Record<string, Piece>> | undefined, kind: string, id: string): Piece {
  const piece = own(group, id)
  if (piece !== undefined) return piece
  const known = Object.keys(group ?? {}).filter((one) => !isAcModule(one))
  throw new StageError(
    `equipment.${kind}s`,
    `there is no ${kind.replaceAll('_', ' ')} '${id}'; the project has ${known.length === 0 ? 'none' : known.join(', ')}`,
    'Name one of them, or put its data sheet into the equipment file (gablewatt add-equipment).',
  )
}

/** Refuses an id that the project does not have, before any work. @throws StageError */
export function checkWishes(project: Project, { modules, inverters, storage = [], units = [] }: PartsWishes): void {
  for (const id of modules) pieceOf<PvModule>(project.equipment.modules, 'module', id)
  for (const id of inverters) pieceOf<Inverter>(project.equipment.inverters, 'inverter', id)
  for (const id of storage) pieceOf<StorageUnit>(project.equipment.storage_units, 'storage_unit', id)
  if (units.length > 0 && storage.length === 0)
    throw new StageError(
      'equipment.storage_units',
      'numbers of storage units are asked for, and it is not said of which',
      'Name the units too, with --storage.',
    )
}

/** The project with the equipment of a combination, or why it cannot have it. */
export function equipped(project: Project, combination: Combination, prices: PriceList): Swapped {
  const { module, inverter } = combination
  const modules = pieceOf<PvModule>(project.equipment.modules, 'module', module)
  const first = swapEquipment(project, { kind: 'module', id: module, values: modules })
  if ('reasons' in first) return first
  if (inverter === null) return withStorage(first.project, combination, prices)
  const values = pieceOf<Inverter>(project.equipment.inverters, 'inverter', inverter)
  const second = swapEquipment(first.project, { kind: 'inverter', id: inverter, values })
  return 'reasons' in second ? second : withStorage(second.project, combination, prices)
}

function withStorage(project: Project, { storage, storage_units: count }: Combination, { items }: PriceList): Swapped {
  if (count === null) return { project }
  const unit = storage ?? ''
  // The item that the bill of materials has for it.
  const price = own(items, `storage.${unit}`)
  return swapStorage(project, {
    unit,
    count,
    unitUsd: price?.pack === 'each' ? (price.usd ?? price.usd_high) : undefined,
  })
}
