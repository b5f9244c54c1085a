import { EXTRA_SITE_TABLE, SITE_TABLE } from '../tables/climate/index.js'
import type { Celsius, Degrees } from '../values/index.js'

/** What identifies a built-in site. */
export interface ClimateSite {
  /** Station number as text, six digits. */
  readonly wmo: string
  readonly name: string
  readonly state: string
  readonly latitudeDeg: Degrees
  /** East positive. */
  readonly longitudeDeg: Degrees
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH: number
  readonly elevationM: number
  /** Checks that the site failed, empty for most; `explainSiteFlag` puts each into words. */
  readonly flags: readonly string[]
}

/** The monthly values of one built-in site. Twelve values each, January first. */
export interface MonthlyRecord {
  readonly ghiWhM2Day: readonly number[]
  readonly dhiWhM2Day: readonly number[]
  readonly meanC: readonly Celsius[]
  readonly meanMaxC: readonly Celsius[]
  readonly meanMinC: readonly Celsius[]
  readonly windMs: readonly number[]
}

/** The monthly and design values of one built-in site. */
export interface SiteRecord extends MonthlyRecord {
  /** Annual 0.4 % cooling dry-bulb, deg C. */
  readonly high0p4pctC: Celsius
  /** Mean of the annual extreme minimum dry-bulb, deg C. */
  readonly extremeLowC: Celsius | undefined
  /** Mean of the June to August 2 % dry-bulb, deg C. */
  readonly high2pctC: Celsius
  /** What an estimated extreme low was made from; undefined when a published table states it. */
  readonly extremeLowEstimatedFrom: 'heating and zone' | 'heating' | 'zone' | undefined
  readonly high2pctEstimated: boolean
  readonly radiationSource: string
  readonly designSource: string
}

const ESTIMATED_FROM = { ehz: 'heating and zone', eh: 'heating', ez: 'zone' } as const
const DESIGN_SOURCES: Readonly<Record<string, string>> = {
  H: 'ASHRAE 2009 through the header of a public weather file',
  L: 'ASHRAE 2009 0.4 % cooling and 99 % heating through an open list',
}

let rows: readonly string[] | undefined
let designedCount = 0
const sites: (ClimateSite | undefined)[] = []
const rowOfStation = new Map<string, number>()

/** Sites with design temperatures come first; those that count for sun, temperature and wind alone follow. */
function tableRows(): readonly string[] {
  if (rows === undefined) {
    const designed = SITE_TABLE.split('\n')
    designedCount = designed.length
    rows = [...designed, ...EXTRA_SITE_TABLE.split('\n')]
  }
  return rows
}

/** Every row's latitude and longitude, degrees; nothing else of the rows is decoded. */
export interface SitePositions {
  readonly latitudeDeg: Float64Array
  readonly longitudeDeg: Float64Array
}

let positions: SitePositions | undefined

export function sitePositions(): SitePositions {
  if (positions !== undefined) return positions
  const table = tableRows()
  const latitudeDeg = new Float64Array(table.length)
  const longitudeDeg = new Float64Array(table.length)
  for (let row = 0; row < table.length; row++) {
    const text = table[row]!
    const tab = text.indexOf('\t')
    latitudeDeg[row] = Number(text.slice(0, tab)) / 1000
    longitudeDeg[row] = Number(text.slice(tab + 1, text.indexOf('\t', tab + 1))) / 1000
  }
  positions = { latitudeDeg, longitudeDeg }
  return positions
}

/** What identifies the site of a row; decoded on first use and kept. */
export function siteAtRow(row: number): ClimateSite {
  const known = sites[row]
  if (known !== undefined) return known
  const fields = tableRows()[row]!.split('\t', 8)
  const flags = fields[7]!
  const wmo = fields[2]!
  const site: ClimateSite = {
    wmo,
    name: fields[3]!,
    state: fields[4]!,
    latitudeDeg: Number(fields[0]) / 1000,
    longitudeDeg: Number(fields[1]) / 1000,
    utcOffsetH: Number(fields[5]),
    elevationM: Number(fields[6]),
    flags: flags === '' ? [] : flags.split(' '),
  }
  sites[row] = site
  rowOfStation.set(wmo, row)
  return site
}

/** The built-in sites that have design temperatures, in the order of the table. */
export function climateSites(): readonly ClimateSite[] {
  return poolSites().slice(0, designedCount)
}

/** All built-in sites: those with design temperatures, then those that have only sun, temperature and wind. */
export function poolSites(): readonly ClimateSite[] {
  return tableRows().map((_, row) => siteAtRow(row))
}

/** Row of a site in the table, which is its row in the tables beside it too. */
export function rowOfSite(site: Pick<ClimateSite, 'wmo'>): number {
  const row = rowOfStation.get(site.wmo)
  if (row === undefined) throw new Error(`station ${site.wmo} is not in the climate table`)
  return row
}

/** Whether the site of a row has design temperatures. */
export function isDesigned(row: number): boolean {
  tableRows()
  return row < designedCount
}

/** Monthly values by row, as far as they were asked for. */
const records: (MonthlyRecord | undefined)[] = []

/** The monthly values of any site; decoded on first use and kept. */
export function monthlyRecord(site: ClimateSite): MonthlyRecord {
  return (records[rowOfSite(site)] ??= decodeMonthly(site))
}

function decodeMonthly(site: ClimateSite): MonthlyRecord {
  const texts = tableRows()[rowOfSite(site)]!.split('\t')[11]!.split(',')
  const year = (first: number, scale: number): number[] =>
    texts.slice(first, first + 12).map((text) => Number(text) / scale)
  return {
    ghiWhM2Day: year(0, 1),
    dhiWhM2Day: year(12, 1),
    meanC: year(24, 10),
    meanMaxC: year(36, 10),
    meanMinC: year(48, 10),
    windMs: year(60, 10),
  }
}

/** Decodes the monthly and design values of one site that has design temperatures. */
export function siteRecord(site: ClimateSite): SiteRecord {
  const row = rowOfSite(site)
  if (!isDesigned(row)) throw new Error(`station ${site.wmo} has no design temperatures`)
  const rest = tableRows()[row]!.split('\t').slice(8)
  const [file = '', design = '', estimates = '', numbers = ''] = rest
  const texts = numbers.split(',')
  const tenth = (index: number): number => Number(texts[index]) / 10
  const codes = estimates.split(' ')
  const code = codes.find((one): one is keyof typeof ESTIMATED_FROM => Object.hasOwn(ESTIMATED_FROM, one))
  return {
    ...monthlyRecord(site),
    high0p4pctC: tenth(72),
    extremeLowC: texts[73] === '' ? undefined : tenth(73),
    high2pctC: tenth(74),
    extremeLowEstimatedFrom: code === undefined ? undefined : ESTIMATED_FROM[code],
    high2pctEstimated: codes.includes('j'),
    radiationSource: `TMY3 ${site.state}-${file}`,
    designSource: DESIGN_SOURCES[design] ?? design,
  }
}
