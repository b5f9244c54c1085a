import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { run as runPlan } from '../../src/cli/commands/plan-work.js'
import { workOut, type FleetPlan } from '../../src/fleet/index.js'
import { renderJson } from '../../src/report/index.js'
import { run as runSizes } from '../../src/cli/commands/choose-size.js'
import type { CommandContext, CommandOutcome } from '../../src/cli/subcommand.js'
import {
  arrangeModules,
  loadProject,
  productionLimits,
  readPriceList,
  readProduction,
  runYield,
  spaceMounts,
  wiringOf,
  type Project,
} from '../../src/index.js'
import { drawPacket, packetGaps } from '../../src/drawings/index.js'
import { findExplanation } from '../../src/cli/explanations/index.js'
import { own } from '../../src/values/index.js'

/** Names that every object of the language has, each beside one that none has, of the same length and place in order. */
const NAMES: readonly (readonly [everyObjectHas: string, none: string])[] = [
  ['constructor', 'constructos'],
  ['toString', 'toStrinh'],
  ['hasOwnProperty', 'hasOwnPropertz'],
  ['valueOf', 'valueOg'],
]

type Schema = Readonly<Record<string, unknown>> & { readonly $ref?: string }
type Path = readonly (string | number)[]

const ROOT = new URL('../..', import.meta.url).pathname
const schema = JSON.parse(readFileSync(join(ROOT, 'schemas/project.schema.json'), 'utf8')) as Schema
const defs = schema['$defs'] as Readonly<Record<string, Schema>>
const folder = mkdtempSync(join(tmpdir(), 'gablewatt-own-keys-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** The alternatives that rule a place, references followed; `isId` where one of them was the schema of ids. */
function alternatives(given: Schema): { readonly each: readonly Schema[]; readonly isId: boolean } {
  const { $ref } = given
  if ($ref !== undefined) {
    const name = $ref.replace('#/$defs/', '')
    const found = alternatives(defs[name] ?? {})
    return { each: found.each, isId: found.isId || name === 'id' }
  }
  const inner = ['anyOf', 'oneOf', 'allOf'].flatMap((key) => (given[key] as Schema[] | undefined) ?? [])
  const found = inner.map(alternatives)
  return { each: [given, ...found.flatMap(({ each }) => each)], isId: found.some(({ isId }) => isId) }
}

interface Places {
  /** Ids that the person made up, with the place of their map. */
  readonly ids: { readonly map: Path; readonly id: string; readonly pattern: string }[]
  /** Values that refer to an id. */
  readonly references: { readonly path: Path; readonly value: string; readonly pattern: string }[]
}

function walk(given: Schema, data: unknown, path: Path, pattern: string, places: Places): void {
  const { each, isId } = alternatives(given)
  const isReference =
    isId || each.some((one) => one['type'] === 'string' && /\bids?\b/iu.test(JSON.stringify(one['description'] ?? '')))
  if (typeof data === 'string' && isReference) places.references.push({ path, value: data, pattern })
  if (typeof data !== 'object' || data === null) return
  for (const [key, inner] of Object.entries(data)) {
    for (const one of each) {
      const properties = one['properties'] as Readonly<Record<string, Schema>> | undefined
      const property = Array.isArray(data) ? (one['items'] as Schema | undefined) : own(properties, key)
      const entry = one['additionalProperties']
      if (property !== undefined) {
        walk(property, inner, [...path, key], Array.isArray(data) ? `${pattern}[]` : `${pattern}.${key}`, places)
      } else if (typeof entry === 'object' && !Array.isArray(data)) {
        places.ids.push({ map: path, id: key, pattern })
        walk(entry as Schema, inner, [...path, key], `${pattern}.*`, places)
      }
    }
  }
}

const at = (data: unknown, path: Path): unknown =>
  path.reduce((inner, key) => (inner as Record<string | number, unknown>)[key], data)

/** Maps whose ids have to differ: each its own, but all parts of the installation together. */
const spaceOf = (map: Path): string => map.join('/').replace(/^(electrical\/distribution)\/.*/u, '$1')

/** An id of every kind that the project has, such that no map would hold two of them. */
function chosenIds(data: unknown): { readonly ids: ReadonlySet<string>; readonly patterns: readonly string[] } {
  const { ids: places } = placesOf(data)
  const maps = new Map<string, string[]>()
  for (const { map, id } of places) maps.set(spaceOf(map), [...(maps.get(spaceOf(map)) ?? []), id])
  const ids = new Set<string>()
  const patterns = new Set<string>()
  for (const { id, pattern } of places) {
    if (patterns.has(pattern)) continue
    const collides = [...maps.values()].some((map) => map.includes(id) && map.some((one) => one !== id && ids.has(one)))
    if (collides) continue
    ids.add(id)
    for (const one of places) if (one.id === id) patterns.add(one.pattern)
  }
  return { ids, patterns: [...patterns] }
}

/** The project with these ids renamed, where they stand and where they are referred to. */
function renamed(data: unknown, ids: ReadonlySet<string>, name: string): unknown {
  const copy = structuredClone(data)
  const places = placesOf(copy)
  for (const { path, value } of places.references) {
    const parent = at(copy, path.slice(0, -1)) as Record<string | number, unknown>
    // A circuit of strings is called by its array, equipment of a document by its kind and id.
    const [, kind = '', named = ''] = /^([a-z_]+\.)?(.*)$/su.exec(value) ?? []
    const id = [...ids].find((one) => named === one || named.startsWith(`${one}_s`))
    if (id !== undefined) parent[path.at(-1) as string] = kind + name + named.slice(id.length)
  }
  // The innermost first, as their paths go through the others.
  const maps = new Map(places.ids.map((one) => [one.map.join('/'), one.map]))
  for (const path of [...maps.values()].toSorted((a, b) => b.length - a.length)) {
    const parent = at(copy, path) as Record<string, unknown>
    const entries = Object.entries(parent).map(([key, value]) => [ids.has(key) ? name : key, value] as const)
    for (const key of Object.keys(parent)) delete parent[key]
    Object.assign(parent, Object.fromEntries(entries))
  }
  return copy
}

function placesOf(data: unknown): Places {
  const places: Places = { ids: [], references: [] }
  walk(schema, data, [], '', places)
  return places
}

const plan: FleetPlan = {
  tool: 'gablewatt 0.0.0',
  stages: undefined,
  allowOutside: true,
  outputFolder: join(folder, 'out'),
  write: ['results', 'bom'],
  force: true,
}

const QUICK: FleetPlan = { ...plan, outputFolder: undefined }

/** All that the stages say of a project, with every name as the ordinary one. */
async function everything(data: unknown, [name, ordinary]: readonly [string, string]): Promise<string> {
  const path = join(folder, 'p.yaml')
  writeFileSync(path, JSON.stringify(data))
  // The long ones for one name only.
  const isThorough = name === 'constructor'
  const outcome = await workOut({ index: 0, name: 'h', path, overrides: [] }, isThorough ? plan : QUICK)
  const files = outcome.files.map((file) => readFileSync(join(folder, 'out', file), 'utf8'))
  const more: string[] = []
  if ((outcome.status === 'ok' || outcome.status === 'failed') && isThorough) {
    const loaded = loadProject({ path, allowOutside: true })
    const context: CommandContext = {
      args: [path],
      tool: 'gablewatt 0.0.0',
      project: () => Promise.resolve(loaded),
      earlier: () => Promise.resolve(undefined),
      subcommands: [],
      progress: () => undefined,
    }
    const around = {
      tool: 'gablewatt 0.0.0',
      project: { title: '', digest: '' },
      locate: () => undefined,
      showWork: true,
    }
    for (const stage of [() => runPlan(context, {}), () => runSizes(context, {})]) {
      more.push(await saidBy(async () => textOf(await stage(), around)))
    }
    more.push(await saidBy(() => Promise.resolve(wordsOfPacket(loaded.project, [name, ordinary]))))
  }
  const text = JSON.stringify({ ...outcome, digest: '' }) + [...files, ...more].join('\n')
  expect(outcome.status, text.slice(0, 2000)).not.toBe('defect')
  expect(text).not.toMatch(/native code|\[object|NaN|undefined/u)
  return text
    .replaceAll(/"(?:digest|seal)": ?"(?:sha256:)?[0-9a-f]{64}"/gu, '')
    .replaceAll(name, ordinary)
    .replaceAll(name.toUpperCase(), ordinary.toUpperCase())
}

/** Where a line or a sheet ends depends on the letters; which words there are does not. */
function wordsOfPacket(project: Project, [name, ordinary]: readonly [string, string]): string {
  const arrangement = arrangeModules(project)
  const { modules, planes } = arrangement.values
  const mounts =
    project.structure === undefined ? undefined : spaceMounts(project, { modules, planes: Object.values(planes) })
  const wiring = project.electrical === undefined ? undefined : wiringOf(project)
  const sheets = drawPacket({
    project,
    size: '11x17',
    draft: true,
    arrangement,
    mounts,
    wire: wiring,
    documents: [],
    findings: packetGaps({ project, arrangement }),
  })
  const words = JSON.stringify(sheets).match(/"text":"[^"]*"/gu) ?? []
  return (
    words
      .join(' ')
      .replaceAll(/"text":"|"/gu, '')
      .replaceAll(name, ordinary)
      .replaceAll(name.toUpperCase(), ordinary.toUpperCase())
      // A long name breaks at its points.
      .replaceAll(/\.(?=\S)/gu, '. ')
      .split(/(?:\s|\\n)+/u)
      .toSorted()
      .join(' ')
  )
}

function textOf(outcome: CommandOutcome, around: Parameters<typeof renderJson>[1]): string {
  return 'report' in outcome ? renderJson(outcome.report, around) : ''
}

/** A stage that cannot run says so; a defect is thrown on. */
async function saidBy(stage: () => Promise<string>): Promise<string> {
  try {
    return await stage()
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'StageError') throw error
    return error.message
  }
}

/** Houses that together have every place; the rest of the schema is filled in below. */
const HOUSES: readonly string[] = [
  'lark-hollow.yaml',
  'harbor-point.yaml',
  ...readdirSync(join(ROOT, 'examples/fleet'))
    .filter((name) => name.endsWith('.yaml') && name !== 'equipment.yaml')
    .map((name) => `fleet/${name}`),
]

/** What no example has, in the examples that have most. */
const MORE: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'lark-hollow.yaml': {
    'roof_planes.south.rescue_openings': { window: { x_ft: 2, y_ft: 0, width_ft: 3 } },
    'materials.extra_items': { spare: { quantity: 1, why: 'One to keep' } },
    'materials.fees': { permit: { name: 'Permit', usd: 300 } },
    'materials.rentals': { lift: { name: 'Lift', usd: 150 } },
  },
  'harbor-point.yaml': {
    'tariff.demand': { peak: { usd_per_kw: 3, periods: ['on_peak'] } },
    'tariff.tier_adders': { high_use: { above_kwh_per_month: 700, usd_per_kwh: 0.02 } },
    'tariff.solar.fixed': { meter: { usd_per_month: 3 } },
    'tariff.solar.net_billing': {
      netting: 'hour',
      export_periods_usd_per_kwh: { on_peak: 0.08, off_peak: 0.03 },
      credit: { offsets: 'all', settle: 'annual', true_up_month: 4, paid_out_pct: 0 },
    },
  },
}

function put(data: unknown, path: readonly string[], value: unknown): void {
  const parent = at(data, path.slice(0, -1)) as Record<string, unknown>
  parent[path.at(-1) as string] = value
}

const houses = new Map<string, unknown>()
/** Houses that together have all kinds of ids, with those that are renamed. */
const named = new Map<string, ReadonlySet<string>>()
const idPatterns = new Set<string>()
/** Pattern of a place to the first house that has it. */
const referencePlaces = new Map<string, { readonly house: string; readonly place: Places['references'][number] }>()
for (const house of HOUSES) {
  const path = join(ROOT, 'examples', house)
  const { project, folder: home } = loadProject({ path })
  const data = structuredClone(project) as unknown as Record<string, unknown>
  absolute(data, home)
  Object.entries(MORE[house] ?? {}).forEach(([place, value]) => put(data, place.split('.'), value))
  houses.set(house, data)
  const { ids, patterns } = chosenIds(data)
  if (patterns.some((pattern) => !idPatterns.has(pattern))) named.set(house, ids)
  for (const pattern of patterns) idPatterns.add(pattern)
  for (const place of placesOf(data).references) {
    if (!referencePlaces.has(place.pattern)) referencePlaces.set(place.pattern, { house, place })
  }
}

/** Named files are found from anywhere; those that extend the project have been taken in. */
function absolute(data: Record<string, unknown>, home: string): void {
  const { equipment, materials, site, usage } = data as Record<string, Record<string, unknown> | undefined>
  delete equipment?.['file']
  if (typeof materials?.['price_list'] === 'string') materials['price_list'] = join(home, materials['price_list'])
  const climate = site?.['climate']
  if (typeof climate === 'object' && climate !== null && 'epw' in climate) {
    Object.assign(climate, { epw: join(home, String(climate.epw)) })
  }
  if (typeof usage?.['green_button'] === 'string') usage['green_button'] = join(home, usage['green_button'])
}

beforeAll(() => mkdirSync(join(folder, 'out'), { recursive: true }))

describe('an id may be called as something that every object has', () => {
  test('the places that are tried: every one of the schema that takes an id', () => {
    expect([...idPatterns].toSorted()).toMatchInlineSnapshot(`
      [
        ".arrays",
        ".arrays.*.arrangement.blocks",
        ".electrical.branches",
        ".electrical.branches.*.modules",
        ".electrical.disconnects",
        ".electrical.distribution.panels",
        ".electrical.runs",
        ".electrical.runs.*.segments",
        ".equipment.inverters",
        ".equipment.modules",
        ".equipment.mounts",
        ".equipment.rails",
        ".equipment.storage_units",
        ".equipment.trunk_cables",
        ".incentives",
        ".inverter_units",
        ".materials.extra_items",
        ".materials.fees",
        ".materials.rentals",
        ".proposal.warranties",
        ".roof_planes",
        ".roof_planes.*.obstructions",
        ".roof_planes.*.rescue_openings",
        ".site.obstacles",
        ".site_plan.buildings",
        ".site_plan.equipment",
        ".site_plan.roof_planes",
        ".storage.backup.loads",
        ".structure.framing",
        ".tariff.demand",
        ".tariff.energy",
        ".tariff.energy.*.periods_usd_per_kwh",
        ".tariff.fixed",
        ".tariff.riders",
        ".tariff.seasons",
        ".tariff.solar.fixed",
        ".tariff.solar.net_billing.export_periods_usd_per_kwh",
        ".tariff.taxes",
        ".tariff.tier_adders",
      ]
    `)
    expect([...referencePlaces.keys()].toSorted()).toMatchInlineSnapshot(`
      [
        ".arrays.*.inverter",
        ".arrays.*.module",
        ".arrays.*.roof_plane",
        ".arrays.*.strings[].inverter_unit",
        ".documents[].id",
        ".documents[].items[]",
        ".electrical.connection.at",
        ".electrical.distribution.feeders.*.from",
        ".electrical.distribution.feeders.*.to",
        ".electrical.runs.*.carries[]",
        ".electrical.trunk",
        ".inverter_units.*.inverter",
        ".site.obstacles.*.arrays[]",
        ".site_plan.buildings.*.name",
        ".storage.unit",
        ".structure.framing.*.rafters_verified_by",
        ".structure.mount",
        ".structure.rail",
        ".tariff.demand.*.periods[]",
        ".tariff.time_of_use.periods[]",
        ".tariff.time_of_use.rules[].period",
      ]
    `)
  })

  test.each([...named])(
    '%s',
    async (house, ids) => {
      for (const names of NAMES) {
        const [name, ordinary] = names
        const data = houses.get(house)
        const special = await everything(renamed(data, ids, name), names)
        const usual = await everything(renamed(data, ids, ordinary), names)
        expect(special).toBe(usual)
        expect(special).toMatch(/"status":"(?:ok|failed)"/u)
      }
    },
    120_000,
  )

  test.each([...referencePlaces])(
    '%s, where nothing is called so',
    async (_pattern, { house, place }) => {
      for (const names of NAMES.slice(0, 2)) {
        const [special, ordinary] = await Promise.all(
          names.map((name) => {
            const copy = structuredClone(houses.get(house))
            const parent = at(copy, place.path.slice(0, -1)) as Record<string | number, unknown>
            parent[place.path.at(-1) as string] = name
            return copy
          }),
        )
        expect(await everything(special, names)).toBe(await everything(ordinary, names))
      }
    },
    120_000,
  )
})

describe('names that come from elsewhere', () => {
  const house = join(ROOT, 'examples/lark-hollow.yaml')
  const all = [...NAMES, ['__proto__', '__prato__']] as const
  /** For the places of overrides two of these and the prototype, in the night all: the others differ only where something is called so. */
  const some =
    process.env['NIGHTLY'] === undefined
      ? all.filter(([name]) => /^(?:constructor|toString|__proto__)$/u.test(name))
      : all
  /** No id and no key of any part, and refused in other words than a misspelt one. */
  const isRefused = (name: string, text: string): boolean => name === '__proto__' && text.includes('"status":"invalid"')

  test.each([
    'X=1',
    'site.X=1',
    'site.X.Y=1',
    'arrays.X.modules=3',
    'arrays.X={}',
    'roof_planes.X.tilt_deg=20',
    'roof_planes.south.X=20',
    'equipment.modules.X.pmax_w=400',
    'equipment.rails.X=none',
    'electrical.branches={X: {modules: {X: 2}}}',
    'electrical.runs.X={carries: [X], segments: {X: {location: indoors, length_ft: 3, raceway: EMT}}}',
    'electrical.trunk=X',
    'electrical.disconnects={X: {kind: X}}',
    'structure.mount=X',
    'structure.framing.X.kind=rafter',
    'materials.price_list=X',
    'tariff.seasons={X: {from: 06-01, to: 09-30}}',
    'tariff.energy.X.usd_per_kwh=0.2',
    'tariff.demand={X: {usd_per_kw: 3, periods: [X], seasons: [X]}}',
    'tariff.tier_adders={X: {seasons: [X]}}',
    'tariff.fixed.X.usd_per_month=3',
    'incentives={X: {kind: X}}',
    'materials.extra_items={X: {}}',
    'site.obstacles={X: {arrays: [X]}}',
    'production.module_columns={X: X}',
    'usage.load_shape=X',
    'codes.electrical=X',
  ])('--set %s', async (override) => {
    for (const [name, ordinary] of some) {
      const said = async (word: string): Promise<string> => {
        const job = { index: 0, name: 'h', path: house, overrides: [override.replaceAll('X', word)] }
        const outcome = await workOut(job, QUICK)
        expect(outcome.status).not.toBe('defect')
        return JSON.stringify({ ...outcome, digest: '' }).replaceAll(word, ordinary)
      }
      const [special, usual] = [await said(name), await said(ordinary)]
      if (!isRefused(name, special)) expect(special).toBe(usual)
    }
    expect(({} as Record<string, unknown>)['modules'] ?? ({} as Record<string, unknown>)['Y']).toBeUndefined()
  })

  test('items of a price list', () => {
    const list = (id: string): unknown => {
      const text = `format: gablewatt-prices/1\nsupplier: Invented\nitems:\n  module.${id}: { name: Thing, usd: 3, pack: each, includes: { module.${id}: 1 } }\n`
      try {
        return JSON.stringify(readPriceList('p.yaml', text)).replaceAll(id, 'X')
      } catch (error) {
        return (error as Error).message.replaceAll(id, 'X')
      }
    }
    for (const [name, ordinary] of NAMES) expect(list(name)).toBe(list(ordinary))
  })

  test('columns of a table', () => {
    const loaded = loadProject({ path: house })
    const limits = productionLimits(loaded.project, runYield(loaded.project, loaded.files))
    for (const [name, ordinary] of all) {
      const said = (word: string): string =>
        JSON.stringify([
          readProduction('p.csv', 'date,kWh\n2026-05-01,20\n', { value_column: word }, limits),
          readProduction('p.csv', 'date,kWh\n2026-05-01,20\n', { module_columns: { [word]: word } }, limits),
          readProduction(`p.csv`, `date,${word}\n2026-05-01,20\n`, { value_column: word, unit: 'kwh' }, limits),
        ]).replaceAll(word, ordinary)
      expect(said(name)).toBe(said(ordinary))
    }
  })

  test('findings that are explained', () => {
    for (const [name] of all) {
      expect(findExplanation(name)).toBeUndefined()
      expect(findExplanation(`x.${name}`)).toBeUndefined()
    }
  })
})
