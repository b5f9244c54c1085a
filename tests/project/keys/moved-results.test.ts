import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { parse } from 'yaml'
import { describe, expect, test } from 'vitest'
import { runHouse } from '../../../src/house/index.js'
import { aboutKey, findKeys, loadProject, ProjectError, type MovedResult } from '../../../src/project/index.js'
import { countFitted } from '../../../src/roof/index.js'
import { RandomSource } from '../../../src/values/index.js'
import { StageError } from '../../../src/worksheet/index.js'

const EXAMPLES = new URL('../../../examples/', import.meta.url).pathname
const HOUSES = ['lark-hollow.yaml', 'harbor-point.yaml', 'fleet/springfield-whole-job.yaml']
/** Every number of the sample houses takes minutes; each run draws as many, the same ones each time. */
const DRAWN = Number(process.env['MOVED_KEYS'] ?? (process.env['NIGHTLY'] === '1' ? 10_000 : 6))

/** Results that are worked out here; drawings, sizes and the review of production follow from them. */
const STAGES = {
  roof: 'roof',
  yield: 'yield',
  wire: 'wire',
  mounts: 'ownMounts',
  bom: 'bom',
  payback: 'payback',
  work: 'work',
} as const

/** The values of each stage as text; why it cannot run where it cannot. */
async function valuesOf(file: string, overrides: readonly string[]): Promise<ReadonlyMap<MovedResult, string>> {
  const loaded = loadProject({ path: join(EXAMPLES, file), overrides })
  const house = runHouse({ ...loaded, project: countFitted(loaded.project) })
  const values = new Map<MovedResult, string>()
  for (const [name, stage] of Object.entries(STAGES) as [MovedResult, (typeof STAGES)[keyof typeof STAGES]][]) {
    try {
      values.set(name, JSON.stringify((await house[stage]()).values))
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      values.set(name, error.message)
    }
  }
  return values
}

interface NumberOf {
  readonly path: string
  readonly value: number
}

function numbersIn(data: unknown, path = ''): NumberOf[] {
  if (typeof data === 'number') return [{ path, value: data }]
  if (typeof data !== 'object' || data === null) return []
  return Object.entries(data).flatMap(([key, inner]) => numbersIn(inner, path === '' ? key : `${path}.${key}`))
}

function numbersOf(file: string): NumberOf[] {
  const path = join(EXAMPLES, file)
  const data = parse(readFileSync(path, 'utf8')) as { equipment: { file?: string } }
  const { file: other, ...own } = data.equipment
  const read = other === undefined ? {} : (parse(readFileSync(join(dirname(path), other), 'utf8')) as object)
  return numbersIn({ ...data, equipment: { ...read, ...own } })
}

/** Results that move when one number changes; the first change that the file allows and that moves something. */
async function movedBy(file: string, { path, value }: NumberOf, before: ReadonlyMap<MovedResult, string>) {
  const changes = [value * 1.05, value * 0.95, value + 1, value - 1].map((one) => Number(one.toPrecision(6)))
  for (const changed of changes.filter((one) => one !== value)) {
    try {
      const after = await valuesOf(file, [`${path}=${changed}`])
      const moved = [...before].filter(([name, text]) => after.get(name) !== text).map(([name]) => name)
      if (moved.length > 0) return moved
    } catch (error) {
      // The file does not allow this one.
      if (!(error instanceof ProjectError) && !(error instanceof StageError)) throw error
    }
  }
  return []
}

function claimed(path: string): readonly MovedResult[] {
  const [key] = findKeys(path)
  if (key === undefined) throw new Error(`${path} is no key`)
  return aboutKey(key, path).moves
}

describe.each(HOUSES)('what a number of %s moves was said of its key', (file) => {
  const random = new RandomSource(20_260_401)
  const numbers = numbersOf(file)
  const drawn =
    DRAWN >= numbers.length
      ? numbers
      : Array.from({ length: DRAWN }, () => numbers[Math.floor(random.uniform() * numbers.length)])
  test('in every result', { timeout: 3_600_000 }, async () => {
    const before = await valuesOf(file, [])
    const unsaid: string[] = []
    for (const number of drawn) {
      if (number === undefined) continue
      const moved = await movedBy(file, number, before)
      const missing = moved.filter((one) => !claimed(number.path).includes(one))
      if (missing.length > 0) unsaid.push(`${number.path}: ${missing.join(', ')}`)
    }
    expect(unsaid).toEqual([])
  })
})
