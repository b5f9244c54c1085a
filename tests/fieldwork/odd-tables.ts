import type { Production } from '../../src/project/index.js'
import { randomOf } from './random-of.js'

/** A table of readings as loggers and people write them, and how it is declared to be read. */
export interface OddTable {
  readonly text: string
  readonly mapping: Production
}

const DAY_MS = 86_400_000
const ODD_NUMBERS = [
  '',
  '-',
  '--',
  'n/a',
  'NaN',
  'null',
  '+0.2',
  '.5',
  '1.',
  '1e-1',
  '2E0',
  '-0',
  '-0.01',
  '0.300000000000000001',
  '123456789012345678',
  '0.1000000000000000055',
  '1e999',
  'x',
  '12:00',
  '1,234',
  '0,5',
  '1 2',
  '..',
  '-.',
  '\u00a00.1',
  '99',
  '5000',
  '0.1234567890123456',
  '"0.25"',
  '"0,25"',
  ' 0.2',
  '0.2 ',
  '0.1\r',
  '"',
  '0.1"',
  '--1',
  '0x10',
  '1.2.3',
]
const ODD_STAMPS = [
  '2026-13-01 00:00',
  '2026-02-30 12:00',
  '2026-05-01 24:00',
  '2026-05-01 24:01',
  '2026-05-01 25:00',
  '2026-05-01 12:60',
  '2026-05-01',
  '2026-05',
  'May 2026',
  '',
  ' ',
  '2026-05-01  12:00',
  '2026-05-01t12:00',
  '2026-05-01 12:00:30',
  '2026-05-01T12:00:00Z',
  '2026-05-01 12:00-07:00',
  '2026-05-01 12:00:00.5',
  '2026/05/01 12:00',
  '05/01/2026 12:00 PM',
  '31.12.2026 12:00',
  '0026-05-01 12:00',
  '2026-5-1 1:00',
  '"2026-05-01 12:00"',
  '2026-05-01 12:00x',
  'yesterday',
]

/** An invented table, a third of them without anything odd; the same for the same seed. */
export function oddTable(seed: number): OddTable {
  const { uniform } = randomOf(seed + 1)
  const pick = <Value>(values: readonly Value[]): Value => values[Math.floor(values.length * uniform())]!
  const chance = (share: number): boolean => uniform() < share
  const step = pick([5, 15, 60, 60, 7, 1440])
  const start = Date.UTC(2026, pick([0, 2, 4, 10]), pick([1, 7, 8, 1]))
  const delimiter = pick([',', ',', ',', ';', '\t', '|'])
  const style = pick(['iso', 'iso', 'iso', 'T', 'seconds', 'zone', 'us', 'parted', 'quoted', 'month'])
  const modules = chance(0.2) ? ['east-1', 'east-2'] : []
  const [isCounter, isShort, oddness] = [chance(0.2), chance(0.3), pick([0, 0, 0.01, 0.05, 0.3])]
  const newline = pick(['\n', '\n', '\r\n'])
  const unit = pick(['kWh', 'kWh', 'Wh', 'kW', 'energy'])
  const extra = chance(0.2) ? ['note'] : []
  const time = style === 'parted' ? ['Date', 'Time'] : ['time']
  const lines = [[...time, ...extra, `Production (${unit})`, ...modules].join(delimiter)]
  if (chance(0.1)) lines.unshift('invented readings')
  const count = isShort ? Math.floor(12 * uniform()) : 60 + Math.floor(240 * uniform())
  let counter = 1000
  for (let at = 0; at < count; at += 1) {
    const ms = style === 'month' ? Date.UTC(2026, at, 1) : start + at * step * 60_000
    const lit = Math.max(0, Math.sin(((ms % DAY_MS) / DAY_MS - 0.25) * 2 * Math.PI))
    counter += 2 * lit
    const value = isCounter ? counter : step >= 1440 ? 12 * uniform() : (lit * step * (unit === 'Wh' ? 1000 : 1)) / 30
    const isOdd = (): boolean => chance(oddness)
    const number = (): string => (isOdd() ? pick(ODD_NUMBERS) : value.toFixed(pick([0, 2, 4])))
    const stamp = isOdd() ? pick(ODD_STAMPS) : stampOf(ms, style, delimiter)
    const cells = [stamp, ...extra.map(() => pick(['', 'ok', 'a b'])), number(), ...modules.map(number)]
    if (isOdd()) pick([() => cells.pop(), () => cells.push(''), () => cells.push('9'), () => cells.splice(0, 9)])()
    const line = cells.join(delimiter)
    lines.push(line)
    if (isOdd()) lines.push(pick([line, `${line}1`, '', '   ', delimiter, lines[1] ?? '']))
  }
  return {
    text: `${chance(0.05) ? '\uFEFF' : ''}${lines.join(newline)}${pick(['', newline])}`,
    mapping: {
      ...(unit === 'energy' && chance(0.8) ? { unit: 'kwh' } : {}),
      ...(chance(0.2) ? { clock: pick(['local', 'utc', 'standard'] as const) } : {}),
      ...(chance(0.2) ? { stamps_mark: pick(['beginning', 'ending'] as const) } : {}),
      ...(chance(0.3) ? { date_order: pick(['month_first', 'day_first'] as const) } : {}),
      ...(chance(0.1) ? { meter: pick(['interval', 'cumulative'] as const) } : {}),
    },
  }
}

function stampOf(ms: number, style: string, delimiter: string): string {
  const iso = new Date(ms).toISOString()
  const [date, clock] = [iso.slice(0, 10), iso.slice(11, 16)]
  switch (style) {
    case 'T':
      return `${date}T${clock}`
    case 'seconds':
      return `${date} ${clock}:00`
    case 'zone':
      return `${date}T${clock}:00-07:00`
    case 'us':
      return `${Number(date.slice(5, 7))}/${Number(date.slice(8))}/${date.slice(0, 4)} ${clock}`
    case 'parted':
      return `${date}${delimiter}${clock}`
    case 'quoted':
      return `"${date} ${clock}"`
    case 'month':
      return date.slice(0, 7)
    default:
      return `${date} ${clock}`
  }
}
