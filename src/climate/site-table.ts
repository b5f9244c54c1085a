import { SITE_TABLE } from '../tables/climate/index.js'

/** What identifies a built-in site. */
export interface ClimateSite {
  /** Station number as text, six digits. */
  readonly wmo: string
  readonly name: string
  readonly state: string
  readonly latitudeDeg: number
  /** East positive. */
  readonly longitudeDeg: number
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH: number
  readonly elevationM: number
  /** Checks that the site failed, empty for most; `explainSiteFlag` puts each into words. */
  readonly flags: readonly string[]
}

/** The monthly and design values of one built-in site. Twelve values each, January first. */
export interface SiteRecord {
  readonly ghiWhM2Day: readonly number[]
  readonly dhiWhM2Day: readonly number[]
  readonly meanC: readonly number[]
  readonly meanMaxC: readonly number[]
  readonly meanMinC: readonly number[]
  readonly windMs: readonly number[]
  /** Annual 0.4 % cooling dry-bulb, deg C. */
  readonly high0p4pctC: number
  /** Mean of the annual extreme minimum dry-bulb, deg C. */
  readonly extremeLowC: number | undefined
  /** Mean of the June to August 2 % dry-bulb, deg C. */
  readonly high2pctC: number
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

let decoded: readonly ClimateSite[] | undefined
/** Where the rest of a station's row begins in the table. */
const restAt = new Map<string, number>()

/** All built-in sites in the order of the table: by state, then name. Decoded on first use and kept. */
export function climateSites(): readonly ClimateSite[] {
  decoded ??= decodeSites()
  return decoded
}

function decodeSites(): ClimateSite[] {
  const sites: ClimateSite[] = []
  let at = 0
  const field = (): string => {
    const end = SITE_TABLE.indexOf('\t', at)
    const text = SITE_TABLE.slice(at, end)
    at = end + 1
    return text
  }
  while (at < SITE_TABLE.length) {
    const [wmo, name, state] = [field(), field(), field()]
    const [latitudeDeg, longitudeDeg] = [Number(field()) / 1000, Number(field()) / 1000]
    const [utcOffsetH, elevationM, flagText] = [Number(field()), Number(field()), field()]
    const flags = flagText === '' ? [] : flagText.split(' ')
    sites.push({ wmo, name, state, latitudeDeg, longitudeDeg, utcOffsetH, elevationM, flags })
    restAt.set(wmo, at)
    at = SITE_TABLE.indexOf('\n', at) + 1
  }
  return sites
}

/** Decodes the monthly and design values of one site. */
export function siteRecord(site: ClimateSite): SiteRecord {
  const at = restAt.get(site.wmo)
  if (at === undefined) throw new Error(`station ${site.wmo} is not in the climate table`)
  const rest = SITE_TABLE.slice(at, SITE_TABLE.indexOf('\n', at)).split('\t')
  const [file = '', design = '', estimates = '', numbers = ''] = rest
  const texts = numbers.split(',')
  const tenth = (index: number): number => Number(texts[index]) / 10
  const year = (first: number, scale: number): number[] =>
    texts.slice(first, first + 12).map((text) => Number(text) / scale)
  const codes = estimates.split(' ')
  const code = codes.find((one): one is keyof typeof ESTIMATED_FROM => one in ESTIMATED_FROM)
  return {
    ghiWhM2Day: year(0, 1),
    dhiWhM2Day: year(12, 1),
    meanC: year(24, 10),
    meanMaxC: year(36, 10),
    meanMinC: year(48, 10),
    windMs: year(60, 10),
    high0p4pctC: tenth(72),
    extremeLowC: texts[73] === '' ? undefined : tenth(73),
    high2pctC: tenth(74),
    extremeLowEstimatedFrom: code === undefined ? undefined : ESTIMATED_FROM[code],
    high2pctEstimated: codes.includes('j'),
    radiationSource: `TMY3 ${site.state}-${file}`,
    designSource: DESIGN_SOURCES[design] ?? design,
  }
}
