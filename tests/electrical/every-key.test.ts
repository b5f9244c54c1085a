import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { drawPacket, flattenSheet } from '../../src/drawings/index.js'
import { sizeWire } from '../../src/electrical/index.js'
import { runHouse } from '../../src/house/index.js'
import { validate } from '../../src/project/project-validator.generated.js'
import { checkRules } from '../../src/project/rules/index.js'
import type { Project } from '../../src/project/index.js'
import { packetInput } from '../drawings/demo-packet.js'
import { context } from './demo.js'
import { BASES } from './every-key-bases.js'
import type { Base, Case } from './every-key-case.js'
import { CASES, USUAL_IDS } from './every-key-cases.js'

const letters = [
  { id: 'letter', file: 'letter.pdf', title: 'Letter (invented)', date: '2026-02-01' },
  { id: 'control_sheet', file: 'control.pdf', title: 'Listing (invented)', date: '2026-02-01' },
]

/** A map or a list, whose keys are its numbers. */
function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}

/** A value put under `electrical`, or taken away. */
function put(root: Record<string, unknown>, path: string, value: unknown): void {
  const keys = path.split('.')
  const last = keys.pop() ?? ''
  let at = root
  for (const key of keys) {
    const next = at[key]
    const inner = isMap(next) ? next : {}
    at[key] = inner
    at = inner
  }
  if (value === undefined) delete at[last]
  else at[last] = value
}

const pathOf = (key: string, { path }: Case): string =>
  path ?? key.replaceAll(/(\w+)\.\*/g, (_, parent: string) => `${parent}.${USUAL_IDS[parent] ?? '?'}`)

/** The project of a case on one of its sides. */
function sideOf(key: string, one: Case, side: 'before' | 'after'): Project {
  const project = structuredClone(BASES[one.base]())
  const other = { size_awg: '10', ampacity_a: 20, max_ocpd_a: 20, connector_spacing_ft: 5 } as const
  const whole = {
    ...project,
    documents: letters,
    equipment: { ...project.equipment, trunk_cables: { ...project.equipment.trunk_cables, other } },
  }
  const [trunk] = Object.keys(project.equipment.trunk_cables ?? {})
  const electrical: Record<string, unknown> = { ...whole.electrical, ...(trunk === undefined ? {} : { trunk }) }
  for (const [path, value] of Object.entries(one.given)) put(electrical, path, structuredClone(value))
  if (side === 'after' || one.before !== undefined) put(electrical, pathOf(key, one), one[side])
  const changed: Project = { ...whole, electrical }
  validate(changed)
  expect(validate.errors ?? [], `${key} ${side}`).toEqual([])
  return changed
}

const told = (work: () => unknown): string => {
  try {
    return JSON.stringify(work())
  } catch (error) {
    return String(error)
  }
}

const wireOf = (project: Project): string =>
  told(() => {
    const { values, findings, assumptions, worksheet } = sizeWire(project, context())
    return { complaints: checkRules(project), values, findings, assumptions, worksheet }
  })

const drawn = new Map<string, Promise<string>>()

/** Sheets, labels, work plan of a whole house; the same house is drawn once. */
function papersOf(project: Project): Promise<string> {
  const key = JSON.stringify(project)
  const papers = drawn.get(key) ?? drawPapers(project)
  drawn.set(key, papers)
  return papers
}

async function drawPapers(project: Project): Promise<string> {
  const sheets = told(() => drawPacket(packetInput(project)).map((sheet) => flattenSheet(sheet)))
  const work = await runHouse({ project }).work()
  return `${sheets} ${JSON.stringify(work.values)}`
}

async function billOf(project: Project): Promise<string> {
  const { values } = await runHouse({ project }).bom()
  return JSON.stringify(values)
}

async function outcomeOf(base: Base, project: Project): Promise<string> {
  if (base.startsWith('bill')) return billOf(project)
  return base.startsWith('house') ? papersOf(project) : wireOf(project)
}

async function moves(key: string, one: Case): Promise<boolean> {
  const before = await outcomeOf(one.base, sideOf(key, one, 'before'))
  const after = await outcomeOf(one.base, sideOf(key, one, 'after'))
  // Two refusals would tell nothing of the key.
  const refused = [before, after].filter((text) => text.startsWith('StageError'))
  expect(refused.length, `${key}: ${refused.join('; ')}`).toBeLessThan(2)
  return before !== after
}

interface Schema {
  readonly $ref?: string
  readonly type?: string
  readonly items?: Schema
  readonly anyOf?: readonly Schema[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly additionalProperties?: Schema | boolean
  readonly $defs?: Readonly<Record<string, Schema>>
}

const root: Schema = JSON.parse(readFileSync(new URL('../../schemas/project.schema.json', import.meta.url), 'utf8'))

function resolve(schema: Schema): Schema {
  const name = schema.$ref?.split('/').at(-1)
  return name === undefined ? schema : resolve(root.$defs?.[name] ?? {})
}

/** Ways to all keys below one that hold a value; a star for an id, 0 for the first of a list. */
function keysOf(schema: Schema, path: string): string[] {
  const { properties, additionalProperties, items, anyOf } = resolve(schema)
  if (anyOf !== undefined) return [...new Set(anyOf.flatMap((each) => keysOf(each, path)))]
  if (items !== undefined && resolve(items).properties !== undefined) return keysOf(items, `${path}.0`)
  const below = (key: string, inner: Schema) => keysOf(inner, path === '' ? key : `${path}.${key}`)
  if (properties !== undefined) return Object.entries(properties).flatMap(([key, inner]) => below(key, inner))
  return typeof additionalProperties === 'object' ? below('*', additionalProperties) : [path]
}

const keys = keysOf(root.properties?.['electrical'] ?? {}, '')

describe('every key of electrical', () => {
  it('has its case', () => {
    expect(keys.length).toBeGreaterThan(100)
    expect(keys.filter((key) => !Object.hasOwn(CASES, key))).toEqual([])
    expect(Object.keys(CASES).filter((key) => !keys.includes(key))).toEqual([])
  })

  it.each(Object.entries(CASES))('%s moves something', async (key, one) => {
    expect(await moves(key, one)).toBe(true)
  })
})
