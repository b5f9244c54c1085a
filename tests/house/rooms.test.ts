import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'

const src = new URL('../../src/', import.meta.url).pathname
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (file) => file.endsWith('.ts') && !file.endsWith('.d.ts'),
)

/** Every import of a file of the house, of types too, whether at once or when asked for. */
const imports: readonly { readonly from: string; readonly to: string }[] = files.flatMap((from) =>
  [...readFileSync(join(src, from), 'utf8').matchAll(/(?:from |import\()'(\.[^']*)\.js'/gu)]
    .map(([, path]) => ({ from, to: `${join(dirname(from), path ?? '')}.ts` }))
    .filter(({ to }) => files.includes(to)),
)

/** The first circle that is found in a graph, as the way along it. */
function circleOf(edges: readonly { readonly from: string; readonly to: string }[]): string | undefined {
  const next = new Map<string, string[]>()
  for (const { from, to } of edges) next.set(from, [...(next.get(from) ?? []), to])
  const done = new Set<string>()
  const walk = (at: string, way: readonly string[]): string | undefined => {
    if (way.includes(at)) return [...way.slice(way.indexOf(at)), at].join(' -> ')
    if (done.has(at)) return undefined
    for (const to of next.get(at) ?? []) {
      const circle = walk(to, [...way, at])
      if (circle !== undefined) return circle
    }
    done.add(at)
    return undefined
  }
  for (const start of next.keys()) {
    const circle = walk(start, [])
    if (circle !== undefined) return circle
  }
  return undefined
}

/** The rooms of the house from the ground up: each takes only from floors below its own. */
const FLOORS = [
  ['worksheet', 'seal'],
  ['values', 'tables'],
  ['report'],
  ['files'],
  ['project'],
  ['sun'],
  ['climate', 'roof'],
  ['scene'],
  ['yield', 'structure', 'electrical'],
  ['materials'],
  ['storage'],
  ['money'],
  ['drawings'],
  ['fieldwork'],
  ['house'],
  ['packet'],
  ['papers'],
  ['fleet'],
  ['cli', 'index.ts'],
]
const roomOf = (file: string): string => file.split('/')[0] ?? ''
const floorOf = (file: string): number => FLOORS.findIndex((rooms) => rooms.includes(roomOf(file)))

describe('the rooms of the house', () => {
  test('every room has its floor, and takes from floors below only', () => {
    expect(files.filter((file) => floorOf(file) < 0)).toEqual([])
    const upward = imports.filter(({ from, to }) => roomOf(from) !== roomOf(to) && floorOf(to) >= floorOf(from))
    expect(upward).toEqual([])
  })

  test('the guide for developers has these floors', () => {
    const guide = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8')
    const said = /- One way only: `([^`]+)`/u.exec(guide)?.[1] ?? ''
    const floors = said.split('<-').map((floor) => floor.split(',').map((room) => room.trim()))
    expect(floors).toEqual(FLOORS.map((rooms) => rooms.filter((room) => room !== 'index.ts')))
  })

  test('no files go round in a circle, not even with types', () => {
    expect(imports.length).toBeGreaterThan(2000)
    expect(circleOf(imports)).toBeUndefined()
  })

  test('no folders beside each other go round in a circle', () => {
    const folders = new Set(files.map((file) => dirname(file)))
    const inside = (file: string, parent: string): string | undefined => {
      const rest = parent === '.' ? file : file.startsWith(`${parent}/`) ? file.slice(parent.length + 1) : undefined
      return rest?.includes('/') === true ? rest.split('/')[0] : undefined
    }
    for (const parent of folders) {
      const edges = imports.flatMap(({ from, to }) => {
        const [a, b] = [inside(from, parent), inside(to, parent)]
        return a === undefined || b === undefined || a === b ? [] : [{ from: a, to: b }]
      })
      expect(circleOf(edges), `in ${parent}`).toBeUndefined()
    }
  })

  // Inside the program a file loads only what it prints with, so that a start stays quick.
  test('a folder with a face is entered through it', () => {
    const faces = new Set(files.filter((file) => basename(file) === 'index.ts').map((file) => dirname(file)))
    const around = imports.filter(({ from, to }) => {
      const folder = dirname(to)
      if (roomOf(from) === 'cli' && roomOf(to) === 'cli') return false
      if (!faces.has(folder) || folder === '.' || `${dirname(from)}/`.startsWith(`${folder}/`)) return false
      return basename(to) !== 'index.ts' && to !== 'project/facts.ts'
    })
    expect(around.map(({ from, to }) => `${from} -> ${to}`)).toEqual([])
  })
})
