import type { Project } from '../../project/facts.js'
import { CARBON_MONOXIDE_ALARMS, SMOKE_ALARMS } from '../../tables/irc/index.js'
import { EDITION_NOT_READ, necSource, workingSpace, type Edition } from '../../tables/nec/index.js'
import { inchesOf } from '../../values/index.js'
import type { Finding, Source } from '../../worksheet/index.js'

/** Something that a permit sets off in the house as it is. */
export interface HouseCheck {
  /** `smoke-alarms`, `carbon-monoxide-alarms`, `electrodes`, `working-space`, `emergency-disconnect`. */
  readonly id: string
  readonly about: string
  readonly state: 'met' | 'not_met' | 'not_stated' | 'not_needed'
  /** What was found, one sentence without a full stop. */
  readonly says: string
  /** Key of the project file that decides it. */
  readonly where: string
  readonly source: Source
  /** What the owner does about it; '' when nothing. */
  readonly todo: string
}

type House = NonNullable<Project['existing_house']>
type Judged = Pick<HouseCheck, 'state' | 'says' | 'todo'>

const met = (says: string): Judged => ({ state: 'met', says, todo: '' })
const notNeeded = (says: string): Judged => ({ state: 'not_needed', says, todo: '' })
const notMet = (says: string, todo: string): Judged => ({ state: 'not_met', says, todo })
const notStated = (what: string, todo: string): Judged => ({ state: 'not_stated', says: `${what} is not stated`, todo })

/** Width and height of the working space where the equipment itself is not larger, in. @source NEC 110.26(A)(2) and (3) */
const LEAST_WIDTH_IN = 30
const LEAST_HEIGHT_IN = 78
/** Editions with an outdoor emergency disconnect of dwellings. */
const WITH_EMERGENCY: ReadonlySet<string> = new Set(['NEC 2020', 'NEC 2023', 'NEC 2026'])
/** Resistance up to which one rod is enough, ohm. @source NEC 250.53(A)(2) exception */
const ROD_LIMIT_OHM = 25

/** What the permit sets off in an existing house, judged by what the project states of it. */
export function existingHouseChecks(project: Project): HouseCheck[] {
  const house = project.existing_house ?? {}
  const edition: Edition | undefined = project.codes?.electrical
  const nec = (place: string, standing: Source['standing'] = 'read'): Source =>
    edition === undefined
      ? { document: 'NEC', place, standing }
      : necSource(edition, place, edition === EDITION_NOT_READ && standing === 'read' ? 'secondary' : standing)
  return [
    {
      id: 'smoke-alarms',
      about: 'Smoke alarms',
      where: 'existing_house.smoke_alarms',
      source: SMOKE_ALARMS,
      ...smoke(house),
    },
    {
      id: 'carbon-monoxide-alarms',
      about: 'Carbon monoxide alarms',
      where: 'existing_house.carbon_monoxide_alarms',
      source: CARBON_MONOXIDE_ALARMS,
      ...carbonMonoxide(house),
    },
    {
      id: 'electrodes',
      about: 'Grounding electrode system',
      where: 'existing_house.electrodes_bonded',
      source: nec('250.50, 250.53(A)(2)', 'from memory'),
      ...electrodes(house, project.electrical?.service?.bonding?.electrodes),
    },
    {
      id: 'working-space',
      about: 'Working space at the panel',
      where: 'existing_house.panel_space',
      source: nec('110.26(A)'),
      ...panelSpace(house),
    },
    {
      id: 'emergency-disconnect',
      about: 'Outdoor emergency disconnect',
      where: 'existing_house.emergency_disconnect',
      source: nec('230.85'),
      ...emergency(house, edition),
    },
  ]
}

/** What is not met as warnings and what is not stated as notes; a fault of the house is none of the design. */
export function existingHouseFindings(project: Project): Finding[] {
  return existingHouseChecks(project).flatMap(({ id, state, says, where, source, todo }): Finding[] =>
    state === 'not_met' || state === 'not_stated'
      ? [
          {
            severity: state === 'not_met' ? 'warning' : 'note',
            id: `house.${id}`,
            message: says,
            where,
            source,
            fix: todo,
          },
        ]
      : [],
  )
}

function smoke({ wiring_inside: inside, smoke_alarms: alarms }: House): Judged {
  const todo =
    'Look for alarms in each bedroom, outside each sleeping area and on each storey; add what is missing before the inspection.'
  if (inside === false) return notNeeded('the work runs no wiring inside the dwelling')
  if (alarms === 'all') return met('smoke alarms are at all places')
  if (alarms !== undefined)
    return notMet(
      `smoke alarms are at ${alarms === 'some' ? 'some places only' : 'no place'}, and a permit asks for all`,
      todo,
    )
  return notStated('where smoke alarms are', todo)
}

function carbonMonoxide(house: House): Judged {
  const { wiring_inside: inside, carbon_monoxide_source: fuel, carbon_monoxide_alarms: alarms } = house
  const todo =
    'Look for alarms outside each sleeping area, and in bedrooms with an appliance that burns fuel; add what is missing before the inspection.'
  if (inside === false) return notNeeded('the work runs no wiring inside the dwelling')
  if (fuel === false) return notNeeded('nothing burns fuel in the house, and no garage opens into it')
  if (alarms === 'all') return met('carbon monoxide alarms are at all places')
  if (alarms !== undefined && fuel === true)
    return notMet(
      `carbon monoxide alarms are at ${alarms === 'some' ? 'some places only' : 'no place'}, and a permit asks for all`,
      todo,
    )
  return notStated(
    fuel === undefined
      ? 'whether something in the house burns fuel or a garage opens into it'
      : 'where carbon monoxide alarms are',
    todo,
  )
}

function electrodes(house: House, stated: readonly string[] | undefined): Judged {
  const { electrodes_bonded: bonded, rods, rod_at_most_25_ohm: measured } = house
  const todo =
    'Look for the conductors from the service to rod, water pipe and footing, and have what is missing bonded.'
  if (bonded === false) return notMet('not all electrodes of the house are bonded together', todo)
  const onlyRods = stated !== undefined && stated.every((each) => each === 'rod')
  if (onlyRods && rods === 1 && measured !== true)
    return notMet(
      `one rod alone is not enough unless it was measured at ${ROD_LIMIT_OHM} ohm or less`,
      'Have a second rod driven at least 6 ft away, or the one measured.',
    )
  if (stated === undefined)
    return notStated('which electrodes the house has (electrical.service.bonding.electrodes)', todo)
  if (bonded === undefined) return notStated('whether all electrodes are bonded together', todo)
  if (onlyRods && rods === undefined) return notStated('how many rods there are (existing_house.rods)', todo)
  return met(`electrodes bonded together: ${stated.join(', ').replaceAll('_', ' ')}`)
}

function panelSpace({ panel_space: space }: House): Judged {
  const depthIn = inchesOf(workingSpace[0]?.conditionFt[0] ?? 0)
  const todo = `Measure in front of the panel: ${LEAST_WIDTH_IN} in wide, ${depthIn} in deep, ${LEAST_HEIGHT_IN} in high, clear for good; move what stands there, or ask the authority.`
  if (space === undefined) return notStated('the clear space in front of the panel', todo)
  const { width_in: width, depth_in: depth, height_in: height } = space
  const short = [
    width < LEAST_WIDTH_IN ? `${width} in of ${LEAST_WIDTH_IN} in wide` : undefined,
    depth < depthIn ? `${depth} in of ${depthIn} in deep` : undefined,
    height < LEAST_HEIGHT_IN ? `${height} in of ${LEAST_HEIGHT_IN} in high` : undefined,
  ].filter((each) => each !== undefined)
  if (short.length > 0) return notMet(`the clear space in front of the panel is ${short.join(', ')}`, todo)
  return met(`clear space in front of the panel: ${width} in wide, ${depth} in deep, ${height} in high`)
}

function emergency(house: House, edition: Edition | undefined): Judged {
  const { emergency_disconnect: kind, service_replaced: replaced } = house
  const todo = 'Ask the authority whether it wants an outdoor emergency disconnect now; with a new service it is due.'
  if (edition === undefined) return notStated('the edition of the electrical code', 'State codes.electrical.')
  if (!WITH_EMERGENCY.has(edition)) return notNeeded(`${edition} asks for none`)
  if (kind !== undefined && kind !== 'none')
    return met(`the house has one: ${kind.replaceAll('_', ' ')}, with its label`)
  if (replaced === undefined)
    return notStated('whether the work replaces the service equipment (existing_house.service_replaced)', todo)
  if (!replaced) return notNeeded('the service equipment stays as it is')
  return kind === undefined
    ? notStated('whether the new service has an outdoor emergency disconnect', todo)
    : notMet(
        'the service is replaced and has no outdoor emergency disconnect',
        'Plan a service disconnect outdoors, or a listed emergency disconnect there.',
      )
}
