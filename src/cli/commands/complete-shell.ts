import { Argument, Command, type Option } from 'commander'
import { writesFile } from '../options.js'
import { cleanLine } from '../../report/index.js'
import type { CommandContext, CommandOutcome, Example, SubcommandEntry } from '../subcommand.js'
import { ASKED_OPERANDS, ASKED_OPTIONS, candidates, wordsOfBash } from './completion/candidates.js'
import { bashScript } from './completion/bash-script.js'
import type { CompletedOption, CompletedSubcommand } from './completion/completed.js'
import { fishScript } from './completion/fish-script.js'
import { zshScript } from './completion/zsh-script.js'

export const examples: readonly [Example, Example, Example] = [
  {
    line: 'complete-shell bash --out ~/.local/share/bash-completion/completions/gablewatt',
    does: 'for bash, from the next shell on',
  },
  { line: 'complete-shell zsh --out ~/.zfunc/_gablewatt', does: 'for zsh, with ~/.zfunc in fpath before compinit' },
  { line: 'complete-shell fish --out ~/.config/fish/completions/gablewatt.fish', does: 'for fish' },
]

const SHELLS = { bash: bashScript, zsh: zshScript, fish: fishScript } as const

export function configure(command: Command): void {
  const shell = new Argument('<shell>', 'which shell').choices(Object.keys(SHELLS))
  writesFile(
    command
      .addArgument(shell)
      .argument(
        '[words...]',
        'after --: words of a line, the last one begun; prints how it can go on (scripts ask so)',
      ),
  )
}

export async function run({ args, subcommands: entries }: CommandContext): Promise<CommandOutcome> {
  const [, ...line] = args
  if (line.length > 0) return { document: await offered(args[0] ?? '', line) }
  const { makeProgram } = await import('../program.js')
  const script = SHELLS[args[0] as keyof typeof SHELLS]
  const subcommands = await Promise.all(entries.map(completedSubcommand))
  const common = makeProgram('', [])
    .options.filter((option) => option.long !== '--version')
    .map(completedOption)
  return { document: script(subcommands, [...common, { names: ['-h', '--help'], says: 'show help', value: 'none' }]) }
}

/** Candidates, one on a line. bash replaces only what stands after an equals sign. */
async function offered(shell: string, raw: readonly string[]): Promise<string> {
  const { words, cut } = shell === 'bash' ? wordsOfBash(raw) : { words: [...raw], cut: 0 }
  const found = await candidates(words)
  return found.map((one) => `${cleanLine(one.slice(cut))}\n`).join('')
}

async function completedSubcommand({ name, summary, load }: SubcommandEntry): Promise<CompletedSubcommand> {
  const command = new Command(name)
  const { configure: fill } = await load()
  fill(command)
  const [choices] = command.registeredArguments.flatMap(({ argChoices }) =>
    argChoices === undefined ? [] : [argChoices],
  )
  const takesFile = command.registeredArguments.some((one) => /\.(?:yaml|csv|json)\b/u.test(one.name()))
  return {
    name,
    says: cleanLine(summary),
    options: command.options.map(completedOption),
    operands: choices ?? (Object.hasOwn(ASKED_OPERANDS, name) ? 'asked' : takesFile ? 'file' : 'none'),
  }
}

function completedOption(option: Option): CompletedOption {
  const names = [option.short, option.long].filter((name) => name !== undefined)
  return { names, says: cleanLine(option.description), value: valueOf(option) }
}

/** What follows the option: one of a list, a path when its place-holder names one, or free text. */
function valueOf(option: Option): CompletedOption['value'] {
  if (option.isBoolean() || option.negate) return 'none'
  if (option.argChoices !== undefined) return option.argChoices
  if (Object.hasOwn(ASKED_OPTIONS, option.long ?? '')) return 'asked'
  return /<[^>]*(?:file|folder|\.json|\.epw|\.csv|\.yaml)[^>]*>/u.test(option.flags) ? 'file' : 'text'
}
