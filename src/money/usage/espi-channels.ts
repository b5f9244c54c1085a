import { own, type Seconds } from '../../values/index.js'
import { ELECTRIC_COMMODITIES, ENERGY_KINDS, PLAIN_QUALIFIERS, REGISTER_KINDS } from '../../tables/money/index.js'
import { elements, textOf, wholeOf, type FeedEntry, type XmlElement } from './espi-feed.js'

/** How a meter channel counts. */
export interface ChannelType {
  readonly uom: number
  /** Power of ten that multiplies the values, as it stands in the file; '' = 0. */
  readonly power: string
  readonly flow: 'import' | 'export' | 'net' | 'other'
  readonly statesFlow: boolean
  readonly intervalS: Seconds | undefined
  /** accumulationBehaviour as it stands in the file. */
  readonly accumulation: string
  readonly register: boolean
  /** Whether the values are plain electric energy: no demand, mean, extreme or other commodity. */
  readonly isEnergy: boolean
}

/** One value as it stands in the file. */
export interface RawReading {
  readonly startS: Seconds
  readonly durationS: Seconds
  readonly value: number
}

/** A MeterReading of the feed with its type and values. */
export interface Channel {
  readonly type: ChannelType
  readonly readings: readonly RawReading[]
  readonly estimated: number
  /** A value that is no whole number, if there is one. */
  readonly broken: string | undefined
}

const FLOWS: Readonly<Record<string, ChannelType['flow']>> = { '1': 'import', '19': 'export', '4': 'net' }
/** Codes of ReadingQuality that mark an estimate: by a reference day, by interpolation (from memory, unverified). */
const ESTIMATED = ['8', '9']

function typeOf(entry: XmlElement): ChannelType {
  const flow = textOf(entry, 'flowDirection')
  const accumulation = textOf(entry, 'accumulationBehaviour')
  return {
    uom: wholeOf(entry, 'uom') ?? 0,
    power: textOf(entry, 'powerOfTenMultiplier'),
    flow: own(FLOWS, flow) ?? (flow === '' ? 'import' : 'other'),
    statesFlow: flow !== '',
    intervalS: wholeOf(entry, 'intervalLength'),
    accumulation,
    register: REGISTER_KINDS.includes(accumulation),
    isEnergy:
      ENERGY_KINDS.includes(textOf(entry, 'kind')) &&
      PLAIN_QUALIFIERS.includes(textOf(entry, 'dataQualifier')) &&
      ELECTRIC_COMMODITIES.includes(textOf(entry, 'commodity')),
  }
}

function readingsOf(block: XmlElement, type: ChannelType): Omit<Channel, 'type'> {
  let next = wholeOf(block, 'interval', 'start')
  let estimated = 0
  let broken: string | undefined
  const readings: RawReading[] = []
  for (const reading of elements(block['IntervalReading'])) {
    const startS = wholeOf(reading, 'timePeriod', 'start') ?? next
    const durationS = wholeOf(reading, 'timePeriod', 'duration') ?? type.intervalS ?? (type.register ? 0 : undefined)
    const value = wholeOf(reading, 'value')
    const text = value === undefined ? textOf(reading, 'value') : ''
    if (text !== '') broken ??= text
    if (startS !== undefined && durationS !== undefined) next = startS + durationS
    if (startS === undefined || durationS === undefined || value === undefined) continue
    if (elements(reading['ReadingQuality']).some((quality) => ESTIMATED.includes(textOf(quality, 'quality'))))
      estimated += 1
    readings.push({ startS, durationS, value })
  }
  return { readings, estimated, broken }
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
      broken: parts.find((part) => part.broken !== undefined)?.broken,
    })
  }
  return channels
}
