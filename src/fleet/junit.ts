import { cleanText } from '../report/index.js'
import type { Move } from './compare-baseline.js'
import type { FleetOutcome } from './types.js'

/** What the report for CI needs of a project. */
export interface JunitProject {
  readonly name: string
  readonly stages: readonly string[]
  /** What keeps the project from being worked out. */
  readonly problems: readonly string[]
  /** Errors by stage. */
  readonly errors: readonly { readonly stage: string; readonly message: string }[]
}

export function junitProject({ name, stages, problems, findings }: FleetOutcome): JunitProject {
  return {
    name,
    stages: Object.keys(stages),
    problems: problems.map(({ place, key, message }) => [place, key, message].filter((part) => part !== '').join(': ')),
    errors: findings
      .filter(({ severity }) => severity === 'error')
      .map(({ stage, id, where, message }) => ({
        stage,
        message: [where, `${message} [${id}]`].filter((part) => part !== '').join(': '),
      })),
  }
}

/**
 * A run as JUnit XML: a suite a project, a case a stage. A project that cannot be worked out is an error of its case
 * `project`; a check that fails, and a value that left the baseline by more than the tolerance, is a failure.
 * Times are left out, so that the same fleet gives the same file.
 */
export function junitXml(
  projects: readonly JunitProject[],
  moves: readonly Move[],
  name = 'gablewatt run-fleet',
): string {
  const byProject = group(moves)
  const known = new Set(projects.map(({ name }) => name))
  const gone = [...byProject.keys()].filter((name) => !known.has(name))
  const all = [...projects, ...gone.map((name): JunitProject => ({ name, stages: [], problems: [], errors: [] }))]
  const suites = all.map((project) =>
    suite(
      project,
      (byProject.get(project.name) ?? []).filter(({ over }) => over),
    ),
  )
  const sum = (pick: (one: Suite) => number): number => suites.reduce((total, one) => total + pick(one), 0)
  const totals = `tests="${sum(({ tests }) => tests)}" failures="${sum(({ failures }) => failures)}" errors="${sum(({ errors }) => errors)}"`
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="${name}" ${totals}>\n${suites.map(({ xml }) => xml).join('')}</testsuites>\n`
}

interface Suite {
  readonly xml: string
  readonly tests: number
  readonly failures: number
  readonly errors: number
}

function suite({ name, stages, problems, errors }: JunitProject, moves: readonly Move[]): Suite {
  const cases = [
    ...new Set(['project', ...stages, ...errors.map(({ stage }) => stage), ...moves.map(({ stage }) => stage)]),
  ]
  let failures = 0
  const lines = cases.map((stage) => {
    const inside: string[] = []
    if (stage === 'project')
      for (const problem of problems) inside.push(element('error', 'cannot be worked out', problem))
    const texts = [
      ...errors.filter((error) => error.stage === stage).map(({ message }) => message),
      ...moves.filter((move) => move.stage === stage).map(sayMove),
    ]
    if (texts.length > 0) {
      failures += 1
      inside.push(element('failure', texts[0] ?? '', texts.join('\n')))
    }
    const head = `    <testcase classname="${attribute(name)}" name="${attribute(stage)}"`
    return inside.length === 0 ? `${head}/>\n` : `${head}>\n${inside.join('')}    </testcase>\n`
  })
  const wrong = problems.length === 0 ? 0 : 1
  const head = `  <testsuite name="${attribute(name)}" tests="${cases.length}" failures="${failures}" errors="${wrong}">`
  return { xml: `${head}\n${lines.join('')}  </testsuite>\n`, tests: cases.length, failures, errors: wrong }
}

/** `annual.ac_kwh: 5280 -> 5312 (+0.61 %)` */
export function sayMove({ key, was, is, changePct }: Move): string {
  const say = (value: Move['is']): string =>
    value === undefined ? 'not there' : value === null ? 'none' : String(value)
  const change = changePct === undefined ? '' : ` (${changePct > 0 ? '+' : ''}${changePct.toPrecision(3)} %)`
  return `${key}: ${say(was)} -> ${say(is)}${change}`
}

function element(name: string, message: string, text: string): string {
  return `      <${name} message="${attribute(message)}">${content(text)}</${name}>\n`
}

function content(text: string): string {
  return legal(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}

function attribute(text: string): string {
  return content(text)
    .replaceAll('"', '&quot;')
    .replaceAll(/[\t\n\r]+/gu, ' ')
}

/** Leaves out what XML 1.0 cannot hold, and what steers a terminal that shows the file. */
function legal(text: string): string {
  return cleanText(text).replaceAll(/[^\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
}

function group(moves: readonly Move[]): Map<string, Move[]> {
  const groups = new Map<string, Move[]>()
  for (const move of moves) groups.set(move.project, [...(groups.get(move.project) ?? []), move])
  return groups
}
