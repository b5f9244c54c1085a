import { moduleCountOf, swapEquipment, type Candidate, type Project } from '../project/facts.js'
import { own, type Watts } from '../values/index.js'
import { StageError, type Finding, type Result } from '../worksheet/index.js'
import type { House } from './house.js'
import type { HouseInput } from './house-input.js'
import { runHouse } from './run-house.js'

/** Whether a project holds with another module or inverter in the place of its own. */
export interface EquipmentFit {
  readonly fits: boolean
  /** Why it does not, in the order of the stages: roof, wire, mounts. */
  readonly reasons: readonly string[]
  /** Modules that the project then has, and their rated power, W; undefined when it could not be tried. */
  readonly modules: number | undefined
  readonly powerW: Watts | undefined
}

/** A try of one candidate after the other. */
export interface FitTrial {
  /** Checks that the project fails as it stands; they are not held against a candidate. */
  readonly failing: readonly string[]
  readonly fit: (candidate: Candidate) => Promise<EquipmentFit>
}

interface Trouble {
  /** What it is and where, without its numbers, which move with the candidate. */
  readonly key: string
  readonly says: string
}

/**
 * Tries equipment in a project: modules on the roof, wiring and mounts are worked out anew, the latter two where the
 * project has the parts for them.
 *
 * @param input With its arrays as the person states them: what is fitted to the roof is counted anew for each module.
 */
export async function tryEquipment(input: HouseInput): Promise<FitTrial> {
  const before = await troublesOf(input)
  const known = new Set(before.troubles.map(({ key }) => key))
  return {
    failing: before.troubles.map(({ says }) => says),
    fit: async (candidate) => {
      const swapped = swapEquipment(input.project, candidate)
      if ('reasons' in swapped) return { fits: false, reasons: swapped.reasons, modules: undefined, powerW: undefined }
      const { troubles, project } = await troublesOf({ ...input, project: swapped.project })
      const reasons = troubles.filter(({ key }) => !known.has(key)).map(({ says }) => says)
      return { fits: reasons.length === 0, reasons, ...(project === undefined ? NOT_COUNTED : sizeOf(project)) }
    },
  }
}

const NOT_COUNTED = { modules: undefined, powerW: undefined }

function sizeOf(project: Project): Pick<EquipmentFit, 'modules' | 'powerW'> {
  let modules = 0
  let powerW = 0
  for (const array of Object.values(project.arrays)) {
    const count = moduleCountOf(array)
    modules += count
    powerW += count * (own(project.equipment.modules, array.module)?.pmax_w ?? 0)
  }
  return { modules, powerW }
}

/** All that fails in a project, and the project with the modules counted that the roof takes. */
async function troublesOf(
  input: HouseInput,
): Promise<{ readonly troubles: readonly Trouble[]; readonly project: Project | undefined }> {
  const { countFitted } = await import('../roof/index.js')
  let project: Project
  try {
    project = countFitted(input.project)
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    return { troubles: [stopped('roof', error)], project: undefined }
  }
  const house = runHouse({ ...input, project })
  const troubles: Trouble[] = []
  for (const [name, stage] of stagesFor(project, house)) {
    try {
      const { findings } = await stage()
      troubles.push(...findings.filter(({ severity }) => severity === 'error').map(failed))
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      troubles.push(stopped(name, error))
    }
  }
  return { troubles: [...new Map(troubles.map((one) => [one.says, one])).values()], project }
}

function stagesFor(project: Project, house: House): (readonly [name: string, run: () => Promise<Result<unknown>>])[] {
  return [
    ['roof', house.roof],
    ...(project.electrical === undefined ? [] : [['wire', house.wire] as const]),
    ...(project.structure === undefined ? [] : [['mounts', house.ownMounts] as const]),
  ]
}

function failed({ id, where, message }: Finding): Trouble {
  return { key: `${id} ${where}`, says: `${message} [${id}]` }
}

function stopped(stage: string, { where, message }: StageError): Trouble {
  return { key: `${stage} ${where}`, says: `${where}: ${message} [${stage}.cannot-run]` }
}
