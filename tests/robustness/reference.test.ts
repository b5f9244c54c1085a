import { readFileSync } from 'node:fs'
import { execa } from 'execa'
import { expect, test } from 'vitest'
import { ROOT } from '../cli/binary.js'

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
