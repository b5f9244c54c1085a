import { unitOfPath, withUnit, type Project } from '../project/index.js'
import { own } from '../values/index.js'
import { sortFindings, type Finding } from '../worksheet/index.js'
import type { House } from './house.js'
import type { HouseInput } from './house-input.js'
import { isSafety, partsOf, type TellingStage } from './made-up-parts.js'

/** A value of the project that somebody made up and nobody confirmed. */
export interface MadeUpValue {
  /** Dotted path; that of a map or list stands for all that lies under it. */
  readonly path: string
  /** The value with its unit, '' for a map or a list. */
  readonly value: string
  /** Whether somebody could be hurt where it is wrong. */
  readonly safety: boolean
}

/** What is made up among the parts of the project that a stage reads, what is about safety first. */
export function madeUpFor({ project, madeUp = [] }: HouseInput, stage: TellingStage): MadeUpValue[] {
  const parts = partsOf(stage)
  const read = madeUp.filter((path) => parts.includes(path.split('.')[0] ?? ''))
  const values = read.map((path) => ({ path, value: valueText(project, path), safety: isSafety(path) }))
  return values.toSorted((a, b) => Number(b.safety) - Number(a.safety))
}

/** The findings about them: a warning for each group of values that are about safety, a note for all others together. */
export function madeUpFindings(input: HouseInput, stage: TellingStage): Finding[] {
  const values = madeUpFor(input, stage)
  const groups = new Map<string, MadeUpValue[]>()
  for (const value of values.filter(({ safety }) => safety)) {
    const group = groupOf(value.path)
    groups.set(group, [...(groups.get(group) ?? []), value])
  }
  const warnings = [...groups].map(([where, members]): Finding => {
    const list = members
      .map(({ path, value }) => `${path.slice(where.length + 1)} ${value}`.trim())
      .filter((each) => each !== '')
    const what = list.length === 0 ? '' : `: ${listed(list)}`
    return {
      severity: 'warning',
      id: 'project.made-up-safety',
      message: `made up and not confirmed${what}`,
      where,
      fix: 'look it up, state what is true, and take the marker !made_up away',
    }
  })
  const others = values.filter(({ safety }) => !safety)
  return others.length === 0 ? warnings : [...warnings, madeUpNote(others)]
}

/** All of them with their values, a line for each group of paths: for a paper that must say what it rests on. */
export function madeUpLines(input: HouseInput, stage: TellingStage): string[] {
  const groups = new Map<string, string[]>()
  for (const { path, value } of madeUpFor(input, stage)) {
    const group = groupOf(path)
    const name = path === group ? '' : path.slice(group.length + 1)
    groups.set(group, [...(groups.get(group) ?? []), `${name} ${value}`.trim()])
  }
  return [...groups].map(([group, members]) => {
    const list = members.filter((each) => each !== '').join(', ')
    return list === '' ? group : `${group}: ${list}`
  })
}

/** One note about values that are not about safety. */
export function madeUpNote(values: readonly MadeUpValue[]): Finding {
  return {
    severity: 'note',
    id: 'project.made-up',
    message: `${values.length === 1 ? 'one further value is' : `${values.length} further values are`} made up: ${placesOf(values)}`,
    where: '',
    fix: "state your own and take the marker !made_up away; 'gablewatt check-project' lists all",
  }
}

/** The stages of a house, each of which tells what of its input is made up. */
export function tellingMadeUp(house: House, input: HouseInput): House {
  if (input.madeUp === undefined || input.madeUp.length === 0) return house
  const tell =
    <Told extends { readonly findings: readonly Finding[] }, Args extends readonly unknown[]>(
      stage: TellingStage,
      work: (...args: Args) => Promise<Told>,
    ) =>
    async (...args: Args): Promise<Told> =>
      withFindings(await work(...args), madeUpFindings(input, stage))
  return {
    ...house,
    roof: tell('roof', house.roof),
    estimate: async () => {
      const run = await house.estimate()
      return { ...run, result: withFindings(run.result, madeUpFindings(input, 'yield')) }
    },
    yield: tell('yield', house.yield),
    wire: tell('wire', house.wire),
    ownMounts: tell('mounts', house.ownMounts),
    mounts: tell('mounts', house.mounts),
    bom: tell('bom', house.bom),
    bill: tell('payback', house.bill),
    payback: tell('payback', house.payback),
    size: tell('size', house.size),
    permit: tell('permit', house.permit),
    packet: tell('permit', house.packet),
    audit: tell('permit', house.audit),
    work: tell('work', house.work),
    output: tell('output', house.output),
  }
}

/** With what it does not tell yet: a stage of an earlier result has told it. */
function withFindings<Told extends { readonly findings: readonly Finding[] }>(
  told: Told,
  more: readonly Finding[],
): Told {
  const isNew = ({ id, where, message }: Finding): boolean =>
    !told.findings.some((each) => each.id === id && each.where === where && each.message === message)
  return { ...told, findings: sortFindings([...told.findings, ...more.filter(isNew)]) }
}

/** `structure.wind` for what lies in it, `roof_access` for a value of its own. */
function groupOf(path: string): string {
  return path.split('.').slice(0, -1).slice(0, 2).join('.') || path
}

/** A few by their paths, many by the parts of the project that they stand in. */
function placesOf(values: readonly MadeUpValue[]): string {
  if (values.length <= 6) return values.map(({ path }) => path).join(', ')
  const counts = new Map<string, number>()
  for (const { path } of values) {
    const part = path.split('.')[0] ?? path
    counts.set(part, (counts.get(part) ?? 0) + 1)
  }
  return [...counts].map(([part, count]) => `${count} in ${part}`).join(', ')
}

const MOST = 12

function listed(words: readonly string[]): string {
  const more = words.length - MOST
  return more <= 0 ? words.join(', ') : `${words.slice(0, MOST).join(', ')} and ${more} more`
}

function valueText(project: Project, path: string): string {
  const segments = path.split('.')
  const value = segments.reduce<unknown>(
    (holder, key) =>
      typeof holder === 'object' && holder !== null ? own(holder as Record<string, unknown>, key) : undefined,
    project,
  )
  if (typeof value === 'number' || typeof value === 'string') return withUnit(value, unitOfPath(segments))
  return typeof value === 'boolean' ? String(value) : ''
}
