import { describe, expect, test } from 'vitest'
import { loadText, problemsOf, STARTER } from './support.js'

/** Replaces several pieces of the starter file. */
function change(pieces: readonly (readonly [from: string, to: string])[]): string {
  return pieces.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the starter has no ${from}`)
    return text.replace(from, () => to)
  }, STARTER)
}

/** The starter with two strings on a string inverter of two inputs. */
const STRINGS: readonly (readonly [string, string])[] = [
  [
    '    inverter: micro366  # one behind every module\n',
    '    strings: [{ modules: 6, inverter_unit: garage, input: 1 }, { modules: 6, inverter_unit: garage, input: 2 }]\n',
  ],
  ['equipment:  # from', 'inverter_units:\n  garage: { inverter: s5000 }\nequipment:  # from'],
  [
    '    micro366:  # invented',
    '    s5000: { kind: string, ac_power_w: 5000, weighted_efficiency_pct: 97, mppt_inputs: 2, max_dc_power_w: 6000 }\n    micro366:  # invented',
  ],
]

const OUTLINE = '{ shape: rectangle, width_ft: 40, depth_ft: 16 }'
const SNOW = '[9, 8, 7, 0, 0, 0, 0, 0, 0, 0, 3, 8]'
const BLOCKS = (omit: string) =>
  `arrangement: { blocks: { a: { orientation: portrait, rows: 2, columns: 6, x_ft: 3, y_ft: 2, omit: ${omit} } } }`
const box = (x: number, y: number) =>
  `${OUTLINE}\n    obstructions: { vent: { x_ft: ${x}, y_ft: ${y}, width_ft: 1.1, length_ft: 1, height_ft: 2 } }`

type Case = readonly [name: string, pieces: readonly (readonly [string, string])[], problem: string]

const CASES: readonly Case[] = [
  [
    'roof plane',
    [['roof_plane: south', 'roof_plane: soth']],
    "30:17  arrays.south.roof_plane  no 'soth' under roof_planes; did you mean south?",
  ],
  [
    'module',
    [['module: m410', 'module: q1']],
    "31:13  arrays.south.module  no 'q1' under equipment.modules; known there: m410",
  ],
  [
    'inverter',
    [['inverter: micro366', 'inverter: micro36']],
    "33:15  arrays.south.inverter  no 'micro36' under equipment.inverters; did you mean micro366?",
  ],
  [
    'inverter unit of a string',
    [...STRINGS, ['inverter_unit: garage, input: 2', 'inverter_unit: garagge, input: 2']],
    "33:93  arrays.south.strings.1.inverter_unit  no 'garagge' under inverter_units; did you mean garage?",
  ],
  [
    'framing under a plane',
    [['equipment:  # from', 'structure: { framing: { soth: { kind: rafter } } }\nequipment:  # from']],
    "38:25  structure.framing.soth  no 'soth' under roof_planes; did you mean south?",
  ],
  [
    'plane below a higher roof',
    [
      [
        'equipment:  # from',
        'structure: { snow: { higher_roofs: { house: { plane: soth, end: top, step_ft: 9, upper_length_ft: 28, upper_slope_deg: 0, upper_eave_to_ridge_ft: 0, upper_slippery: false } } } }\nequipment:  # from',
      ],
    ],
    "38:54  structure.snow.higher_roofs.house.plane  no 'soth' under roof_planes; did you mean south?",
  ],
  [
    'plane with a parapet',
    [
      [
        'equipment:  # from',
        'structure: { snow: { parapets: { wall: { plane: soth, end: top, height_ft: 3, length_ft: 20, fetch_ft: 20 } } } }\nequipment:  # from',
      ],
    ],
    "38:49  structure.snow.parapets.wall.plane  no 'soth' under roof_planes; did you mean south?",
  ],
  [
    'plane above a lower roof',
    [['equipment:  # from', 'structure: { snow: { planes_above_lower_roofs: [south, soth] } }\nequipment:  # from']],
    "38:56  structure.snow.planes_above_lower_roofs.1  no 'soth' under roof_planes; did you mean south?",
  ],
  [
    'inverter of a unit',
    [...STRINGS, ['inverter: s5000', 'inverter: s500']],
    "39:23  inverter_units.garage.inverter  no 's500' under equipment.inverters; did you mean s5000?",
  ],
  [
    'array of an obstacle',
    [
      [
        'climate: nearby',
        'obstacles: { oak: { bearing_deg: 205, distance_ft: 38, width_ft: 18, height_ft: 14, arrays: [south, suoth] } }',
      ],
    ],
    "19:103  site.obstacles.oak.arrays.1  no 'suoth' under arrays; did you mean south?",
  ],
  [
    'no slope',
    [['    pitch_in_12: 6  # <- yours: inches of rise in 12 of run; or tilt_deg\n', '']],
    "22:3  roof_planes.south.tilt_deg  missing; state the slope, for example 'tilt_deg: 26.6' or 'pitch_in_12: 6'",
  ],
  [
    'two slopes',
    [['pitch_in_12: 6', 'tilt_deg: 20\n    pitch_in_12: 6']],
    '25:5  roof_planes.south.pitch_in_12  tilt_deg and pitch_in_12 both state the slope; keep one of them',
  ],
  [
    'rectangle without depth',
    [[', depth_ft: 16', '']],
    '26:5  roof_planes.south.outline.depth_ft  missing; the shape rectangle needs width_ft, depth_ft',
  ],
  [
    'hip without ridge',
    [['shape: rectangle', 'shape: hip']],
    '26:5  roof_planes.south.outline.ridge_ft  missing; the shape hip needs width_ft, depth_ft, ridge_ft',
  ],
  [
    'rectangle with a ridge',
    [['depth_ft: 16', 'depth_ft: 16, ridge_ft: 3']],
    '26:62  roof_planes.south.outline.ridge_ft  the shape rectangle has no ridge_ft; it takes width_ft, depth_ft, left_edge, right_edge, upper_edge',
  ],
  [
    'polygon without corners',
    [[OUTLINE, '{ shape: polygon }']],
    '26:5  roof_planes.south.outline.corners  missing; the shape polygon needs corners',
  ],
  [
    'clockwise polygon',
    [[OUTLINE, '{ shape: polygon, corners: [{ x_ft: 0, y_ft: 0 }, { x_ft: 0, y_ft: 9 }, { x_ft: 9, y_ft: 0 }] }']],
    '26:32  roof_planes.south.outline.corners  the corners do not go counter-clockwise round a surface; list them so from the left end of the eave',
  ],
  [
    'obstruction beside the plane',
    [[OUTLINE, box(40.2, 3)]],
    '27:21  roof_planes.south.obstructions.vent  lies off the plane: x 40.2 to 41.3 ft, y 3 to 4 ft; the plane reaches from 0 to 40 ft along the eave and from 0 to 16 ft up the slope',
  ],
  [
    'horizon backwards',
    [['climate: nearby', 'horizon: [{ azimuth_deg: 90, elevation_deg: 1 }, { azimuth_deg: 80, elevation_deg: 1 }]']],
    '19:67  site.horizon.1.azimuth_deg  80 deg stands after 90 deg; list the points by increasing azimuth',
  ],
  [
    'horizon twice',
    [['climate: nearby', 'horizon: [{ azimuth_deg: 90, elevation_deg: 1 }, { azimuth_deg: 90, elevation_deg: 2 }]']],
    '19:67  site.horizon.1.azimuth_deg  90 deg stands twice; keep one point for each direction',
  ],
  [
    'horizon at 0 and 360',
    [['climate: nearby', 'horizon: [{ azimuth_deg: 0, elevation_deg: 1 }, { azimuth_deg: 360, elevation_deg: 2 }]']],
    '19:86  site.horizon.1.elevation_deg  0 and 360 deg are one direction, but have 1 and 2 deg',
  ],
  [
    'inverter and strings',
    [...STRINGS, ['    mounting:', '    inverter: micro366\n    mounting:']],
    '33:5  arrays.south.strings  the modules hang on inverter and on strings; keep inverter (module-level) or strings',
  ],
  [
    'neither inverter nor strings',
    [['    inverter: micro366  # one behind every module\n', '']],
    '29:3  arrays.south.inverter  missing; give inverter (module-level, behind every module) or strings on inverter_units',
  ],
  [
    'string inverter behind modules',
    [['kind: module_level', 'kind: string']],
    "33:15  arrays.south.inverter  'micro366' is a string inverter; name it under inverter_units and give the array strings",
  ],
  [
    'module-level inverter as a unit',
    [...STRINGS, ['kind: string', 'kind: module_level']],
    "39:23  inverter_units.garage.inverter  's5000' is a module-level inverter; name it as inverter of the array instead",
  ],
  [
    'no number of modules',
    [
      ['    modules: 12  # <- yours\n', ''],
      ['    arrangement: fit  # the program places the modules\n', ''],
    ],
    "29:3  arrays.south.modules  missing; give their number, for example 'modules: 12', or arrangement: fit, or arrangement.blocks",
  ],
  [
    'blocks against modules',
    [['arrangement: fit', BLOCKS('[r1c1]')]],
    '32:14  arrays.south.modules  12 modules, but arrangement.blocks holds 11; make them equal or leave modules out',
  ],
  [
    'strings against modules',
    [...STRINGS, ['modules: 6', 'modules: 5']],
    '33:5  arrays.south.strings  the strings hold 11 modules, the array has 12; make them equal',
  ],
  [
    'omitted module that is not there',
    [['arrangement: fit', BLOCKS('[r3c1]')]],
    '36:104  arrays.south.arrangement.blocks.a.omit.0  r3c1 is not in the block, which has rows 1 to 2 and columns 1 to 6',
  ],
  [
    'omitted twice',
    [
      ['modules: 12', 'modules: 11'],
      ['arrangement: fit', BLOCKS('[r1c1, r01c1]')],
    ],
    '36:110  arrays.south.arrangement.blocks.a.omit.1  r01c1 is left out twice',
  ],
  [
    'input that the inverter lacks',
    [...STRINGS, ['input: 2', 'input: 3']],
    '33:108  arrays.south.strings.1.input  there is no input 3; the inverter has inputs 1 to 2 (mppt_inputs)',
  ],
  [
    'module too strong for its inverter',
    [['max_dc_power_w: 540', 'max_dc_power_w: 400']],
    '33:15  arrays.south.inverter  a module of 410 W is more than the 400 W (max_dc_power_w) that the inverter may take',
  ],
  [
    'strings too strong for their inverter',
    [...STRINGS, ['max_dc_power_w: 6000', 'max_dc_power_w: 4900']],
    '39:23  inverter_units.garage.inverter  modules of 4920 W are more than the 4900 W (max_dc_power_w) that the inverter may take',
  ],
  [
    'no efficiency',
    [['      weighted_efficiency_pct: 97  # <- yours\n', '']],
    "54:5  equipment.inverters.micro366.weighted_efficiency_pct  missing; give the efficiency, for example 'weighted_efficiency_pct: 97', or efficiency_curve",
  ],
  [
    'two efficiencies',
    [
      [
        'max_dc_power_w: 540',
        'efficiency_curve: [{ load_pct: 10, efficiency_pct: 93 }, { load_pct: 100, efficiency_pct: 96 }]',
      ],
    ],
    '61:7  equipment.inverters.micro366.efficiency_curve  weighted_efficiency_pct stands beside it; keep one of them',
  ],
  [
    'curve backwards',
    [
      [
        'weighted_efficiency_pct: 97',
        'efficiency_curve: [{ load_pct: 10, efficiency_pct: 93 }, { load_pct: 10, efficiency_pct: 96 }]',
      ],
    ],
    '60:76  equipment.inverters.micro366.efficiency_curve.1.load_pct  10 % stands after 10 %; list the points by increasing load, each load once',
  ],
  [
    'tracking range',
    [['max_dc_power_w: 540', 'mppt_min_v: 58\n      mppt_max_v: 16']],
    '61:19  equipment.inverters.micro366.mppt_min_v  58 V is not below mppt_max_v 16 V; are the two swapped?',
  ],
  [
    'voltages swapped',
    [['vmp_v: 31.4', 'vmp_v: 38']],
    '47:14  equipment.modules.m410.vmp_v  38 V is not below voc_v 37.2 V; are the two swapped?',
  ],
  [
    'currents swapped',
    [['imp_a: 13.06', 'imp_a: 13.9']],
    '48:14  equipment.modules.m410.imp_a  13.9 A is not below isc_a 13.9 A; are the two swapped?',
  ],
  [
    'sides swapped',
    [['width_in: 44.6', 'width_in: 70']],
    '50:17  equipment.modules.m410.width_in  70 in is more than length_in 67.8 in; length is the long side',
  ],
  [
    'clamp zone backwards',
    [['thickness_in: 1.38', 'clamp_zone_from_corner_in: [20, 10]']],
    '51:34  equipment.modules.m410.clamp_zone_from_corner_in  [20, 10] in: the nearest distance has to be less than the farthest',
  ],
  [
    'clamp zone beyond the side',
    [['thickness_in: 1.38', 'clamp_zone_short_side_in: [20, 50]']],
    '51:33  equipment.modules.m410.clamp_zone_short_side_in  reaches to 50 in, beyond the side of 44.6 in (width_in)',
  ],
  [
    'standoff 0',
    [['standoff_in: 4', 'standoff_in: 0']],
    '35:18  arrays.south.standoff_in  0 in leaves no air under near_roof; measure the standoff, or say mounting: laid_on_roof',
  ],
  [
    'latitude and longitude swapped',
    [
      ['latitude_deg: 38.6', 'latitude_deg: -66.1'],
      ['longitude_deg: -121.5', 'longitude_deg: 44.9'],
      ['utc_offset_h: -8', 'utc_offset_h: 3'],
    ],
    '15:17  site.latitude_deg  -66.1 deg beside a longitude of 44.9 deg lies on the ice, and the other way round in the Americas: latitude and longitude are swapped; a house that is there needs a weather file of the place (site.climate)',
  ],
  [
    'longitude without its sign',
    [['longitude_deg: -121.5', 'longitude_deg: 121.5']],
    '16:18  site.longitude_deg  121.5 deg and utc_offset_h -8 are 7.9 h apart; did you mean -121.5? West is negative',
  ],
  [
    'longitude of another continent',
    [['longitude_deg: -121.5', 'longitude_deg: 10']],
    '16:18  site.longitude_deg  10 deg and utc_offset_h -8 are 8.7 h apart; check the sign and utc_offset_h',
  ],
  [
    'snowfall without snow events',
    [['climate: nearby', `monthly_snowfall_in: ${SNOW}`]],
    '13:1  site.monthly_snow_events  missing; monthly_snowfall_in is used only together with it: give both or none',
  ],
  [
    'snow events without snowfall',
    [['climate: nearby', `monthly_snow_events: ${SNOW}`]],
    '13:1  site.monthly_snowfall_in  missing; monthly_snow_events is used only together with it: give both or none',
  ],
]

describe('rules that bind several values', () => {
  test.each(CASES)('%s', (_name, pieces, problem) => {
    expect(problemsOf(change(pieces))).toEqual([problem])
  })

  test('a corner of the site plan that stands where its neighbour does', () => {
    const lot = '[{ x_ft: 0, y_ft: 0 }, { x_ft: 90, y_ft: 0 }, { x_ft: 90.05, y_ft: 0.05 }, { x_ft: 0, y_ft: 120 }]'
    const house = '[{ x_ft: 9, y_ft: 9 }, { x_ft: 40, y_ft: 9 }, { x_ft: 40, y_ft: 40 }, { x_ft: 9, y_ft: 9 }]'
    const drive = '[{ x_ft: 5, y_ft: 5 }, { x_ft: 5, y_ft: 5 }, { x_ft: 9, y_ft: 5 }]'
    const plan = `site_plan:\n  lot: ${lot}\n  driveway: ${drive}\n  buildings: { house: { corners: ${house} } }\n`
    const problems = problemsOf(change([['format: gablewatt/2\n', `format: gablewatt/2\n${plan}`]]))
    const says = (path: string, place: string) =>
      expect.stringMatching(
        new RegExp(
          `^\\d+:\\d+ {2}site_plan\\.${path} {2}the corner at ${place} stands where its neighbour does; leave one`,
          'u',
        ),
      )
    expect(problems).toEqual([
      says('lot\\.2', '90\\.05, 0\\.05'),
      says('driveway\\.1', '5, 5'),
      says('buildings\\.house\\.corners\\.0', '9, 9'),
    ])
  })

  test('no inverter units at all', () => {
    const line = (column: number, i: number) =>
      `33:${column}  arrays.south.strings.${i}.inverter_unit  no 'garage' under inverter_units; nothing stands there`
    expect(problemsOf(change(STRINGS.slice(0, 1)))).toEqual([line(44, 0), line(93, 1)])
  })

  test('every module of a block left out', () => {
    const text = change([
      ['    modules: 12  # <- yours\n', ''],
      ['arrangement: fit', BLOCKS('[r1c1]').replace('rows: 2, columns: 6', 'rows: 1, columns: 1')],
    ])
    expect(problemsOf(text)).toEqual([
      '35:103  arrays.south.arrangement.blocks.a.omit  every module of the block is left out; delete the block',
    ])
  })

  const FINE: readonly (readonly [name: string, pieces: readonly (readonly [string, string])[]])[] = [
    ['strings', STRINGS],
    ['module tilt without azimuth', [['standoff_in: 4', 'standoff_in: 4\n    module_tilt_deg: 30']]],
    [
      'insulated back without standoff',
      [
        ['standoff_in: 4', 'standoff_in: 0'],
        ['mounting: near_roof', 'mounting: laid_on_roof'],
      ],
    ],
    ['both snow series', [['climate: nearby', `monthly_snow_events: ${SNOW}\n  monthly_snowfall_in: ${SNOW}`]]],
    [
      'blocks without modules',
      [
        ['    modules: 12  # <- yours\n', ''],
        ['arrangement: fit', BLOCKS('[]')],
      ],
    ],
    ['strings without modules', [...STRINGS, ['    modules: 12  # <- yours\n', '']]],
    ['latitude 66', [['latitude_deg: 38.6', 'latitude_deg: 66']]],
    [
      'beyond the date line',
      [
        ['longitude_deg: -121.5', 'longitude_deg: -157.4'],
        ['utc_offset_h: -8', 'utc_offset_h: 14'],
      ],
    ],
    ['a vent over the edge', [[OUTLINE, box(39.5, 3)]]],
    [
      'horizon from 0 to 360',
      [['climate: nearby', 'horizon: [{ azimuth_deg: 0, elevation_deg: 1 }, { azimuth_deg: 360, elevation_deg: 1 }]']],
    ],
  ]
  test.each(FINE)('%s is fine', (_name, pieces) => {
    expect(loadText(change(pieces)).project.format).toBe('gablewatt/2')
  })
})
