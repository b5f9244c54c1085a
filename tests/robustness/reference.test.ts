import { readFileSync } from 'node:fs'
import { execa } from 'execa'
import { expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

interface Part {
  readonly properties?: Readonly<Record<string, { readonly description?: string }>>
}

test.each(['project', 'price-list'])('the reference of %s holds every key with its description', async (name) => {
  const schema = JSON.parse(readFileSync(`${ROOT}/schemas/${name}.schema.json`, 'utf8')) as Part & {
    $defs: Record<string, Part>
  }
  const { stdout } = await execa(process.execPath, ['schemas/reference.mjs', name], { cwd: ROOT })
  const sections = new Map(stdout.split(/^## /mu).map((section) => [section.slice(0, section.indexOf('\n')), section]))
  for (const [part, { properties = {} }] of Object.entries(schema.$defs)) {
    const section = sections.get(part) ?? ''
    expect(section, part).not.toBe('')
    for (const [key, { description = '' }] of Object.entries(properties)) {
      expect(section).toContain(`| \`${key}\``)
      expect(section).toContain(
        description
          .replaceAll('<', '&lt;')
          .replaceAll('|', String.raw`\|`)
          .replaceAll('\n', ' '),
      )
    }
  }
  for (const key of Object.keys(schema.properties ?? {})) expect(stdout).toContain(`| \`${key}\``)
  // A link to a part that is not there, or a table row with a wrong number of cells, is a slip of the generator.
  const links = [...stdout.matchAll(/\]\(#([^)]+)\)/gu)].map(([, to = '']) => to)
  expect(links.filter((to) => !sections.has(to))).toEqual([])
  const rows = stdout.split('\n').filter((line) => line.startsWith('|'))
  expect(rows.filter((row) => row.replaceAll(String.raw`\|`, '').split('|').length !== 6)).toEqual([])
  expect(stdout).not.toMatch(/undefined|\[object/u)
})

test('the reference of the library holds every export with its text and its declaration', async () => {
  ensureBuilt()
  const { stdout } = await execa(process.execPath, ['schemas/library-reference.mjs'], { cwd: ROOT })
  const sections = new Map(stdout.split(/^### /mu).map((section) => [section.slice(0, section.indexOf('\n')), section]))
  const entry = readFileSync(`${ROOT}/src/index.ts`, 'utf8')
  const names = [...entry.matchAll(/^export (?:type )?\{([^}]*)\}/gmu)].flatMap(([, list = '']) =>
    list.split(',').map((name) => name.replace(/^\s*type\s/u, '').trim()),
  )
  const wanted = names.filter((name) => name !== '')
  expect(wanted.length).toBeGreaterThan(50)
  for (const name of wanted) {
    const section = sections.get(name) ?? ''
    expect(section, name).toMatch(
      new RegExp(`\`\`\`ts\\n(?:abstract )?(?:function|class|interface|type|const) ${name}\\b`, 'u'),
    )
    // A heading, a sentence about it, and only then the code.
    expect(section.split('\n')[2], name).toMatch(/^[A-Z\d`].{15,}/u)
  }
  expect(stdout).not.toMatch(/\bundefined\]|\[object/u)
})
