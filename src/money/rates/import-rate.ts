import type { Tariff } from '../../project/index.js'
import { StageError, Worksheet, type Finding, type Result } from '../../worksheet/index.js'
import { readTariff } from '../tariff/index.js'
import { Carried, type NotCarried } from './carried.js'
import { findJson, type JsonPath } from './json-place.js'
import { mapRecord, sourceOf } from './map-record.js'
import type { RateAnswers } from './rate-answers.js'
import type { RateRecord } from './rate-record.js'
import { checkRecord, readRecords, type PlacedRecord } from './read-records.js'
import { tariffYaml } from './tariff-yaml.js'
import { datesOf } from './tell-limits.js'

/** A record as the list of a file shows it. */
export interface ListedRate {
  readonly label: string
  readonly utility: string
  readonly name: string
  readonly sector: string
  /** First and last day, `YYYY-MM-DD`, '' where the record does not say. */
  readonly from: string
  readonly to: string
  readonly approved: boolean
}

/** A tariff made of a record, and what stands behind it. */
export interface ImportedRateValues {
  readonly file: string
  /** Every record of the file. */
  readonly records: readonly ListedRate[]
  /** Label of the record that was taken, null when several are there and none was named. */
  readonly label: string | null
  /** The line of the source in the tariff. */
  readonly source: string | null
  /** null when nothing could be written; the findings say why. */
  readonly tariff: Tariff | null
  /** The same as a block of a project file. */
  readonly yaml: string | null
}

/** A file of the public rate database that a person saved, and what they add to it. */
export interface RateFile {
  /** Name for messages. */
  readonly file: string
  readonly text: string
  /** Label, or name, of the record that is wanted. */
  readonly label?: string
  readonly answers?: RateAnswers
}

/**
 * A record of the public utility rate database as a tariff of a project file. What would change a bill and cannot be
 * carried over is an error, all of it at once, unless the person agrees to leave it out.
 *
 * @throws ProjectError with line and column when the file is no JSON, or a field is not what it has to be.
 * @throws StageError when no record has the label.
 * @source Documentation of the service, versions 3 to 8, as public clients copy it (secondary).
 */
export function importRate({ file, text, label, answers = {} }: RateFile): Result<ImportedRateValues> {
  const placed = readRecords(file, text)
  const records = placed.map(({ record }) => listed(record))
  const worksheet = new Worksheet()
  const chosen = choose(file, placed, label)
  const none = { file, records, label: null, source: null, tariff: null, yaml: null }
  if (chosen === undefined) {
    worksheet.find({
      severity: 'error',
      id: 'rates.label-needed',
      message: `${file} holds ${placed.length} rates, and none is named`,
      where: '',
      fix: 'State the label of yours with --label; the name of the rate stands on the bill.',
    })
    return worksheet.result(none)
  }
  checkAnswers(answers)
  const record = checkRecord(file, text, chosen)
  const carried = new Carried()
  const tariff = mapRecord(record, answers, carried)
  const isWritten = carried.refused.every(({ canBeLeftOut }) => canBeLeftOut && answers.anyway === true)
  tellApproval(record, carried, isWritten)
  for (const one of carried.refused)
    worksheet.find(refusal(one, placeOf(file, text, chosen.path, one.field), answers.anyway === true))
  for (const finding of carried.told) worksheet.find(finding)
  const own = { ...none, label: record.label ?? '', source: sourceOf(record, answers) }
  if (!isWritten) return worksheet.result(own)
  readTariff(tariff)
  return worksheet.result({ ...own, tariff, yaml: yamlOf(record, tariff, carried, answers) })
}

function listed(record: PlacedRecord['record']): ListedRate {
  const text = (key: string): string => (typeof record[key] === 'string' ? record[key] : '')
  const number = (key: string): { [key: string]: number } =>
    typeof record[key] === 'number' ? { [key]: record[key] } : {}
  const { from = '', to = '' } = datesOf({ ...number('startdate'), ...number('enddate') })
  return {
    label: text('label'),
    utility: text('utility'),
    name: text('name'),
    sector: text('sector'),
    from,
    to,
    approved: record['approved'] === true,
  }
}

function choose(file: string, placed: readonly PlacedRecord[], label: string | undefined): PlacedRecord | undefined {
  if (label === undefined) return placed.length === 1 ? placed[0] : undefined
  const by = (key: string): PlacedRecord[] => placed.filter(({ record }) => record[key] === label)
  const found = by('label').length > 0 ? by('label') : by('name')
  if (found.length === 1) return found[0]
  const known = placed.slice(0, 10).map(({ record }) => `${String(record['label'])} (${String(record['name'])})`)
  throw new StageError(
    '',
    `${file} has ${found.length === 0 ? 'no record' : `${found.length} records`} '${label}'; it holds ${known.join(', ')}${placed.length > 10 ? ' and others' : ''}`,
    'Write one of these labels.',
  )
}

function checkAnswers({ settle, trueUpMonth }: RateAnswers): void {
  if ((settle === 'annual') === (trueUpMonth !== undefined)) return
  throw new StageError(
    '',
    settle === 'annual'
      ? 'annual settlement needs the month of the true-up bill'
      : 'a month of the true-up without annual settlement',
    'State --settle annual and --true-up-month 1 to 12 together.',
  )
}

function tellApproval(record: RateRecord, carried: Carried, isWritten: boolean): void {
  if (record.approved === true) return
  const message = 'no expert of the database has checked this record'
  const fix = 'Compare every price with the rate sheet of the utility.'
  if (isWritten) carried.warn('rates.check', 'approved', message, fix)
  else carried.refuse('approved', message, fix)
}

function placeOf(file: string, text: string, base: JsonPath, field: string): string {
  const path = field
    .split(/[.[\]]+/u)
    .flatMap((part) => (part === '' ? [] : [/^\d+$/u.test(part) ? Number(part) : part]))
  const { line, column } = findJson(text, [...base, ...path])
  return `${file}:${line}:${column}`
}

function refusal(one: NotCarried, place: string, anyway: boolean): Finding {
  const { field, message, fix, canBeLeftOut } = one
  if (anyway && canBeLeftOut)
    return {
      severity: 'warning',
      id: 'rates.left-out',
      message: `${place}  ${field}: left out: ${message}`,
      where: '',
      fix,
    }
  const consent = canBeLeftOut ? '; --anyway writes the tariff without it' : ''
  return {
    severity: 'error',
    id: 'rates.not-carried',
    message: `${place}  ${field}: ${message}`,
    where: '',
    fix: `${fix.replace(/\.$/u, '')}${consent}`,
  }
}

function yamlOf(record: RateRecord, tariff: Tariff, carried: Carried, answers: RateAnswers): string {
  const head = [
    `From ${sourceOf(record, answers)}.`,
    ...(record.source === undefined ? [] : [`Source that the record names: ${record.source}`]),
    'People type such records in from rate sheets: compare it with yours, then state the day as tariff.checked.',
    ...carried.refused.map(({ field, message }) => `LEFT OUT ${field}: ${message}.`),
    ...carried.told.map(({ message }) => `${message.replace(/\.$/u, '')}.`),
  ]
  return tariffYaml(tariff, head, {
    rounding: 'Not in the record: a printed bill shows whether each line is rounded, or only the total.',
    energy: 'Rate and rider (adj) of each tier together.',
    minimum: 'Not in the record: what it is compared with.',
    ...(tariff.time_of_use === undefined
      ? {}
      : { time_of_use: 'Clock time; holidays count like weekends once tariff.holidays names them.' }),
    solar: 'What the record does not say is taken as it saves least; ask the utility.',
  })
}
