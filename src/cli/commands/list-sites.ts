import { InvalidArgumentError, type Command } from 'commander'
import { explainSiteFlag, listSites, type ListedSite } from '../../climate/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { numberIn, writesReport } from '../options.js'
import { type Column, roundForMachines, type TableData } from '../../report/index.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example] = [
  { line: 'list-sites reno', does: 'sites with a word of their name that begins so' },
  { line: 'list-sites --near 39.5,-119.8 --limit 5 --json', does: 'the five nearest to a place, for a script' },
]

interface Place {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
}

interface Options {
  readonly near?: Place
  readonly limit: number
}

export function configure(command: Command): void {
  writesReport(
    command
      .argument('[text...]', 'words that begin words of the name, the state as two letters, or a station number')
      .option('--near <lat,lon>', 'nearest first; degrees, north and east positive: 39.5,-119.8', parsePlace)
      .option('--limit <count>', 'how many to list', numberIn({ min: 1, max: 100_000, whole: true }), 20),
  )
}

export function run(context: CommandContext, { near, limit }: Options): CommandOutcome {
  const text = context.args.join(' ')
  const found = listSites({ text, near })
  const sites = found.slice(0, limit)
  const sheet = new Worksheet()
  if (found.length === 0) {
    sheet.find({
      severity: 'warning',
      id: 'sites.none-found',
      message: `no built-in weather site fits '${text}'`,
      where: '',
      fix: 'try the beginning of the name alone, the state as two letters, or --near with latitude and longitude',
    })
  }
  const notes = doubtsAbout(sites)
  const count =
    sites.length < found.length ? `${sites.length} of ${found.length}; --limit shows more` : `${sites.length}`
  return {
    report: {
      title: `Weather sites (${count})`,
      stage: 'sites',
      sections: [
        ...(sites.length === 0 ? [] : [{ kind: 'table' as const, ...tableOf(sites, near !== undefined) }]),
        ...(notes.length === 0 ? [] : [{ kind: 'list' as const, heading: 'Doubts about these sites', items: notes }]),
      ],
      csv: tableOf(sites, near !== undefined),
      result: sheet.result({ matching: found.length, sites: sites.map(jsonOf) }),
    },
  }
}

/** Without a place to measure from there is no distance to show. */
function tableOf(sites: readonly ListedSite[], measured: boolean): TableData {
  const distance: Column = { heading: 'Distance', unit: 'km' }
  return {
    columns: [
      { heading: 'Station', key: 'wmo' },
      { heading: 'Name' },
      { heading: 'State' },
      { heading: 'Latitude', unit: 'deg', decimals: 3 },
      { heading: 'Longitude', unit: 'deg', decimals: 3 },
      { heading: 'Height', unit: 'm', key: 'elevation_m' },
      { heading: 'UTC', unit: 'h', decimals: 1, key: 'utc_offset_h' },
      ...(measured ? [distance] : []),
    ],
    rows: sites.map((site) => [
      site.wmo,
      site.name,
      site.state,
      site.latitudeDeg,
      site.longitudeDeg,
      site.elevationM,
      site.utcOffsetH,
      ...(site.distanceKm === undefined ? [] : [roundForMachines(site.distanceKm)]),
    ]),
  }
}

function jsonOf(site: ListedSite): Record<string, unknown> {
  return {
    wmo: site.wmo,
    name: site.name,
    state: site.state,
    latitude_deg: site.latitudeDeg,
    longitude_deg: site.longitudeDeg,
    elevation_m: site.elevationM,
    utc_offset_h: site.utcOffsetH,
    distance_km: site.distanceKm,
    notes: site.flags.map(explainSiteFlag),
  }
}

/** Each doubt once, with the sites that it concerns. */
function doubtsAbout(sites: readonly ListedSite[]): string[] {
  const doubts = new Map<string, string[]>()
  for (const site of sites) {
    for (const doubt of site.flags.map(explainSiteFlag)) {
      doubts.set(doubt, [...(doubts.get(doubt) ?? []), `${site.name}, ${site.state}`])
    }
  }
  return [...doubts].map(([doubt, names]) => `${names.join('; ')}: ${doubt}`)
}

function parsePlace(text: string): Place {
  const [latitude, longitude, ...rest] = text.split(',')
  if (latitude === undefined || longitude === undefined || rest.length > 0) {
    throw new InvalidArgumentError('It must be latitude,longitude in degrees, such as 39.5,-119.8.')
  }
  return {
    latitudeDeg: numberIn({ min: -90, max: 90 })(latitude),
    longitudeDeg: numberIn({ min: -180, max: 180 })(longitude),
  }
}
