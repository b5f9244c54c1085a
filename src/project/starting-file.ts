import { FIRST_EQUIPMENT, FIRST_PARTS, LATER_EQUIPMENT, LATER_PARTS } from './starting-parts.js'
import type { Feet } from '../values/index.js'

interface Site {
  readonly name: string
  /** North positive, deg. */
  readonly lat: number
  /** East positive, deg. */
  readonly lon: number
  readonly elevationFt?: Feet
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH?: number
}

export interface StartingFileOptions {
  /** Title of the project; made from the place when missing. */
  readonly title?: string
  readonly site?: Site
  /** Where editors find the schema, for completion and hover text. */
  readonly schema?: string
}

const INVENTED_SITE = { name: 'Sampletown (invented)', lat: 38.6, lon: -121.5, elevationFt: 120, utcOffsetH: -8 }
const PACKAGED_SCHEMA = './node_modules/gablewatt/schemas/project.schema.json'

/** A valid project file with comments, to start from. What a person has to replace is marked `# <- yours`. */
export function startingFile(options: StartingFileOptions = {}): string {
  const { site = INVENTED_SITE, schema = PACKAGED_SCHEMA } = options
  return [
    `# yaml-language-server: $schema=${schema.replaceAll(/[\r\n]/g, '')}`,
    '#',
    '# A project for gablewatt. Every line marked "# <- yours" holds a made-up value: replace it by your own.',
    '# The ending of a key is its unit: _ft feet, _in inches, _deg degrees, _w watts, _pct percent, _c degrees Celsius.',
    '# Directions are degrees clockwise from true north (90 east, 180 south, 270 west).',
    '',
    'format: gablewatt/2',
    options.title === undefined
      ? `title: ${quoted(`My roof at ${site.name}`)}  # <- yours`
      : `title: ${quoted(options.title)}`,
    '',
    'document:',
    '  invented: true  # <- yours: false once people, place and equipment are real',
    '',
    ...siteLines(site),
    '',
    ...FIRST_PARTS,
    ...FIRST_EQUIPMENT,
    ...LATER_EQUIPMENT.map(behindComment),
    '',
    '# What the later answers need, to be uncommented when you come to it. Every value below is made up: state your own.',
    "# 'gablewatt check-project' tells what is wrong, and each subcommand asks for what it misses.",
    '',
    ...LATER_PARTS.map(behindComment),
    '',
  ].join('\n')
}

function siteLines(site: Site): string[] {
  const { name, lat, lon, elevationFt, utcOffsetH } = site
  return [
    'site:',
    `  address: ${quoted(name)}  # <- yours`,
    `  latitude_deg: ${lat}  # <- yours: north is positive`,
    `  longitude_deg: ${lon}  # <- yours: EAST is positive, all of America is negative`,
    ...(elevationFt === undefined ? [] : [`  elevation_ft: ${elevationFt}  # <- yours: ground above sea level`]),
    ...(utcOffsetH === undefined ? [] : [`  utc_offset_h: ${utcOffsetH}  # <- yours: local STANDARD time minus UTC`]),
    "  climate: nearby  # the nearest built-in sites; or { station: '724940' }, or { epw: weather.epw }",
  ]
}

/** A line of YAML that counts only when the person takes the `# ` away. */
function behindComment(line: string): string {
  return line === '' ? '' : `# ${line}`
}

/** Text in single quotes, on one line. */
function quoted(text: string): string {
  return `'${text.replaceAll(/\s+/g, ' ').replaceAll("'", "''")}'`
}
