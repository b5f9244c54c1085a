import type { Cell, Report, Section, TableData } from '../report/index.js'
import { BUILD, sayBuild } from '../seal/index.js'
import type { FleetCollection, FleetRow } from './collect.js'
import type { Move } from './compare-baseline.js'
import { fleetTable, usualColumns, type FleetColumn } from './fleet-columns.js'
import { sayMove } from './junit.js'

/** More lines than a person reads; JSON has all. */
const MOST_MOVES = 60

/** What stands in the report beside the collection. */
export interface FleetSummary {
  readonly title: string
  readonly recalled: number
  /** Not run, because a project before it failed. */
  readonly left: number
  readonly moves: readonly Move[] | undefined
  readonly tolerancePct: number
  /** The build of the program that saved the baseline, where that is another. */
  readonly savedBy: string | undefined
  /** Headings of the person's own columns. */
  readonly extra: readonly string[]
  /** What the person chose for the CSV table. */
  readonly columns: readonly FleetColumn[] | undefined
}

/** The summary of a fleet. */
export function fleetReport(collection: FleetCollection, summary: FleetSummary): Report {
  const { rows, findings, notKept } = collection
  const count = (status: FleetRow['status']): number => rows.filter((row) => row.status === status).length
  const unusable = rows.length - count('ok') - count('failed')
  const over = (summary.moves ?? []).filter((move) => move.over)
  const counts = {
    projects: rows.length,
    ok: count('ok'),
    failed: count('failed'),
    not_usable: unusable,
    not_run: summary.left,
  }
  const more =
    notKept === 0
      ? []
      : [{ severity: 'note' as const, id: 'fleet.more', where: '', message: `${notKept} more; --jsonl has all` }]
  return {
    title: summary.title,
    stage: 'fleet',
    sections: [
      {
        kind: 'facts',
        facts: [
          { label: 'Projects', value: rows.length },
          { label: 'Every check passes', value: count('ok') },
          { label: 'A check fails', value: toned(count('failed')) },
          { label: 'Not usable', value: toned(unusable) },
          ...(summary.left === 0 ? [] : [{ label: 'Not run (--fail-fast)', value: summary.left }]),
          ...(summary.recalled === 0 ? [] : [{ label: 'Taken from the interrupted run', value: summary.recalled }]),
        ],
      },
      { kind: 'table', heading: 'Projects', ...fleetTable(rows, usualColumns(rows, summary.extra, false)) },
      ...moveSections(summary),
    ],
    csv: fleetTable(rows, summary.columns ?? usualColumns(rows, summary.extra, true)),
    result: {
      values: {
        counts,
        projects: rows.map(({ figures, extra, from: _, ...row }) => ({ ...row, figures, extra })),
        ...(summary.moves === undefined
          ? {}
          : {
              baseline: {
                tolerance_pct: summary.tolerancePct,
                other_build: summary.savedBy ?? null,
                over_tolerance: over.length,
                moves: summary.moves.map(moveValues),
              },
            }),
      },
      findings: [...findings, ...more],
      assumptions: [],
      worksheet: [],
    },
    cautions: ['estimate', 'authority'],
  }
}

function toned(count: number): Cell {
  return count === 0 ? 0 : { value: count, tone: 'bad' }
}

function moveSections({ moves, tolerancePct, savedBy }: FleetSummary): Section[] {
  if (moves === undefined) return []
  const over = moves.filter((move) => move.over).length
  const says =
    moves.length === 0
      ? 'No value moved.'
      : `${moves.length} values moved, ${over} of them by more than ${tolerancePct} %${moves.length > MOST_MOVES ? `; the first ${MOST_MOVES} are shown, --json has all` : ''}.`
  const by =
    savedBy === undefined ? '' : ` It was saved by ${sayBuild(savedBy)} of the program; this is ${sayBuild(BUILD)}.`
  const sections: Section[] = [{ kind: 'paragraph', heading: 'Against the baseline', text: `${says}${by}` }]
  if (moves.length === 0) return sections
  return [
    ...sections,
    {
      kind: 'table',
      columns: [
        { heading: 'Stage' },
        { heading: 'Project' },
        { heading: 'Value, was and is' },
        { heading: 'Over', align: 'left' },
      ],
      rows: moves
        .slice(0, MOST_MOVES)
        .map((move) => [move.stage, move.project, sayMove(move), move.over ? { value: 'yes', tone: 'bad' } : 'no']),
    },
    { kind: 'table', heading: 'Moves by stage', ...movesByStage(moves) },
  ]
}

function movesByStage(moves: readonly Move[]): TableData {
  const stages = [...new Set(moves.map(({ stage }) => stage))]
  return {
    columns: [
      { heading: 'Stage' },
      { heading: 'Moved' },
      { heading: 'Over' },
      { heading: 'Projects' },
      { heading: 'Largest', unit: '%', decimals: 3 },
    ],
    rows: stages.map((stage) => {
      const own = moves.filter((move) => move.stage === stage)
      const changes = own.flatMap(({ changePct }) => (changePct === undefined ? [] : [Math.abs(changePct)]))
      return [
        stage,
        own.length,
        own.filter(({ over }) => over).length,
        new Set(own.map(({ project }) => project)).size,
        changes.length === 0 ? null : changes.reduce((most, change) => Math.max(most, change), 0),
      ]
    }),
  }
}

function moveValues({ project, stage, key, was, is, changePct, over }: Move) {
  return { project, stage, key, was: was ?? null, is: is ?? null, change_pct: changePct ?? null, over_tolerance: over }
}
