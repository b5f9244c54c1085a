import { checkTarget, growingFile, type LineTarget } from '../../files/index.js'
import {
  jsonLine,
  type FleetIdentity,
  type FleetListener,
  type FleetOutcome,
  type FleetRun,
} from '../../fleet/index.js'
import { cleanLine } from '../../report/index.js'
import { writeErr, writeOut } from '../streams.js'
import type { CommandContext } from '../subcommand.js'
import { makeBar, type Bar } from './fleet-bar.js'
import { deliverReport, tellMoves, tellProblems } from './fleet-deliver.js'
import { outFile, type FleetOptions } from './fleet-options.js'

const STDOUT: LineTarget = { write: writeOut, finish: () => undefined, abandon: () => undefined }

/** What a person sees of a fleet while it runs, and its results when it is through. */
export class Watch implements FleetListener {
  readonly #context: CommandContext
  readonly #options: FleetOptions
  #lines: LineTarget | undefined
  #bar: Bar | undefined
  #projects = 0
  #identity: FleetIdentity | undefined
  #done = 0
  #isResumable = false

  constructor(context: CommandContext, options: FleetOptions) {
    this.#context = context
    this.#options = options
  }

  /** Looks before the work begins whether its results can be put where they shall go. */
  readonly begin = (projects: number, identity: FleetIdentity): void => {
    const { jsonl, force = false, quiet } = this.#options
    const path = outFile(this.#options)
    if (path !== undefined) checkTarget(path, force)
    if (jsonl === true) this.#lines = path === undefined ? STDOUT : growingFile(path, force)
    this.#projects = projects
    this.#identity = identity
    this.#bar = makeBar(projects, quiet === true || (this.#lines === STDOUT && process.stdout.isTTY))
  }

  readonly resumable = (isResumable: boolean): void => {
    this.#isResumable = isResumable
  }

  readonly done = (outcome: FleetOutcome, recalled: number): void => {
    this.#done += 1
    if (this.#identity !== undefined) this.#lines?.write(jsonLine(outcome, this.#identity))
    if (this.#lines !== undefined || this.#options.csv === true) {
      if (outcome.status !== 'ok') this.#bar?.clear()
      tellProblems(outcome)
    }
    this.#bar?.step(recalled)
  }

  readonly end = async ({ report, moves }: FleetRun): Promise<void> => {
    this.#bar?.clear()
    const { tool } = this.#context
    const lines = this.#lines
    if (lines === undefined) await deliverReport(report, tool, this.#options)
    if (moves !== undefined && (lines !== undefined || this.#options.csv === true)) {
      await tellMoves(report, tool, this.#options)
    }
    lines?.finish()
    this.#lines = undefined
  }

  readonly note = (text: string): void => {
    if (this.#options.quiet !== true) writeErr(`${cleanLine(text)}\n`)
  }

  readonly aside = (text: string): void => this.#context.progress(text)

  /** Somebody stops the run, as by Ctrl-C. */
  interrupt(): void {
    this.abandon()
    const on = this.#isResumable
      ? '; the same command with --resume goes on without working them out again'
      : ' and are lost, as there is no journal'
    const count = `${this.#done} of ${this.#projects} houses were done`
    writeErr(this.#done === 0 && !this.#isResumable ? 'stopped\n' : `stopped: ${count}${on}\n`)
  }

  /** The run came to nothing. */
  abandon(): void {
    this.#lines?.abandon()
    this.#bar?.clear()
  }
}
