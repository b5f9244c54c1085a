import { readFileSync } from 'node:fs'

/** The part of JSON Schema that the project schema uses. */
export interface Schema {
  readonly $ref?: string
  readonly $defs?: Readonly<Record<string, Schema>>
  readonly title?: string
  readonly description?: string
  readonly examples?: readonly unknown[]
  readonly type?: string | readonly string[]
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly exclusiveMaximum?: number
  readonly multipleOf?: number
  readonly pattern?: string
  readonly minLength?: number
  readonly maxLength?: number
  readonly items?: Schema
  readonly minItems?: number
  readonly maxItems?: number
  readonly uniqueItems?: boolean
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly additionalProperties?: boolean | Schema
  readonly propertyNames?: Schema
  readonly minProperties?: number
  readonly maxProperties?: number
  readonly dependentRequired?: Readonly<Record<string, readonly string[]>>
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly allOf?: readonly Schema[]
  readonly not?: Schema
  readonly if?: Schema
  readonly then?: Schema
  readonly else?: Schema
}

let loaded: Schema | undefined

/** The project schema, read when something is to be explained. It lies as far from `src/` as from `dist/`. */
export function projectSchema(): Schema {
  loaded ??= JSON.parse(readFileSync(new URL('../../schemas/project.schema.json', import.meta.url), 'utf8')) as Schema
  return loaded
}

/** Follows `$ref`; what stands beside it (a description) wins. */
export function dereference(schema: Schema, root: Schema): Schema {
  if (schema.$ref === undefined) return schema
  const target = root.$defs?.[schema.$ref.replace('#/$defs/', '')]
  if (target === undefined) throw new Error(`the project schema has no ${schema.$ref}`)
  const { $ref: _, ...beside } = schema
  return { ...dereference(target, root), ...beside }
}

/** The schema itself, or the alternatives that it offers, each dereferenced. */
export function alternatives(schema: Schema, root: Schema): Schema[] {
  const whole = dereference(schema, root)
  const { anyOf, oneOf, ...own } = whole
  const branches = (anyOf ?? oneOf)?.flatMap((branch) => alternatives(branch, root))
  if (branches === undefined) return [whole]
  return own.type === undefined && own.properties === undefined ? branches : [own, ...branches]
}

/** Schemas that rule the value under a key or index of what `schema` describes; none when the key is not allowed. */
export function childSchemas(schema: Schema, segment: string | number, root: Schema): Schema[] {
  return alternatives(schema, root).flatMap((each) => {
    const isIndex = /^\d+$/.test(String(segment))
    if (each.items !== undefined && isIndex) return [each.items]
    if (each.properties !== undefined && Object.hasOwn(each.properties, segment)) {
      const property = each.properties[String(segment)]
      return property === undefined ? [] : [property]
    }
    return typeof each.additionalProperties === 'object' ? [each.additionalProperties] : []
  })
}

/** JSON types that a schema takes, read from `type`, `const`, `enum` and its alternatives. */
export function typesOf(schema: Schema, root: Schema): Set<string> {
  return new Set(
    alternatives(schema, root).flatMap((each) => {
      if (each.type !== undefined) return each.type
      if ('const' in each) return [typeOfValue(each.const)]
      if (each.enum !== undefined) return each.enum.map(typeOfValue)
      if (each.properties !== undefined || each.additionalProperties !== undefined) return ['object']
      return each.items === undefined ? [] : ['array']
    }),
  )
}

export function typeOfValue(value: unknown): string {
  if (value === null) return 'null'
  return Array.isArray(value) ? 'array' : typeof value
}
