import { watch, type FSWatcher } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { documentsOf, FileTrouble, LARGEST_METER_BYTES, readBytes, type LoadedProject } from '../../project/index.js'
import { digestOf, sha256Of } from '../../seal/index.js'
import { makeContext, type FrameContext } from '../context.js'
import { deliver } from '../deliver.js'
import { EXIT } from '../exit-codes.js'
import { explainFailure } from '../failure.js'
import type { CommonOptions, ProjectOptions } from '../options.js'
import { writeErr, writeOut } from '../streams.js'
import type { CommandContext, CommandOutcome } from '../subcommand.js'

/** Editors write a file in several steps; a check waits until nothing has moved for this long, ms. */
const QUIET_MS = 150

/**
 * Checks a project, and again each time that it or a file that it names is saved with another content, until Ctrl-C.
 *
 * @param check The check of one run.
 * @returns What the last check came to, once the person has ended it.
 */
export async function watchProject(
  { args, tool, subcommands }: CommandContext,
  options: CommonOptions & ProjectOptions,
  check: (context: CommandContext) => Promise<CommandOutcome>,
): Promise<CommandOutcome> {
  const path = resolve(args[0] ?? '')
  let files: readonly string[] = [path]
  let failed = false
  let seen = ''

  const once = async (): Promise<void> => {
    const context = makeContext(args, tool, options, subcommands)
    try {
      failed = (await deliver(await check(context), context, options)) !== EXIT.done
    } catch (error) {
      const failure = explainFailure(error, context.locate)
      // Nothing to watch, or a defect of ours.
      if (seen === '' && failure.exitCode !== EXIT.usage) throw error
      writeErr(failure.text)
      failed = true
    }
    files = filesOf(context, files)
    seen = contentOf(files)
    writeErr(`watching ${files.length === 1 ? 'the file' : `${files.length} files`}; Ctrl-C ends\n`)
  }

  await once()
  const changes = watchFiles(() => files)
  for await (const _ of changes) {
    // A touched file, or one of which an editor keeps a copy beside it, is no change.
    if (contentOf(files) === seen) continue
    writeOut('\n')
    await once()
  }
  return { document: '', failed }
}

/** The project and what it names; those of the last readable project while it cannot be read. */
function filesOf(context: FrameContext, before: readonly string[]): readonly string[] {
  const loaded: LoadedProject | undefined = context.loaded()
  if (loaded === undefined) return before
  const named = [...loaded.files.keys(), ...documentsOf(loaded.project).map(({ file }) => file)]
  return [resolve(loaded.path), ...named.map((name) => resolve(loaded.folder, name))]
}

function contentOf(files: readonly string[]): string {
  return digestOf(files.map(contentOfOne))
}

/** A file that is away for a moment, or for good, is a content of its own. */
function contentOfOne(file: string): string {
  try {
    return sha256Of(readBytes(file, LARGEST_METER_BYTES))
  } catch (error) {
    if (error instanceof FileTrouble) return error.message
    throw error
  }
}

/** Yields once after each burst of changes, until Ctrl-C. Folders are watched, as editors put new files in the place of old ones. */
async function* watchFiles(files: () => readonly string[]): AsyncGenerator<void> {
  let wake: (() => void) | undefined
  let timer: NodeJS.Timeout | undefined
  let ended = false
  const watchers = new Map<string, FSWatcher>()
  const stir = (): void => {
    clearTimeout(timer)
    timer = setTimeout(() => wake?.(), QUIET_MS)
  }
  const end = (): void => {
    ended = true
    wake?.()
  }
  process.once('SIGINT', end)
  try {
    for (;;) {
      for (const folder of new Set(files().map(dirname)))
        if (!watchers.has(folder)) watchers.set(folder, watchFolder(folder, files, stir))
      await new Promise<void>((resolveWait) => {
        wake = resolveWait
        if (ended) resolveWait()
      })
      wake = undefined
      if (ended) return
      yield
      if (ended) return
    }
  } finally {
    clearTimeout(timer)
    for (const watcher of watchers.values()) watcher.close()
    process.removeListener('SIGINT', end)
  }
}

function watchFolder(folder: string, files: () => readonly string[], stir: () => void): FSWatcher {
  const watcher = watch(folder, (_, name) => {
    const isOurs = files().some((file) => dirname(file) === folder && (name === null || basename(file) === name))
    if (isOurs) stir()
  })
  watcher.on('error', () => watcher.close())
  return watcher
}
