import { WORKING_HEIGHT_IN, WORKING_WIDTH_IN, workingSpace } from '../../tables/nec/index.js'
import type { Source, Finding } from '../../worksheet/index.js'
import { inchesOf, type Inches } from '../../values/index.js'
import type { PlanEquipment, Project } from '../../project/index.js'
import { pieceName } from './equipment-walls.js'

/** Greatest height of the grip of a switch or breaker used as one, in: 6 ft 7 in. @source NEC 404.8(A) */
export const HIGHEST_HANDLE_IN = 79

const SPACE: Source = { document: 'NEC', edition: '2017', place: '110.26(A)', standing: 'read' }
const HANDLE: Source = { document: 'NEC', edition: '2023', place: '404.8(A)', standing: 'read' }

/** Equipment that somebody may have to work on while it is live. */
const WORKED_ON: ReadonlySet<PlanEquipment['kind']> = new Set([
  'main_panel',
  'pv_disconnect',
  'combiner',
  'inverter',
  'storage',
  'storage_disconnect',
  'isolating_device',
  'backup_panel',
])

export const needsSpace = ({ kind }: PlanEquipment): boolean => WORKED_ON.has(kind)

/** Working space that a piece needs, in. */
export interface NeededSpace {
  readonly depthIn: Inches
  readonly widthIn: Inches
  readonly heightIn: Inches
}

/**
 * Depth by Table 110.26(A)(1) at condition 1 (nothing live or grounded opposite), which is the same for all voltages up to
 * 1000 V to ground; width of the equipment, at least 30 in; height 6.5 ft, or of the equipment.
 */
export function neededSpace({
  bottom_in: bottom = 0,
  width_in: width = 0,
  height_in: height = 0,
}: PlanEquipment): NeededSpace {
  const depthFt = Math.max(...workingSpace.map(({ conditionFt: [first] }) => first))
  return {
    depthIn: inchesOf(depthFt),
    widthIn: Math.max(WORKING_WIDTH_IN, width),
    heightIn: Math.max(WORKING_HEIGHT_IN, bottom + height),
  }
}

/** What the equipment of the site plan lacks of working space, of reach, and of what the utility asks of its meter. */
export function wallFindings({ site_plan: plan, drawings }: Pick<Project, 'site_plan' | 'drawings'>): Finding[] {
  const pieces = Object.entries(plan?.equipment ?? {})
  const open = pieces.filter(
    ([, each]) =>
      needsSpace(each) &&
      (each.clear_depth_in === undefined || each.clear_width_in === undefined || each.clear_height_in === undefined),
  )
  return [
    ...pieces.flatMap(([id, each]) => [...spaceFindings(id, each), ...handleFinding(id, each)]),
    ...pieces.flatMap(([id, each]) => (each.kind === 'utility_meter' ? meterFindings(id, each, drawings?.meter) : [])),
    ...(open.length === 0
      ? []
      : [
          {
            severity: 'note',
            id: 'wall.space-unknown',
            where: `site_plan.equipment.${open[0]?.[0]}.clear_depth_in`,
            message: `the clear space in front of ${open.map(([, each]) => pieceName(each)).join(', ')} is not stated, so the working space was not checked`,
            source: SPACE,
            fix: 'Measure clear_depth_in, clear_width_in and clear_height_in in front of each',
          } as const,
        ]),
  ]
}

function spaceFindings(id: string, each: PlanEquipment): Finding[] {
  if (!needsSpace(each)) return []
  const needed = neededSpace(each)
  const rows = [
    ['depth', 'clear_depth_in', each.clear_depth_in, needed.depthIn],
    ['width', 'clear_width_in', each.clear_width_in, needed.widthIn],
    ['height', 'clear_height_in', each.clear_height_in, needed.heightIn],
  ] as const
  return rows.flatMap(([what, key, stated, least]): Finding[] =>
    stated === undefined || stated >= least
      ? []
      : [
          {
            severity: 'error',
            id: `wall.space-${what}`,
            where: `site_plan.equipment.${id}.${key}`,
            message: `the working space in front of ${pieceName(each)} has a ${what} of ${stated} in, ${least} in is the least`,
            source: SPACE,
            fix: 'Put the equipment where the space is free, or clear the space',
          },
        ],
  )
}

function handleFinding(id: string, { handle_in: handle, ...each }: PlanEquipment): Finding[] {
  if (handle === undefined || handle <= HIGHEST_HANDLE_IN) return []
  return [
    {
      severity: 'error',
      id: 'wall.handle-too-high',
      where: `site_plan.equipment.${id}.handle_in`,
      message: `the highest grip of ${pieceName(each)} is ${handle} in above the ground, ${HIGHEST_HANDLE_IN} in (6'-7") is the most`,
      source: HANDLE,
      fix: 'Hang it lower, or put the switch lower',
    },
  ]
}

type MeterRule = NonNullable<NonNullable<Project['drawings']>['meter']>

function meterFindings(id: string, each: PlanEquipment, rule: MeterRule | undefined): Finding[] {
  if (rule === undefined) return []
  const { bottom_in: bottom, height_in: height, clear_depth_in: depth } = each
  const center = bottom === undefined || height === undefined ? undefined : bottom + height / 2
  const { center_min_in: least = -Infinity, center_max_in: most = Infinity, clear_front_in: front } = rule
  const at = `site_plan.equipment.${id}`
  const source: Source = { document: 'rules of the utility, as the project states them', standing: 'project file' }
  const asksHeight = Number.isFinite(least) || Number.isFinite(most)
  const unknown = [
    ...(asksHeight && center === undefined ? ['bottom_in', 'height_in'] : []),
    ...(front !== undefined && depth === undefined ? ['clear_depth_in'] : []),
  ]
  return [
    ...(center !== undefined && (center < least || center > most)
      ? [
          {
            severity: 'error',
            id: 'wall.meter-height',
            where: `${at}.bottom_in`,
            message: `the middle of the meter is ${center} in above the ground, the utility asks for ${words(least, most)}`,
            source,
            fix: 'Move the meter, or ask the utility to accept its place in writing',
          } as const,
        ]
      : []),
    ...(front !== undefined && depth !== undefined && depth < front
      ? [
          {
            severity: 'error',
            id: 'wall.meter-front',
            where: `${at}.clear_depth_in`,
            message: `${depth} in are clear in front of the meter, the utility asks for ${front} in`,
            source,
            fix: 'Clear the space, or ask the utility to accept it in writing',
          } as const,
        ]
      : []),
    ...(unknown.length === 0
      ? []
      : [
          {
            severity: 'note',
            id: 'wall.meter-unknown',
            where: `${at}.${unknown[0]}`,
            message: `the place of the meter was not held against the rules of the utility, as ${unknown.join(', ')} is not stated`,
            source,
            fix: `State ${unknown.join(', ')} of the meter`,
          } as const,
        ]),
  ]
}

/** `48 to 72 in`, or one bound of it. */
function words(least: Inches, most: Inches): string {
  if (!Number.isFinite(least)) return `at most ${most} in`
  return Number.isFinite(most) ? `${least} to ${most} in` : `at least ${least} in`
}
