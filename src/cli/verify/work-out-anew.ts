import { figuresInCurrency, FLEET_STAGES } from '../../fleet/index.js'
import { runHouse, type House } from '../../house/index.js'
import { valuesBehind, valueSeals } from '../../packet/index.js'
import { loadProject, type LoadedProject } from '../../project/index.js'
import { plainValues, valuesInCurrency } from '../../report/index.js'
import { countFitted } from '../../roof/index.js'
import type { Result } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { compareFindings } from './compare-findings.js'
import { compareValues, type Difference } from './compare-values.js'
import type { FileKind, KnownFile, SealedPart } from './known-file.js'

/** A file held against its project, worked out anew. */
export interface Comparison {
  /** What was compared, such as `stage yield`. */
  readonly of: string
  /** Whether the file bears the hash of this project. */
  readonly isSameProject: boolean
  readonly differences: readonly Difference[]
  /** Keys of the file that options of its run made, which are not known here. */
  readonly notCompared: readonly string[]
}

/** Stages whose results can be worked out from the project alone. */
const STAGES = new Map<string, (house: House) => Promise<Result<unknown>>>([
  ['yield', (house) => house.yield()],
  ['wire', (house) => house.wire()],
  ['mounts', (house) => house.mounts()],
  ['bom', (house) => house.bom()],
  ['payback', (house) => house.payback()],
])

/** Values that an option adds: --sweep, a fitted array, --compare, --versus. */
const BY_OPTIONS = new Set(['sweep', 'alternatives', 'comparison', 'versus'])

/**
 * Works out anew what a file holds, and compares.
 *
 * @throws ProjectError when the project is wrong, UsageError when the file is of a kind that is not of one project.
 */
export async function workOutAnew(
  file: KnownFile,
  project: { readonly path: string; readonly overrides: readonly string[]; readonly allowOutside: boolean },
): Promise<Comparison> {
  const read = loadProject(project)
  const loaded = { ...read, project: countFitted(read.project) }
  const [first] = file.parts
  const line = file.kind === 'fleet' ? lineOfProject(file.parts, loaded) : undefined
  const paper = file.packet?.paper
  // Where no price is stated, a payback by the bill of materials is the only one that the project gives.
  const isByBill = first?.name === 'payback' && loaded.project.finance?.installed_cost_usd === undefined
  const payTheBom = paper === 'proposal' || isByBill || Object.hasOwn(mapIn(line, 'stages'), 'bom')
  const house = runHouse(loaded, { wishes: { payTheBom } })
  if (file.packet !== undefined && paper !== undefined) return await paperAnew(file.packet, house, loaded)
  if (file.packet !== undefined) return await packetAnew(file.packet, house, loaded)
  if (file.kind === 'result' && first !== undefined) return await resultAnew(first, house, loaded)
  if (line !== undefined) return await lineAnew(line, house, loaded)
  throw new UsageError(`--project: a ${WORDS[file.kind]} is not of one project; ${ADVICE[file.kind] ?? ''}`)
}

const WORDS: Readonly<Record<FileKind, string>> = {
  packet: 'permit packet (PDF)',
  proposal: 'proposal (PDF)',
  application: 'application for interconnection (PDF)',
  handover: 'hand-over file (PDF)',
  result: 'result (JSON)',
  fleet: 'file of fleet lines (JSON)',
  baseline: 'fleet baseline',
  journal: 'fleet journal',
  'packet record': 'record of a packet (--result)',
}

const ADVICE: Partial<Readonly<Record<FileKind, string>>> = {
  baseline: 'run-fleet --baseline compares it',
  journal: 'run-fleet --resume looks at each of its lines',
  'packet record': 'draw-permit --since compares it',
}

/** `permit packet (PDF)` */
export function sayKind(kind: FileKind): string {
  return WORDS[kind]
}

async function packetAnew(
  { project, values }: NonNullable<KnownFile['packet']>,
  house: House,
  loaded: LoadedProject,
): Promise<Comparison> {
  const anew = valueSeals(valuesBehind(await house.packet({ documents: [] })))
  return {
    of: 'values of the stages behind its sheets, by their SHA-256, as a packet holds no more of them',
    isSameProject: project === loaded.digest,
    differences: compareValues(short(values), short(anew)),
    notCompared: [],
  }
}

/** What a paper says beside the stages behind it, options of its run decide. */
async function paperAnew(
  { project, values }: NonNullable<KnownFile['packet']>,
  house: House,
  loaded: LoadedProject,
): Promise<Comparison> {
  const anew: Record<string, unknown> = {}
  for (const stage of Object.keys(values)) {
    const run = STAGES.get(stage)
    if (run !== undefined) anew[stage] = (await run(house)).values
  }
  return {
    of: 'values of the stages behind the paper, by their SHA-256, as it holds no more of them',
    isSameProject: project === loaded.digest,
    differences: compareValues(short(values), short(valueSeals(anew))),
    notCompared: [],
  }
}

/** A person compares the first 16 digits, as they stand in the margin; so many are as good as all against slips. */
function short(hashes: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(hashes).map(([stage, hash]) => [stage, hash.slice('sha256:'.length, 'sha256:'.length + 16)]),
  )
}

async function resultAnew({ name, project, content }: SealedPart, house: House, loaded: LoadedProject) {
  const run = STAGES.get(name)
  if (run === undefined) {
    throw new UsageError(
      `--project: only results of ${[...STAGES.keys()].join(', ')} are worked out anew, not '${name}'`,
    )
  }
  const values = mapIn({ content }, 'values')
  const notCompared = Object.keys(values).filter((key) => BY_OPTIONS.has(key))
  const kept = Object.fromEntries(Object.entries(values).filter(([key]) => !BY_OPTIONS.has(key)))
  const anew = await run(house)
  return {
    of: `values, errors and warnings of the stage ${name}`,
    isSameProject: project === loaded.digest,
    differences: [
      ...compareValues(kept, valuesInCurrency(plainValues(anew.values), currencyOf(loaded)), ''),
      ...compareFindings(content['findings'], anew.findings, notCompared.length > 0),
    ],
    notCompared,
  }
}

const currencyOf = ({ project }: LoadedProject): string | undefined => project.finance?.currency

/** A map of a part; an empty one where somebody put something else in its place. */
function mapIn(part: Pick<SealedPart, 'content'> | undefined, key: string): Readonly<Record<string, unknown>> {
  const value = part?.content[key]
  return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {}
}

/** The line that bears the hash of the project, or the only one. */
function lineOfProject(parts: readonly SealedPart[], { digest }: LoadedProject): SealedPart {
  const found = parts.find(({ project }) => project === digest)
  const [first] = parts
  if (found !== undefined) return found
  if (first !== undefined && parts.length === 1) return first
  throw new UsageError(
    `--project: none of these ${parts.length} lines is of this project with these --set values; for a row of a table give the template, and a --set for each of its cells, in their order`,
  )
}

async function lineAnew({ name, project, content }: SealedPart, house: House, loaded: LoadedProject) {
  const stages = mapIn({ content }, 'stages')
  const anew: Record<string, unknown> = {}
  const errors = new Set<string>()
  for (const stage of FLEET_STAGES) {
    if (!Object.hasOwn(stages, stage.name)) continue
    const result = await stage.run(house)
    anew[stage.name] = figuresInCurrency(stage.figures(result.values), currencyOf(loaded))
    for (const { severity, id } of result.findings) if (severity === 'error') errors.add(id)
  }
  const had = new Set(Array.isArray(content['findings']) ? content['findings'].map(idOf) : [])
  const lost = [...errors].filter((id) => !had.has(id))
  const isFailed = errors.size > 0 && content['status'] === 'ok'
  return {
    of: `figures, errors and status of ${name}`,
    isSameProject: project === loaded.digest,
    differences: [
      ...compareValues(stages, anew),
      ...lost.map((id) => ({ path: `findings: error ${id}`, inFile: undefined, anew: 'told' })),
      ...(isFailed ? [{ path: 'status', inFile: '"ok"', anew: '"failed"' }] : []),
    ],
    notCompared: [],
  }
}

const idOf = (finding: unknown): unknown =>
  typeof finding === 'object' && finding !== null ? (finding as { readonly id?: unknown }).id : undefined
