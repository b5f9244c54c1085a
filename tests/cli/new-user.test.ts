import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isNode, parseDocument } from 'yaml'
import { afterAll, describe, expect, test, vi } from 'vitest'
import { QUESTIONS } from '../../src/cli/commands/ask/questions.js'
import { readPdfSeal } from '../../src/packet/index.js'
import { loadProject } from '../../src/project/index.js'
import { pagesOf } from '../drawings/pdf-text.js'
import { gablewattWarm } from './binary.js'

// Each way runs the program a dozen times.
vi.setConfig({ testTimeout: 240_000 })

const folder = mkdtempSync(join(tmpdir(), 'new-user-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Somebody at an editor: changes a file by hand, and counts the keys that were typed. */
class Typist {
  readonly path: string
  typed = 0
  confirmed = 0

  constructor(name: string) {
    this.path = join(folder, name)
  }

  /** Types a value over what stands at a path, marker and all; with a map on one line each value in it counts. */
  over(path: string, value: string): void {
    this.#replace(path, value)
    this.typed += Math.max(1, (value.match(/\w+: /gu) ?? []).length)
  }

  /** Types lines right below the key at a path, or at the end of the file for ''. */
  below(path: string, lines: readonly string[]): void {
    const text = readFileSync(this.path, 'utf8')
    const end = path === '' ? text.length : text.lastIndexOf('\n', this.#range(text, path)[0]) + 1
    writeFileSync(this.path, `${text.slice(0, end)}${lines.join('\n')}\n${text.slice(end)}`)
    this.typed += lines.join('\n').match(/\w+:(?= [^{\n])/gu)?.length ?? 0
  }

  /** Takes away every marker that is left: each value was looked at and is true. */
  confirmAll(): void {
    const text = readFileSync(this.path, 'utf8')
    const head = text.indexOf('format:')
    const body = text.slice(head)
    this.confirmed = body.match(/!made_up/gu)?.length ?? 0
    writeFileSync(this.path, text.slice(0, head) + body.replaceAll(/ ?!made_up(?=\s)/gu, ''))
  }

  #range(text: string, path: string): [number, number] {
    const node: unknown = parseDocument(text, { logLevel: 'silent' }).getIn(path.split('.'), true)
    if (!isNode(node) || node.range === undefined || node.range === null) throw new Error(`${path} is not in the file`)
    const [start, end] = node.range
    return [start, end]
  }

  #replace(path: string, value: string): void {
    const text = readFileSync(this.path, 'utf8')
    const [start, end] = this.#range(text, path)
    const before = text.slice(0, start).replace(/!made_up $/u, '')
    writeFileSync(this.path, `${before}${value}${text.slice(end)}`)
  }
}

async function start(typist: Typist, answers: Readonly<Record<string, string | number>>): Promise<void> {
  const path = join(folder, 'answers.yaml')
  writeFileSync(
    path,
    Object.entries(answers)
      .map(([key, value]) => `${key}: ${JSON.stringify(value)}\n`)
      .join(''),
  )
  const run = await gablewattWarm(['new-project', '--answers', path, '--out', typist.path])
  expect(run.stderr).toContain('wrote')
  expect(Object.keys(answers).length).toBeLessThanOrEqual(QUESTIONS.length)
}

async function addParts(typist: Typist, parts: string): Promise<void> {
  const run = await gablewattWarm(['new-project', '--parts', parts, '--add-to', typist.path, '--force'])
  expect(run.stderr).toBe(`wrote ${typist.path}\n`)
}

interface Checked {
  readonly values: {
    readonly ok: boolean
    readonly next: string | null
    readonly stages: readonly { readonly stage: string; readonly state: string }[]
  }
  readonly findings: readonly { readonly severity: string; readonly id: string; readonly message: string }[]
}

async function check(typist: Typist): Promise<Checked> {
  const run = await gablewattWarm(['check-project', typist.path, '--json'])
  if (run.stdout === '') throw new Error(run.stderr)
  return JSON.parse(run.stdout) as Checked
}

const errorsOf = ({ findings }: Checked) =>
  findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)

/** From a file with all its parts to a packet: a draft first, and none once all is confirmed. */
async function toPacket(typist: Typist): Promise<void> {
  const made = await check(typist)
  expect(errorsOf(made)).toEqual([])
  expect(made.values.stages.map(({ state }) => state)).toEqual(made.values.stages.map(() => 'made_up'))
  const svg = join(folder, 'draft')
  const draft = await gablewattWarm([
    'draw-permit',
    typist.path,
    '--out',
    join(folder, 'draft.pdf'),
    '--svg',
    svg,
    '--force',
  ])
  expect(draft.exitCode).toBe(0)
  expect(readFileSync(join(svg, 'G-001.svg'), 'utf8')).toContain('DRAFT')
  await toPapers(typist, true)
  typist.confirmAll()
  expect(loadProject({ path: typist.path }).madeUp).toEqual([])
  const after = await check(typist)
  expect(errorsOf(after)).toEqual([])
  expect(after.values).toMatchObject({ ok: true, next: null })
  expect(after.values.stages.map(({ state }) => state)).toEqual(after.values.stages.map(() => 'ready'))
  const final = join(folder, 'final')
  const packet = await gablewattWarm([
    'draw-permit',
    typist.path,
    '--out',
    join(folder, 'packet.pdf'),
    '--svg',
    final,
    '--force',
  ])
  expect(packet.exitCode).toBe(0)
  expect(readFileSync(join(final, 'G-001.svg'), 'utf8')).not.toContain('DRAFT')
  expect(readFileSync(join(folder, 'packet.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  await toPapers(typist, false)
}

/** The papers for customer, utility and owner: written, and drafts on each page while anything is made up. */
async function toPapers(typist: Typist, isDraft: boolean): Promise<void> {
  for (const paper of ['proposal', 'application', 'handover']) {
    const path = join(folder, `${paper}.pdf`)
    const run = await gablewattWarm([`write-${paper}`, typist.path, '--out', path, '--force'])
    expect([paper, run.exitCode]).toEqual([paper, 0])
    expect(run.stderr.includes('it is a DRAFT')).toBe(isDraft)
    const pdf = readFileSync(path)
    const pages = await pagesOf(new Uint8Array(pdf))
    expect(pages.map(({ text }) => text.includes('DRAFT'))).toEqual(pages.map(() => isDraft))
    expect(readPdfSeal(pdf)).toMatchObject({ isWhole: true, seal: { paper, draft: isDraft } })
  }
}

/** Wind, snow, rafters and labels as somebody found them. */
function stateSafety(typist: Typist, planes: readonly string[], nominal: string): void {
  typist.over('structure.wind.basic_speed_mph', '110')
  typist.over('structure.snow.ground_psf', '15')
  typist.over('codes.electrical', 'NEC 2020')
  typist.over('roof_access.required_fire_class', 'A')
  for (const plane of planes) {
    typist.over(`structure.framing.${plane}.nominal_size`, nominal)
    typist.over(`structure.framing.${plane}.species`, 'Douglas Fir-Larch')
    typist.over(`structure.framing.${plane}.span_ft`, '11')
  }
  typist.over('document.date', "'2026-04-01'")
  typist.over('parties.owner.name', 'B. Example (invented)')
}

describe('the way of a new user from the first command to a permit packet', () => {
  test('a hip ranch with rates by the hour: 14 answers, at most 60 keys', async () => {
    const typist = new Typist('ranch.yaml')
    await start(typist, {
      place: 'Sacramento, CA',
      address: '4 Hollow Ranch Road (invented)',
      azimuth_deg: 180,
      pitch_in_12: 5,
      eave_ft: 54,
      ridge_ft: 26,
      slope_ft: 15,
      eave_height_ft: 9,
      modules: 10,
      year_kwh: 8400,
      usd_per_kwh: 0.3,
      fixed_usd_per_month: 15,
      bus_a: 200,
      main_a: 200,
    })
    // The rates of the sheet in place of the one price of the bill.
    typist.over('tariff.energy.all_year', '{ periods_usd_per_kwh: { on_peak: 0.42, off_peak: 0.24 } }')
    typist.below('tariff', [
      '  time_of_use: { periods: [on_peak, off_peak], rules: [{ period: on_peak, days: [weekdays], from_hour: 16, to_hour: 21 }], otherwise: off_peak }',
    ])
    await addParts(typist, 'permit,money')
    stateSafety(typist, ['south'], '2x8')
    typist.over('finance.installed_cost_usd', '14200')
    await toPacket(typist)
    expect(typist.typed).toBeLessThanOrEqual(60)
  })

  test('two storeys in an L with a subpanel and a tree: 10 answers, at most 60 keys', async () => {
    const typist = new Typist('ell.yaml')
    await start(typist, {
      place: 'Hartford, CT',
      address: '9 Ell Lane (invented)',
      azimuth_deg: 190,
      pitch_in_12: 7,
      eave_ft: 40,
      slope_ft: 15,
      eave_height_ft: 18,
      modules: 8,
      year_kwh: 10200,
      usd_per_kwh: 0.24,
    })
    // The other leg of the L, and the panel in the garage.
    typist.below('roof_planes', [
      '  west: { azimuth_deg: 280, pitch_in_12: 7, eave_height_ft: 18, outline: { shape: rectangle, width_ft: 24, depth_ft: 15 }, edge_clearance_in: 14 }',
    ])
    typist.below('arrays', [
      '  west: { roof_plane: west, module: m410, modules: 5, inverter: micro366, mounting: near_roof, standoff_in: 4, arrangement: fit }',
    ])
    typist.below('', [
      'electrical:',
      '  distribution:',
      '    panels:',
      '      main: { bus_a: 200, main_a: 200, main_position: end, spaces_free: 2, terminal_temperature_c: 75 }',
      '      garage: { bus_a: 125, main_position: end, breakers_a: [20, 20], spaces_free: 8, terminal_temperature_c: 75 }',
      '    feeders:',
      '      to_garage: { from: main, to: garage, breaker_a: 80, breaker_position: opposite_end, material: copper, size_awg: "3", insulation: THWN-2, length_ft: 30, method: EMT }',
      '  connection: { kind: load_side_breaker, at: garage, breaker_position: opposite_end }',
    ])
    await addParts(typist, 'yield,permit,money')
    typist.over(
      'site.obstacles.tree',
      '{ bearing_deg: 150, distance_ft: 40, width_ft: 18, height_ft: 30, base_height_ft: 8 }',
    )
    stateSafety(typist, ['south', 'west'], '2x10')
    await toPacket(typist)
    expect(typist.typed).toBeLessThanOrEqual(60)
  })
})
