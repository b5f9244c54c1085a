import { readFileSync } from 'node:fs'

/** Names of boxes that a project file may use, in the order of the schema. */
export function standardBoxNames(): unknown {
  const schema: unknown = JSON.parse(
    readFileSync(new URL('../../schemas/project.schema.json', import.meta.url), 'utf8'),
  )
  return at(at(at(schema, '$defs'), 'standard_box'), 'enum')
}

function at(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null
    ? Object.entries(value).find(([name]) => name === key)?.[1]
    : undefined
}
