import type { PartName, Project } from '../project/index.js'
import { own } from '../values/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import { madeUpFor, type MadeUpValue } from './made-up.js'
import type { TellingStage } from './made-up-parts.js'
import { NEEDED_KEYS, type NeededKey } from './needed-keys.js'

/** How far one stage of a project is. */
export interface StageProgress {
  /** Its name in results. */
  readonly stage: string
  /** What runs it. */
  readonly command: string
  /** `missing` when it cannot run, `failing` when a check of it fails, `made_up` when values want to be confirmed. */
  readonly state: 'missing' | 'failing' | 'made_up' | 'ready'
  /** Keys that have to be stated, with where one finds their value. */
  readonly missing: readonly { readonly path: string; readonly find: string }[]
  /** Values that nobody confirmed, what is about safety first. */
  readonly made_up: readonly MadeUpValue[]
  /** What to run now. */
  readonly next: string
}

/** A stage of a check that a person runs by itself. */
export interface OwnStage {
  readonly name: TellingStage
  readonly command: string
  /** What `new-project --parts` calls the part that it needs. */
  readonly part: PartName
}

/** What became of the stage: its findings, why it could not run, or undefined where its parts are not there. */
export type StageOutcome = readonly Finding[] | StageError | undefined

interface Situation {
  readonly project: Project
  readonly madeUp: readonly string[]
  /** Name of the project file, for the next command. */
  readonly file: string
  /** How far the stages are that come first. */
  readonly before: readonly StageProgress[]
}

/** How far a stage is; a packet is as far as wiring and mounts are. */
export function stageProgress(
  stage: OwnStage,
  outcome: StageOutcome,
  { project, madeUp, file, before }: Situation,
): StageProgress {
  const { name, command, part } = stage
  const behind = name === 'permit' && outcome !== undefined ? before.filter(({ stage: each }) => DRAWN.has(each)) : []
  const missing = [...missingFor(name, outcome, project), ...behind.flatMap((each) => each.missing)]
  const unconfirmed = madeUpFor({ project, madeUp }, name)
  const fails =
    behind.some(({ state: each }) => each === 'failing') ||
    (Array.isArray(outcome) && outcome.some(({ severity }: Finding) => severity === 'error'))
  const state = missing.length > 0 ? 'missing' : fails ? 'failing' : unconfirmed.length > 0 ? 'made_up' : 'ready'
  const [first] = missing
  const next =
    outcome === undefined || (name === 'permit' && first !== undefined)
      ? `gablewatt new-project --parts ${part} --add-to ${file} --force`
      : outcome instanceof StageError && first !== undefined
        ? `gablewatt explain ${first.path}`
        : `gablewatt ${command} ${file}`
  return { stage: name, command, state, missing, made_up: unconfirmed, next }
}

/** Stages that the sheets of a packet show. */
const DRAWN: ReadonlySet<string> = new Set(['wire', 'mounts'])

function missingFor(name: TellingStage, outcome: StageOutcome, project: Project): StageProgress['missing'] {
  const absent = (own(NEEDED_KEYS, name) ?? [])
    .filter((each) => !isStated(project, each))
    .map(({ path, find }) => ({ path, find }))
  if (outcome === undefined) return name === 'permit' ? [...wholeParts(project), ...absent] : absent
  if (outcome instanceof StageError) {
    const { where, message, fix } = outcome
    const told = where === '' ? [] : [{ path: where, find: fix === '' ? message : fix }]
    return [...told, ...absent.filter(({ path }) => path !== where)]
  }
  // What a packet lacks are findings, as it is drawn as a draft all the same.
  const gaps = outcome.filter(({ id, severity }) => id.startsWith('permit.no-') && severity !== 'note')
  return gaps.map(({ where, fix, message }) => ({ path: where, find: fix ?? message }))
}

/** The parts that other stages need, for a packet. */
function wholeParts({ electrical, structure }: Project): { path: string; find: string }[] {
  return [
    ...(electrical === undefined ? [{ path: 'electrical', find: 'what size-wire needs' }] : []),
    ...(structure === undefined ? [{ path: 'structure', find: 'what space-mounts needs' }] : []),
  ]
}

function isStated(project: Project, { path, or = [] }: NeededKey): boolean {
  return [path, ...or].some(
    (each) =>
      each
        .split('.')
        .reduce<unknown>(
          (holder, key) =>
            typeof holder === 'object' && holder !== null ? own(holder as Record<string, unknown>, key) : undefined,
          project,
        ) !== undefined,
  )
}
