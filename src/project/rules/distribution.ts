import type { Project } from '../project-types.generated.js'
import type { Segments } from '../path.js'
import { listWords, showValue } from '../words.js'
import type { Report, Rule } from './rule.js'

const AT: Segments = ['electrical', 'distribution']

/** What hangs on what in the installation: ids that exist, one way to each panel, no circle. */
export const checkDistribution: Rule = (project, report) => {
  const distribution = project.electrical?.distribution
  checkPowerControl(project, report)
  if (distribution === undefined) {
    checkShortForm(project, report)
    return
  }
  if (project.electrical?.panel !== undefined)
    report(['electrical', 'panel'], 'electrical.distribution stands beside it; state the panel under its panels', 'key')
  const panels = Object.keys(distribution.panels)
  const feeders = Object.keys(distribution.feeders ?? {})
  const taps = Object.keys(distribution.taps ?? {})
  const known = (path: Segments, id: string | undefined, ids: readonly string[], what: string): void => {
    if (id === undefined || ids.includes(id)) return
    report(path, `no ${showValue(id)} among the ${what}; known there: ${ids.length === 0 ? 'nothing' : listWords(ids)}`)
  }
  for (const [id, { from, to }] of Object.entries(distribution.feeders ?? {})) {
    known([...AT, 'feeders', id, 'from'], from, panels, 'panels')
    known([...AT, 'feeders', id, 'to'], to, panels, 'panels')
  }
  for (const [id, { feeder }] of Object.entries(distribution.taps ?? {}))
    known([...AT, 'taps', id, 'feeder'], feeder, feeders, 'feeders')
  for (const [id, { on, supply_side: supplySide }] of Object.entries(distribution.sources ?? {})) {
    const path = [...AT, 'sources', id]
    known([...path, 'on'], on, [...panels, ...taps], 'panels and taps')
    if (on !== undefined && supplySide === true)
      report([...path, 'supply_side'], `it stands on ${showValue(on)} as well; keep one of them`, 'key')
    if (on === undefined && supplySide !== true)
      report([...path, 'on'], 'missing; name the panel or tap, or state supply_side: true', 'parent')
    if (id === 'pv') report(path, 'pv means the system of this project; give this source another id', 'key')
  }
  const { at, kind } = project.electrical?.connection ?? {}
  known(
    ['electrical', 'connection', 'at'],
    at,
    kind === 'feeder_tap' ? taps : panels,
    kind === 'feeder_tap' ? 'taps' : 'panels',
  )
  checkIdsDiffer(distribution, report)
  checkWays(distribution, report)
}

type Distribution = NonNullable<NonNullable<Project['electrical']>['distribution']>

/** Ids are unique over all kinds, since results name nodes by them. */
function checkIdsDiffer(distribution: Distribution, report: Report): void {
  const seen = new Set(['service', 'combiner'])
  for (const part of ['panels', 'feeders', 'taps', 'sources'] as const)
    for (const id of Object.keys(distribution[part] ?? {})) {
      if (seen.has(id)) report([...AT, part, id], `another part of the installation is called ${showValue(id)}`, 'key')
      seen.add(id)
    }
}

/** One feeder to each panel, and no circle. */
function checkWays({ feeders }: Distribution, report: Report): void {
  const before = new Map<string, string>()
  for (const [id, { from, to }] of Object.entries(feeders ?? {})) {
    const path = [...AT, 'feeders', id, 'to']
    if (before.has(to)) report(path, `another feeder goes to ${showValue(to)} already; a panel has one`)
    else before.set(to, from)
    let at: string | undefined = from
    for (let step = 0; at !== undefined && step <= before.size; step++) {
      if (at === to) {
        report(path, `it feeds ${showValue(to)} from itself; turn from and to round`)
        before.delete(to)
        break
      }
      at = before.get(at)
    }
  }
}

/** Without a tree there is nothing that `at` could name. */
function checkShortForm(project: Project, report: Report): void {
  const { connection } = project.electrical ?? {}
  if (connection?.at !== undefined)
    report(['electrical', 'connection', 'at'], 'it names a part of electrical.distribution, which is not stated', 'key')
  if (connection?.kind === 'feeder_tap')
    report(['electrical', 'connection', 'kind'], 'a feeder tap has to stand under electrical.distribution.taps')
}

function checkPowerControl(project: Project, report: Report): void {
  const control = project.electrical?.power_control
  if (control === undefined) return
  const distribution = project.electrical?.distribution
  const panels = distribution === undefined ? ['panel'] : Object.keys(distribution.panels)
  control.panels.forEach((id, i) => {
    if (panels.includes(id)) return
    report(
      ['electrical', 'power_control', 'panels', i],
      `no ${showValue(id)} among the panels; known there: ${listWords(panels)}`,
    )
  })
  const sources = Object.keys(distribution?.sources ?? {})
  control.uncontrolled?.forEach((id, i) => {
    if (sources.includes(id)) return
    report(
      ['electrical', 'power_control', 'uncontrolled', i],
      `no ${showValue(id)} among the sources; known there: ${sources.length === 0 ? 'nothing' : listWords(sources)}`,
    )
  })
}
