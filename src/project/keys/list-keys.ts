import { dereference, projectSchema, type Schema } from '../schema.js'

/** A key of the project file: `*` stands for an id of the person's own, `#` for the number of an entry in a list. */
export interface KnownKey {
  readonly pattern: readonly string[]
  /** Schemas that rule its value, dereferenced; several where a value can be of several kinds. */
  readonly schemas: readonly Schema[]
  /** Whether the map above it has to hold it. */
  readonly required: boolean
  /** Whether nothing lies below it: it holds a value, or a list of values. */
  readonly isLeaf: boolean
}

let listed: readonly KnownKey[] | undefined

/** Every key of the project file, each before what lies under it, in the order of the schema. */
export function listKeys(): readonly KnownKey[] {
  if (listed !== undefined) return listed
  const root = projectSchema()
  const found = new Map<string, { pattern: readonly string[]; schemas: Schema[]; required: boolean }>()
  const visit = (schema: Schema, pattern: readonly string[], open: readonly string[], required: boolean): void => {
    // A part that holds itself is listed once.
    const refs = schema.$ref === undefined ? [] : [schema.$ref]
    if (refs.some((ref) => open.includes(ref))) return
    const within = [...open, ...refs]
    const whole = dereference(schema, root)
    if (pattern.length > 0) {
      const name = pattern.join('.')
      const known = found.get(name)
      if (known === undefined) found.set(name, { pattern, schemas: [whole], required })
      else known.schemas.push(whole)
    }
    for (const branch of whole.anyOf ?? whole.oneOf ?? []) {
      const beside = whole.description === undefined ? {} : { description: whole.description }
      visitBranch({ ...beside, ...branch }, pattern, within)
    }
    visitInside(whole, pattern, within)
  }
  const visitBranch = (branch: Schema, pattern: readonly string[], open: readonly string[]): void => {
    if (branch.$ref !== undefined && open.includes(branch.$ref)) return
    const whole = dereference(branch, root)
    found.get(pattern.join('.'))?.schemas.push(whole)
    for (const inner of whole.anyOf ?? whole.oneOf ?? []) visitBranch(inner, pattern, open)
    visitInside(whole, pattern, branch.$ref === undefined ? open : [...open, branch.$ref])
  }
  const visitInside = (whole: Schema, pattern: readonly string[], open: readonly string[]): void => {
    for (const [key, inner] of Object.entries(whole.properties ?? {}))
      visit(inner, [...pattern, key], open, whole.required?.includes(key) === true)
    if (typeof whole.additionalProperties === 'object')
      visit(whole.additionalProperties, [...pattern, '*'], open, false)
    if (whole.items !== undefined) visit(whole.items, [...pattern, '#'], open, false)
  }
  visit(root, [], [], false)
  const parents = new Set(
    [...found.values()].flatMap(({ pattern }) => {
      const above = pattern.slice(0, -1)
      // A list of plain values is one value.
      return pattern.at(-1) === '#' && !holdsKeys(found, pattern) ? [] : [above.join('.')]
    }),
  )
  listed = [...found].map(([name, key]) => ({ ...key, isLeaf: !parents.has(name) }))
  return listed
}

function holdsKeys(
  found: ReadonlyMap<string, { readonly schemas: readonly Schema[] }>,
  pattern: readonly string[],
): boolean {
  const { schemas = [] } = found.get(pattern.join('.')) ?? {}
  return schemas.some(
    ({ properties, additionalProperties, items }) =>
      [properties, items].some((one) => one !== undefined) || typeof additionalProperties === 'object',
  )
}
