import { InvalidArgumentError, Option, type Command } from 'commander'
import { findSite, METRES_PER_FOOT, type ClimateSite } from '../../climate/index.js'
import { startingFile, type StartingFileOptions } from '../../project/index.js'
import { UsageError } from '../errors.js'
import { numberIn, writesFile, type FileOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example] = [
  { line: 'new-project --site "Reno, NV" --out project.yaml', does: 'a project at a built-in weather site' },
  { line: 'new-project --lat 39.53 --lon -119.81 > project.yaml', does: 'a project at a house' },
]

interface Options extends FileOptions {
  readonly site?: string
  readonly lat?: number
  readonly lon?: number
  readonly title?: string
}

export function configure(command: Command): void {
  writesFile(
    command
      .addOption(new Option('--site <place>', "a place as 'City, ST', or a station number").conflicts(['lat', 'lon']))
      .option('--lat <degrees>', 'latitude of the house, north positive', numberIn({ min: -90, max: 90 }))
      .option(
        '--lon <degrees>',
        'longitude of the house, east positive (the Americas are negative)',
        numberIn({ min: -180, max: 180 }),
      )
      .option('--title <text>', 'title of the project', titleOf),
  )
}

function titleOf(text: string): string {
  const title = text.trim()
  if (title === '' || /\p{Cc}/u.test(title)) throw new InvalidArgumentError('A title is one line of text.')
  return title
}

export function run(context: CommandContext, options: Options): CommandOutcome {
  const site = siteOf(options, context.progress)
  const file = options.out === undefined || options.out === '-' ? 'project.yaml' : options.out
  return {
    document: startingFile({
      ...(site === undefined ? {} : { site }),
      ...(options.title === undefined ? {} : { title: options.title }),
    }),
    next: `replace what is marked '# <- yours', then: gablewatt check-project ${file}`,
  }
}

function siteOf({ site, lat, lon }: Options, progress: CommandContext['progress']): StartingFileOptions['site'] {
  if (site !== undefined) return fromTable(site, progress)
  if (lat === undefined && lon === undefined) return undefined
  if (lat === undefined || lon === undefined) throw new UsageError('--lat and --lon go together: give both')
  return { name: `${lat}, ${lon}`, lat, lon }
}

function fromTable(text: string, progress: CommandContext['progress']): NonNullable<StartingFileOptions['site']> {
  const { site, candidates } = findSite(text)
  if (site === undefined) {
    const hint = candidates.length === 0 ? '' : `; did you mean ${candidates.map(sayCandidate).join(', or ')}?`
    throw new UsageError(`no one weather site is '${text}'${hint} 'gablewatt list-sites' finds them by word or place`)
  }
  if (candidates.length > 0) {
    progress(`taking ${sayCandidate(site)}; others: ${candidates.map(sayCandidate).join(', ')}`)
  }
  return {
    name: `${site.name}, ${site.state}`,
    lat: site.latitudeDeg,
    lon: site.longitudeDeg,
    elevationFt: Math.round(site.elevationM / METRES_PER_FOOT),
    utcOffsetH: site.utcOffsetH,
  }
}

/** With the number, as two sites may share a name. */
function sayCandidate(site: ClimateSite): string {
  return `${site.name}, ${site.state} (${site.wmo})`
}
