import { LARGEST_YAML_BYTES, readMain, renameText } from '../project/index.js'
import { UsageError } from './errors.js'
import type { FileOptions } from './options.js'
import { readStdin } from './stdin.js'
import type { CommandOutcome } from './subcommand.js'

/**
 * The file of an earlier version with the names of this one: to `--out` or stdout, with `--force` alone in place.
 *
 * @throws ProjectError when the file cannot be read as YAML.
 */
export async function renameFile(path: string, { out, force }: FileOptions): Promise<CommandOutcome> {
  const isStdin = path === '-'
  const inPlace = force === true && out === undefined
  if (inPlace && isStdin) throw new UsageError('stdin cannot be replaced: name the file, or write to --out')
  const text = isStdin ? await readStdin(LARGEST_YAML_BYTES) : readMain(path, { path })
  const renamed = renameText(isStdin ? '<stdin>' : path, text)
  const notes = [renamed.replaced === 0 ? 'no old name in it' : `${renamed.replaced} name(s) replaced`]
  if (!inPlace) return { document: renamed.text, notes }
  return { document: '', notes, files: renamed.replaced === 0 ? [] : [{ path, content: renamed.text }] }
}
