import type { Project } from '../../project/index.js'
import { daysBetween } from '../../values/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { HandoverValues, RecordRow } from './handover-values.js'

/** Days after which a calibration counts as old where no day is stated by which it has to be done again. */
const CALIBRATION_DAYS = 366

/** What fails, what somebody has to look at, and what the file lacks. */
export function handoverFindings(project: Project, values: HandoverValues): Finding[] {
  const rows = [
    ...values.tests.flatMap((test) => test.rows.map((row) => ({ row, test: test.title }))),
    ...values.torques.map((row) => ({ row, test: 'Torques' })),
  ]
  return [
    ...rows.flatMap(({ row, test }) => judged(row, test)),
    ...openTests(rows.map(({ row }) => row)),
    ...missingSerials(values),
    ...calibrations(project, values.date),
    ...lackingParts(project, values),
  ]
}

function judged(row: RecordRow, test: string): Finding[] {
  if (row.verdict !== 'fail' && row.verdict !== 'look') return []
  const reading = `${test}: ${row.what} reads ${row.measured ?? ''}`
  return [
    {
      severity: row.verdict === 'fail' ? 'error' : 'warning',
      id: row.verdict === 'fail' ? 'handover.reading-fails' : 'handover.reading-to-look-at',
      message: `${reading}; expected ${row.expected}, limit ${row.limit}${row.why === '' ? '' : `: ${row.why}`}`,
      where: row.where,
      source: WORK_SOURCES.commissioning,
      fix:
        row.verdict === 'fail'
          ? 'Switch off, lock, find the cause, measure again; hand nothing over with a reading that fails'
          : 'Somebody who knows the system looks at it, or the reading is taken again',
    },
  ]
}

function openTests(rows: readonly RecordRow[]): Finding[] {
  const open = rows.filter(({ verdict }) => verdict === 'open').length
  if (open === 0) return []
  return [
    {
      severity: 'note',
      id: 'handover.not-measured',
      message: `${open} of ${rows.length} lines of the record have no reading yet; the paper has blanks for them`,
      where: 'commissioning',
      fix: 'Fill them in by hand, or state the readings under commissioning and write the paper again',
    },
  ]
}

function missingSerials({ serials }: HandoverValues): Finding[] {
  return (['module', 'inverter'] as const).flatMap((kind): Finding[] => {
    const all = serials.filter((each) => each.kind === kind)
    const missing = all.filter(({ serial }) => serial === null).map(({ unit }) => unit)
    if (missing.length === 0) return []
    const some = missing.length > 5 ? `${missing.slice(0, 5).join(', ')}, ...` : missing.join(', ')
    return [
      {
        severity: 'warning',
        id: 'handover.serial-missing',
        message: `${missing.length} of ${all.length} ${kind}s have no serial number: ${some}`,
        where: `commissioning.serials.${kind}s`,
        fix: 'State them under commissioning.serials, or in a table for --serials with the columns kind,unit,serial',
      },
    ]
  })
}

function calibrations({ commissioning }: Project, date: string | null): Finding[] {
  const instruments = Object.entries(commissioning?.instruments ?? {})
  return instruments.flatMap(([id, { name, calibrated, due }]): Finding[] => {
    const tell = (severity: Finding['severity'], message: string): Finding[] => [
      {
        severity,
        id: 'handover.calibration',
        message: `${name}: ${message}`,
        where: `commissioning.instruments.${id}`,
        source: WORK_SOURCES.commissioning,
        fix: 'Measure again with an instrument whose calibration holds on the day of the tests',
      },
    ]
    if (calibrated === undefined) return tell('warning', 'the day of its calibration is not stated')
    if (date === null) return []
    if (calibrated > date) return tell('error', `calibrated on ${calibrated}, after the tests of ${date}`)
    if (due !== undefined)
      return due < date ? tell('error', `its calibration ended on ${due}, before the tests of ${date}`) : []
    return daysBetween(calibrated, date) > CALIBRATION_DAYS
      ? tell('warning', `calibrated on ${calibrated}, more than a year before the tests of ${date}`)
      : []
  })
}

/** What an owner and a fire service would look for in vain. */
function lackingParts({ site, electrical }: Project, { owner, date }: HandoverValues): Finding[] {
  const lack = (id: string, message: string, where: string, fix: string): Finding => ({
    severity: 'warning',
    id,
    message,
    where,
    fix,
  })
  const gap = (message: string, where: string): Finding =>
    lack(
      'handover.emergency-gap',
      `the sheet for the fire service lacks ${message}`,
      where,
      `State ${where}, or write it in by hand`,
    )
  return [
    ...(site.address === undefined ? [gap('the address', 'site.address')] : []),
    ...(electrical?.rapid_shutdown?.initiator === undefined
      ? [gap('what turns the system off', 'electrical.rapid_shutdown.initiator')]
      : []),
    ...(owner.call.length === 0
      ? [
          lack(
            'handover.nobody-to-call',
            'the owner has nobody to call',
            'parties',
            'State parties.installer, electrician and utility with their telephones',
          ),
        ]
      : []),
    ...(owner.warranties.length === 0
      ? [
          lack(
            'handover.no-warranty',
            'no warranty is stated',
            'proposal.warranties',
            'State proposal.warranties as they are given, or write them in by hand',
          ),
        ]
      : []),
    ...(date === null
      ? [
          lack(
            'handover.not-dated',
            'the record has no day',
            'commissioning.date',
            'State commissioning.date or --date, or write it in by hand',
          ),
        ]
      : []),
  ]
}
