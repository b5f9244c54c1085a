import { follows, put } from './given.js'
import { MOUNT, RAIL, TRUNK } from './starting-equipment.js'
import { MADE_UP_PLANE, type StartingHouse } from './starting-house.js'
import { moneyLines } from './starting-money.js'
import { runFt, sitePlanLines } from './starting-site-plan.js'
import { storageLines } from './starting-storage.js'
import { structureLines } from './starting-structure.js'

/** Parts of a project file that a stage each needs, in the order of the job. */
export const PART_NAMES = ['yield', 'wire', 'mounts', 'permit', 'money', 'storage'] as const
export type PartName = (typeof PART_NAMES)[number]

/** The subcommand that runs once a part is there. */
export const PART_COMMANDS: Readonly<Record<PartName, string>> = {
  yield: 'estimate-yield',
  wire: 'size-wire',
  mounts: 'space-mounts',
  permit: 'draw-permit',
  money: 'payback',
  storage: 'size-wire',
}

/** Parts that a part builds on. */
const BEFORE: Readonly<Record<PartName, readonly PartName[]>> = {
  yield: [],
  wire: [],
  mounts: [],
  permit: ['wire', 'mounts'],
  money: [],
  storage: ['wire'],
}

/** Whether the lines of some of these parts hold a part. */
export function isWritten(part: PartName, parts: readonly PartName[]): boolean {
  return parts.some((each) => each === part || BEFORE[each].includes(part))
}

/** A part of the file as YAML from the top level on, with the parts that it builds on before it. */
export function partLines(part: PartName, house: StartingHouse): string[] {
  return [...BEFORE[part].flatMap((each) => partLines(each, house)), ...LINES[part](house)]
}

const LINES: Readonly<Record<PartName, (house: StartingHouse) => readonly string[]>> = {
  yield: yieldLines,
  wire: wireLines,
  mounts: (house) => [
    ...structureLines(house),
    ...(house.rail === undefined ? RAIL : []),
    ...(house.mount === undefined ? merged(MOUNT, house.rail === undefined) : []),
    ...CODES,
  ],
  permit: permitLines,
  money: moneyLines,
  storage: storageLines,
}

/** Without the head that the lines before it have. */
function merged(lines: readonly string[], isHeaded: boolean): readonly string[] {
  return isHeaded ? lines.slice(1) : lines
}

const CODES = [
  'codes:  # the building department knows which editions it has adopted',
  '  electrical: !made_up NEC 2020',
  '  loads: !made_up ASCE 7-16',
  '  residential: !made_up IRC 2021',
  'roof_access:',
  '  required_fire_class: !made_up A  # class that the roof must have; ask the building department',
]

function yieldLines({ planes: [plane = MADE_UP_PLANE] }: StartingHouse): string[] {
  const { id, widthFt, depthFt, ridgeFt } = plane
  const x = follows((width, ridge) => width / 2 + ridge * 0.3, widthFt, ridgeFt)
  const y = follows((depth) => depth * 0.75, depthFt)
  return [
    'site:',
    '  obstacles:  # trees, houses and poles that shade the roof; take out what is not there',
    '    tree: !made_up { bearing_deg: 120, distance_ft: 50, width_ft: 16, height_ft: 22, base_height_ft: 6, transmittance: [0.6, 0.6, 0.5, 0.35, 0.15, 0.1, 0.1, 0.1, 0.15, 0.3, 0.5, 0.6] }  # from the middle of the array: direction, distance, width of the crown, heights; share of light that passes by month',
    'roof_planes:',
    `  ${id}:`,
    '    obstructions:  # vents, chimneys and skylights on the plane; x to the right, y up the slope from the left end of the eave',
    `      vent: !made_up { kind: vent, x_ft: ${x.value}, y_ft: ${y.value}, width_ft: 0.5, length_ft: 0.5, height_ft: 1, clearance_in: 6, serves_appliance: false }`,
    'losses:',
    '  dirt_pct: !made_up 2  # 2 to 5 in most places; one number or twelve',
    '  snow_pct: !made_up [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]  # share lost under snow by month, January first',
  ]
}

function wireLines({ strings = false, landsOn, trunk, panel }: StartingHouse): string[] {
  const busA = panel === undefined ? '!made_up 200' : put(panel.busA)
  const mainA = panel === undefined ? '!made_up 200' : put(panel.mainA)
  return [
    'electrical:  # walk the way of the wires and read the labels; an electrician makes or checks the connection',
    '  service:',
    `    rating_a: ${mainA}  # the main breaker`,
    `  connection: !made_up { kind: load_side_breaker,${landsOn === undefined ? '' : ` at: ${landsOn},`} breaker_position: opposite_end }  # a free place at the end of the busbar away from the main breaker`,
    ...(landsOn !== undefined
      ? []
      : [
          '  panel:  # on the label inside the door',
          `    bus_a: ${busA}`,
          `    main_a: ${mainA}`,
          '    main_position: !made_up end',
          '    spaces_free: !made_up 4',
          '    terminal_temperature_c: !made_up 75',
        ]),
    '  terminal_temperature_c: !made_up 75  # marked on inverters, boxes and disconnects',
    ...(strings
      ? []
      : [
          '  combiner: !made_up { bus_a: 125, spaces_total: 8, terminal_temperature_c: 75 }',
          `  trunk: ${trunk ?? 'trunk12'}`,
        ]),
    `  rapid_shutdown: !made_up { inside_boundary: ${strings ? 'hazard_control_system' : 'module_level'}, initiator: pv_disconnect, initiator_outdoors: true }`,
    '  disconnects:',
    '    outside: !made_up { kind: pv_system, rating_a: 60, readily_accessible: true, lockable: true, location: outdoors }',
    '  runs:  # ways of the circuits from the array to the panel, piece by piece; measure each length',
    '    home:',
    `      carries: [${strings ? 'strings' : 'branches'}]`,
    '      segments:',
    '        roof: !made_up { location: roof, height_above_roof_in: 1, length_ft: 20, raceway: EMT }',
    '        wall: !made_up { location: outdoor_wall, length_ft: 12, raceway: EMT }',
    '    feeder:',
    `      carries: [${strings ? 'inverter_outputs' : 'output'}]`,
    '      segments:',
    '        panel: !made_up { location: outdoor_wall, length_ft: 6, raceway: EMT }',
    'codes:',
    '  electrical: !made_up NEC 2020  # ask the building department',
    'site:',
    '  overhead_lines: !made_up none  # look for a service drop over or near the roof',
    ...(strings || trunk !== undefined ? [] : TRUNK),
  ]
}

function permitLines(house: StartingHouse): string[] {
  return [
    'document:',
    "  date: !made_up '2026-01-01'  # of issue, year-month-day",
    '  revision: A',
    'parties:',
    '  owner:',
    '    name: !made_up Owner (invented)',
    '  authority:',
    '    name: !made_up Building department (invented)',
    '  utility:',
    '    name: !made_up Power company (invented)',
    '  prepared_by_owner: !made_up true',
    'site:',
    `  address: ${put(house.site.address)}`,
    ...CODES,
    '  street_side_pathway: !made_up Plane on the street side, not in this file  # where firefighters climb on the side of the street',
    `  total_roof_area_ft2: !made_up ${roofAreaFt2(house)}  # of the whole house, seen from above`,
    '  other_pathways: !made_up 1  # on roof planes that are not in this file',
    ...sitePlanLines(house),
  ]
}

/** The box of the first plane, both sides of the ridge, seen from above. */
function roofAreaFt2({ planes: [first = MADE_UP_PLANE] }: StartingHouse): number {
  return Math.round(first.widthFt.value * 2 * runFt(first).value)
}
