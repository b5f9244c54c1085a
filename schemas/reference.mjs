/** Prints a Markdown reference of the project file, made from its schema: `npm run reference > reference.md`. */
import { readFileSync } from 'node:fs'

const name = process.argv[2] ?? 'project'
const schema = JSON.parse(readFileSync(new URL(`${name}.schema.json`, import.meta.url), 'utf8'))
const lines = []

lines.push(`# Reference: ${schema.title}`, '', `${schema.description} Made from \`schemas/${name}.schema.json\`.`, '')
lines.push(
  'Keys marked **must** are needed where their part is present. Each part is described once, under its own heading.',
  '',
)
section(schema.title, schema)
for (const part of order(schema)) section(part, schema.$defs[part], true)
process.stdout.write(`${lines.join('\n')}\n`)

/** Parts in the order in which a reader of the file meets them. */
function order(root) {
  const seen = new Set()
  const visit = (node) => {
    if (typeof node !== 'object' || node === null) return
    if (typeof node.$ref === 'string') {
      const part = node.$ref.split('/').at(-1)
      if (seen.has(part)) return
      seen.add(part)
      visit(root.$defs[part])
      return
    }
    for (const [key, value] of Object.entries(node))
      if (!['$defs', 'examples', 'const', 'enum'].includes(key)) visit(value)
  }
  visit({ ...root, $defs: undefined })
  for (const part of Object.keys(root.$defs)) seen.add(part)
  return seen
}

function section(part, node, described = false) {
  lines.push(`## ${part}`, '')
  if (described && node.description !== undefined) lines.push(escaped(node.description), '')
  const keys = Object.entries(node.properties ?? {})
  if (keys.length === 0) {
    lines.push(`${kind(node)}${limits(node)}${example(node)}`, '')
    return
  }
  lines.push('| key | type | what | example |', '|---|---|---|---|')
  for (const [key, value] of keys) {
    const must = (node.required ?? []).includes(key) ? ' **must**' : ''
    const what = value.description ?? target(value)?.description ?? ''
    lines.push(
      `| \`${key}\`${must} | ${cell(kind(value) + limits(value))} | ${cell(what)} | ${cell(example(value).trim())} |`,
    )
  }
  lines.push('')
  if (typeof node.additionalProperties === 'object')
    lines.push(`Further keys are ids of your own: ${kind(node.additionalProperties)}.`, '')
}

function target(node) {
  return node.$ref === undefined ? undefined : schema.$defs[node.$ref.split('/').at(-1)]
}

/** What a value is, with links to other parts. */
function kind(node) {
  if (node.$ref !== undefined) {
    const part = node.$ref.split('/').at(-1)
    return `[${part}](#${part})`
  }
  if (node.const !== undefined) return `\`${node.const}\``
  if (node.enum !== undefined) return node.enum.map((one) => `\`${one}\``).join(', ')
  if (node.anyOf !== undefined) return node.anyOf.map((one) => kind(one) + limits(one)).join(' or ')
  if (node.type === 'array') return `list of ${kind(node.items ?? {})}${limits(node.items ?? {})}`
  if (node.type === 'object')
    return typeof node.additionalProperties === 'object' ? `map of ids to ${kind(node.additionalProperties)}` : 'map'
  return (
    { string: 'text', integer: 'whole number', number: 'number', boolean: 'true or false' }[node.type] ?? 'any value'
  )
}

function limits(node) {
  const low = node.minimum ?? node.exclusiveMinimum
  const high = node.maximum ?? node.exclusiveMaximum
  const parts = [
    low === undefined ? '' : `${node.minimum === undefined ? 'above' : 'from'} ${low}`,
    high === undefined ? '' : `${node.maximum === undefined ? 'below' : 'to'} ${high}`,
    node.minItems === undefined && node.maxItems === undefined
      ? ''
      : `${node.minItems ?? 0} to ${node.maxItems ?? 'any number of'} items`,
  ].filter((part) => part !== '')
  return parts.length === 0 ? '' : ` ${parts.join(' ')}`
}

function example(node) {
  const found = node.examples?.[0] ?? target(node)?.examples?.[0]
  return found === undefined ? '' : ` \`${typeof found === 'string' ? found : JSON.stringify(found)}\``
}

/** Text for a cell of a table. */
function cell(text) {
  return escaped(text).replaceAll('|', '\\|').replaceAll('\n', ' ').replaceAll('\t', '\\t')
}

/** Angle brackets would be taken as HTML. */
function escaped(text) {
  return text.replaceAll('<', '&lt;')
}
