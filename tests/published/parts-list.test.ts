import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv } from 'ajv'
import { beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

interface Component {
  readonly name: string
  readonly version: string
  readonly 'bom-ref': string
  readonly hashes: readonly { readonly content: string }[]
  readonly purl: string
}
interface Parts {
  readonly metadata: { readonly component: Component }
  readonly components: readonly Component[]
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[]
}
let parts: Parts
beforeAll(() => {
  ensureBuilt()
  parts = JSON.parse(readFileSync(join(ROOT, 'dist/program/parts.cdx.json'), 'utf8')) as Parts
})

// Source: JSON schema of CycloneDX 1.5 (OWASP, Apache-2.0) with the list of SPDX licences, here without its descriptions.
describe('the list of parts', () => {
  test('holds to the published schema', () => {
    const folder = join(ROOT, 'tests/published/cyclonedx')
    const schemas = readdirSync(folder).map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as object)
    const ajv = new Ajv({ strict: false, validateFormats: false, schemas })
    const validate = ajv.getSchema('http://cyclonedx.org/schema/bom-1.5.schema.json')
    expect(validate).toBeDefined()
    expect(validate?.(parts), JSON.stringify(validate?.errors)).toBe(true)
    expect(validate?.({ ...parts, bomFormat: 'another' })).toBe(false)
  })

  test('names the program by its hash', () => {
    const files = ['main.cjs', 'rest.cjs'].map((name) => readFileSync(join(ROOT, 'dist/program', name)))
    const digest = createHash('sha256').update(Buffer.concat(files)).digest('hex')
    expect(parts.metadata.component.hashes[0]?.content).toBe(digest)
  })

  test('holds what package.json asks for, with what that asks for, and nothing else', () => {
    const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      readonly dependencies: Readonly<Record<string, string>>
    }
    const asked = new Map(parts.dependencies.map(({ ref, dependsOn }) => [ref, dependsOn]))
    const own = Object.entries(dependencies).map(([name, version]) => `${name}@${version}`)
    expect(asked.get('gablewatt@0.1.0')).toEqual(own.toSorted())
    const reached = new Set<string>()
    const follow = (ref: string): void => {
      if (reached.has(ref)) return
      reached.add(ref)
      for (const next of asked.get(ref) ?? []) follow(next)
    }
    for (const ref of own) follow(ref)
    expect([...reached].toSorted()).toEqual(parts.components.map((part) => part['bom-ref']).toSorted())
    expect(reached.size).toBeGreaterThan(own.length)
  })

  test('names a package in a scope as package URLs do', () => {
    const one = parts.components.find(({ name }) => name === '@cantoo/pdf-lib')
    expect(one?.purl).toBe(`pkg:npm/%40cantoo/pdf-lib@${one?.version ?? ''}`)
  })
})
