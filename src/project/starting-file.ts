import { LATER_EQUIPMENT, LATER_PARTS } from './starting-parts.js'
import type { Feet } from '../values/index.js'

export interface StartingFileOptions {
  /** Title of the project; made from the place when missing. */
  readonly title?: string
  readonly site?: {
    readonly name: string
    /** North positive, deg. */
    readonly lat: number
    /** East positive, deg. */
    readonly lon: number
    readonly elevationFt?: Feet
    /** Local standard time minus UTC, h. */
    readonly utcOffsetH?: number
  }
  /** Where editors find the schema, for completion and hover text. */
  readonly schema?: string
}

const INVENTED_SITE = { name: 'Sampletown (invented)', lat: 38.6, lon: -121.5, elevationFt: 120, utcOffsetH: -8 }
const PACKAGED_SCHEMA = './node_modules/gablewatt/schemas/project.schema.json'

/** A valid project file with comments, to start from. What a person has to replace is marked `# <- yours`. */
export function startingFile(options: StartingFileOptions = {}): string {
  const { site = INVENTED_SITE, schema = PACKAGED_SCHEMA } = options
  const elevation =
    site.elevationFt === undefined ? [] : [`  elevation_ft: ${site.elevationFt}  # <- yours: ground above sea level`]
  const offset =
    site.utcOffsetH === undefined
      ? []
      : [`  utc_offset_h: ${site.utcOffsetH}  # <- yours: local STANDARD time minus UTC`]
  const lines = [
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
    'site:',
    `  address: ${quoted(site.name)}  # <- yours`,
    `  latitude_deg: ${site.lat}  # <- yours: north is positive`,
    `  longitude_deg: ${site.lon}  # <- yours: EAST is positive, all of America is negative`,
    ...elevation,
    ...offset,
    "  climate: nearby  # the three nearest built-in sites; or { station: '724940' }, or { epw: weather.epw }",
    '',
    'roof_planes:',
    '  south:  # the names of planes, arrays and equipment are your own',
    '    azimuth_deg: 180  # <- yours: the direction that the plane faces, downhill',
    '    pitch_in_12: 6  # <- yours: inches of rise in 12 of run; or tilt_deg',
    '    eave_height_ft: 10  # <- yours',
    '    outline: { shape: rectangle, width_ft: 40, depth_ft: 16 }  # <- yours: measured along the roof surface',
    '    edge_clearance_in: 14  # <- yours: modules keep this far from every edge, and off the overhang',
    '',
    'arrays:',
    '  south:',
    '    roof_plane: south',
    '    module: m410',
    '    modules: 12  # <- yours',
    '    inverter: micro366  # one behind every module',
    '    mounting: near_roof  # parallel to the roof on standoffs',
    '    standoff_in: 4  # <- yours: clear height between roof and module frame',
    '    arrangement: fit  # the program places the modules',
    '',
    'equipment:  # from the data sheets of what you mean to buy',
    '  modules:',
    '    m410:  # invented',
    '      name: Invented M410  # <- yours',
    '      pmax_w: 410  # <- yours',
    '      pmax_temp_coeff_pct_per_c: -0.34  # <- yours',
    '      noct_c: 45  # <- yours',
    '      voc_v: 37.2  # <- yours',
    '      voc_temp_coeff_pct_per_c: -0.27  # <- yours',
    '      isc_a: 13.9  # <- yours',
    '      vmp_v: 31.4  # <- yours',
    '      imp_a: 13.06  # <- yours',
    '      length_in: 67.8  # <- yours: the long side',
    '      width_in: 44.6  # <- yours',
    '      thickness_in: 1.38  # <- yours',
    '      weight_lb: 47.4  # <- yours',
    '      max_series_fuse_a: 25  # <- yours',
    '      clamp_zone_from_corner_in: [10, 20]  # <- yours: where clamps may hold the long side',
    '      design_load_down_psf: 75  # <- yours',
    '      design_load_up_psf: 50  # <- yours',
    '  inverters:',
    '    micro366:  # invented',
    '      name: Invented micro 366  # <- yours',
    '      kind: module_level',
    '      ac_power_w: 366  # <- yours',
    '      ac_current_a: 1.53  # <- yours',
    '      ac_voltage_v: 240  # <- yours',
    '      weighted_efficiency_pct: 97  # <- yours',
    '      max_dc_power_w: 540  # <- yours',
    '      max_dc_voltage_v: 60  # <- yours',
    '      mppt_min_v: 16  # <- yours',
    '      mppt_max_v: 58  # <- yours',
    '      max_input_isc_a: 20  # <- yours',
    '      max_branch_ocpd_a: 20  # <- yours: largest breaker that the maker allows on a branch',
    '      max_per_branch: 10  # <- yours',
    '      weight_lb: 2.4  # <- yours',
    ...LATER_EQUIPMENT.map(behindComment),
    '',
    '# What the later answers need, to be uncommented when you come to it. Every value below is made up: state your own.',
    "# 'gablewatt check-project' tells what is wrong, and each subcommand asks for what it misses.",
    '',
    ...LATER_PARTS.map(behindComment),
    '',
  ]
  return lines.join('\n')
}

/** A line of YAML that counts only when the person takes the `# ` away. */
function behindComment(line: string): string {
  return line === '' ? '' : `# ${line}`
}

/** Text in single quotes, on one line. */
function quoted(text: string): string {
  return `'${text.replaceAll(/\s+/g, ' ').replaceAll("'", "''")}'`
}
