import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, ROOT, gablewattWarm } from '../cli/binary.js'

beforeAll(ensureBuilt)

describe('explain', () => {
  test('tells meaning, rule, source and fix of a finding', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['explain', 'wire.panel-busbar'])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    for (const heading of ['What it means', 'The rule', 'Where the rule stands', 'How to mend it']) {
      expect(stdout).toMatch(new RegExp(`^${heading}$`, 'mu'))
    }
    expect(stdout).toContain('NEC, 2017, 705.12(B)(2)(3)')
  })

  test.each([
    [['bus-rating'], 'bus-rating'],
    [['bus', 'rating'], 'bus-rating'],
    [['Busbar'], 'bus-rating'],
    [['line-side', 'tap'], 'supply-side'],
  ])('%j is a term', async (words, key) => {
    const { exitCode, stdout } = await gablewattWarm(['explain', ...words])
    expect(exitCode).toBe(0)
    expect(stdout.split('\n')[0]).toBe(key)
  })

  test.each([
    ['energy-estimate', /^a measured plant: 15 days/mu],
    ['exit-codes', /3: a file cannot be read or written/u],
  ])('%s is a topic', async (word, says) => {
    const { exitCode, stdout } = await gablewattWarm(['explain', word])
    expect(exitCode).toBe(0)
    expect(stdout).toMatch(says)
  })

  test('a stage that cannot run is explained whatever the stage', async () => {
    expect((await gablewattWarm(['explain', 'yield.cannot-run'])).stdout).toContain('is asked for and never guessed')
  })

  test.each([
    ['wire.panel-busbr', 'did you mean wire.panel-busbar?'],
    ['ampacty', 'did you mean ampacity?'],
    ['busb', 'did you mean '],
    ['zzzzzzzz', "'gablewatt explain' lists all"],
    ['constructor', 'is neither a finding nor a term'],
  ])('%s is refused with a hint', async (word, hint) => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['explain', word])
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' })
    expect(stderr).toContain(hint)
  })

  test('without a word lists everything, and as JSON follows the result schema', async () => {
    const [text, json, csv] = await Promise.all([
      gablewattWarm(['explain']),
      gablewattWarm(['explain', '--json']),
      gablewattWarm(['explain', '--csv']),
    ])
    expect(text.stdout).toMatch(/^wire\.voltage-cold /mu)
    expect(text.stdout).toMatch(/^ampacity /mu)
    const result = JSON.parse(json.stdout) as { values: { findings: unknown[]; terms: unknown[] } }
    const validate = new Ajv2020({ strict: false }).compile(
      JSON.parse(readFileSync(`${ROOT}/schemas/result.schema.json`, 'utf8')) as object,
    )
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true)
    expect(csv.stdout.trimEnd().split('\r\n')).toHaveLength(result.values.findings.length + 1)
    expect(result.values.terms.length).toBeGreaterThanOrEqual(50)
  })
})
