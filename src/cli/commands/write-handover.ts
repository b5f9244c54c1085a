import type { Command } from 'commander'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example] = [
  { line: 'write-handover project.yaml', does: 'x' },
  { line: 'write-handover project.yaml --out handover.pdf', does: 'y' },
]
export function configure(command: Command): void {
  command.argument('<project.yaml>')
}
export function run(_context: CommandContext): CommandOutcome {
  return { document: '' }
}
