import { isAcModule, swapEquipment, type Inverter, type Project, type PvModule } from '../../project/facts.js'
import { own } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Combination } from './parts-values.js'

/** What is compared; ids are of the project's equipment. */
export interface PartsWishes {
  readonly modules: readonly string[]
  /** None: each combination keeps the project's. */
  readonly inverters: readonly string[]
  /** Modules in all; none: as the project says. */
  readonly sizes: readonly number[]
}

/** The combinations in the order in which they were named. */
export function combinationsOf({ modules, inverters, sizes }: PartsWishes): Combination[] {
  const orNone = <Value>(list: readonly Value[]): readonly (Value | null)[] => (list.length === 0 ? [null] : list)
  return modules.flatMap((module) =>
    orNone(inverters).flatMap((inverter) => orNone(sizes).map((size) => ({ module, inverter, storage: null, size }))),
  )
}

/** The equipment of an id. @throws StageError with the ids that there are. */
function pieceOf<Piece>(group: Readonly<Record<string, Piece>> | undefined, kind: string, id: string): Piece {
  const piece = own(group, id)
  if (piece !== undefined) return piece
  const known = Object.keys(group ?? {}).filter((one) => !isAcModule(one))
  throw new StageError(
    `equipment.${kind}s`,
    `there is no ${kind} '${id}'; the project has ${known.length === 0 ? 'none' : known.join(', ')}`,
    'Name one of them, or put its data sheet into the equipment file (gablewatt add-equipment).',
  )
}

/** Refuses an id that the project does not have, before any work. @throws StageError */
export function checkWishes(project: Project, { modules, inverters }: PartsWishes): void {
  for (const id of modules) pieceOf<PvModule>(project.equipment.modules, 'module', id)
  for (const id of inverters) pieceOf<Inverter>(project.equipment.inverters, 'inverter', id)
}

/** The project with the equipment of a combination, or why it cannot have it. */
export function equipped(
  project: Project,
  { module, inverter }: Combination,
): { readonly project: Project } | { readonly reasons: readonly string[] } {
  const modules = pieceOf<PvModule>(project.equipment.modules, 'module', module)
  const first = swapEquipment(project, { kind: 'module', id: module, values: modules })
  if ('reasons' in first || inverter === null) return first
  const values = pieceOf<Inverter>(project.equipment.inverters, 'inverter', inverter)
  return swapEquipment(first.project, { kind: 'inverter', id: inverter, values })
}
