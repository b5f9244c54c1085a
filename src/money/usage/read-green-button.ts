import { StageError } from '../../worksheet/index.js'
import { channelsOf, type Channel, type RawReading } from './espi-channels.js'
import { elements, readFeed, textOf, wholeOf, type FeedEntry } from './espi-feed.js'
import { decodeTimeRule, isUsRule } from './espi-time-rule.js'
import type { MeterReading, MeterSeries, OverlapPolicy } from './meter-series.js'
import { orderReadings } from './order-readings.js'

const WHERE = 'usage.green_button'
const WATT_HOURS = 72

/** Differences of a register; the last reading has none. */
function differences(readings: readonly RawReading[]): RawReading[] {
  const sorted = [...readings].sort((a, b) => a.startS - b.startS)
  return sorted.slice(0, -1).map((reading, i) => {
    const next = sorted[i + 1] ?? reading
    if (next.value < reading.value) {
      throw new StageError(
        WHERE,
        'the register of the meter runs backwards',
        'Ask the utility for readings per interval.',
      )
    }
    return { startS: reading.startS, durationS: next.startS - reading.startS, value: next.value - reading.value }
  })
}

function toWh(channel: Channel): MeterReading[] {
  const { type } = channel
  const factor = 10 ** type.power
  return (type.register ? differences(channel.readings) : channel.readings).map(({ startS, durationS, value }) => {
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

/** The finest channel of a flow, then the one with most readings. */
function finest(channels: readonly Channel[], flow: Channel['type']['flow']): Channel | undefined {
  const step = (channel: Channel): number => channel.readings[0]?.durationS ?? Infinity
  return channels
    .filter((channel) => channel.type.flow === flow && channel.readings.length > 0)
    .sort((a, b) => step(a) - step(b) || b.readings.length - a.readings.length)[0]
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
 * @throws StageError when the file holds no electricity in Wh, or contradicts itself.
 * @source NAESB REQ.21 (ESPI) as public code comments and sample files show it (standard not read)
 */
export function readGreenButton(xml: string, overlaps?: OverlapPolicy): MeterSeries {
  const entries = readFeed(xml)
  const channels = channelsOf(entries)
  const energy = channels.filter((channel) => channel.type.uom === WATT_HOURS)
  const main = finest(energy, 'import') ?? finest(energy, 'net')
  if (main === undefined) {
    throw new StageError(
      WHERE,
      `the file holds no electric energy delivered to the house (${String(channels.length)} channels, none in Wh with readings)`,
      'Export electricity usage by the hour or finer.',
    )
  }
  const delivered = orderReadings(toWh(main), overlaps, WHERE)
  const exporting = finest(energy, 'export')
  const sent = exporting === undefined ? [] : orderReadings(toWh(exporting), overlaps, WHERE).readings
  const unused = channels.length - 1 - (exporting === undefined ? 0 : 1)
  return {
    ...delivered,
    ...clockOf(entries),
    readings: withExport(delivered.readings, sent),
    where: WHERE,
    estimated: main.estimated,
    leftOut:
      unused === 0
        ? []
        : [`${String(unused)} further channels of the file (coarser, other units or other flows) were left out`],
  }
}
