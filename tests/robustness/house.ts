import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeProgram } from '../../src/cli/program.js'
import { SUBCOMMANDS } from '../../src/cli/subcommands.js'
import { ROOT } from '../cli/binary.js'

/** A folder of its own with the demo house and all that it names. */
export function copyOfHouse(change: (text: string) => string = (text) => text): { folder: string; project: string } {
  const folder = mkdtempSync(join(tmpdir(), 'gablewatt-robust-'))
  const examples = join(ROOT, 'examples')
  cpSync(examples, folder, {
    recursive: true,
    filter: (path) => !/^\/(?:fleet|weather)(?:\/|$)/u.test(path.slice(examples.length)),
  })
  const project = join(folder, 'lark-hollow.yaml')
  writeFileSync(project, change(readFileSync(project, 'utf8')))
  return { folder, project }
}

/** A text of the project with one line replaced; the line must be there. */
export function replaced(text: string, from: string | RegExp, to: string): string {
  const result = text.replace(from, () => to)
  if (result === text) throw new Error(`the demo house has no ${String(from)} any more`)
  return result
}

/** Subcommands that print a report about one project and need nothing else. */
export async function reportingSubcommands(): Promise<string[]> {
  const program = makeProgram('gablewatt', SUBCOMMANDS)
  const helps = await Promise.all(
    SUBCOMMANDS.map(async ({ name, load }) => {
      const command = program.commands.find((one) => one.name() === name)
      if (command === undefined) throw new Error(`there is no subcommand ${name}`)
      ;(await load()).configure(command)
      return [name, command.helpInformation()] as const
    }),
  )
  return helps
    .filter(
      ([, help]) =>
        help.includes('<project.yaml>') &&
        help.includes('--json') &&
        !/<production\.csv>|<bills\.csv>|--audit|--check|--project/u.test(help),
    )
    .map(([name]) => name)
}
