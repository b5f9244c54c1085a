import type { OverheadLine } from '../../project/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { necSource, OVERHEAD_RULED_UP_TO_V } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import type { Job, OverheadValues } from '../system/index.js'

const wherever = (id: string): string => `site.overhead_lines.${id}`

const sectionSource = (job: Job, place: string): Source => necSource(job.edition, place, 'from memory')

/** Nothing is said about overhead lines. */
export function askForLines(job: Job): void {
  job.worksheet.find({
    severity: 'note',
    id: 'wire.overhead-not-stated',
    message:
      'nothing says whether a service drop or another overhead line passes over or near the roof, so neither its height over roof and modules nor its distance to people and ladders was checked',
    where: 'site.overhead_lines',
    source: sectionSource(job, '230.24'),
    fix: 'Look, and state each line with its supports and its sag under site.overhead_lines; or state overhead_lines: none',
  })
}

/** A roof that stands nowhere can hide a line that is too low. */
export function tellUnjudged(job: Job, id: string, planes: readonly string[]): void {
  job.worksheet.find({
    severity: 'error',
    id: 'wire.overhead-unjudged',
    message: `the height of ${id} over ${planes.join(', ')} cannot be checked: place, eave height or outline is not known`,
    where: wherever(id),
    source: sectionSource(job, '230.24(A)'),
    fix: 'State eave_left (or its place in site_plan.roof_planes), eave_height_ft and the outline of each of them',
  })
}

/** What the figures stand on, and who decides. */
export function tellLine(job: Job, id: string, line: OverheadLine): void {
  job.worksheet.find({
    severity: 'note',
    id: 'wire.overhead-from-memory',
    message: `the heights that ${id} needs are from memory of NEC 230.24; the edition of the authority and the rules of the utility decide, and may ask for more. Not checked: 3 ft from windows that open, doors and porches (230.9)${line.kind === 'service_drop' && line.drip_loop_ft === undefined ? '; the drip loop, which hangs lower than the last support (drip_loop_ft is not stated)' : ''}`,
    where: wherever(id),
    source: sectionSource(job, '230.24 and 230.9'),
    fix: 'Hold the heights against the printed edition and the service handbook of the utility before filing',
  })
  if (line.kind === 'service_drop' && line.between_v <= OVERHEAD_RULED_UP_TO_V) return
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.overhead-utility-line',
    message: `${id} (${line.between_v} V between conductors) is a line of the utility: its own safety code rules it, not article 230. It is held against the heights of 230.24 without exceptions as the least that can be right`,
    where: wherever(id),
    source: sectionSource(job, '90.2 and 230.24'),
    fix: 'Ask the utility in writing what clearance this line needs from a roof with modules and from people who work there',
  })
}

/** Puts a judged distance on the worksheet, and tells where it is too small. */
export function recordOverhead(job: Job, value: OverheadValues, line: OverheadLine): void {
  const source = value.kind === 'work' ? WORK_SOURCES.overheadLines : sectionSource(job, value.section)
  job.worksheet.note({
    id: `wire.overhead.${value.id}.${value.kind}.${value.to}`,
    says: `${value.kind === 'work' ? 'Least distance from' : 'Least plumb height of'} ${value.id} ${value.kind === 'work' ? 'to' : 'over'} ${value.what}; it is looked at in small steps and can be less by the error`,
    formula:
      value.kind === 'work'
        ? 'd = min |line - place|'
        : 'h = min (z(line) - z(surface)), z = straight - 4 sag t (1 - t)',
    inputs: [
      line.sag_ft === undefined
        ? { symbol: 'lowest', value: line.lowest_ft ?? 0, unit: 'ft', from: `${wherever(value.id)}.lowest_ft` }
        : { symbol: 'sag', value: line.sag_ft, unit: 'ft', from: `${wherever(value.id)}.sag_ft` },
      { symbol: 'error', value: value.error_ft, unit: 'ft', from: 'half a step times the slopes' },
    ],
    result: { symbol: value.kind === 'work' ? 'd' : 'h', value: value.clearance_ft, unit: 'ft' },
    check: { relation: '>=', limit: value.required_ft, pass: value.complies },
    source,
  })
  if (value.complies) return
  const is = `${(Math.floor((value.clearance_ft - value.error_ft) * 100 + 1e-6) / 100).toFixed(2)} ft`
  if (value.kind === 'work')
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.overhead-work',
      message: `DANGER OF DEATH: ${value.id} comes within ${is} of ${value.what} (${value.to}); people, ladders, rails and tools must keep ${value.required_ft.toFixed(1)} ft. Nobody works there until the utility has cut or covered the line`,
      where: wherever(value.id),
      source,
      fix: 'Let the utility de-energise or cover the line for the days of the work, in writing; or set the ladder up and lay the modules elsewhere',
    })
  else
    job.worksheet.find({
      severity: 'error',
      id: 'wire.overhead-clearance',
      message: `${value.id} passes ${is} above ${value.what} (${value.to}), ${value.required_ft} ft are needed; the edition of the authority and the utility decide`,
      where: wherever(value.id),
      source,
      fix: 'Let the utility raise or move the line before the work, or move the modules away from below it',
    })
}
