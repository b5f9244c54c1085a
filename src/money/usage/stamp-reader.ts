import type { Seconds } from '../../values/index.js'

/** Parts of a time stamp; `utcS` when the stamp is absolute. */
export interface Stamp {
  readonly year: number
  readonly month: number
  readonly day: number
  /** Minutes after local midnight, up to 1440. */
  readonly minute: number
  readonly utcS: Seconds | undefined
}

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

function zoneMinutes(zone: string): number {
  if (zone === 'Z') return 0
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(-2))
  return zone.startsWith('-') ? -minutes : minutes
}

function hourOf(groups: Readonly<Record<string, string | undefined>>): number {
  const { hour, hour12, half } = groups
  if (hour12 === undefined) return Number(hour ?? 0)
  return (Number(hour12) % 12) + (half?.toLowerCase() === 'p' ? 12 : 0)
}

/**
 * Makes a reader of time stamps.
 *
 * @param format Pattern with YYYY YY MM M DD D HH H hh h mm ss A, or `iso`, or `unix_s`.
 * @returns Function that reads a stamp, or gives undefined when it does not fit.
 */
export function stampReader(format: string): (text: string) => Stamp | undefined {
  if (format === 'unix_s') {
    return (text) => {
      if (!/^\d{8,11}$/.test(text)) return undefined
      const utcS = Number(text)
      const date = new Date(utcS * 1000)
      return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate(), minute: 0, utcS }
    }
  }
  const pattern = format === 'iso' ? ISO : patternOf(format)
  return (text) => {
    const groups = pattern.exec(text)?.groups
    if (groups === undefined) return undefined
    const { year2, zone } = groups
    const year = Number(groups['year'] ?? (year2 === undefined ? Number.NaN : `20${year2}`))
    const month = Number(groups['month'])
    const day = Number(groups['day'])
    const minute = hourOf(groups) * 60 + Number(groups['minute'] ?? 0)
    const date = new Date(Date.UTC(year, month - 1, day))
    if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || minute > 1440) return undefined
    const utcS =
      zone === undefined ? undefined : Date.UTC(year, month - 1, day) / 1000 + (minute - zoneMinutes(zone)) * 60
    return { year, month, day, minute, utcS }
  }
}
