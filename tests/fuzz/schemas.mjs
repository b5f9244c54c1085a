/** Holds the JSON that the program writes against its schemas, its envelope and its seal. */
import { readdirSync, readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { isWhole, schemaOf } from '../../dist/seal/index.js'

const schemas = new URL('../../schemas/', import.meta.url)
const ajv = new Ajv2020({ strict: false, allowUnionTypes: true })
const compiled = new Map()

/** Compiled when it is first needed. */
function validatorOf(name) {
  if (!compiled.has(name)) compiled.set(name, ajv.compile(JSON.parse(readFileSync(new URL(name, schemas), 'utf8'))))
  return compiled.get(name)
}

const STAGES = new Set(readdirSync(new URL('values/', schemas)).map((name) => name.replace('.schema.json', '')))
const ZEROS = '0'.repeat(64)

/** A line of a fleet as `--jsonl` has it, of what a journal keeps. */
function lineOf({ tool, build, schema, outcome }) {
  const { index, items: _items, inputs: _inputs, ...rest } = outcome
  const fleet = { id: ZEROS.slice(32), row: index + 1, rows: index + 1 }
  return { format: 'gablewatt-fleet/2', tool, build, schema, fleet, ...rest, seal: `sha256:${ZEROS}` }
}

/** By the beginning of the format: schema, kind for the fingerprint, and what of it is held against the schema. */
const FORMATS = [
  { start: 'gablewatt-result/', schema: 'result.schema.json', kindOf: ({ stage }) => stage },
  { start: 'gablewatt-fleet/', schema: 'fleet-line.schema.json', kindOf: () => 'fleet-line' },
  { start: 'gablewatt-fleet-baseline/', schema: 'fleet-baseline.schema.json', kindOf: () => 'fleet-baseline' },
  {
    start: 'gablewatt-fleet-journal/',
    schema: 'fleet-line.schema.json',
    kindOf: () => 'fleet-line',
    contentOf: lineOf,
  },
]

/** @returns {string[]} Why data of the program's own formats are not what they should be. */
export function misfits(data) {
  const { format } = data
  const known = FORMATS.find(({ start }) => typeof format === 'string' && format.startsWith(start))
  if (known === undefined) return format === 'gablewatt-packet/2' && !isWhole(data) ? ['a record without its seal'] : []
  const { start, schema, kindOf, contentOf = (whole) => whole } = known
  const kind = kindOf(data)
  const faults = [
    ...(isWhole(data) ? [] : [`${start} its seal does not fit`]),
    ...(data.schema === schemaOf(kind) ? [] : [`${start} bears another schema than that of '${kind}'`]),
    ...errorsOf(schema, contentOf(data)),
  ]
  if (start === 'gablewatt-result/' && STAGES.has(data.stage))
    faults.push(...errorsOf(`values/${data.stage}.schema.json`, data.values))
  return faults
}

function errorsOf(name, data) {
  const validate = validatorOf(name)
  if (validate(data)) return []
  const { instancePath, message, params } = validate.errors[0]
  return [`does not fit ${name}: at '${instancePath}' it ${message} ${JSON.stringify(params).slice(0, 80)}`]
}
