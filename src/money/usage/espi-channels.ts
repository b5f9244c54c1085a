import { own } from '../../values/index.js'
import { elements, textOf, wholeOf, type FeedEntry, type XmlElement } from './espi-feed.js'

/** How a meter channel counts. */
export interface ChannelType {
  readonly uom: number
  readonly power: number
  readonly flow: 'import' | 'export' | 'net' | 'other'
  readonly intervalS: number | undefined
  readonly register: boolean
}

/** One value as it stands in the file. */
export interface RawReading {
  readonly startS: number
  readonly durationS: number
  readonly value: number
}

/** A MeterReading of the feed with its type and values. */
export interface Channel {
  readonly type: ChannelType
  readonly readings: readonly RawReading[]
  readonly estimated: number
}

const FLOWS: Readonly<Record<string, ChannelType['flow']>> = { '1': 'import', '19': 'export', '4': 'net' }
/** Codes of ReadingQuality that mark an estimate: by a reference day, by interpolation (from memory, unverified). */
const ESTIMATED = ['8', '9']

function typeOf(entry: XmlElement): ChannelType {
  return {
    uom: wholeOf(entry, 'uom') ?? 0,
    power: wholeOf(entry, 'powerOfTenMultiplier') ?? 0,
    flow: own(FLOWS, textOf(entry, 'flowDirection')) ?? (textOf(entry, 'flowDirection') === '' ? 'import' : 'other'),
    intervalS: wholeOf(entry, 'intervalLength'),
    register: textOf(entry, 'accumulationBehaviour') === '1',
  }
}

function readingsOf(block: XmlElement, type: ChannelType): { readings: RawReading[]; estimated: number } {
  let next = wholeOf(block, 'interval', 'start')
  let estimated = 0
  const readings: RawReading[] = []
  for (const reading of elements(block['IntervalReading'])) {
    const startS = wholeOf(reading, 'timePeriod', 'start') ?? next
    const durationS = wholeOf(reading, 'timePeriod', 'duration') ?? type.intervalS
    const value = wholeOf(reading, 'value')
    if (startS !== undefined && durationS !== undefined) next = startS + durationS
    if (startS === undefined || durationS === undefined || value === undefined) continue
    if (elements(reading['ReadingQuality']).some((quality) => ESTIMATED.includes(textOf(quality, 'quality'))))
      estimated += 1
    readings.push({ startS, durationS, value })
  }
  return { readings, estimated }
}

/** Electricity channels of a feed, each with all of its readings. Entries are tied by their links, not by nesting. */
export function channelsOf(entries: readonly FeedEntry[]): Channel[] {
  const notElectricity = entries
    .filter(({ content }) => content['UsagePoint'] !== undefined)
    .filter(({ content }) => !['', '0'].includes(textOf(content, 'UsagePoint', 'ServiceCategory', 'kind')))
    .map(({ self }) => `${self}/`)
  const types = new Map<string, ChannelType>()
  for (const { self, content } of entries) {
    const type = elements(content['ReadingType'])[0]
    if (type !== undefined) types.set(self, typeOf(type))
  }
  const channels: Channel[] = []
  for (const meter of entries.filter(({ content }) => content['MeterReading'] !== undefined)) {
    if (notElectricity.some((prefix) => meter.self.startsWith(prefix))) continue
    const type = meter.related.map((href) => types.get(href)).find((found) => found !== undefined)
    if (type === undefined) continue
    const blocks = entries
      .filter(
        ({ self, up }) =>
          meter.related.includes(up) || up.startsWith(`${meter.self}/`) || self.startsWith(`${meter.self}/`),
      )
      .flatMap(({ content }) => elements(content['IntervalBlock']))
    const parts = blocks.map((block) => readingsOf(block, type))
    channels.push({
      type,
      readings: parts.flatMap((part) => part.readings),
      estimated: parts.reduce((all, part) => all + part.estimated, 0),
    })
  }
  return channels
}
