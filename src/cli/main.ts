import { makeContext, type FrameContext } from './context.js'
import { checkDelivery, deliver } from './deliver.js'
import { EXIT } from './exit-codes.js'
import { explainFailure } from './failure.js'
import type { CommonOptions, ReportOptions } from './options.js'
import { nextCommand } from './next-command.js'
import { addExamples, makeProgram } from './program.js'
import { textInCurrency } from '../report/index.js'
import { watchStreams, writeErr } from './streams.js'
import { SUBCOMMANDS } from './subcommands.js'

/**
 * Runs the program once.
 *
 * Ctrl-C is left to the system, which ends the program at once even in a long calculation and gives the shell 130;
 * files are written so that it cannot leave half of one.
 *
 * @param args What stands after the program's name.
 * @param tool `gablewatt 0.1.0`
 * @returns the exit code
 */
export async function main(args: readonly string[], tool: string): Promise<number> {
  watchStreams()
  let context: FrameContext | undefined
  try {
    const program = makeProgram(tool, SUBCOMMANDS)
    if (args.length === 0) {
      program.outputHelp({ error: true })
      return EXIT.usage
    }
    const entry = SUBCOMMANDS.find(({ name }) => name === subcommandName(args))
    const command = program.commands.find((one) => one.name() === entry?.name)
    let exitCode: number = EXIT.done
    if (entry !== undefined && command !== undefined) {
      const subcommand = await entry.load()
      subcommand.configure(command)
      addExamples(command, subcommand.examples)
      command.action(async () => {
        const options = command.optsWithGlobals<CommonOptions & ReportOptions>()
        await checkDelivery(options)
        context = makeContext(command.args, tool, options, SUBCOMMANDS)
        exitCode = await deliver(await subcommand.run(context, options as never), context, options)
      })
    }
    // Asked for help on a name that it does not know, commander shows the whole help; as a subcommand it is an error.
    const isUnknown = args[0] === 'help' && args[1] !== undefined && command === undefined && args[1] !== 'help'
    await program.parseAsync(isUnknown ? args.slice(1) : args, { from: 'user' })
    return exitCode
  } catch (error) {
    const next = await nextCommand(error, subcommandName(args), context?.loaded())
    const failure = explainFailure(error, context?.locate, next)
    writeErr(textInCurrency(failure.text, context?.loaded()?.project.finance?.currency))
    return failure.exitCode
  }
}

/** In a worker thread: works out the projects of a fleet or the parts that arrive, until the thread is ended. */
export async function work(): Promise<void> {
  const { partsPlan, serveParts } = await import('./parts-worker.js')
  const plan = partsPlan()
  if (plan !== undefined) return serveParts(plan)
  const { serveFleet } = await import('../fleet/index.js')
  await serveFleet()
}

/** In a thread with limits of memory and time: works on files of strangers, until the thread is ended. */
export async function workOnForeign(): Promise<void> {
  const { serveForeignFiles } = await import('../papers/index.js')
  await serveForeignFiles()
}

/** The subcommand that will run or whose help is wanted. None of the program's own options takes a value. */
function subcommandName(args: readonly string[]): string | undefined {
  const [first, second] = args.filter((arg) => !arg.startsWith('-'))
  return first === 'help' ? second : first
}
