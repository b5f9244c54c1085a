import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync } from 'oxc-parser'
import { describe, expect, test } from 'vitest'

const src = new URL('../../src/', import.meta.url).pathname

interface Place {
  readonly file: string
  readonly line: number
  readonly code: string
}

type Node = Readonly<Record<string, unknown>> & { readonly type: string; readonly start: number; readonly end: number }

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'
}

function visit(node: unknown, seen: (node: Node) => void): void {
  if (Array.isArray(node)) for (const each of node) visit(each, seen)
  else if (isNode(node)) {
    seen(node)
    for (const [key, value] of Object.entries(node)) if (key !== 'type') visit(value, seen)
  }
}

/**
 * Questions whether a map has a key that is no fixed word: `name in map` is true of `constructor`, `toString` and the rest of
 * what every object has. `own(map, name)` and `Object.hasOwn` ask for what the map itself has.
 */
function openQuestions(code: string): readonly Node[] {
  const found: Node[] = []
  visit(parseSync('a.ts', code).program, (node) => {
    if (node.type !== 'BinaryExpression' || node['operator'] !== 'in') return
    const { left, right } = node as unknown as { readonly left: Node; readonly right: Node }
    const name = left.type === 'Literal' ? left['value'] : undefined
    if (typeof name === 'string' && !(name in {})) return
    if (left.type === 'PrivateIdentifier') return
    // A place of a list is a number.
    if (/^(?:index|i|at)$/u.test(code.slice(left.start, left.end))) return
    if (/\.items$|^list$/u.test(code.slice(right.start, right.end))) return
    found.push(node)
  })
  return found
}

/** Files whose keys are places of a list or steps of the ladder of losses, which nobody writes. */
const FIXED = ['climate/site-table.ts', 'yield/array-dc.ts', 'yield/ladder.ts', 'yield/system-ac.ts']

/** `{}` that is filled by keys of files and read by them: `const map: Record<string, ...> = {}` gives back what every object has. */
function plainMaps(code: string): readonly Node[] {
  const found: Node[] = []
  visit(parseSync('a.ts', code).program, (node) => {
    if (node.type !== 'AssignmentExpression') return
    const left = node['left'] as Node
    if (left.type !== 'MemberExpression' || left['computed'] !== true) return
    const property = left['property'] as Node
    const operator = String(node['operator'])
    // `??=` and `+=` read before they write.
    if (operator === '=' || property.type === 'Literal') return
    found.push(node)
  })
  return found
}

function places(find: (code: string) => readonly Node[]): readonly Place[] {
  return readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.includes('.generated.'))
    .flatMap((file) => {
      const code = readFileSync(join(src, file), 'utf8')
      return find(code).map(({ start, end }) => ({
        file,
        line: code.slice(0, start).split('\n').length,
        code: code.slice(start, end),
      }))
    })
}

describe('keys that people write are asked for as own keys', () => {
  test('the rule sees what it is for', () => {
    const seen = (code: string): number => openQuestions(code).length
    expect(seen('const a = name in map')).toBe(1)
    expect(seen("const a = 'constructor' in map")).toBe(1)
    expect(seen("const a = 'format' in map")).toBe(0)
    expect(seen('for (const key in map) tell(key)')).toBe(0)
    expect(plainMaps('sums[name] += 3; sums[name] ??= 3')).toHaveLength(2)
    expect(plainMaps("sums[name] = 3; sums['a'] += 3")).toHaveLength(0)
  })

  test("no 'in' with a key that is not a fixed word", () => {
    expect(places(openQuestions).map(({ file, line, code }) => `${file}:${line} ${code}`)).toEqual([])
  })
  test('no map that is read and written in one by a key', () => {
    const found = places(plainMaps)
    expect(
      found.filter(({ file }) => !FIXED.includes(file)).map(({ file, line, code }) => `${file}:${line} ${code}`),
    ).toEqual([])
    // A file that has none any more leaves the list.
    expect(FIXED.filter((file) => !found.some((one) => one.file === file))).toEqual([])
  })
})
