import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { explain } from '../../src/project/explain/explain.js'
import { ProjectError } from '../../src/project/index.js'
import { parseYaml } from '../../src/project/parse-yaml.js'
import { isPlainMap } from '../../src/project/plain-data.js'
import { markedLine } from '../../src/report/index.js'
import { validate } from '../../src/project/project-validator.generated.js'
import { projectSchema } from '../../src/project/schema.js'
import { failureOf, loadText, STARTER } from './support.js'

const LINES = STARTER.split('\n')
/** Lines of the starter that begin with a key, and where the key stands. */
const KEYS = LINES.flatMap((line, i) => {
  const [, indent = '', key = ''] = /^( *)([a-z_0-9]+):/.exec(line) ?? []
  return key === '' ? [] : [{ line: i + 1, column: indent.length + 1, key }]
})
/** Ids are the person's own: another name is no typo by itself. */
const IDS = new Set(['south', 'm410', 'micro366'])
/** Whether another key of the same map has the name: no key between the two stands further left. */
const hasNeighbour = (line: number, column: number, name: string) =>
  KEYS.some(
    (other) =>
      other.key === name &&
      other.column === column &&
      !KEYS.some(
        (between) =>
          between.column < column &&
          between.line > Math.min(line, other.line) &&
          between.line < Math.max(line, other.line),
      ),
  )

describe('properties of reading a project', () => {
  test('every slip of one letter in any key of the starter is told at its line and column', () => {
    // A letter dropped, doubled, or swapped with the next: a third of them here, all of them in the night.
    const slips = KEYS.filter(({ key }) => !IDS.has(key)).flatMap(({ line, column, key }) =>
      Array.from({ length: key.length }, (_, i) => i).flatMap((i) =>
        [
          key.slice(0, i) + key.slice(i + 1),
          key.slice(0, i + 1) + key.slice(i),
          key.slice(0, i) + (key[i + 1] ?? '') + key.charAt(i) + key.slice(i + 2),
        ]
          .filter((typo) => typo !== key && /^[a-z]/.test(typo))
          .map((typo) => ({ line, column, key, typo })),
      ),
    )
    expect(slips.length).toBeGreaterThan(500)
    const tried = process.env['NIGHTLY'] === '1' ? slips : slips.filter((_, index) => index % 3 === 0)
    for (const { line, column, key, typo } of tried) {
      const text = LINES.map((each, n) => (n + 1 === line ? each.replace(key, typo) : each)).join('\n')
      const { problems } = failureOf(() => loadText(text))
      expect(problems, typo).toHaveLength(1)
      // A slip can make the name of a neighbour: then the map has the same key twice.
      const message = hasNeighbour(line, column, typo)
        ? 'this key stands twice in the same map; keep one of them'
        : `unknown key; did you mean ${key}?`
      expect(problems[0], typo).toMatchObject({ line, column, message })
    }
  })

  test('whatever is done to the text, only a ProjectError with places comes out', () => {
    const snippets = [
      '{',
      '}',
      '[',
      ']',
      ': ',
      '- ',
      '&a ',
      '*a',
      '!!str ',
      '"',
      "'",
      '|',
      '>',
      '%',
      '@',
      '\t',
      '\n',
      '\r',
      '#',
      '? ',
      '<<: ',
    ]
    const piece = fc.oneof(
      fc.constantFrom(
        ...snippets,
        '.nan',
        '-.inf',
        '0x10',
        '1e999',
        'null',
        '~',
        '__proto__',
        '\uFEFF',
        '\uD800',
        '...\n',
        '---\n',
      ),
      fc.string({ maxLength: 5, unit: 'binary' }),
      fc.constantFrom(...LINES).map((line) => `${line}\n`),
    )
    const edit = fc.record({ at: fc.nat(STARTER.length), remove: fc.oneof(fc.constant(0), fc.nat(30)), insert: piece })
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        const text = edits.reduce(
          (all, { at, remove, insert }) => all.slice(0, at) + insert + all.slice(at + remove),
          STARTER,
        )
        try {
          loadText(text)
        } catch (error) {
          expect(error).toBeInstanceOf(ProjectError)
          const failure = error as ProjectError
          const { problems, message } = failure
          expect(problems.length).toBeGreaterThan(0)
          expect(message).not.toMatch(/undefined|NaN(?!\))|\[object/)
          expect(failure.format({ frames: true })).toContain(markedLine(problems[0]?.path ?? ''))
          for (const { line = 1, column = 1 } of problems) {
            expect(line).toBeGreaterThanOrEqual(1)
            expect(line).toBeLessThanOrEqual(text.split('\n').length + 1)
            expect(column).toBeGreaterThanOrEqual(1)
          }
        }
      }),
      { numRuns: 100 },
    )
  })

  test('the explanation finds something exactly when the precompiled validator refuses', () => {
    const { data: starter } = parseYaml('x', STARTER)
    const paths: (readonly string[])[] = []
    const walk = (value: unknown, path: readonly string[]): void => {
      paths.push(path)
      if (isPlainMap(value)) for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key])
    }
    walk(starter, [])
    const value = fc.oneof(
      fc.constantFrom(null, true, '', 'fit', 'nearby', 0, -1, 1e6, NaN, Infinity, 0.5),
      fc.object({ maxDepth: 1 }),
      fc.array(fc.double(), { maxLength: 13 }),
    )
    const root = projectSchema()
    const part = fc.constantFrom(...Object.keys(root.properties ?? {}))
    const place = fc.oneof(
      fc.constantFrom(...paths.slice(1)),
      part.map((key) => [key]),
    )
    fc.assert(
      fc.property(place, fc.option(fc.string({ maxLength: 6 })), value, (path, extra, replacement) => {
        const data = structuredClone(starter)
        const full = extra === null ? path : [...path, extra]
        const holder = full.slice(0, -1).reduce<unknown>((at, key) => (isPlainMap(at) ? at[key] : undefined), data)
        fc.pre(isPlainMap(holder))
        if (isPlainMap(holder)) holder[full.at(-1) ?? ''] = replacement
        const complaints = explain(root, data, [], { root, sourceAt: () => undefined })
        expect(complaints.length === 0, JSON.stringify(complaints)).toBe(validate(data))
      }),
      { numRuns: 100 },
    )
  })
})
