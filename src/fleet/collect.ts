import { baselineFigures, type Baseline, type ProjectFigures } from './baseline.js'
import { compareProject, sortMoves, type Move } from './compare-baseline.js'
import { junitProject, type JunitProject } from './junit.js'
import { EXIT_OF_STATUS, type Figure, type FleetOutcome, type ExitOfFleet, type FleetStatus } from './types.js'
import type { Finding } from '../worksheet/index.js'
import { own } from '../values/index.js'
import { FleetItems } from './price-items.js'
import { FLEET_STAGES } from './stages.js'

/** A line of the table of the fleet. */
export interface FleetRow {
  readonly name: string
  /** Line of the table, or the project file. */
  readonly from: string
  readonly title: string | null
  /** Label of its money; missing for US dollars. */
  readonly currency?: string
  readonly status: FleetStatus
  readonly errors: number
  readonly warnings: number
  /** Figures of the headlines and of chosen columns, by stage and key. */
  readonly figures: Readonly<Record<string, Figure>>
  /** Texts of the person's own columns, by heading. */
  readonly extra: Readonly<Record<string, string>>
}

/** More are counted and not kept. */
const MOST_FINDINGS = 200

/** The saved run to compare with. */
export interface BaselineOfRun {
  readonly path: string
  readonly saved: Baseline
  /** The build of the program that saved it, where that is another. */
  readonly otherBuild: string | undefined
  readonly tolerancePct: number
  /** Whether this run becomes it. */
  readonly update: boolean
}

export interface Wanted {
  readonly junit: boolean
  readonly baseline: BaselineOfRun | undefined
  /** Figures that are kept beside the headlines. */
  readonly figures: ReadonlySet<string> | undefined
}

/** What is kept of a run while it goes on: little a project, whatever its stages give. */
export class FleetCollection {
  readonly rows: FleetRow[] = []
  readonly findings: Finding[] = []
  readonly junit: JunitProject[] = []
  readonly items = new FleetItems()
  readonly figures = new Map<string, ProjectFigures>()
  /** Names of figures that a house had, where some are kept beside the headlines. */
  readonly seen = new Set<string>()
  notKept = 0
  worst: ExitOfFleet = EXIT_OF_STATUS.ok
  readonly #wanted: Wanted
  readonly #moves: Move[] = []

  constructor(wanted: Wanted) {
    this.#wanted = wanted
  }

  add(outcome: FleetOutcome): void {
    const { name, from, title, status, problems, findings, extra } = outcome
    const count = (severity: Finding['severity']): number => findings.filter((one) => one.severity === severity).length
    const currency = currencyOf(outcome)
    this.rows.push({
      name,
      from,
      title,
      ...(currency === undefined ? {} : { currency }),
      status,
      errors: count('error') + problems.length,
      warnings: count('warning'),
      figures: { ...headlineFigures(outcome), ...this.#chosenFigures(outcome) },
      extra,
    })
    if (EXIT_OF_STATUS[status] > this.worst) this.worst = EXIT_OF_STATUS[status]
    for (const { place, key, message } of problems) {
      this.#keep({
        severity: 'error',
        id: `fleet.${status}`,
        where: place,
        message: `${name}: ${key === '' ? '' : `${key}: `}${message}`,
      })
    }
    for (const { severity, id, where, message } of findings) {
      if (severity === 'error') this.#keep({ severity, id, where, message: `${name}: ${message}` })
    }
    this.items.add(outcome)
    if (this.#wanted.junit) this.junit.push(junitProject(outcome))
    const { baseline } = this.#wanted
    if (baseline === undefined) return
    const figures = baselineFigures(outcome)
    if (baseline.update) this.figures.set(name, figures)
    this.#moves.push(...compareProject(name, baseline.saved.get(name), figures, baseline.tolerancePct))
  }

  /** Moves so far, with the projects that the saved run holds and this fleet lacks. */
  moves(namesOfFleet: ReadonlySet<string>, isFirstPart: boolean): Move[] {
    const { baseline } = this.#wanted
    if (baseline === undefined) return []
    const gone = isFirstPart ? [...baseline.saved].filter(([name]) => !namesOfFleet.has(name)) : []
    return sortMoves([
      ...this.#moves,
      ...gone.flatMap(([name, was]) => compareProject(name, was, undefined, baseline.tolerancePct)),
    ])
  }

  #chosenFigures({ stages }: FleetOutcome): Record<string, Figure> {
    const { figures } = this.#wanted
    const kept: Record<string, Figure> = {}
    if (figures === undefined) return kept
    for (const [stage, values] of Object.entries(stages)) {
      for (const [key, value] of Object.entries(values)) {
        const name = `${stage}.${key}`
        this.seen.add(name)
        if (figures.has(name)) kept[name] = value
      }
    }
    return kept
  }

  #keep(finding: Finding): void {
    if (this.findings.length < MOST_FINDINGS) this.findings.push(finding)
    else this.notKept += 1
  }
}

function currencyOf({ stages }: FleetOutcome): string | undefined {
  const stated = Object.values(stages).find((figures) => typeof figures['currency'] === 'string')?.['currency']
  return typeof stated === 'string' && stated !== 'USD' ? stated : undefined
}

function headlineFigures({ stages }: FleetOutcome): Record<string, Figure> {
  const figures: Record<string, Figure> = {}
  for (const { name, headlines } of FLEET_STAGES) {
    for (const { key } of headlines) {
      const value = own(own(stages, name), key)
      if (value !== undefined) figures[`${name}.${key}`] = value
    }
  }
  return figures
}
