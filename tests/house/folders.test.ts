import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'

const SOURCES = new URL('../../src', import.meta.url).pathname
const guide = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8')

/** Folders of one step, lowest step first, as DEVELOPERS.md has them: `tables, worksheet <- project <- cli`. */
const steps = (/- One way only: `([^`]+)`/u.exec(guide)?.[1] ?? '')
  .split('<-')
  .map((step) => step.split(',').map((name) => name.trim()))
const stepOf = new Map(steps.flatMap((names, step) => names.map((name) => [name, step] as const)))

/** May be imported from another folder: the face of a folder, and the pure one of `project`. */
const FACES = new Set(['index.ts', 'project/facts.ts'])

interface Import {
  /** Path below `src`. */
  readonly file: string
  readonly of: string
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(SOURCES, file), 'utf8')
  const found = text.matchAll(/(?:\bfrom |\bimport\(|^import )'(\.[^']+)\.js'/gmu)
  return [...found].map(([, name = '']) => ({
    file,
    of: `${relative(SOURCES, resolve(SOURCES, dirname(file), name))}.ts`,
  }))
}

const folderOf = (file: string): string => file.split('/')[0] ?? ''
const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((name) => /(?<!\.d)\.ts$/u.test(name))
const across = files.flatMap(importsOf).filter(({ file, of }) => file.includes('/') && folderOf(file) !== folderOf(of))

describe('the folders of the house', () => {
  test('stand all in the order of DEVELOPERS.md, each once', () => {
    const folders = readdirSync(SOURCES, { withFileTypes: true }).filter((entry) => entry.isDirectory())
    expect(steps.flat().toSorted()).toEqual(folders.map(({ name }) => name).toSorted())
    expect(across.length).toBeGreaterThan(500)
  })

  test('take only from folders below', () => {
    const upwards = across.filter(
      ({ file, of }) => !((stepOf.get(folderOf(of)) ?? NaN) < (stepOf.get(folderOf(file)) ?? NaN)),
    )
    expect(upwards.map(({ file, of }) => `${file} takes ${of}`)).toEqual([])
  })

  test('are entered through their faces only', () => {
    const past = across.filter(({ of }) => {
      const [folder = '', ...rest] = of.split('/')
      // Each area of the tables has a face of its own.
      return folder === 'tables' ? rest.at(-1) !== 'index.ts' : !FACES.has(rest.join('/')) && !FACES.has(of)
    })
    expect(past.map(({ file, of }) => `${file} takes ${of}`)).toEqual([])
  })
})
