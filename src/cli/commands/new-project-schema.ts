import { existsSync, realpathSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'

const SCHEMA = 'schemas/project.schema.json'

/**
 * Where an editor finds the schema from the file that is written, or undefined when no place can be right: to stdout, or
 * where the program cannot be reached from there by a path that stays.
 */
export function schemaFor(out: string | undefined): string | undefined {
  if (out === undefined || out === '-') return undefined
  const folder = dirname(resolve(out))
  for (let at = folder; ; at = dirname(at)) {
    const packaged = join(at, 'node_modules/gablewatt', SCHEMA)
    if (existsSync(packaged)) return asRelative(folder, packaged)
    if (dirname(at) === at) break
  }
  const own = ownSchema()
  return own === undefined ? undefined : asRelative(folder, own)
}

/** The schema beside the program itself. */
function ownSchema(): string | undefined {
  const script = process.argv[1]
  if (script === undefined || !existsSync(script)) return undefined
  const path = join(dirname(dirname(realpathSync(script))), SCHEMA)
  return existsSync(path) ? path : undefined
}

function asRelative(folder: string, path: string): string {
  const way = relative(folder, path).split(sep).join('/')
  return way.startsWith('.') ? way : `./${way}`
}
