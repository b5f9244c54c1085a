import { MS_PER_SECOND } from '../units/index.js'
import { dateMs, hourOfHalf, timeOfDayMs, zoneOffsetH, type Stamp } from './stamp.js'

const TOKENS: Readonly<Record<string, string>> = {
  YYYY: '(?<year>\\d{4})',
  YY: '(?<year2>\\d{2})',
  MM: '(?<month>\\d{1,2})',
  M: '(?<month>\\d{1,2})',
  DD: '(?<day>\\d{1,2})',
  D: '(?<day>\\d{1,2})',
  HH: '(?<hour>\\d{1,2})',
  H: '(?<hour>\\d{1,2})',
  hh: '(?<hour12>\\d{1,2})',
  h: '(?<hour12>\\d{1,2})',
  mm: '(?<minute>\\d{2})',
  ss: '\\d{2}',
  A: '(?<half>[AaPp])\\.?[Mm]\\.?',
}

function partsOf(format: string): readonly string[] {
  return format.match(/YYYY|YY|MM|M|DD|D|HH|H|hh|h|mm|ss|A|[^A-Za-z]+|[A-Za-z]/g) ?? []
}

/** What the letters of a pattern stand for; hour and hour of a half day are one thing. */
const MEANINGS = {
  year: ['YYYY', 'YY'],
  month: ['MM', 'M'],
  day: ['DD', 'D'],
  hour: ['HH', 'H', 'hh', 'h'],
  minute: ['mm'],
  second: ['ss'],
  'half of the day': ['A'],
} as const

/** What is wrong with a pattern: a part that stands twice, or one that is missing. */
export function stampFormatTrouble(format: string): string | undefined {
  if (format === 'iso' || format === 'unix_s') return undefined
  const parts = partsOf(format)
  const count = (letters: readonly string[]): number => parts.filter((part) => letters.includes(part)).length
  for (const [meaning, letters] of Object.entries(MEANINGS)) {
    const hint = meaning === 'month' ? '; minutes are mm' : ''
    if (count(letters) > 1) return `the ${meaning} stands twice in '${format}'${hint}`
  }
  for (const meaning of ['year', 'month', 'day'] as const) {
    if (count(MEANINGS[meaning]) === 0)
      return `there is no ${meaning} (${MEANINGS[meaning].join(' or ')}) in '${format}'`
  }
  return undefined
}

function patternOf(format: string): RegExp {
  const body = partsOf(format).map(
    (part) => TOKENS[part] ?? part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ /g, ' +'),
  )
  return new RegExp(`^${body.join('')}$`)
}

const ISO =
  /^(?<year>\d{4})-(?<month>\d{2})-(?<day>\d{2})(?:[T ](?<hour>\d{2}):(?<minute>\d{2})(?::\d{2}(?:\.\d+)?)?(?<zone>Z|[+-]\d{2}:?\d{2})?)?$/

/** Hour of the day of a pattern's parts; a date alone means midnight. */
function hourOf({ hour, hour12, half }: Readonly<Record<string, string | undefined>>): number | undefined {
  return hour12 === undefined
    ? Number(hour ?? 0)
    : half === undefined
      ? Number(hour12) % 12
      : hourOfHalf(Number(hour12), half)
}

/**
 * Makes a reader of time stamps. Seconds of a pattern are passed over: readings of a meter stand at whole minutes.
 *
 * @param format Pattern with YYYY YY MM M DD D HH H hh h mm ss A, or `iso`, or `unix_s`.
 * @returns Function that reads a stamp, or gives undefined when it does not fit or is no time that exists.
 */
export function stampReader(format: string): (text: string) => Stamp | undefined {
  if (format === 'unix_s')
    return (text) =>
      /^\d{8,11}$/.test(text) ? { clockMs: Number(text) * MS_PER_SECOND, kind: 'time', offsetH: 0 } : undefined
  const pattern = format === 'iso' ? ISO : patternOf(format)
  return (text) => {
    const groups = pattern.exec(text)?.groups
    if (groups === undefined) return undefined
    const { year2, zone } = groups
    const year = Number(groups['year'] ?? (year2 === undefined ? Number.NaN : `20${year2}`))
    const dayMs = dateMs(year, Number(groups['month']), Number(groups['day']))
    const hour = hourOf(groups)
    const time = hour === undefined ? undefined : timeOfDayMs(hour, Number(groups['minute'] ?? 0), 0)
    if (dayMs === undefined || time === undefined) return undefined
    return { clockMs: dayMs + time, kind: 'time', ...(zone === undefined ? {} : { offsetH: zoneOffsetH(zone) }) }
  }
}
