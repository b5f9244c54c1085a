import { StageError } from '../../worksheet/index.js'
import { HOUSE_POWERS, INTERVAL_KIND, OTHER_KINDS, UNSTATED_KINDS } from '../../tables/money/index.js'
import { channelsOf, type Channel } from './espi-channels.js'
import { elements, readFeed, textOf, wholeOf, type FeedEntry } from './espi-feed.js'
import { decodeTimeRule, isUsRule } from './espi-time-rule.js'
import type { MeterReading, MeterSeries, OverlapPolicy } from './meter-series.js'
import { orderReadings } from './order-readings.js'
import { differences } from './register-readings.js'

const WHERE = 'usage.green_button'
const WATT_HOURS = 72

/** Wh per unit of the values. @throws StageError for a multiplier that the meter of a house has not. */
function whPerUnit({ power }: Channel['type']): number {
  if (power === '') return 1
  const fix = 'Ask the utility for a clean export, or use a table with usage.interval_csv, which states its unit.'
  if (!/^[+-]?\d+$/u.test(power)) {
    throw new StageError(WHERE, `powerOfTenMultiplier '${power}' is no whole number`, fix)
  }
  const { lowest, highest } = HOUSE_POWERS
  if (Number(power) >= lowest && Number(power) <= highest) return 10 ** Number(power)
  const message = `powerOfTenMultiplier ${power} is outside ${String(lowest)} to ${String(highest)}: no meter of a house counts so`
  throw new StageError(WHERE, message, fix)
}

/** Whether the values are the use of intervals, or a register whose differences are. */
function tellsIntervals({ type: { accumulation, register } }: Channel): boolean {
  return register || accumulation === INTERVAL_KIND || UNSTATED_KINDS.includes(accumulation)
}

/** Why there is no channel to take: none of energy, or none that tells intervals. */
function noChannel(all: readonly Channel[], energy: readonly Channel[]): StageError {
  const other = energy.find((one) => !tellsIntervals(one) && ['import', 'net'].includes(one.type.flow))
  if (other === undefined) {
    return new StageError(
      WHERE,
      `the file holds no electric energy delivered to the house (${String(all.length)} channels, none of plain energy in Wh with readings)`,
      'Export electricity usage by the hour or finer.',
    )
  }
  const { accumulation } = other.type
  return new StageError(
    WHERE,
    `the values are of accumulationBehaviour ${accumulation} (${OTHER_KINDS[accumulation] ?? 'unknown'}), which does not tell the use of each interval`,
    'Ask the utility for the use per interval (accumulationBehaviour 4).',
  )
}

function toWh(channel: Channel): MeterReading[] {
  const { type, broken } = channel
  const factor = whPerUnit(type)
  if (broken !== undefined) {
    const message = `the reading '${broken}' is no whole number`
    throw new StageError(WHERE, message, 'Ask the utility for a clean export.')
  }
  const values = type.register ? differences(channel.readings, type.flow === 'net', factor, WHERE) : channel.readings
  return values.map(({ startS, durationS, value }) => {
    const wh = value * factor
    if (type.flow !== 'net' && wh < 0) {
      throw new StageError(
        WHERE,
        `a reading of ${String(wh)} Wh is below zero`,
        'Ask the utility for import and export apart.',
      )
    }
    const exported = type.flow === 'export'
    return { startS, durationS, importWh: exported ? 0 : Math.max(0, wh), exportWh: exported ? wh : Math.max(0, -wh) }
  })
}

/** Length of an interval; readings of a register stand at an instant, and the time between two of them counts. */
function stepOf({ type, readings }: Channel): number {
  const [first, second] = readings
  if (first === undefined) return Infinity
  return type.register && second !== undefined ? Math.abs(second.startS - first.startS) : first.durationS
}

/**
 * The finest channel of a flow, then the one with most readings.
 *
 * @throws StageError when another channel of the same flow and interval shows other energy at the same time.
 */
function finest(channels: readonly Channel[], flow: Channel['type']['flow']): Channel | undefined {
  const [main, ...others] = channels
    .filter((channel) => channel.type.flow === flow && channel.readings.length > 0)
    .sort(
      (a, b) =>
        stepOf(a) - stepOf(b) ||
        Number(a.type.register) - Number(b.type.register) ||
        b.readings.length - a.readings.length,
    )
  if (main === undefined) return undefined
  const step = stepOf(main)
  const rivals = others.filter((other) => stepOf(other) === step && other.type.register === main.type.register)
  if (rivals.length === 0) return main
  const factor = whPerUnit(main.type)
  const known = new Map(main.readings.map(({ startS, value }) => [startS, value * factor]))
  const different = rivals.filter((rival) => {
    const unit = whPerUnit(rival.type)
    return rival.readings.some(({ startS, value }) => known.has(startS) && known.get(startS) !== value * unit)
  })
  if (different.length === 0) return main
  const words = flow === 'export' ? 'sent' : 'delivered'
  throw new StageError(
    WHERE,
    `the file holds ${String(different.length + 1)} different channels of ${words} energy per ${String(step)} s; which is the house is not told`,
    'Export the meter of the house alone.',
  )
}

function clockOf(entries: readonly FeedEntry[]): Pick<MeterSeries, 'utcOffsetS' | 'daylightSaving'> {
  const local = elements(entries.map(({ content }) => content['LocalTimeParameters']))[0]
  if (local === undefined) return { utcOffsetS: undefined, daylightSaving: undefined }
  const start = decodeTimeRule(textOf(local, 'dstStartRule'))
  const end = decodeTimeRule(textOf(local, 'dstEndRule'))
  const daylightSaving = start !== undefined && end !== undefined && wholeOf(local, 'dstOffset') !== 0
  if (daylightSaving && !isUsRule(start, end)) {
    throw new StageError(
      WHERE,
      'the file states another daylight saving rule than second Sunday of March to first Sunday of November',
      'Export the data as a table in standard time and use usage.interval_csv.',
    )
  }
  return { utcOffsetS: wholeOf(local, 'tzOffset'), daylightSaving }
}

function withExport(imports: readonly MeterReading[], exports: readonly MeterReading[]): MeterReading[] {
  const byStart = new Map(exports.map((reading) => [reading.startS, reading.exportWh]))
  return imports.map((reading) => ({ ...reading, exportWh: byStart.get(reading.startS) ?? reading.exportWh }))
}

/**
 * Reads an ESPI (Green Button) XML export: the finest channel of delivered energy, or the net one.
 *
 * @param overlaps What to do with different readings of one interval; undefined = an error.
 * @throws StageError when the file holds no electricity in Wh, values of another kind than intervals and registers, or
 * contradicts itself.
 * @source NAESB REQ.21 (ESPI) as public code comments and sample files show it (standard not read)
 */
export function readGreenButton(xml: string, overlaps?: OverlapPolicy): MeterSeries {
  const entries = readFeed(xml)
  const channels = channelsOf(entries)
  const energy = channels.filter(({ type }) => type.uom === WATT_HOURS && type.isEnergy)
  const usable = energy.filter(tellsIntervals)
  const main = finest(usable, 'import') ?? finest(usable, 'net')
  if (main === undefined) throw noChannel(channels, energy)
  const delivered = orderReadings(toWh(main), overlaps, WHERE)
  const exporting = finest(usable, 'export')
  const sent = exporting === undefined ? [] : orderReadings(toWh(exporting), overlaps, WHERE).readings
  const unused = channels.length - 1 - (exporting === undefined ? 0 : 1)
  return {
    ...delivered,
    ...clockOf(entries),
    readings: withExport(delivered.readings, sent),
    where: WHERE,
    estimated: main.estimated,
    unstated: [
      ...(UNSTATED_KINDS.includes(main.type.accumulation) ? (['accumulation'] as const) : []),
      ...(main.type.statesFlow ? [] : (['flow'] as const)),
    ],
    leftOut:
      unused === 0
        ? []
        : [
            `${unused === 1 ? '1 further channel of the file was' : `${String(unused)} further channels of the file were`} left out (coarser, demand, other units or other flows)`,
          ],
  }
}
