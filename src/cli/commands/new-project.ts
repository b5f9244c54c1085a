import { dirname } from 'node:path'
import { InvalidArgumentError, Option, type Command } from 'commander'
import {
  addBlocks,
  mapsInBraces,
  houseOfProject,
  loadProject,
  PART_NAMES,
  ProjectError,
  partLines,
  readNamedText,
  LARGEST_YAML_BYTES,
  startingFile,
  type PartName,
  type StartingHouse,
} from '../../project/index.js'
import { UsageError } from '../errors.js'
import { numberIn, writesFile, type FileOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { schemaFor } from './new-project-schema.js'
import { siteAt, siteFromTable } from './new-project-site.js'

export const examples: readonly [Example, Example, ...Example[]] = [
  { line: 'new-project --site "Reno, NV" --out project.yaml', does: 'a project at a built-in weather site' },
  { line: 'new-project --lat 39.53 --lon -119.81 > project.yaml', does: 'a project at a house' },
  { line: 'new-project --ask --out project.yaml', does: 'a dozen questions, one after the other' },
  {
    line: 'new-project --parts wire,mounts --add-to project.yaml --force',
    does: 'what size-wire and space-mounts need, with made-up values to be replaced',
  },
]

interface Options extends FileOptions {
  readonly site?: string
  readonly lat?: number
  readonly lon?: number
  readonly title?: string
  readonly parts?: readonly PartName[]
  readonly addTo?: string
  readonly ask?: boolean
  readonly answers?: string
  readonly quiet?: boolean
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
      .option('--title <text>', 'title of the project', titleOf)
      .option(
        '--ask',
        'ask for place, roof, modules, bill and panel, one after the other; ? explains, Enter takes what stands in brackets',
      )
      .addOption(
        new Option(
          '--answers <file>',
          'take the answers from a YAML file instead of the keyboard (- for lines from stdin)',
        ).implies({ ask: true }),
      )
      .option(
        '--parts <list>',
        `write parts of later stages too, with made-up values: ${PART_NAMES.join(',')}`,
        partsOf,
      )
      .addOption(
        new Option(
          '--add-to <project.yaml>',
          'print this file with what it lacks of --parts, which stays as it is otherwise (--force alone: in place)',
        ).conflicts(['site', 'lat', 'lon', 'title', 'ask', 'answers']),
      ),
  )
}

function titleOf(text: string): string {
  const title = text.trim()
  if (title === '' || /\p{Cc}/u.test(title)) throw new InvalidArgumentError('A title is one line of text.')
  return title
}

function partsOf(text: string): PartName[] {
  return text.split(',').map((word) => {
    const name = PART_NAMES.find((each) => each === word.trim())
    if (name === undefined)
      throw new InvalidArgumentError(`'${word.trim()}' is no part; allowed: ${PART_NAMES.join(', ')}.`)
    return name
  })
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  if (options.addTo !== undefined) return addTo(options.addTo, options)
  const house = await houseOf(context, options)
  const file = options.out === undefined || options.out === '-' ? 'project.yaml' : options.out
  return {
    document: startingFile({ house, parts: options.parts ?? [], schema: schemaFor(options.out), name: file }),
    next: `replace what is marked !made_up; 'gablewatt check-project ${file}' lists it`,
  }
}

async function houseOf(context: CommandContext, options: Options): Promise<Partial<StartingHouse>> {
  const { site, lat, lon, title } = options
  if ((lat === undefined) !== (lon === undefined)) throw new UsageError('--lat and --lon go together: give both')
  const place =
    site !== undefined
      ? siteFromTable(site, context.progress)
      : lat !== undefined && lon !== undefined
        ? siteAt(lat, lon)
        : undefined
  const known: Partial<StartingHouse> = {
    ...(place === undefined ? {} : { site: place }),
    ...(title === undefined ? {} : { title: { value: title, madeUp: false } }),
  }
  if (options.ask !== true) return known
  const { askForHouse } = await import('./ask/ask-for-house.js')
  return await askForHouse(known, options.answers, options.out)
}

/** A file with the parts that it lacks: to `--out` or stdout, with `--force` alone in place. */
function addTo(path: string, { parts, out, force }: Options): CommandOutcome {
  if (parts === undefined) throw new UsageError(`--add-to wants --parts, one or more of ${PART_NAMES.join(',')}`)
  const text = readNamedText(path, LARGEST_YAML_BYTES)
  const house = houseOfProject(loadProject({ path }).project)
  const content = parts.reduce((whole, part) => addBlocks(whole, partLines(part, house)), text)
  checkWhole(content, path)
  const closed = mapsInBraces(content).filter((key) =>
    parts.some((part) => partLines(part, house).some((line) => line.startsWith(`${key}:`))),
  )
  const notes = [
    ...(content === text && closed.length === 0 ? ['nothing to add: the file has all of it'] : []),
    ...closed.map(
      (key) => `nothing was added to '${key}', which stands in braces: write its entries on lines of their own`,
    ),
  ]
  const inPlace = force === true && out === undefined
  const next = `replace what is marked !made_up; 'gablewatt check-project ${out === undefined || out === '-' ? path : out}' lists it`
  if (!inPlace) return { document: content, notes, next }
  return { document: '', notes, next, files: content === text ? [] : [{ path, content }] }
}

/** What is in braces takes no part: a person is told how to write it. */
function braces(text: string): string {
  const [first] = mapsInBraces(text)
  return first === undefined
    ? ''
    : `; '${first}' is in braces and takes no parts: write its entries on lines of their own under '${first}:', without tag or anchor, and run it again`
}

/** Nothing is written that would not be read again. */
function checkWhole(text: string, path: string): void {
  try {
    loadProject({ path: '-', text, baseFolder: dirname(path) })
  } catch (error) {
    if (!(error instanceof ProjectError)) throw error
    const [problem] = error.problems
    const what = problem === undefined ? error.message : `${problem.path}: ${problem.message}`
    throw new UsageError(`the parts do not fit what ${path} holds, and nothing was written: ${what}${braces(text)}`)
  }
}
