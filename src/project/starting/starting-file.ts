import type { Feet } from '../../values/index.js'
import { madeUp, put, stated } from './given.js'
import { FIRST_EQUIPMENT } from './starting-equipment.js'
import {
  MADE_UP_PLANE,
  MADE_UP_SITE,
  type StartingHouse,
  type StartingPlane,
  type StartingSite,
} from './starting-house.js'
import { tariffLines } from './starting-money.js'
import { addBlocks } from './add-blocks.js'
import { isWritten, PART_COMMANDS, PART_NAMES, partLines, type PartName } from './starting-parts.js'

export interface StartingFileOptions {
  /** Title of the project; made from the place when missing. */
  readonly title?: string
  /** Where the house stands: north and east positive, deg; height in ft; local standard time minus UTC, h. */
  readonly site?: {
    readonly name: string
    readonly lat: number
    readonly lon: number
    readonly elevationFt?: Feet
    readonly utcOffsetH?: number
  }
  /** More that is known of the house, with what of it is made up. */
  readonly house?: Partial<StartingHouse>
  /** Parts of later stages to write as well, all of them made up. */
  readonly parts?: readonly PartName[]
  /** Where editors find the schema, for completion and hover text; the line is left out without. */
  readonly schema?: string | undefined
  /** Name under which the file will be kept, for what is said of the next command. */
  readonly name?: string
}

/**
 * A valid project file with comments, to start from. What is made up bears the marker `!made_up`, and the program tells
 * so in every result until the marker is taken away.
 */
export function startingFile(options: StartingFileOptions = {}): string {
  const { title, site, parts = [], schema, name = 'project.yaml' } = options
  const known: Partial<StartingHouse> = {
    ...(title === undefined ? {} : { title: stated(title) }),
    ...(site === undefined ? {} : { site: plainSite(site) }),
    ...options.house,
  }
  const house: StartingHouse = {
    title: madeUp(`My roof at ${(known.site ?? MADE_UP_SITE).address.value}`),
    site: MADE_UP_SITE,
    planes: [MADE_UP_PLANE],
    modules: madeUp(12),
    ...known,
  }
  const base = [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema.replaceAll(/[\r\n]/g, '')}`, '#']),
    '# A project for gablewatt. "!made_up" stands before each value that nobody has stated: put yours in its place and take',
    '# the marker away, or take it away where the value is true. Until then every result tells of it.',
    '# The ending of a key is its unit: _ft feet, _in inches, _deg degrees, _w watts, _pct percent, _c degrees Celsius.',
    '# Directions are degrees clockwise from true north (90 east, 180 south, 270 west).',
    '',
    'format: gablewatt/2',
    `title: ${put(house.title)}`,
    '',
    ...siteLines(house.site),
    '',
    ...roofLines(house.planes),
    '',
    ...arrayLines(house),
    '',
    ...(house.equipment === undefined
      ? FIRST_EQUIPMENT
      : [`equipment: { file: ${put({ value: house.equipment.file, madeUp: false })} }`]),
    ...panelLines(house),
    ...(house.bill === undefined
      ? []
      : ['', 'usage:', `  annual_kwh: ${put(house.bill.yearKwh)}`, ...tariffLines(house.bill)]),
    '',
  ].join('\n')
  const text = parts.reduce((whole, part) => addBlocks(whole, partLines(part, house)), base)
  return `${text}${nextLines(parts, name)}`
}

function plainSite({
  name,
  lat,
  lon,
  elevationFt,
  utcOffsetH,
}: NonNullable<StartingFileOptions['site']>): StartingSite {
  return {
    address: madeUp(name),
    latitudeDeg: stated(lat),
    longitudeDeg: stated(lon),
    ...(elevationFt === undefined ? {} : { elevationFt: stated<number>(elevationFt) }),
    ...(utcOffsetH === undefined ? {} : { utcOffsetH: stated(utcOffsetH) }),
  }
}

function siteLines(site: StartingSite): string[] {
  const { address, latitudeDeg, longitudeDeg, elevationFt, utcOffsetH } = site
  return [
    'site:',
    `  address: ${put(address)}`,
    `  latitude_deg: ${put(latitudeDeg)}  # north is positive`,
    `  longitude_deg: ${put(longitudeDeg)}  # EAST is positive, all of America is negative`,
    ...(elevationFt === undefined
      ? []
      : [
          `  elevation_ft: ${put(elevationFt)}  # ground above sea level${elevationFt.madeUp ? '; here that of the weather site' : ''}`,
        ]),
    ...(utcOffsetH === undefined ? [] : [`  utc_offset_h: ${put(utcOffsetH)}  # local STANDARD time minus UTC`]),
    "  climate: nearby  # the nearest built-in sites; or { station: '724940' }, or { epw: weather.epw }",
  ]
}

function roofLines(planes: readonly StartingPlane[]): string[] {
  return [
    'roof_planes:',
    ...planes.flatMap((plane) => [
      `  ${plane.id}:  # the names of planes, arrays and equipment are your own`,
      `    azimuth_deg: ${put(plane.azimuthDeg)}  # the direction that the plane faces, downhill`,
      `    ${plane.tiltKey}: ${put(plane.tilt)}${plane.tiltKey === 'pitch_in_12' ? '  # inches of rise in 12 of run; or tilt_deg' : ''}`,
      `    eave_height_ft: ${put(plane.eaveHeightFt)}`,
      '    outline:  # measured along the roof surface',
      ...outlineLines(plane),
      '    edge_clearance_in: 14  # modules keep this far from every edge, and off the overhang',
    ]),
  ]
}

function outlineLines({ widthFt, depthFt, ridgeFt }: StartingPlane): string[] {
  const shape = ridgeFt.value === 0 ? 'triangle' : ridgeFt.value < widthFt.value ? 'hip' : 'rectangle'
  return [
    `      shape: ${shape}`,
    `      width_ft: ${put(widthFt)}`,
    `      depth_ft: ${put(depthFt)}`,
    ...(shape === 'hip' ? [`      ridge_ft: ${put(ridgeFt)}`] : []),
  ]
}

function arrayLines({ planes, modules, equipment }: StartingHouse): string[] {
  const [plane = MADE_UP_PLANE] = planes
  return [
    'arrays:',
    `  ${plane.id}:`,
    `    roof_plane: ${plane.id}`,
    `    module: ${equipment?.module ?? 'm410'}`,
    ...(modules === undefined ? [] : [`    modules: ${put(modules)}`]),
    `    inverter: ${equipment?.inverter ?? 'micro366'}  # one behind every module`,
    '    mounting: near_roof  # parallel to the roof on standoffs',
    '    standoff_in: !made_up 4  # clear height between roof and module frame',
    '    arrangement: fit  # the program places the modules',
  ]
}

function panelLines({ panel }: StartingHouse): string[] {
  if (panel === undefined) return []
  return ['', 'electrical:', '  panel:', `    bus_a: ${put(panel.busA)}`, `    main_a: ${put(panel.mainA)}`]
}

/** What comes next, as comments: the file is a to-do list of its own. */
function nextLines(parts: readonly PartName[], name: string): string {
  const file = /^[\w./-]+$/u.test(name) ? name : 'project.yaml'
  const later = PART_NAMES.filter((part) => part !== 'yield' && !isWritten(part, parts))
  const lines = later.map(
    (part) =>
      `#   gablewatt new-project --parts ${part} --add-to ${file} --force   # for ${PART_COMMANDS[part]}${part === 'storage' ? ', of a house with a battery' : ''}`,
  )
  return [
    '',
    `# Next: gablewatt check-project ${file}   # what is missing, made up or wrong, stage by stage`,
    ...(lines.length === 0
      ? []
      : ['# Parts of later stages, written with made-up values when you come to them:', ...lines]),
    '',
  ].join('\n')
}
