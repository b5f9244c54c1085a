import type { LoadedProject, PartName, Project } from '../project/index.js'
import { StageError } from '../worksheet/index.js'

/** What `new-project --parts` calls the part that holds a top-level key. */
const PART_OF: Readonly<Partial<Record<keyof Project, PartName>>> = {
  electrical: 'wire',
  structure: 'mounts',
  site_plan: 'permit',
  document: 'permit',
  usage: 'money',
  tariff: 'money',
  finance: 'money',
  storage: 'storage',
}

/** The part that a subcommand is about, which it may lack as a whole. */
const OWN_KEY: Readonly<Record<string, keyof Project>> = {
  'size-wire': 'electrical',
  'space-mounts': 'structure',
  'draw-permit': 'site_plan',
  payback: 'tariff',
  'choose-size': 'tariff',
  'compare-parts': 'tariff',
}

/**
 * The command that helps on when a stage cannot run: one that writes the part that is not there, or what a key means.
 *
 * @returns undefined when nothing is known to help.
 */
export async function nextCommand(
  error: unknown,
  subcommand: string | undefined,
  loaded: LoadedProject | undefined,
): Promise<string | undefined> {
  if (!(error instanceof StageError) || loaded === undefined) return undefined
  const { project, path } = loaded
  const file = path === '-' ? 'project.yaml' : path
  const top = error.where.split('.')[0] as keyof Project
  const absent = [OWN_KEY[subcommand ?? ''], top].find(
    (key) => key !== undefined && PART_OF[key] !== undefined && project[key] === undefined,
  )
  if (absent !== undefined) return `gablewatt new-project --parts ${PART_OF[absent]} --add-to ${file} --force`
  if (error.where === '') return `gablewatt check-project ${file}`
  const { pathTrouble } = await import('../project/index.js')
  return pathTrouble(error.where) === undefined ? `gablewatt explain ${error.where}` : `gablewatt check-project ${file}`
}
