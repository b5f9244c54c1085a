import type { LoadedProject } from '../project/index.js'
import type { FitRank } from '../roof/index.js'
import type { EarlierResult } from './earlier-result.js'
import { UsageError } from './errors.js'
import type { CommonOptions, EarlierOptions, ProjectOptions } from './options.js'
import { cleanLine } from '../report/index.js'
import { readStdin } from './stdin.js'
import { writeErr } from './streams.js'
import type { CommandContext, SubcommandEntry } from './subcommand.js'

/** The context of one run. `loaded` tells the frame which project the run has read, if any. */
export interface FrameContext extends CommandContext {
  readonly loaded: () => LoadedProject | undefined
  /** Turns a path of the project into `file:line:column`; undefined when no project was read. */
  readonly locate: (path: string) => string | undefined
}

export function makeContext(
  args: readonly string[],
  tool: string,
  options: CommonOptions & Partial<ProjectOptions & EarlierOptions & { readonly rank: FitRank }>,
  subcommands: readonly SubcommandEntry[] = [],
): FrameContext {
  let loaded: LoadedProject | undefined
  let stated: LoadedProject | undefined
  let locate: FrameContext['locate'] = () => undefined
  let earlierResults: readonly EarlierResult[] | undefined

  const project = async (): Promise<LoadedProject> => {
    if (loaded !== undefined) return loaded
    const [path] = args
    if (path === undefined) throw new Error('this subcommand takes no project')
    const { LARGEST_YAML_BYTES, loadProject, placeText } = await import('../project/index.js')
    const text = path === '-' ? await readStdin(LARGEST_YAML_BYTES) : undefined
    const read = loadProject({
      path,
      ...(text === undefined ? {} : { text }),
      overrides: [...(options.set ?? [])],
      allowOutside: options.allowOutside === true,
    })
    loaded = read
    stated = read
    locate = (place) => placeText(read, place)
    // Its place in the file is known by now, should the roof have no room.
    const { countFitted, withRank } = await import('../roof/index.js')
    // The rank decides how many modules an array without a number has.
    const ranked = options.rank === undefined ? read.project : withRank(read.project, options.rank)
    loaded = { ...loaded, project: countFitted(ranked) }
    return loaded
  }

  const earlier: CommandContext['earlier'] = async (stage) => {
    const paths = options.use ?? []
    if (paths.length === 0) return undefined
    const { digest } = await project()
    if (earlierResults === undefined) {
      const { checkEarlier, readEarlier } = await import('./earlier-result.js')
      const name = args[0] ?? '-'
      const purpose = { project: name, tool, digest, anyway: options.useAnyway === true }
      earlierResults = paths.map((path) => readEarlier(path, name)).map((one) => checkEarlier(one, purpose))
      for (const { warning } of earlierResults) {
        if (warning !== undefined) writeErr(`warning: ${cleanLine(warning)}\n`)
      }
    }
    const found = earlierResults.filter((one) => one.stage === stage)
    if (found.length > 1)
      throw new UsageError(`--use: ${found.map((one) => one.path).join(' and ')} are both a '${stage}' result`)
    return found[0]?.result
  }

  return {
    args,
    tool,
    subcommands,
    project,
    asStated: async () => {
      const counted = await project()
      return stated ?? counted
    },
    earlier,
    loaded: () => loaded,
    locate: (path) => locate(path),
    progress: (text) => {
      if (process.stderr.isTTY && options.quiet !== true) writeErr(`${cleanLine(text)}\n`)
    },
  }
}
