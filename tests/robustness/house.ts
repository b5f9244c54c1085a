import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gablewatt, ROOT } from '../cli/binary.js'

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
  const { stdout } = await gablewatt(['help'])
  const names = [...stdout.matchAll(/^ {2}([a-z]+-?[a-z]+) {2,}/gmu)].map(([, name = '']) => name)
  const helps = await Promise.all(names.map(async (name) => [name, (await gablewatt(['help', name])).stdout] as const))
  return helps
    .filter(
      ([, help]) => help.includes('<project.yaml>') && help.includes('--json') && !/<production\.csv>/u.test(help),
    )
    .map(([name]) => name)
}
